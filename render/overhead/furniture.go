package overhead

import (
	"fmt"
	"math"

	"longhand/lang/departments"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/render/scene"
)

// blocks draws what is solid: blocks hatched lightly, pillars dark.
func (d *drawing) blocks(g *scene.Group) {
	for _, b := range d.plan.Set.Blocks {
		if b.Bad || len(b.Polygon) < 3 {
			continue
		}
		ring := d.view.Points(b.Polygon)
		if !d.touches(ring) {
			continue
		}
		one := &scene.Group{ID: d.id("block", b.Name), Title: b.Name, Desc: d.heights(b.High)}
		one.Add(&scene.Polygon{Class: "solid-thing", Points: ring},
			scene.Hatch("block-hatch", [][]scene.Point{clipped(ring, d.box.Grow(3))}, scene.Pattern{Angle: 45, Spacing: 1.6}))
		g.Add(one)
		d.avoid(1.5, 0.2, scene.NewPath("").Ring(ring...))
		d.thingLabel(one, d.pt(geom.Polygon(b.Polygon).Centroid()), 4, b.Name, d.heights(b.High))
	}
	for _, p := range d.plan.Set.Pillars {
		if p.Bad || !d.shows(p.Centre, 0) {
			continue
		}
		one := &scene.Group{ID: d.id("pillar", p.Name), Title: "pillar " + p.Name, Desc: d.heights(p.High)}
		c := &scene.Circle{Class: "poche", Center: d.pt(p.Centre), Radius: d.view.Length(float64(p.Round) / 2)}
		one.Add(c)
		if p.High.High <= cut || p.High.Low >= cut {
			c.Class = "solid-thing"
			ring := scene.RegularPolygon("", c.Center, c.Radius, 48, 0).Points
			one.Add(scene.Hatch("block-hatch", [][]scene.Point{ring}, scene.Pattern{Angle: 45, Spacing: 1.6}))
		}
		g.Add(one)
		d.avoid(0, 0, c)
		a := ask{into: one, lines: []string{p.Name}, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.4}}
		a.ID, a.At, a.Radius, a.Priority, a.Reach, a.must = one.ID, c.Center, c.Radius, 2, 12, !d.crowded()
		d.say(a)
	}
}

// floors draws what can be stood on: platforms with their height, stairs with
// their treads and an arrow up.
func (d *drawing) floors(g *scene.Group) {
	for _, p := range d.plan.Set.Platforms {
		if p.Bad || len(p.Polygon) < 3 {
			continue
		}
		ring := d.view.Points(p.Polygon)
		if !d.touches(ring) {
			continue
		}
		one := &scene.Group{ID: d.id("platform", p.Name), Title: "platform " + p.Name, Desc: "its floor is " + d.length(p.High.High) + " up"}
		one.Add(&scene.Polygon{Class: "platform", Points: ring})
		if in := inset(ring, 0.7); in != nil {
			one.Add(&scene.Polygon{Class: "platform-edge", Points: in})
		}
		if p.High.Low > cut { // a gallery: what is under it shows
			one.Items = []scene.Item{scene.NewPath("overhead").Ring(ring...)}
		}
		g.Add(one)
		d.avoid(1.5, 0.2, scene.NewPath("").Ring(ring...))
		// In a corner rather than in the middle, where people are.
		low, high := geom.Bounds(p.Polygon)
		at := geom.Vec{X: low.X + (high.X-low.X)*0.2, Y: high.Y - (high.Y-low.Y)*0.15}
		if !geom.Polygon(p.Polygon).Contains(at) || !d.shows(at, 6) {
			at = geom.Polygon(p.Polygon).Centroid()
		}
		d.thingLabel(one, d.pt(at), 4, p.Name, "+"+d.length(p.High.High))
	}
	for _, s := range d.plan.Set.Stairs {
		if s.Bad || s.Foot.Dist(s.Head) < 1e-6 {
			continue
		}
		one := &scene.Group{ID: d.id("stairs", s.Name), Title: "stairs " + s.Name, Desc: "rise " + d.length(s.Rise)}
		var treads []scene.Item
		n := 0
		for _, p := range d.pieces {
			if p.Thing == plan.Thing(s) {
				treads = append(treads, &scene.Polygon{Class: "stairs", Points: d.view.Points(p.Polygon)})
				n++
			}
		}
		if n == 0 || !d.shows(s.Foot.Lerp(s.Head, 0.5), -20) {
			continue
		}
		one.Desc = fmt.Sprintf("%d risers, %s up", n, d.length(s.Rise))
		one.Add(treads...)
		dir := s.Head.Sub(s.Foot).Unit()
		foot, head := d.pt(s.Foot.Add(dir.Mul(0.05))), d.pt(s.Head.Sub(dir.Mul(0.05)))
		one.Add(&scene.Circle{Class: "tread", Center: foot, Radius: 0.6}, scene.Line("tread", foot, head),
			scene.OpenHead("tread", head, foot.Towards(head), 2, 1.6))
		g.Add(one)
		side := dir.Left().Mul(float64(s.Width) / 2)
		d.avoid(3, 0, &scene.Polygon{Points: d.view.Points([]geom.Vec{s.Foot.Sub(side), s.Head.Sub(side), s.Head.Add(side), s.Foot.Add(side)})})
		d.thingLabel(one, d.pt(s.Foot.Lerp(s.Head, 0.5).Add(side)), 4, s.Name+" up", "+"+d.length(s.FootZ+s.Rise))
	}
	for _, gr := range d.plan.Set.Grids {
		if gr.Bad || len(gr.Polygon) < 3 {
			continue
		}
		ring := d.view.Points(gr.Polygon)
		if !d.touches(ring) {
			continue
		}
		one := &scene.Group{ID: d.id("grid", gr.Name), Class: "overhead-grid" + d.dims([]departments.Name{departments.Electric, departments.Grip, departments.Art}), Title: "grid " + gr.Name,
			Desc: fmt.Sprintf("%d hanging points, %s", gr.Points, d.heights(gr.High))}
		one.Add(scene.NewPath("grid").Ring(ring...))
		g.Add(one)
		text := []string{fmt.Sprintf("grid %s, %d points, %s up", gr.Name, gr.Points, d.length(max(gr.High.Low, gr.High.High)))}
		for _, w := range d.plan.Kit.Washes {
			if w.Grid == gr && w.Lamp != nil {
				text = append(text, fmt.Sprintf("wash %s: %d x %s", w.Name, w.Count, w.Lamp.Name))
			}
		}
		low, high := geom.Bounds(gr.Polygon)
		corner := geom.Vec{X: low.X + (high.X-low.X)*0.1, Y: low.Y}
		if !d.shows(corner, 6) {
			corner = geom.Vec{X: low.X + (high.X-low.X)*0.1, Y: high.Y}
		}
		if d.o.Department != "" && d.o.Department != departments.Electric {
			text = text[:1]
		}
		a := ask{into: one, lines: text, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.4}}
		a.ID, a.At, a.Priority, a.Reach, a.must = one.ID, d.pt(corner), 1, 40, d.o.Department == departments.Electric
		d.say(a)
	}
}

// touches is whether an area reaches into the drawing.
func (d *drawing) touches(ring []scene.Point) bool {
	b, ok := scene.BoundsOf(ring)
	return ok && (b.Overlaps(d.box) || b.Width() == 0 || b.Height() == 0)
}

// inset is a ring moved inwards on paper, for a second line along an edge; nil
// where it is too small.
func inset(ring []scene.Point, by float64) []scene.Point {
	n := len(ring)
	area := 0.0
	for i, p := range ring {
		q := ring[(i+1)%n]
		area += p.X*q.Y - q.X*p.Y
	}
	sign := math.Copysign(1, area)
	out := make([]scene.Point, 0, n)
	for i, p := range ring {
		a, b := p.Sub(ring[(i+n-1)%n]), ring[(i+1)%n].Sub(p)
		la, lb := a.Len(), b.Len()
		if la < 4*by || lb < 4*by {
			return nil
		}
		na, nb := scene.Pt(-a.Y/la, a.X/la), scene.Pt(-b.Y/lb, b.X/lb)
		m := na.Add(nb)
		k := m.Dot(na)
		if k < 0.3 {
			return nil
		}
		out = append(out, p.Add(m.Mul(sign*by/k)))
	}
	return out
}

// marks draws each mark as a cross with its name. Those that the beat uses are
// heavier.
func (d *drawing) marks(g *scene.Group) {
	used := d.usedMarks()
	for _, m := range d.plan.Set.Marks {
		if m.Bad || !d.shows(m.Point, 1) {
			continue
		}
		class, text, priority := "mark-idle", "quiet", 10
		if used[m] {
			class, text, priority = "mark", "ink", 40
		}
		one := &scene.Group{ID: d.id("mark", m.Name), Title: "mark " + m.Name}
		at := d.pt(m.Point)
		const r = 1.3
		one.Add(scene.Line(class, at.Add(scene.Pt(-r, 0)), at.Add(scene.Pt(r, 0))), scene.Line(class, at.Add(scene.Pt(0, -r)), at.Add(scene.Pt(0, r))))
		g.Add(one)
		d.avoid(0, 0, &scene.Circle{Center: at, Radius: 0.9})
		if !used[m] && d.crowded() {
			continue
		}
		name := m.Name
		if m.Z != nil && *m.Z != 0 {
			name += " +" + d.length(*m.Z)
		}
		a := ask{into: one, lines: []string{name}, must: used[m], model: scene.Text{Class: text, Size: 7.5, Halo: 0.45}}
		a.ID, a.At, a.Radius, a.Priority, a.Reach = one.ID, at, 1.3, priority, 30
		d.say(a)
	}
}

// usedMarks are the marks that lines of the stretch name.
func (d *drawing) usedMarks() map[*plan.Mark]bool {
	out := map[*plan.Mark]bool{}
	use := func(p *plan.Place) {
		if p != nil && p.Mark != nil {
			out[p.Mark] = true
		}
	}
	for _, a := range d.plan.Actions {
		if !d.mine(a) {
			continue
		}
		if t := a.Timing.Start; t != nil && t.Event != nil {
			use(t.Event.Place)
		}
		switch v := a.Deed.(type) {
		case *plan.Move:
			use(v.Path.From)
			stops := v.Path.Stops()
			for i := range stops {
				use(&stops[i])
			}
			if v.Path.Shape == plan.Round || v.Path.Shape == plan.Eight {
				use(&v.Path.Centre)
				use(&v.Path.Other)
			}
			if v.Path.Facing != nil {
				use(v.Path.Facing.Place)
			}
		case *plan.Stand:
			use(v.At)
		case *plan.Turn:
			if v.To != nil {
				use(v.To.Place)
			}
		case *plan.Leave:
			use(v.To)
		case *plan.See:
			for i := range v.Targets {
				use(v.Targets[i].Place)
			}
		case *plan.Handoff:
			use(v.At)
		case *plan.Rack:
			if v.To != nil {
				use(v.To.Place)
			}
		}
	}
	if d.beat == nil {
		return out
	}
	if s := d.beat.Start; s != nil && s.Event != nil {
		use(s.Event.Place)
	}
	return out
}
