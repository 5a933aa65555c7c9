package overhead

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/render/scene"
)

// single is the widest leaf a door has; a wider one has two (common practice, no
// source).
const single = 1.4

// doors draws each door as it stands at the beginning: open, its leaf ajar with
// the arc it swings through, or shut, with the arc dashed.
func (d *drawing) doors(g *scene.Group) {
	for _, door := range d.plan.Set.Doors {
		if door.Bad || door.Wall == nil {
			continue
		}
		a, b := door.Ends()
		if a.Dist(b) < 1e-6 || !d.shows(a.Lerp(b, 0.5), 0) {
			continue
		}
		open := d.open(door, d.span.from)
		state := "shut"
		if open {
			state = "open"
		}
		one := &scene.Group{ID: d.id("door", door.Name), Title: "door " + door.Name,
			Desc: d.length(door.To-door.From) + " wide, " + d.heights(door.High) + ", " + state + " at the start"}
		g.Add(one)
		half := float64(door.Wall.Thick) / 2
		along := b.Sub(a).Unit()
		left := along.Left()
		for _, jamb := range []geom.Vec{a, b} {
			one.Add(scene.Line("sill", d.pt(jamb.Add(left.Mul(half))), d.pt(jamb.Sub(left.Mul(half)))))
		}
		leaf := func(hinge, to geom.Vec) {
			hinge, to = hinge.Add(left.Mul(half)), to.Add(left.Mul(half))
			r := hinge.Dist(to)
			stands := to
			class := "swing-shut"
			if open {
				stands, class = hinge.Add(left.Mul(r)), "swing"
			}
			turn := geom.AngleDiff(to.Sub(hinge).Angle(), left.Angle()) * 180 / math.Pi
			one.Add(scene.Line("leaf", d.pt(hinge), d.pt(stands)),
				scene.NewPath(class).Arc(d.pt(hinge), d.view.Length(r), d.view.Degrees(to.Sub(hinge).Angle()), turn))
			d.avoid(0, 0.5, scene.Line("", d.pt(hinge), d.pt(stands)))
		}
		if a.Dist(b) > single {
			mid := a.Lerp(b, 0.5)
			leaf(a, mid)
			leaf(b, mid)
		} else {
			leaf(a, b)
		}
		d.thingLabel(one, d.pt(a.Lerp(b, 0.5)), 6, door.Name)
	}
}

// windows, mirrors, glows and lens holes lie on their walls.
func (d *drawing) windows(g *scene.Group) {
	for _, p := range d.plan.Set.Windows {
		if p.Bad || p.Wall == nil {
			continue
		}
		one := &scene.Group{ID: d.id("window", p.Name), Title: "window " + p.Name, Desc: d.heights(p.High)}
		q := d.strip(p.On, 1)
		if q == nil {
			continue
		}
		class := "glass"
		one.Add(&scene.Polygon{Class: class, Points: q}, middleLine(class, q))
		g.Add(one)
		d.thingLabel(one, centre(q), 1, p.Name)
	}
	for _, m := range d.plan.Set.Mirrors {
		if m.Bad || m.Wall == nil {
			continue
		}
		q := d.strip(m.On, 1.02)
		if q == nil {
			continue
		}
		one := &scene.Group{ID: d.id("mirror", m.Name), Title: "mirror " + m.Name, Desc: d.heights(m.High)}
		one.Add(&scene.Polygon{Class: "opening", Points: q},
			scene.Hatch("mirror-hatch", [][]scene.Point{q}, scene.Pattern{Angle: 60, Spacing: 0.7}),
			scene.Line("mirror", q[0], q[1]), scene.Line("mirror", q[2], q[3]))
		g.Add(one)
		d.thingLabel(one, centre(q), 3, m.Name+" (mirror)")
	}
	for _, w := range d.plan.Set.Glows {
		if w.Bad || w.Wall == nil {
			continue
		}
		q := d.strip(w.On, 1)
		if q == nil {
			continue
		}
		one := &scene.Group{ID: d.id("glow", w.Name), Title: "glow " + w.Name, Desc: d.heights(w.High)}
		one.Add(&scene.Polygon{Class: "glass", Points: q})
		// Rays to the side it shines to.
		a, b := q[3], q[2]
		n := max(2, int(a.Dist(b)/3))
		out := a.Towards(b) + 90
		for i := range n + 1 {
			p := a.Add(b.Sub(a).Mul(float64(i) / float64(n)))
			one.Add(scene.Line("glow", p, p.Polar(2, out)))
		}
		g.Add(one)
		d.thingLabel(one, centre(q), 3, w.Name+" (bright)")
	}
	for _, h := range d.plan.Set.Holes {
		if h.Bad || h.Wall == nil {
			continue
		}
		on := plan.On{Wall: h.Wall, From: h.Along - h.Wide/2, To: h.Along + h.Wide/2}
		a, b := on.Ends()
		mid := a.Lerp(b, 0.5)
		if !d.shows(mid, 0) {
			continue
		}
		_, along := on.Middle()
		half := math.Max(float64(h.Wall.Thick)/2, 0.02)
		wide := math.Max(d.view.Length(float64(h.Wide)), 0.9) / 2 * d.view.Scale / 1000
		q := d.view.Points([]geom.Vec{
			mid.Sub(along.Mul(wide)).Sub(along.Left().Mul(half * 1.1)), mid.Add(along.Mul(wide)).Sub(along.Left().Mul(half * 1.1)),
			mid.Add(along.Mul(wide)).Add(along.Left().Mul(half * 1.1)), mid.Sub(along.Mul(wide)).Add(along.Left().Mul(half * 1.1)),
		})
		one := &scene.Group{ID: d.id("hole", h.Name), Title: "lens hole " + h.Name,
			Desc: d.length(h.Wide) + " wide, " + d.length(h.Up) + " up, in " + h.Wall.Name}
		one.Add(&scene.Polygon{Class: "hole", Points: q}, scene.Line("hole-line", q[0], q[3]), scene.Line("hole-line", q[1], q[2]))
		g.Add(one)
		d.thingLabel(one, d.pt(mid), 5, h.Name, d.length(h.Up)+" up")
	}
}

// strip is the footprint of a stretch of wall on paper, at least as thick as shows;
// nil where it is off the drawing. Its first two corners are on the right face.
func (d *drawing) strip(o plan.On, k float64) []scene.Point {
	a, b := o.Ends()
	if a.Dist(b) < 1e-6 || !d.shows(a, 0) && !d.shows(b, 0) && !d.shows(a.Lerp(b, 0.5), 0) {
		return nil
	}
	half := math.Max(float64(o.Wall.Thick)/2*k, 0.4*d.view.Scale/1000)
	side := b.Sub(a).Unit().Left().Mul(half)
	return d.view.Points([]geom.Vec{a.Sub(side), b.Sub(side), b.Add(side), a.Add(side)})
}

func centre(ps []scene.Point) scene.Point {
	var c scene.Point
	for _, p := range ps {
		c = c.Add(p)
	}
	return c.Mul(1 / float64(max(1, len(ps))))
}
