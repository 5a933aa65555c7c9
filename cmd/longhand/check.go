package main

import (
	"context"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// formats are the ways check can print what it found.
var formats = []string{"text", "short", "json", "sarif", "junit", "github", "gitlab"}

func (a *app) checkCommand() *cobra.Command {
	var as, failOn, stdinAs string
	var fix bool
	cmd := &cobra.Command{
		Use:   "check FILE...",
		Short: "what would spoil the take, and by how much",
		Long: `Compiles plans and prints what is wrong with them: the text, the clock, the
moves, and what every lens sees at every frame.

FILE may be a folder, a pattern, or - for standard input. Findings for people go
to standard error, findings for machines (--as) to standard output.

With --fix the fixes that findings offer are applied to the files, each only if
it takes its finding away and brings no new one; what is left is then printed.
Decisions, such as sending a thing to visual effects, are left to people.

Exit code 0: nothing wrong; 1: something found; 2: could not run.`,
		Example: `  longhand check plan.take
  longhand check --fail-on warning plans/
  longhand check --as json - < plan.take
  longhand check --fix plan.take`,
		Args: needFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			least, ok := map[string]diag.Severity{"error": diag.Error, "warning": diag.Warning, "note": diag.Note}[failOn]
			if !ok {
				return fmt.Errorf("--fail-on takes error, warning or note, not %q", failOn)
			}
			files, err := takeFiles(args)
			if err != nil {
				return err
			}
			if fix {
				if err := a.mend(cmd.Context(), files, stdinAs); err != nil {
					return err
				}
			}
			results, err := a.compileAll(cmd.Context(), files, stdinAs)
			if err != nil {
				return err
			}
			var bag diag.Bag
			var names []string
			stopped := false
			for _, r := range results {
				for _, d := range r.Findings {
					bag.Add(d)
				}
				for _, f := range r.Files {
					names = append(names, f.Source.Name)
				}
				stopped = stopped || r.Stopped
			}
			list := bag.Sorted()
			if err := a.print(as, names, list); err != nil {
				return err
			}
			if as == "text" || as == "short" {
				fmt.Fprintf(a.err, "%s\n", diag.Summary(list))
				for _, r := range results {
					if r.Empty() {
						fmt.Fprintf(a.err, "%s says nothing yet; `longhand new` begins a plan\n", r.Files[0].Source.Name)
					}
				}
				if stopped {
					fmt.Fprintln(a.err, "the text comes first: mend it, and the take is checked")
				}
			}
			for i := range list {
				if list[i].Severity >= least {
					return errFound
				}
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&as, "as", "text", "how to print: text, short, json, sarif, junit, github or gitlab")
	cmd.Flags().StringVar(&failOn, "fail-on", "error", "the least that makes the exit code 1: error, warning or note")
	cmd.Flags().BoolVar(&fix, "fix", false, "apply fixes that take their finding away and bring no new one")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	complete(cmd, "as", formats...)
	complete(cmd, "fail-on", "error", "warning", "note")
	return cmd
}

// complete offers the values of a flag to the shell.
func complete(cmd *cobra.Command, flag string, values ...string) {
	// The error is of a flag that doesn't exist: a mistake in this program, which
	// the tests of the completion would show.
	_ = cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp))
}

// compileAll compiles the plans among files. A file without a take is somebody's
// set, kit or people: it is checked with the plans that use it, and where none
// of these does, its text alone is.
func (a *app) compileAll(ctx context.Context, files []string, stdinAs string) ([]*compile.Result, error) {
	read := a.reader(stdinAs)
	used := map[string]bool{}
	var results []*compile.Result
	var parts []string
	for _, name := range files {
		shown := name
		if name == stdinName && stdinAs != "" {
			shown = stdinAs
		}
		text, err := read(name)
		if err != nil {
			return nil, err
		}
		if len(files) > 1 && !hasTake(text) {
			parts = append(parts, name)
			continue
		}
		r, err := compile.Compile(ctx, read, shown, compile.Options{Progress: a.progress("looking")})
		if err != nil {
			return nil, err
		}
		for _, f := range r.Files {
			used[f.Source.Name] = true
		}
		results = append(results, r)
	}
	for _, name := range parts {
		if used[name] {
			continue
		}
		text, err := read(name)
		if err != nil {
			return nil, err
		}
		src := source.NewFile(name, text)
		parsed, bag := syntax.Parse(src)
		results = append(results, &compile.Result{
			Files: []*syntax.File{parsed}, Plan: &plan.Plan{}, Findings: bag.Sorted(), Stopped: bag.Errors() > 0,
		})
	}
	return results, nil
}

func hasTake(text string) bool {
	parsed, _ := syntax.Parse(source.NewFile("", text))
	for _, s := range parsed.Sections {
		if s.Word == "take" {
			return true
		}
	}
	return false
}

func (a *app) print(as string, files []string, list []diag.Diagnostic) error {
	switch as {
	case "text":
		return a.printFindings(list)
	case "short":
		return diag.WriteShort(a.err, list)
	case "json":
		return diag.WriteJSON(a.out, list)
	case "sarif":
		titles := map[diag.Code]string{}
		for _, e := range compile.Catalog() {
			titles[e.Code] = e.Title
		}
		return diag.WriteSARIF(a.out, list, titles)
	case "junit":
		return diag.WriteJUnit(a.out, files, list)
	case "github":
		if err := diag.WriteGitHub(a.out, list); err != nil {
			return err
		}
		return a.jobSummary(list)
	case "gitlab":
		return diag.WriteGitLab(a.out, list)
	}
	return fmt.Errorf("--as takes text, short, json, sarif, junit, github or gitlab, not %q%s", as, suggestion(as, formats))
}

// jobSummary adds the table of findings to the summary page of a hosted job,
// where there is one.
func (a *app) jobSummary(list []diag.Diagnostic) error {
	path := a.getenv("GITHUB_STEP_SUMMARY")
	if path == "" {
		return nil
	}
	f, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		return fmt.Errorf("the job's summary can't be written: %w", err)
	}
	defer f.Close()
	return diag.WriteMarkdown(f, list)
}
