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
	cmd := &cobra.Command{
		Use:   "build FILE|DIR",
		Short: "everything: drawings and sheets, into a folder",
		Long: `Compiles a plan and makes everything from it into one folder: the overhead
diagrams, the sheets of all departments, and what was found. Of a folder, every
plan in it is built into a folder of its own name.

Everything is computed before anything is written; files that would not change
are left alone.`,
		Example: `  longhand build plan.take
  longhand build plans/ -o out`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			begun := time.Now()
			options, err := flags.options()
			if err != nil {
				return err
			}
			files, err := takeFiles(args)
			if err != nil {
				return err
			}
			results, err := a.compileAll(cmd.Context(), files, stdinAs)
			if err != nil {
				return err
			}
			var all []artifact
			found := false
			names := map[string]bool{}
			for _, r := range results {
				if r.Stopped || r.Sight == nil {
					if len(r.Findings) == 0 {
						continue // somebody's set or kit, used by none of these
					}
					if err := a.printFindings(r.Findings); err != nil {
						return err
					}
					return a.nothingMade(r)
				}
				found = found || r.Errors() > 0
				made, err := everything(cmd.Context(), r, options)
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
	cmd.Flags().StringVarP(&out, "output", "o", "out", "the folder to write into")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	return cmd
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
