package main

import (
	"fmt"
	"path/filepath"

	"github.com/aymanbagabas/go-udiff"
	"github.com/spf13/cobra"

	"longhand/lang/diag"
	"longhand/lang/format"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

func (a *app) fmtCommand() *cobra.Command {
	var check, diff bool
	var stdinAs string
	cmd := &cobra.Command{
		Use:   "fmt FILE...",
		Short: "plans in the standard form",
		Long: `Rewrites plans in the standard form: blanks and line ends only, never a word.
Lines that can't be read are left as they are and reported.

FILE may be a folder, a pattern, or - for standard input, which is printed.
With --check or --diff nothing is written, and a plan that is not in the
standard form makes the exit code 1.`,
		Example: `  longhand fmt plan.take
  longhand fmt --check .
  longhand fmt --diff plan.take
  longhand fmt - < plan.take`,
		Args: needFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			files, err := takeFiles(args)
			if err != nil {
				return err
			}
			read := a.reader(stdinAs)
			found := false
			for _, name := range files {
				shown := name
				if name == stdinName && stdinAs != "" {
					shown = stdinAs
				}
				text, err := read(name)
				if err != nil {
					return err
				}
				parsed, bag := syntax.Parse(source.NewFile(shown, text))
				if bag.Errors() > 0 {
					found = true
					if err := a.printFindings(bag.Sorted()); err != nil {
						return err
					}
				}
				laid := string(format.File(parsed))
				switch {
				case check || diff:
					if laid == text {
						continue
					}
					found = true
					if check {
						fmt.Fprintln(a.out, shown)
					}
					if diff {
						fmt.Fprint(a.out, udiff.Unified(shown, shown+" (standard form)", text, laid))
					}
				case name == stdinName:
					if _, err := fmt.Fprint(a.out, laid); err != nil {
						return err
					}
				case laid != text:
					if _, err := writeFile(filepath.FromSlash(name), []byte(laid)); err != nil {
						return err
					}
				}
			}
			if found {
				return errFound
			}
			return nil
		},
	}
	cmd.Flags().BoolVar(&check, "check", false, "list the plans that are not in the standard form")
	cmd.Flags().BoolVar(&diff, "diff", false, "print what would change")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	return cmd
}

// needFiles refuses a call without a file, in words.
func needFiles(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("%s needs a plan, a folder, or - for standard input; `longhand help %s` shows how", cmd.CommandPath(), cmd.Name())
	}
	return nil
}

// needOne refuses anything but one plan, in words.
func needOne(cmd *cobra.Command, args []string) error {
	if len(args) != 1 {
		return fmt.Errorf("%s takes one plan; `longhand help %s` shows how", cmd.CommandPath(), cmd.Name())
	}
	return nil
}

// printFindings prints findings for people, on standard error.
func (a *app) printFindings(list []diag.Diagnostic) error {
	paint, err := a.paint(a.err)
	if err != nil {
		return err
	}
	return diag.WriteText(a.err, list, paint)
}
