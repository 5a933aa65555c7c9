package page

import (
	"context"
	"fmt"
	"path"

	"longhand/lang/body"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
	"longhand/render/frames"
)

// gather collects what the page knows of a take that was worked out.
func gather(ctx context.Context, r *compile.Result) (*document, error) {
	t := &r.Plan.Take
	d := &document{
		Title: t.Title, Scene: t.Scene, Set: r.Plan.Set.Title, Revision: t.Revision,
		File: path.Base(r.Files[0].Source.Name), Rate: [2]int{r.Tracks.Rate.Num, r.Tracks.Rate.Den}, Feet: t.Units == units.Feet,
		Safety: safety.General,
		// What is empty is still a list.
		Pieces: []piece{}, Meeting: [][]float64{}, People: []person{}, Depts: []department{}, General: []finding{},
		Plan: planDrawing{Marks: []place{}, Doors: []leaf{}, Hung: []hanging{}, Grids: [][]float64{}},
	}
	d.set(r)
	d.figures()
	for _, p := range r.Plan.People {
		d.People = append(d.People, person{p.Name, p.Crew, p.Role})
	}
	take, err := gatherShot(ctx, t.Title, r.Plan, r.Tracks, r.Stage, r.Sight)
	if err != nil {
		return nil, err
	}
	d.Shots = append(d.Shots, *take)
	for _, u := range r.Pickups {
		if u.Tracks == nil || u.Stage == nil || u.Sight == nil {
			continue
		}
		s, err := gatherShot(ctx, u.Pickup.Title, u.Plan, u.Tracks, u.Stage, u.Sight)
		if err != nil {
			return nil, err
		}
		d.Shots = append(d.Shots, *s)
	}
	d.findings(r)
	d.departments(r)
	return d, nil
}

func (d *document) set(r *compile.Result) {
	pieces, meeting := frames.New(r).Pieces()
	index := map[any]int{}
	for i := range r.Stage.Scene.Solids {
		index[&r.Stage.Scene.Solids[i]] = i
	}
	for _, p := range pieces {
		out := piece{Polygon: flat(p.Polygon), Z: [2]float64{r4(p.Z[0]), r4(p.Z[1])}, Solid: -1, Glass: p.Solid == nil, Kind: "window"}
		if p.Solid != nil {
			out.Solid, out.Name, out.Kind = index[p.Solid], p.Solid.Name, p.Solid.Kind
		}
		if len(p.Parts) > 1 {
			for _, c := range p.Parts {
				out.Parts = append(out.Parts, flat(c))
			}
		}
		for _, l := range p.Lines {
			out.Lines = append(out.Lines, lineNumbers(l)...)
		}
		d.Pieces = append(d.Pieces, out)
	}
	for _, l := range meeting {
		d.Meeting = append(d.Meeting, lineNumbers(l))
	}
	set := &r.Plan.Set
	for _, m := range set.Marks {
		if !m.Bad {
			d.Plan.Marks = append(d.Plan.Marks, place{m.Name, r4(m.Point.X), r4(m.Point.Y)})
		}
	}
	hang := func(id *plan.Ident, kind string, on plan.On) {
		if !id.Bad && on.Wall != nil {
			a, b := on.Ends()
			d.Plan.Hung = append(d.Plan.Hung, hanging{id.Name, kind, pair(a), pair(b)})
		}
	}
	for _, w := range set.Windows {
		hang(&w.Ident, "window", w.On)
	}
	for _, m := range set.Mirrors {
		hang(&m.Ident, "mirror", m.On)
	}
	for _, m := range r.Stage.Scene.Mirrors {
		d.Plan.Mirrors = append(d.Plan.Mirrors, mirror{m.Name, pair(m.A), pair(m.B), [2]float64{r4(m.Z[0]), r4(m.Z[1])}})
	}
	for _, g := range set.Glows {
		hang(&g.Ident, "glow", g.On)
	}
	for _, h := range set.Holes {
		hang(&h.Ident, "hole", plan.On{Wall: h.Wall, From: h.Along - h.Wide/2, To: h.Along + h.Wide/2})
	}
	for _, door := range set.Doors {
		if door.Bad || door.Wall == nil {
			continue
		}
		a, b := door.Ends()
		out := leaf{Name: door.Name, A: pair(a), B: pair(b), Solid: -1}
		for i := range r.Stage.Scene.Solids {
			if s := &r.Stage.Scene.Solids[i]; s.Kind == string(plan.KindDoor) && s.Name == door.Name {
				out.Solid = i
			}
		}
		d.Plan.Doors = append(d.Plan.Doors, out)
	}
	for _, g := range set.Grids {
		if !g.Bad {
			d.Plan.Grids = append(d.Plan.Grids, flat(g.Polygon))
		}
	}
}

func lineNumbers(l frames.Line) []float64 {
	var out []float64
	for _, v := range []geom.Vec3{l.A, l.B, l.N1, l.N2} {
		out = append(out, r4(v.X), r4(v.Y), r4(v.Z))
	}
	round := 0.0
	if l.Round {
		round = 1
	}
	return append(out, round)
}

func (d *document) figures() {
	for _, p := range body.Postures() {
		limbs, traits := frames.StandIn(p)
		f := figure{Tall: r4(p.HeightFraction())}
		for i, l := range limbs {
			var n []float64
			for _, r := range l.Rings {
				for _, v := range r {
					n = append(n, r4(v))
				}
			}
			f.Limbs = append(f.Limbs, n)
			if l.Head {
				f.Head = i
			}
			if l.Trunk {
				f.Trunk = i
			}
		}
		for _, t := range traits {
			n := []float64{0}
			if t.Head {
				n[0] = 1
			}
			for _, p := range t.Points {
				for _, v := range p {
					n = append(n, r4(v))
				}
			}
			f.Traits = append(f.Traits, n)
		}
		d.Figures = append(d.Figures, f)
	}
}

// findings gives each finding to the shot on whose clock its frames count; those
// without frames go with none.
func (d *document) findings(r *compile.Result) {
	for i := range r.Findings {
		f := &r.Findings[i]
		out := finding{Code: string(f.Code), Severity: f.Severity.String(), Message: f.Message, Subject: f.Subject, Camera: f.Camera, Worst: int(f.Worst), Notes: f.Notes}
		if f.Span.Valid() {
			out.Where = fmt.Sprintf("%s:%d", path.Base(f.Span.File.Name), f.Span.StartPos().Line)
		}
		for _, fix := range f.Fixes {
			out.Fixes = append(out.Fixes, fix.Title)
		}
		for _, run := range f.Frames {
			out.Frames = append(out.Frames, [2]int{int(run.From), int(run.To)})
		}
		if len(out.Frames) > 0 && (out.Worst < out.Frames[0][0] || out.Worst > out.Frames[len(out.Frames)-1][1]) {
			out.Worst = out.Frames[0][0]
		}
		if len(out.Frames) == 0 {
			d.General = append(d.General, out)
			continue
		}
		home := &d.Shots[d.shotOf(f, r)]
		home.Findings = append(home.Findings, out)
	}
}

// shotOf is 0 for the take, or the pickup that a finding says it is in.
func (d *document) shotOf(f *diag.Diagnostic, r *compile.Result) int {
	n := 0
	for _, u := range r.Pickups {
		if u.Tracks == nil || u.Stage == nil || u.Sight == nil {
			continue
		}
		n++
		if f.Pickup != "" && f.Pickup == u.Pickup.Title {
			return n
		}
	}
	return 0
}
