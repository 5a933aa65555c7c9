package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
)

//go:embed new/plan.take
var firstPlan []byte

//go:embed new/gitignore
var firstIgnore []byte

func (a *app) newCommand() *cobra.Command {
	return &cobra.Command{
		Use:     "new DIR",
		Short:   "a small plan that compiles, to start from",
		Long:    "Writes a small plan that compiles into a folder, to start from. Nothing that is\nthere already is touched.",
		Example: "  longhand new my-take",
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("longhand new takes the name of a folder; `longhand help new` shows how")
			}
			return nil
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			dir := args[0]
			plan := filepath.Join(dir, "plan.take")
			ignore := filepath.Join(dir, ".gitignore")
			for _, path := range []string{plan, ignore} {
				if _, err := os.Lstat(path); err == nil {
					return fmt.Errorf("%s is there already; name another folder", filepath.ToSlash(path))
				} else if !errors.Is(err, fs.ErrNotExist) {
					return err
				}
			}
			if _, err := writeFile(plan, firstPlan); err != nil {
				return err
			}
			if _, err := writeFile(ignore, firstIgnore); err != nil {
				return err
			}
			shown := filepath.ToSlash(plan)
			_, err := fmt.Fprintf(a.out, "made %s\n\nnext:\n  longhand check %s\n  longhand build %s -o %s\n",
				shown, shown, shown, filepath.ToSlash(filepath.Join(dir, "out")))
			return err
		},
	}
}
