package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"longhand/render/sheets"
)

func (a *app) sheetsCommand() *cobra.Command {
	var out, stdinAs string
	var department departmentFlag
	var forms []string
	cmd := &cobra.Command{
		Use:   "sheets FILE",
		Short: "the breakdown, a sheet a department",
		Long: `Writes what each department needs of a take: who and what, when (clock, frame,
and the cue in words), where, with what.

Forms: html (prints, and reads on a phone), md, csv (with a table of what the
columns say), json, xlsx. All of them unless --as names some.`,
		Example: `  longhand sheets plan.take
  longhand sheets plan.take --for sound --as html,csv -o sound
  longhand sheets plan.take --for grip --as md -o -`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := knownForms(forms); err != nil {
				return err
			}
			only, err := department.department()
			if err != nil {
				return err
			}
			r, err := a.compileOne(cmd.Context(), args[0], stdinAs)
			if err != nil {
				return err
			}
			book, err := sheets.Breakdown(cmd.Context(), r)
			if err != nil {
				return err
			}
			if only != "" {
				book = book.Only(only)
			}
			files, err := sheetFiles(book, "", forms...)
			if err != nil {
				return err
			}
			return a.make(cmd.Name(), out, files, r)
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "out", "the folder to write into; - for standard output, of one form of one sheet")
	cmd.Flags().StringSliceVar(&forms, "as", nil, "the forms: "+strings.Join(sheets.Forms(), ", ")+"; all unless given")
	department.add(cmd, "one department only")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	complete(cmd, "as", sheets.Forms()...)
	return cmd
}

func knownForms(forms []string) error {
	for _, f := range forms {
		if !slices.Contains(sheets.Forms(), f) {
			return fmt.Errorf("--as takes %s, not %q%s", strings.Join(sheets.Forms(), ", "), f, suggestion(f, sheets.Forms()))
		}
	}
	return nil
}

func sheetFiles(book *sheets.Book, folder string, forms ...string) ([]artifact, error) {
	files, err := book.Files(forms...)
	if err != nil {
		return nil, err
	}
	var out []artifact
	for _, f := range files {
		out = append(out, artifact{folder + f.Name, f.Data})
	}
	return out, nil
}

// breakdown is all sheets, for build.
func (m *making) breakdown() ([]artifact, error) {
	book, err := m.rows()
	if err != nil {
		return nil, err
	}
	return sheetFiles(book, "sheets/")
}
