package main

import (
	"github.com/spf13/cobra"
)

func (a *app) drawCommand() *cobra.Command {
	var flags drawingFlags
	var out, stdinAs string
	cmd := &cobra.Command{
		Use:   "draw FILE",
		Short: "overhead diagrams to scale, one a beat and a pickup, and one of the whole take",
		Long: `Draws the take from above, to scale, as SVG: one diagram a beat, one a pickup and
one of the whole take, on paper of the size named. They are made to be printed in
black and white; with --for a department's own things stand out.`,
		Example: `  longhand draw plan.take
  longhand draw plan.take --paper a3 --for grip --never-seen -o drawings`,
		Args: needOne,
		RunE: func(cmd *cobra.Command, args []string) error {
			options, err := flags.options()
			if err != nil {
				return err
			}
			r, err := a.compileOne(cmd.Context(), args[0], stdinAs)
			if err != nil {
				return err
			}
			files, err := drawings(cmd.Context(), r, options)
			if err != nil {
				return err
			}
			return a.make(cmd.Name(), out, files, r)
		},
	}
	flags.add(cmd)
	cmd.Flags().StringVarP(&out, "output", "o", "out", "the folder to write into")
	cmd.Flags().StringVar(&stdinAs, "stdin-filename", "", "the name that standard input goes by in messages")
	return cmd
}
