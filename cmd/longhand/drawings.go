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

// drawings makes the overhead diagrams of a plan: each beat and each pickup, then the
// whole take, numbered through.
func drawings(ctx context.Context, r *compile.Result, o overhead.Options) ([]artifact, error) {
	type drawn struct {
		name   string
		sheets []*scene.Sheet
		title  func(pages int)
	}
	var all []drawn
	page := 1
	add := func(name string, draw func(overhead.Options) ([]*scene.Sheet, func(int))) {
		o := o
		o.Page = page
		sheets, title := draw(o)
		page += len(sheets)
		all = append(all, drawn{name, sheets, title})
	}
	of := func(beat *plan.Beat) func(overhead.Options) ([]*scene.Sheet, func(int)) {
		return func(o overhead.Options) ([]*scene.Sheet, func(int)) { return overhead.Untitled(r, beat, o) }
	}
	for i, beat := range r.Plan.Beats {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		add(fmt.Sprintf("beat-%02d-%s", i+1, scene.ID(beat.Title)), of(beat))
	}
	for i, s := range r.Pickups {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		add(fmt.Sprintf("pickup-%02d-%s", i+1, scene.ID(s.Pickup.Title)), func(o overhead.Options) ([]*scene.Sheet, func(int)) {
			return overhead.UntitledPickup(r, s, o)
		})
	}
	add("take", of(nil))
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
