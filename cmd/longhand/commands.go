package main

import "github.com/spf13/cobra"

// commands lists every subcommand; each is in the file of its name.
func (a *app) commands() []*cobra.Command {
	return []*cobra.Command{
		a.newCommand(),
		a.checkCommand(),
		a.fmtCommand(),
		a.drawCommand(),
		a.sheetsCommand(),
		a.pageCommand(),
		a.watchCommand(),
		a.bookCommand(),
		a.buildCommand(),
		a.explainCommand(),
		a.rehearseCommand(),
		a.scoutCommand(),
		a.compareCommand(),
		a.exportCommand(),
		a.kitCommand(),
		a.lspCommand(),
	}
}
