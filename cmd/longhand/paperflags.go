package main

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"longhand/render/overhead"
	"longhand/render/scene"
)

// papers are the sizes of paper that drawings are made for.
var papers = map[string]scene.Paper{"a4": scene.A4, "a3": scene.A3, "letter": scene.Letter, "tabloid": scene.Tabloid}

var turns = map[string]overhead.Turn{"auto": overhead.Auto, "landscape": overhead.Landscape, "portrait": overhead.Portrait}

// drawingFlags are how a drawing is to look, as commands take it.
type drawingFlags struct {
	paper, turn, scale string
	department         departmentFlag
	neverSeen, colour  bool
}

func (d *drawingFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&d.paper, "paper", "a4", "the paper: a4, a3, letter or tabloid")
	cmd.Flags().StringVar(&d.turn, "turn", "auto", "how it lies: auto, landscape or portrait")
	cmd.Flags().StringVar(&d.scale, "scale", "", "the scale, such as 1:50; the largest that fits unless given")
	d.department.add(cmd, "a department whose things stand out")
	cmd.Flags().BoolVar(&d.neverSeen, "never-seen", false, "hatch the floor that no rolling camera sees")
	cmd.Flags().BoolVar(&d.colour, "in-colour", false, "draw in colour; black and white unless given")
	complete(cmd, "paper", keys(papers)...)
	complete(cmd, "turn", keys(turns)...)
}

func (d *drawingFlags) options() (overhead.Options, error) {
	o := overhead.Options{NeverSeen: d.neverSeen, Colour: d.colour}
	var ok bool
	if o.Paper, ok = papers[strings.ToLower(d.paper)]; !ok {
		return o, fmt.Errorf("--paper takes %s, not %q%s", listed(papers), d.paper, suggestion(d.paper, keys(papers)))
	}
	if o.Turn, ok = turns[strings.ToLower(d.turn)]; !ok {
		return o, fmt.Errorf("--turn takes %s, not %q%s", listed(turns), d.turn, suggestion(d.turn, keys(turns)))
	}
	if d.scale != "" {
		n, err := strconv.ParseFloat(strings.TrimPrefix(d.scale, "1:"), 64)
		if err != nil || !(n >= 1 && n <= 100000) {
			return o, fmt.Errorf("--scale takes a scale such as 1:50, not %q", d.scale)
		}
		o.Scale = n
	}
	var err error
	o.Department, err = d.department.department()
	return o, err
}
