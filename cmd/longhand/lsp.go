package main

import (
	"github.com/spf13/cobra"

	"longhand/lang/lsp"
)

func (a *app) lspCommand() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "lsp",
		Short: "the language server: findings, completion, hints as you type",
		Long: `Speaks the Language Server Protocol, version 3.17, on standard input and output.
Editors start it; there is nothing to type. What goes wrong with the server
itself is told on standard error.`,
		Args: cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return lsp.Serve(cmd.Context(), a.in, a.out, lsp.Options{Version: version(), Log: a.err})
		},
	}
	// Some editors say how they will speak; there is one way only.
	cmd.Flags().Bool("stdio", true, "speak on standard input and output, which is the only way")
	return cmd
}
