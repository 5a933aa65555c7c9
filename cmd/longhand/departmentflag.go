package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/departments"
)

// departmentFlag is --for: a department by its short name, its title, or what a
// plan's notes call it, the same in every command.
type departmentFlag struct{ word string }

func (d *departmentFlag) add(cmd *cobra.Command, usage string) {
	cmd.Flags().StringVar(&d.word, "for", "", usage+": "+strings.Join(departmentNames(), ", "))
	complete(cmd, "for", departmentNames()...)
}

// department is the one asked for; empty where none is.
func (d *departmentFlag) department() (departments.Name, error) {
	if d.word == "" {
		return "", nil
	}
	name, err := departments.Parse(d.word)
	if err != nil {
		return "", fmt.Errorf("--for: %w%s", err, suggestion(d.word, append(departmentNames(), departments.Noted()...)))
	}
	return name, nil
}

func departmentNames() []string {
	var out []string
	for _, d := range departments.All() {
		out = append(out, string(d))
	}
	return out
}
