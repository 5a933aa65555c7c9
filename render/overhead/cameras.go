package overhead

import (
	"slices"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// drawCamera draws a camera where the stretch starts and ends, and the arm it
// hangs from.
func (d *drawing) drawCamera(g *scene.Group, c *motion.CameraTrack) {
	name := c.Camera.Name
	first, last := d.span.from, d.lastOf(d.span)
	one := &scene.Group{ID: d.id("camera", name), Class: "camera" + d.dims(lookers["camera"]), Title: "camera " + name}
	_, _, rolls := d.rolling(c, d.span)
	if !rolls {
		one.Desc = "does not roll here"
	}
	a, b := c.At(first), c.At(last)
	moves := d.view.Length(geom.Vec{X: a.X - b.X, Y: a.Y - b.Y}.Len()) > 1.5 || abs(geom.AngleDiff(a.Pan, b.Pan)) > 0.06
	if !rolls {
		moves = false
	} else if !moves {
		d.each(d.span, func(t units.Seconds) {
			v := c.At(t)
			moves = moves || d.view.Length(geom.Vec{X: v.X - a.X, Y: v.Y - a.Y}.Len()) > 1.5
		})
	}
	draw := func(t units.Seconds, w when, priority int) {
		v := c.At(t)
		p := geom.Vec{X: v.X, Y: v.Y}
		if !d.shows(p, -2) {
			return
		}
		at := d.pt(p)
		if arm, ok := c.Arm(t); ok {
			pivot := d.pt(arm.Pivot.Floor())
			one.Add(scene.Line("arm", pivot, at), &scene.Circle{Class: "arm", Center: pivot, Radius: 0.8})
			d.avoid(3, 0.4, scene.Line("", pivot, at))
		}
		const r = 2.2
		one.Add(lens(at, r, d.view.Degrees(v.Pan), w)...)
		d.initial(one, c.Camera, at, r, w)
		d.avoid(0, 0, &scene.Circle{Center: at, Radius: r * 1.2}, &scene.Circle{Center: at.Polar(r*1.4, d.view.Degrees(v.Pan)), Radius: r * 0.9})
		text := []string{name + d.manned(c, t)}
		if w == ends && text[0] == name+d.manned(c, first) {
			text = []string{name}
		}
		n := ask{into: one, lines: text, must: true, model: scene.Text{Class: "ink", Size: 7.5, Face: fonts.Bold, Halo: 0.45}}
		n.ID, n.At, n.Radius, n.Priority, n.Reach = one.ID, at, r*1.5, priority, 40
		if w != ends || d.view.Length(p.Dist(vec(a.X, a.Y))) > 2 {
			d.say(n)
		}
	}
	if moves {
		draw(first, starts, 62)
		draw(last, ends, 58)
	} else {
		draw(first, stays, 62)
	}
	if len(one.Items) > 0 {
		g.Add(one)
	}
}

// manned says what a camera is on and who has it, where that person has no sign of
// their own.
func (d *drawing) manned(c *motion.CameraTrack, t units.Seconds) string {
	h := c.Hold(t)
	out := ""
	if who := d.operator(c, t); who != nil {
		out = ", " + who.ID().Name
	}
	switch {
	case h.Hide != nil && h.Hide.Hole != nil:
		return " behind " + h.Hide.Hole.Name
	case h.Rig != nil && out == "":
		return " on " + h.Rig.Name
	}
	return out
}

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}

// viewAt is the polygon that a lens sees, clipped at what stands as high as the
// lens and limited by its angle of view; false without a lens.
func (d *drawing) viewAt(c *motion.CameraTrack, t units.Seconds) ([]scene.Point, bool) {
	v := c.At(t)
	if v.Focal <= 0 || c.Frame.Width <= 0 {
		return nil, false
	}
	across, _, _ := c.Frame.Angles(units.Millimetres(v.Focal))
	if across <= 0 || across >= 180 {
		return nil, false
	}
	var hole *plan.Hole
	if h := c.Hold(t).Hide; h != nil {
		hole = h.Hole
	}
	from := geom.Vec{X: v.X, Y: v.Y}
	var edges []geom.Segment
	for _, p := range d.pieces {
		switch {
		case p.Glass, p.Z[0] >= v.Z, p.Z[1] <= v.Z, p.Hole != nil && p.Hole == hole,
			p.Door != nil && d.open(p.Door, t), geom.Polygon(p.Polygon).Contains(from):
			continue
		}
		edges = append(edges, geom.Polygon(p.Polygon).Edges()...)
	}
	// The edge of sight is a little outside the drawing, and round the lens.
	low, high := d.view.Floor(scene.Pt(d.box.Min.X, d.box.Max.Y)), d.view.Floor(scene.Pt(d.box.Max.X, d.box.Min.Y))
	var e extent
	e.add(low, 1)
	e.add(high, 1)
	e.add(from, 1)
	ring := geom.NewWalls(geom.Rectangle(e.low, e.high), edges...).VisibleWithin(from, v.Pan, across.Radians())
	if len(ring) < 3 {
		return nil, false
	}
	onPaper := clipped(d.view.Points(ring), d.box.Grow(3))
	return onPaper, len(onPaper) > 2
}

// hatchAngles tell the views of several cameras apart.
var hatchAngles = []float64{20, 110, 65, 155}

// drawViews shades what each rolling camera sees of the floor when it starts and
// when it ends: the outline dotted at the start, dashed at the end.
func (d *drawing) drawViews(g *scene.Group) {
	n := 0
	var shades, hatches, lines []scene.Item
	for _, c := range d.tracks.Cameras {
		from, to, ok := d.rolling(c, d.span)
		if !ok {
			continue
		}
		angle := hatchAngles[n%len(hatchAngles)]
		n++
		one := &scene.Group{ID: d.id("view", c.Camera.Name), Title: "what " + c.Camera.Name + " sees",
			Desc: "dotted at " + from.Clock() + ", dashed at " + to.Clock()}
		draw := func(t units.Seconds, class string) {
			ring, ok := d.viewAt(c, t)
			if !ok {
				return
			}
			shades = append(shades, &scene.Polygon{Class: "view-shade", Points: ring})
			one.Add(scene.Hatch("view-hatch", [][]scene.Point{ring}, scene.Pattern{Angle: angle, Spacing: 3}),
				&scene.Polygon{Class: class, Points: ring})
			d.avoid(1.2, 0, &scene.Polyline{Points: append(slices.Clone(ring), ring[0])})
		}
		draw(from, "view-start")
		if d.sameView(c, from, to) {
			one.Desc = "the same from " + from.Clock() + " to " + to.Clock()
		} else {
			draw(to, "view-end")
		}
		if len(one.Items) > 0 {
			lines = append(lines, one)
		}
	}
	g.Add(shades...)
	g.Add(hatches...)
	g.Add(lines...)
}

func (d *drawing) sameView(c *motion.CameraTrack, a, b units.Seconds) bool {
	v, w := c.At(a), c.At(b)
	return d.view.Length(geom.Vec{X: v.X - w.X, Y: v.Y - w.Y}.Len()) < 0.5 && abs(geom.AngleDiff(v.Pan, w.Pan)) < 0.01 && v.Focal == w.Focal
}
