package main

import (
	"context"
	"fmt"

	"longhand/lang/compile"
	"longhand/render/frames"
	"longhand/render/overhead"
	"longhand/render/scene"
	"longhand/render/svg"
	"longhand/render/timeline"
)

// pictures is what the lenses see in each beat and each pickup, and the take and
// these along their time, for build.
func pictures(ctx context.Context, r *compile.Result, o overhead.Options) ([]artifact, error) {
	var out []artifact
	add := func(name string, all []*scene.Sheet) {
		for i, s := range all {
			file := name
			if i > 0 {
				file = fmt.Sprintf("%s-%d", name, i+1)
			}
			out = append(out, artifact{file + ".svg", svg.Write(s, svg.Options{})})
		}
	}
	d := frames.New(r)
	for i, b := range r.Plan.Beats {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		add(fmt.Sprintf("frames/beat-%02d-%s", i+1, scene.ID(b.Title)), d.Sheet(b, frames.Options{Paper: o.Paper}))
	}
	for i, s := range r.Pickups {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		name := fmt.Sprintf("pickup-%02d-%s", i+1, scene.ID(s.Pickup.Title))
		seen := frames.New(&compile.Result{Plan: s.Plan, Played: s.Played})
		add("frames/"+name, seen.Whole("Pickup  "+s.Pickup.Title, frames.Options{Paper: o.Paper}))
		add("timeline/"+name, timeline.Pickup(r, s, timeline.Options{}))
	}
	add("timeline/take", timeline.Sheets(r, timeline.Options{}))
	add("timeline/strip", timeline.Sheets(r, timeline.Options{Strip: true}))
	return out, nil
}
