package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/diag"
)

func (a *app) explainCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "explain [CODE...]",
		Short: "a finding explained, or the list of all there are",
		Long: `Prints what a finding means, what causes it and what mends it, with a plan that
has it and the plan mended. Without CODE it lists every finding there is.`,
		Example: `  longhand explain
  longhand explain left-in-shot`,
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return compile.KnownCodes(), cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				for _, e := range compile.Catalog() {
					if _, err := fmt.Fprintf(a.out, "%-18s %-8s %s\n", e.Code, e.Severity, e.Title); err != nil {
						return err
					}
				}
				return nil
			}
			for i, code := range args {
				e, ok := compile.Explained(diag.Code(code))
				if !ok {
					return fmt.Errorf("there is no finding %q%s; `longhand explain` lists them", code, suggestion(code, compile.KnownCodes()))
				}
				if i > 0 {
					fmt.Fprintln(a.out)
				}
				if err := writeEntry(a.out, e); err != nil {
					return err
				}
			}
			return nil
		},
	}
}

func writeEntry(w io.Writer, e diag.Entry) error {
	_, err := fmt.Fprintf(w, "%s (%s): %s\n\n%s\n", e.Code, e.Severity, e.Title, strings.TrimSpace(e.Explain))
	if at := compile.Where(e); err == nil && at != "" {
		_, err = fmt.Fprintf(w, "\nIt stands at %s.\n", strings.ReplaceAll(at, "`", ""))
	}
	if err == nil && e.Bad != "" {
		_, err = fmt.Fprintf(w, "\nA plan that has it:\n\n%s\nThe same plan, mended:\n\n%s", indent(e.Bad), indent(e.Good))
	}
	return err
}

func indent(text string) string {
	lines := strings.Split(strings.Trim(text, "\n"), "\n")
	for i, l := range lines {
		if l != "" {
			lines[i] = "    " + l
		}
	}
	return strings.Join(lines, "\n") + "\n"
}
