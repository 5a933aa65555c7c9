package overhead

import (
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// cut is the height over the floor at which walls are cut open to be drawn, as in
// plans of buildings (1.2 m: common practice, no source).
const cut = 1.2

// walls draws what stands: cut walls solid, low ones as an outline, what hangs
// overhead dashed.
func (d *drawing) walls(g *scene.Group) {
	for _, w := range d.plan.Set.Walls {
		if w.Bad {
			continue
		}
		one := &scene.Group{ID: d.id("wall", w.Name), Title: "wall " + w.Name, Desc: d.heights(w.High) + wallKind(w)}
		var rings, low, over [][]scene.Point
		for _, p := range d.pieces {
			if p.Thing != plan.Thing(w) {
				continue
			}
			ring := d.view.Points(p.Polygon)
			switch {
			case p.Z[0] < cut && p.Z[1] > cut:
				rings = append(rings, ring)
			case p.Z[1] <= cut:
				low = append(low, ring)
			default:
				over = append(over, ring)
			}
		}
		for _, r := range low {
			one.Add(&scene.Polygon{Class: "low", Points: r})
		}
		for _, r := range over {
			one.Add(&scene.Polyline{Class: "overhead", Points: []scene.Point{r[0], r[1]}},
				&scene.Polyline{Class: "overhead", Points: []scene.Point{r[2], r[3]}})
		}
		for _, r := range rings {
			switch {
			case w.Glass:
				one.Add(&scene.Polygon{Class: "glass", Points: r}, middleLine("glass", r))
			case w.Wild:
				one.Add(&scene.Polygon{Class: "wild", Points: r},
					scene.Hatch("wild-hatch", [][]scene.Point{r}, scene.Pattern{Angle: 45, Spacing: 0.8}))
			default:
				one.Add(&scene.Polygon{Class: "poche", Points: r})
			}
		}
		if len(one.Items) == 0 {
			continue
		}
		if len(rings) > 0 && !w.Glass && !w.Wild {
			for _, c := range d.corners(w) {
				one.Add(&scene.Polygon{Class: "poche", Points: c})
			}
		}
		g.Add(one)
		for _, r := range append(rings, low...) {
			d.avoid(0, 0, &scene.Polygon{Points: r})
		}
		for _, r := range over {
			d.avoid(3, 0, &scene.Polygon{Points: r})
		}
		if at, ok := d.onSheet(w.Line); ok {
			names := ask{into: one, lines: []string{w.Name}, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.4}}
			if w.Wild {
				names.lines[0] += " (wild)"
			}
			names.ID, names.At, names.Radius, names.Priority, names.Reach, names.Tight = one.ID, d.pt(at), d.view.Length(float64(w.Thick))/2, -5, 8, true
			d.say(names)
		}
	}
}

// corners fill the notch where a wall ends on the end of another, so that the two
// print as one corner.
func (d *drawing) corners(w *plan.Wall) [][]scene.Point {
	var out [][]scene.Point
	n := len(w.Line)
	if n < 2 {
		return nil
	}
	half := float64(w.Thick) / 2
	for _, end := range [][2]geom.Vec{{w.Line[0], w.Line[1]}, {w.Line[n-1], w.Line[n-2]}} {
		beyond := 0.0 // half the thickness of the thickest wall that ends here
		for _, o := range d.plan.Set.Walls {
			if o == w || o.Bad || o.Glass || o.Wild || len(o.Line) < 2 || float64(o.High.High) <= cut || float64(o.High.Low) >= cut {
				continue
			}
			if end[0].Dist(o.Line[0]) < half || end[0].Dist(o.Line[len(o.Line)-1]) < half {
				beyond = max(beyond, float64(o.Thick)/2)
			}
		}
		if beyond == 0 {
			continue
		}
		along := end[1].Sub(end[0]).Unit().Mul(beyond)
		side := along.Unit().Left().Mul(half)
		out = append(out, d.view.Points([]geom.Vec{
			end[0].Sub(along).Sub(side), end[0].Add(along).Sub(side), end[0].Add(along).Add(side), end[0].Sub(along).Add(side),
		}))
	}
	return out
}

func wallKind(w *plan.Wall) string {
	switch {
	case w.Wild:
		return ", wild: can be taken out"
	case w.Glass:
		return ", glass"
	}
	return ""
}

// heights says a range of heights in the plan's units.
func (d *drawing) heights(r plan.Range) string {
	if r.Low == 0 {
		return d.length(r.High) + " high"
	}
	return d.length(r.Low) + " to " + d.length(r.High)
}

func (d *drawing) length(m units.Metres) string { return m.Text(d.plan.Take.Units) }

// middleLine runs down the middle of a wall's quadrilateral: its long sides are
// the first and the third, by construction.
func middleLine(class string, q []scene.Point) scene.Item {
	if len(q) < 4 {
		return scene.NewPath(class)
	}
	return scene.Line(class, q[0].Add(q[3]).Mul(0.5), q[1].Add(q[2]).Mul(0.5))
}

// onSheet is the middle of the longest stretch of a line that the drawing shows.
func (d *drawing) onSheet(line []geom.Vec) (geom.Vec, bool) {
	best, at := 0.0, geom.Vec{}
	for i := 1; i < len(line); i++ {
		const parts = 40
		from, run := -1, 0.0
		for k := range parts + 1 {
			p := line[i-1].Lerp(line[i], float64(k)/parts)
			if k < parts && d.shows(p, 4) {
				if from < 0 {
					from = k
				}
				continue
			}
			if from >= 0 {
				a, b := line[i-1].Lerp(line[i], float64(from)/parts), line[i-1].Lerp(line[i], float64(k)/parts)
				if run = a.Dist(b); run > best {
					best, at = run, a.Lerp(b, 0.5)
				}
				from = -1
			}
		}
	}
	return at, best > 0
}

// thingLabel is a label of a part of the set.
func (d *drawing) thingLabel(into *scene.Group, at scene.Point, priority int, lines ...string) {
	a := ask{into: into, lines: lines, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.4, Anchor: scene.Middle, Face: fonts.Regular}}
	a.ID, a.At, a.Priority, a.Reach, a.must = into.ID, at, priority, 25, true
	if d.crowded() {
		a.Reach, a.must = 6, false
	}
	d.say(inBlock(a))
}
