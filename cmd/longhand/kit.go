package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"longhand/lang/compile"
	"longhand/lang/units"
)

func (a *app) kitCommand() *cobra.Command {
	var feet, asJSON bool
	cmd := &cobra.Command{
		Use:   "kit [WORD]",
		Short: "what is taken for granted, with where it comes from",
		Long: `Lists every value that is used where a plan says nothing: sizes and paces of
people, rigs by class, times for changes of hands, clearances, optics, light.
Each has its source. All can be said otherwise in a plan.

With WORD only the lines that hold it.`,
		Example: `  longhand kit
  longhand kit body-rig
  longhand kit --feet crane`,
		Args: cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			system := units.Metric
			if feet {
				system = units.Feet
			}
			list := compile.Defaults(system)
			if len(args) == 1 {
				list = matching(list, args[0])
				if len(list) == 0 {
					return fmt.Errorf("nothing that is taken for granted has %q in it; `longhand kit` lists all", args[0])
				}
			}
			if asJSON {
				enc := json.NewEncoder(a.out)
				enc.SetIndent("", "  ")
				enc.SetEscapeHTML(false)
				return enc.Encode(list)
			}
			for _, d := range list {
				if _, err := fmt.Fprintf(a.out, "%-52s %s\n%-52s   (%s)\n", d.Name, d.Value, "", d.Source); err != nil {
					return err
				}
			}
			return nil
		},
	}
	cmd.Flags().BoolVar(&feet, "feet", false, "print feet and inches")
	cmd.Flags().BoolVar(&asJSON, "json", false, "print JSON")
	return cmd
}

func matching(list []units.Default, word string) []units.Default {
	var out []units.Default
	for _, d := range list {
		if containsFold(d.Name, word) || containsFold(d.Value, word) {
			out = append(out, d)
		}
	}
	return out
}

func containsFold(s, part string) bool {
	return strings.Contains(strings.ToLower(s), strings.ToLower(part))
}
