package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/compare"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/render/changes"
	"longhand/render/svg"
)

// comparisons are the forms a comparison is printed in.
var comparisons = map[string]func(*compare.Report, io.Writer) error{
	"text": (*compare.Report).WriteText,
	"md":   (*compare.Report).WriteMarkdown,
	"json": (*compare.Report).WriteJSON,
}

func (a *app) compareCommand() *cobra.Command {
	var as, drawing string
	var department departmentFlag
	cmd := &cobra.Command{
		Use:   "compare OLD NEW | REV FILE | REV REV2 -- FILE",
		Short: "what a revision changes, by meaning, listed and drawn",
		Long: `Says what a newer plan changes of an older one, by meaning and not by line: marks
moved and how far, lines, cues and pickups, lenses and rigs, ways, the clock of
beats and lines, and the findings that are new and those that are gone. Blanks,
comments and the order of declarations are no change.

OLD and NEW are files. In a git repository, REV is anything git takes (a branch,
HEAD~3, a tag); the plan and the files it uses are then read as they were in it,
without touching the files that are checked out:

  REV FILE           as it was in REV, and as it is now
  REV REV2 -- FILE   as it was in two revisions

Exit codes are those of diff: 0 where the plans mean the same, 1 where they
differ (with --for: in what concerns that department), 2 where they could not be
compared.`,
		Example: `  longhand compare yesterday.take plan.take
  longhand compare HEAD plan.take
  longhand compare --as md main HEAD -- plan.take
  longhand compare HEAD~1 plan.take --for grip --draw changes.svg`,
		Args: func(cmd *cobra.Command, args []string) error {
			if _, _, err := sides(args, cmd.ArgsLenAtDash()); err != nil {
				return err
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			write, ok := comparisons[as]
			if !ok {
				return fmt.Errorf("--as takes %s, not %q%s", listed(comparisons), as, suggestion(as, keys(comparisons)))
			}
			only, err := department.department()
			if err != nil {
				return err
			}
			if err := drawable(drawing); err != nil {
				return err
			}
			old, new, err := sides(args, cmd.ArgsLenAtDash())
			if err != nil {
				return err
			}
			report, err := a.compare(cmd.Context(), old, new)
			if err != nil {
				return err
			}
			if only != "" {
				report = report.For(only)
			}
			if drawing != "" {
				data := svg.Write(changes.Draw(report), svg.Options{})
				if _, err := writeFile(filepath.FromSlash(drawing), data); err != nil {
					return err
				}
			}
			if err := write(report, a.out); err != nil {
				return err
			}
			if !report.Empty() {
				return errFound
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&as, "as", "text", "the form: "+listed(comparisons))
	department.add(cmd, "what concerns one department only")
	cmd.Flags().StringVar(&drawing, "draw", "", "draw before and after on one overhead, into this .svg file")
	complete(cmd, "as", keys(comparisons)...)
	return cmd
}

// drawable says what is wrong with the name of a drawing to be written.
func drawable(path string) error {
	if path == "" {
		return nil
	}
	if strings.ToLower(filepath.Ext(path)) != ".svg" {
		return fmt.Errorf("--draw takes the name of an .svg file, not %q", path)
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return fmt.Errorf("%s is a folder; --draw takes the name of a file", path)
	}
	return nil
}

// side is one of the two plans: a file, as it is now or in a revision.
type side struct{ rev, file string }

func (s side) String() string {
	if s.rev != "" {
		return s.rev + ":" + s.file
	}
	return s.file
}

// sides reads the arguments; dash is how many stand before "--", or -1.
func sides(args []string, dash int) (old, new side, err error) {
	const usage = "compare takes two files, a revision and a file, or two revisions and `-- FILE`"
	switch {
	case dash < 0 && len(args) == 2:
		old, new = side{file: args[0]}, side{file: args[1]}
		if _, err := os.Stat(args[0]); err != nil && args[0] != stdinName && !looksLikeFile(args[0]) {
			old = side{rev: args[0], file: args[1]}
		}
	case dash < 0 && len(args) == 3:
		return old, new, fmt.Errorf("%s; put -- before the file: longhand compare %s %s -- %s", usage, args[0], args[1], args[2])
	case dash == 1 && len(args) == 2:
		old, new = side{args[0], args[1]}, side{file: args[1]}
	case dash == 2 && len(args) == 3:
		old, new = side{args[0], args[2]}, side{args[1], args[2]}
	case dash >= 0 && slices.ContainsFunc(args[dash:], func(arg string) bool { return strings.HasPrefix(arg, "--") }):
		return old, new, fmt.Errorf("%s; what follows -- is a file, so flags come before it", usage)
	default:
		return old, new, fmt.Errorf("%s", usage)
	}
	for _, s := range []side{old, new} {
		if s.rev != "" && s.file == stdinName {
			return old, new, fmt.Errorf("standard input is in no revision; name the file to read from %s", s.rev)
		}
	}
	if old.file == stdinName && new.file == stdinName {
		return old, new, fmt.Errorf("only one of the two can be standard input")
	}
	return old, new, nil
}

// looksLikeFile is whether an argument that is no file was meant as one.
func looksLikeFile(arg string) bool { return strings.HasSuffix(arg, ".take") }

func (a *app) compare(ctx context.Context, old, new side) (*compare.Report, error) {
	stdin := a.reader("")
	older, err := a.compileSide(ctx, old, stdin, nil)
	if err != nil {
		return nil, err
	}
	newer, err := a.compileSide(ctx, new, stdin, older)
	if err != nil {
		return nil, err
	}
	r := compare.Compare(older, newer)
	r.OldName, r.NewName = filepath.ToSlash(old.String()), filepath.ToSlash(new.String())
	return r, nil
}

// compileSide compiles one of the plans. With mistakes in its text it can't be
// compared: they are printed, and the error says so.
func (a *app) compileSide(ctx context.Context, s side, read compile.Read, before *compile.Result) (*compile.Result, error) {
	name := filepath.ToSlash(s.file)
	if s.rev != "" {
		git, err := openRevision(ctx, s.rev, s.file)
		if err != nil {
			return nil, err
		}
		read = git.read
	} else if info, err := os.Stat(s.file); s.file != stdinName && err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s is a folder; compare takes files", s.file)
	}
	r, err := compile.Compile(ctx, read, name, compile.Options{Before: before, Progress: a.progress("looking")})
	if err != nil {
		return nil, err
	}
	if r.Stopped || r.Sight == nil {
		if err := a.printFindings(r.Findings); err != nil {
			return nil, err
		}
		return nil, fmt.Errorf("%s can't be compared: %s", s, diag.Summary(r.Findings))
	}
	return r, nil
}
