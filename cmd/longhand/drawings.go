package main

import (
	"context"
	"fmt"

	"longhand/lang/compile"
	"longhand/lang/plan"
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
		title  func(pages int)
	}
	var all []drawn
	page := 1
	add := func(name string, beat *plan.Beat) {
		o := o
		o.Page = page
		sheets, title := overhead.Untitled(r, beat, o)
		page += len(sheets)
		all = append(all, drawn{name, sheets, title})
	}
	for i, beat := range r.Plan.Beats {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		add(fmt.Sprintf("beat-%02d-%s", i+1, scene.ID(beat.Title)), beat)
	}
	add("take", nil)
	for _, d := range all {
		d.title(page - 1)
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
