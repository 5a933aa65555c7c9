package main

import (
	"context"
	"fmt"

	"longhand/lang/compile"
	"longhand/render/overhead"
	"longhand/render/scene"
	"longhand/render/svg"
)

// drawings makes the overhead diagrams of a plan: each beat, then the whole take,
// numbered through.
func drawings(ctx context.Context, r *compile.Result, o overhead.Options) ([]artifact, error) {
	type drawn struct {
		name   string
		sheets []*scene.Sheet
	}
	draw := func() []drawn {
		var all []drawn
		page := 1
		add := func(name string, make func(o overhead.Options) []*scene.Sheet) {
			o := o
			o.Page = page
			sheets := make(o)
			page += len(sheets)
			all = append(all, drawn{name, sheets})
		}
		for i, beat := range r.Plan.Beats {
			if ctx.Err() != nil {
				return nil
			}
			add(fmt.Sprintf("beat-%02d-%s", i+1, scene.ID(beat.Title)), func(o overhead.Options) []*scene.Sheet {
				return overhead.Beat(r, beat, o)
			})
		}
		add("take", func(o overhead.Options) []*scene.Sheet { return overhead.Take(r, o) })
		return all
	}
	all := draw()
	if o.Pages == 0 {
		// How many sheets there are is known once they are drawn.
		for _, d := range all {
			o.Pages += len(d.sheets)
		}
		all = draw()
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	var out []artifact
	for _, d := range all {
		for i, sheet := range d.sheets {
			name := d.name
			if i > 0 {
				name = fmt.Sprintf("%s-%d", name, i+1)
			}
			out = append(out, artifact{"overhead/" + name + ".svg", svg.Write(sheet, svg.Options{})})
		}
	}
	return out, nil
}
