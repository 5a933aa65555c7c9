package main

import (
	"fmt"
	"path"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/diag"
)

func (a *app) buildCommand() *cobra.Command {
	var flags drawingFlags
	var out, stdinAs string
	var rehearsal rehearsalFlags
	cmd := &cobra.Command{
		Use:   "build FILE|DIR",
		Short: "everything, into a folder",
		Long: `Compiles a plan and makes everything from it into one folder: the overhead
diagrams, what the lenses see, the take along its time, the sheets of all
departments, the book, the cards, the page, and what was found. Of a folder with
several plans, each is built into a folder of its own name.

With --rehearse N each take is played so many times with human timing; what comes
of it is among the sheets, in the book and on the page. Interrupted, nothing is
made.

Everything is computed before anything is written; files that would not change
are left alone.`,
		Example: `  longhand build plan.take
  longhand build plan.take --rehearse 500
  longhand build plans/ -o out`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			begun := time.Now()
			options, err := flags.options()
			if err != nil {
				return err
			}
			rehearsed, err := rehearsal.asked(cmd)
			if err != nil {
				return err
			}
			files, err := takeFiles(args)
			if err != nil {
				return err
			}
			if len(files) > 1 && rehearsal.times != "" {
				return fmt.Errorf("--times are of one plan, and these are %d; build them one by one", len(files))
			}
			results, err := a.compileAll(cmd.Context(), files, stdinAs)
			if err != nil {
				return err
			}
			var all []artifact
			found := false
			names := map[string]bool{}
			whole, err := a.worked(results)
			if err != nil {
				return err
			}
			for _, r := range whole {
				found = found || r.Errors() > 0
				played, err := a.rehearsal(cmd.Context(), r, &rehearsal, rehearsed)
				if err != nil {
					return err
				}
				made, err := everything(cmd.Context(), r, options, played)
				if err != nil {
					return err
				}
				prefix := ""
				if len(files) > 1 {
					prefix = folderName(r.Files[0].Source.Name, names) + "/"
				}
				for _, m := range made {
					all = append(all, artifact{prefix + m.name, m.data})
				}
			}
			done, err := writeFolder(filepath.FromSlash(out), cmd.Name(), all)
			a.sayMade(done)
			if err != nil {
				return err
			}
			fmt.Fprintf(a.err, "%d files in %s, %s\n", len(done), filepath.ToSlash(out), took(begun))
			for _, r := range results {
				if n := len(r.Findings); n > 0 {
					fmt.Fprintf(a.err, "%s: %s; `longhand check` says more\n", r.Files[0].Source.Name, diag.Summary(r.Findings))
				}
			}
			if found {
				return errFound
			}
			return nil
		},
	}
	flags.add(cmd)
	rehearsal.offerTo(cmd, "have what comes of it among the sheets, in the book and on the page")
	cmd.Flags().StringVarP(&out, "output", "o", "out", "the folder to write into")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	return cmd
}

// worked is the plans that were worked out to the end, without somebody's set or
// kit that none of them uses. Mistakes in a text stop all before anything is made.
func (a *app) worked(results []*compile.Result) ([]*compile.Result, error) {
	var out []*compile.Result
	for _, r := range results {
		if !r.Stopped && r.Sight != nil {
			out = append(out, r)
			continue
		}
		if len(r.Findings) == 0 {
			continue
		}
		if err := a.printFindings(r.Findings); err != nil {
			return nil, err
		}
		return nil, a.nothingMade(r)
	}
	return out, nil
}

func (a *app) nothingMade(r *compile.Result) error {
	fmt.Fprintf(a.err, "%s; nothing was made of %s\n", diag.Summary(r.Findings), r.Files[0].Source.Name)
	return errFound
}

// folderName is a folder for a plan among several, none twice.
func folderName(file string, taken map[string]bool) string {
	base := strings.TrimSuffix(path.Base(file), path.Ext(file))
	name := base
	for n := 2; taken[name]; n++ {
		name = fmt.Sprintf("%s-%d", base, n)
	}
	taken[name] = true
	return name
}
