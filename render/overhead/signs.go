package overhead

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// when is which of its three looks a sign has.
type when string

const (
	starts when = "-start" // open
	ends   when = "-end"   // filled
	stays  when = "-stay"  // grey
)

// signRadius is the radius of a person's sign: the body's own, but large enough to
// hold its letter and small enough to leave the floor to be seen.
func (d *drawing) signRadius(metres float64) float64 {
	return math.Max(2.1, math.Min(3.1, d.view.Length(metres)))
}

// initial is the letter of a sign, which shows unless another sign lies over it.
type initial struct {
	into   *scene.Group
	text   *scene.Text
	radius float64
}

// initial puts a letter into the sign last drawn.
func (d *drawing) initial(into *scene.Group, t plan.Thing, at scene.Point, r float64, w when) {
	class := "ink"
	if w == ends {
		class = "reversed"
	}
	d.initials = append(d.initials, initial{into, &scene.Text{
		Class: class, At: at, Text: d.material.marks[t], Size: scene.Smallest, Face: fonts.Bold, Anchor: scene.Middle, Level: scene.Center,
	}, r})
}

// showInitials draws the letters of all signs but of those that later ones cover.
func (d *drawing) showInitials() {
	for i, a := range d.initials {
		half := math.Hypot(a.text.Width(), a.text.Face.CapHeight(a.text.Size)) / 2
		covered := false
		for _, b := range d.initials[i+1:] {
			covered = covered || a.text.At.Dist(b.text.At) < b.radius+half
		}
		if !covered {
			a.into.Add(a.text)
		}
	}
}

// performer is a circle with a nose: where somebody in the picture is and which
// way they face.
func performer(at scene.Point, r, degrees float64, w when) []scene.Item {
	class := "performer" + string(w)
	nose := &scene.Polygon{Class: class, Points: []scene.Point{
		at.Polar(r, degrees+32), at.Polar(r*1.6, degrees), at.Polar(r, degrees-32),
	}}
	return []scene.Item{nose, &scene.Circle{Class: class, Center: at, Radius: r}}
}

// crew is a square with a nose: somebody who must not be in the picture.
func crew(at scene.Point, r, degrees float64, w when) []scene.Item {
	class := "crew" + string(w)
	k := r * 1.27
	nose := &scene.Polygon{Class: class, Points: []scene.Point{
		at.Polar(k*0.7, degrees).Polar(k*0.4, degrees+90), at.Polar(k*1.15, degrees), at.Polar(k*0.7, degrees).Polar(k*0.4, degrees-90),
	}}
	return []scene.Item{nose, scene.RegularPolygon(class, at, k, 4, degrees+45)}
}

// lens is a circle with a hood that opens towards what the camera sees.
func lens(at scene.Point, r, degrees float64, w when) []scene.Item {
	class := "camera" + string(w)
	hood := &scene.Polygon{Class: class, Points: []scene.Point{
		at.Polar(r*0.8, degrees).Polar(r*0.35, degrees+90), at.Polar(r*1.95, degrees).Polar(r*0.95, degrees+90),
		at.Polar(r*1.95, degrees).Polar(r*0.95, degrees-90), at.Polar(r*0.8, degrees).Polar(r*0.35, degrees-90),
	}}
	return []scene.Item{hood, &scene.Circle{Class: class, Center: at, Radius: r}}
}

// machine is a footprint with a mark at its front; a rig has its diagonals, a
// vehicle a windscreen.
func (d *drawing) machine(t *motion.Track, at units.Seconds, w when) []scene.Item {
	p := t.At(at)
	l, wide := float64(t.Length), float64(t.Width)
	if l <= 0 {
		l, wide = 2*float64(t.Radius), 2*float64(t.Radius)
	}
	least := 3.2 * d.view.Scale / 1000
	l, wide = math.Max(l, least), math.Max(wide, least*0.75)
	corner := func(x, y float64) scene.Point {
		return d.pt(p.Point().Add(geom.Vec{X: x * l / 2, Y: y * wide / 2}.Rotate(p.Heading)))
	}
	outline := &scene.Polygon{Class: "machine" + string(w), Points: []scene.Point{corner(1, -1), corner(1, 1), corner(-1, 1), corner(-1, -1)}}
	ahead := d.view.Degrees(p.Heading)
	long := math.Min(3.2, d.view.Length(l)*0.2)
	base := corner(1, 0).Polar(-long, ahead)
	front := &scene.Polygon{Class: "machine-front", Points: []scene.Point{corner(1, 0), base.Polar(long*0.55, ahead+90), base.Polar(-long*0.55, ahead+90)}}
	if _, vehicle := t.Thing.(*plan.Vehicle); vehicle {
		outline.Points = []scene.Point{corner(0.85, -1), corner(1, -0.7), corner(1, 0.7), corner(0.85, 1), corner(-1, 1), corner(-1, -1)}
		return []scene.Item{outline, front, scene.Line("machine-line", corner(0.45, -0.85), corner(0.45, 0.85)),
			scene.Line("machine-line", corner(-0.8, -0.85), corner(-0.8, 0.85))}
	}
	return []scene.Item{outline, scene.Line("machine-line", corner(1, 1), corner(-1, -1)), scene.Line("machine-line", corner(1, -1), corner(-1, 1)), front}
}

// people and machines at the start and the end of the stretch, with their names.
func (d *drawing) drawBody(g *scene.Group, b *mover) {
	name := b.thing.ID().Name
	one := &scene.Group{ID: d.id(b.kind, name), Class: b.kind + d.dims(lookers[b.kind]), Title: b.kind + " " + name}
	moves := b.moved > 1.5
	first, last := d.span.from, d.lastOf(d.span)
	if moves {
		one.Desc = "open where it starts, filled where it ends"
	} else {
		one.Desc = "stays"
	}
	draw := func(t units.Seconds, w when, text []string, priority int) {
		p := b.track.At(t)
		if !d.shows(p.Point(), -2) || d.worn(b.track, t) {
			return
		}
		at := d.pt(p.Point())
		deg := d.view.Degrees(p.Heading)
		a := ask{into: one, lines: text, must: true, model: scene.Text{Class: "ink", Size: 7.5, Face: fonts.Bold, Halo: 0.45}}
		a.ID, a.At, a.Priority, a.Reach = one.ID, at, priority, 40
		switch b.thing.(type) {
		case *plan.Person:
			r := d.signRadius(float64(b.track.Radius))
			if d.hasCamera(b, t) {
				return // the camera's own sign stands here
			}
			if d.dims(lookers[b.kind]) != "" { // what lies under a grey sign must not show
				g.Add(&scene.Circle{Class: "paper", Center: at, Radius: r})
			}
			if b.kind == "crew" {
				one.Add(crew(at, r, deg, w)...)
			} else {
				one.Add(performer(at, r, deg, w)...)
			}
			d.initial(one, b.thing, at, r, w)
			a.Radius = r * 1.5
			d.avoid(0, 0, &scene.Circle{Center: at, Radius: r * 1.3})
		default:
			items := d.machine(b.track, t, w)
			one.Add(items...)
			ring := items[0].(*scene.Polygon).Points
			d.avoid(4, 0, &scene.Polygon{Points: ring})
			d.avoid(6, 0.3, scene.NewPath("").Ring(ring...))
			box, _ := scene.BoundsOf(ring)
			a.Radius = math.Min(box.Width(), box.Height()) / 2
		}
		if text != nil {
			d.say(a)
		}
	}
	if p, q := b.track.At(first).Point(), b.track.At(last).Point(); moves && d.view.Length(p.Dist(q)) < 2 && b.track.Length == 0 {
		// Back where it began: one sign, ringed.
		one.Desc = "starts and ends at one place"
		if d.shows(p, -2) {
			r := d.signRadius(float64(b.track.Radius))
			one.Add(&scene.Circle{Class: b.kind + string(starts), Center: d.pt(p), Radius: r * 1.75})
			d.avoid(0, 0, &scene.Circle{Center: d.pt(p), Radius: r * 1.8})
		}
		draw(last, ends, []string{name + d.arrival(b.ways)}, 60)
	} else if moves {
		draw(first, starts, []string{name}, 60)
		draw(last, ends, []string{name + d.arrival(b.ways)}, 55)
	} else {
		draw(first, stays, []string{name}, 50)
	}
	if len(one.Items) > 0 {
		g.Add(one)
	}
}

// arrival is when somebody gets to where they end, where that is before the end.
func (d *drawing) arrival(ways []way) string {
	if len(ways) == 0 {
		return ""
	}
	if at := ways[len(ways)-1].to; at < d.lastOf(d.span)-0.4 {
		return " " + at.Clock()
	}
	return ""
}

// hasCamera is whether somebody has a camera at a time, whose sign then stands for
// both: worn, or so near on paper that two signs would lie on each other.
func (d *drawing) hasCamera(b *mover, t units.Seconds) bool {
	for _, c := range d.tracks.Cameras {
		if d.operator(c, t) == b.thing {
			return true
		}
	}
	return false
}

// operator is the person whom a camera's sign stands for at a time; nil for none.
func (d *drawing) operator(c *motion.CameraTrack, t units.Seconds) plan.Thing {
	h := c.Hold(t)
	if h.Operator == nil {
		return nil
	}
	b := d.tracks.Body(h.Operator)
	if b == nil {
		return nil
	}
	v := c.At(t)
	if d.view.Length(b.At(t).Point().Dist(geom.Vec{X: v.X, Y: v.Y})) > 4.5 {
		return nil
	}
	return h.Operator
}
