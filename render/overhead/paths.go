package overhead

import (
	"fmt"
	"math"

	"longhand/lang/departments"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/units"
	"longhand/render/scene"
)

// lookers are the departments that look at each kind of mover.
var lookers = map[string][]departments.Name{
	"performer": {departments.Movement, departments.Ads, departments.Camera, departments.Sound, departments.Script},
	"crew":      {departments.Grip, departments.Ads, departments.Camera},
	"rig":       {departments.Grip, departments.Camera, departments.Vehicles},
	"vehicle":   {departments.Vehicles, departments.Grip, departments.Ads},
	"camera":    {departments.Camera, departments.Grip, departments.Effects, departments.Script},
}

// path draws one mover's ways in this stretch.
func (d *drawing) path(g *scene.Group, b *mover) {
	if len(b.ways) == 0 {
		return
	}
	name := b.thing.ID().Name
	from, to := b.ways[0].from, b.ways[len(b.ways)-1].to
	one := &scene.Group{ID: d.id("path", name), Class: b.kind + d.dims(lookers[b.kind]), Title: "path of " + name,
		Desc: fmt.Sprintf("%s, %s to %s", b.kind, from.Clock(), to.Clock())}
	g.Add(one)
	d.drawWays(one, b.kind, b.ways, func(t units.Seconds) geom.Vec { return b.track.At(t).Point() })
	d.drawStops(one, b.kind, b.stops)
}

// drawWays draws lines, second ticks, their numbers and heads that show the way.
func (d *drawing) drawWays(one *scene.Group, kind string, ways []way, at func(units.Seconds) geom.Vec) {
	for _, w := range ways {
		lines := d.seen(w.points)
		for _, l := range lines {
			if kind == "vehicle" {
				one.Add(&scene.Polyline{Class: "path-vehicle", Points: l}, &scene.Polyline{Class: "path-vehicle-core", Points: l})
			} else {
				one.Add(&scene.Polyline{Class: "path-" + kind, Points: l})
			}
			d.avoid(0, 0.9, &scene.Polyline{Points: l})
		}
	}
	for _, w := range ways {
		d.heads(one, kind, w)
		d.ticks(one, w, at)
	}
}

// heads are the arrow heads along a way.
func (d *drawing) heads(one *scene.Group, kind string, w way) {
	l := scene.LengthOf(w.points)
	if l < 7 {
		return
	}
	n := max(1, int(math.Round(l/38)))
	for i := range n {
		s := l * (float64(i) + 0.5) / float64(n)
		p, dir := scene.Along(w.points, s)
		if !inside(p, d.box.Grow(-2)) {
			continue
		}
		tip := p.Polar(1.4, dir)
		switch kind {
		case "performer":
			one.Add(scene.ArrowHead("head", tip, dir, 3, 2.2))
		case "vehicle", "rig":
			one.Add(scene.ArrowHead("head", tip, dir, 3.6, 2.4))
		default:
			one.Add(scene.OpenHead("head-open", tip, dir, 2.2, 1.8))
		}
		d.avoid(0, 0, &scene.Circle{Center: p, Radius: 1.4})
	}
}

// ticks cross a path each second of the take's clock, longer every five seconds,
// where the number stands. A path that turns much has a number every two seconds.
func (d *drawing) ticks(one *scene.Group, w way, at func(units.Seconds) geom.Vec) {
	box, _ := scene.BoundsOf(w.points)
	busy := scene.LengthOf(w.points) > 2.2*math.Hypot(box.Width(), box.Height())
	every := 5
	if busy {
		every = 2
	}
	if d.whole() {
		every = 10
	}
	var last scene.Point
	first := true
	for s := int(math.Ceil(float64(w.from) + 1e-9)); units.Seconds(s) < w.to; s++ {
		t := units.Seconds(s)
		p := d.pt(at(t))
		long := s%every == 0
		if d.whole() && !long {
			continue
		}
		if !inside(p, d.box.Grow(-1)) || !first && p.Dist(last) < 0.9 && !long {
			continue
		}
		a, b := d.pt(at(t-0.04)), d.pt(at(t+0.04))
		if a.Dist(b) < 1e-6 {
			continue
		}
		dir := a.Towards(b) + 90
		p = p.Polar(w.aside, dir-180)
		r, class := 0.9, "tick"
		if long {
			r, class = 1.5, "tick-long"
		}
		one.Add(scene.Line(class, p.Polar(-r, dir), p.Polar(r, dir)))
		last, first = p, false
		// A number right beside where somebody starts or ends says nothing new.
		if long && t-w.from > 0.7 && w.to-t > 0.4 {
			d.avoid(0, 0.2, scene.Line("", p.Polar(-r, dir), p.Polar(r, dir)))
			n := ask{into: one, lines: []string{seconds(t)}, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.35}}
			n.ID, n.At, n.Radius, n.Priority, n.Reach = one.ID+"-"+seconds(t), p, 0.8, 3, 7
			d.say(n)
		}
	}
}

// seconds is a time in whole seconds: 0:35.
func seconds(t units.Seconds) string {
	s := int(math.Round(float64(t)))
	return fmt.Sprintf("%d:%02d", s/60, s%60)
}

// drawStops marks where somebody waits on the way: a dot, and from when to when.
func (d *drawing) drawStops(one *scene.Group, kind string, stops []stop) {
	if kind == "vehicle" || kind == "rig" || d.whole() {
		return
	}
	for _, s := range stops {
		if s.from <= d.span.from+1e-3 || s.to >= d.lastOf(d.span)-1e-3 || s.to-s.from < 0.8 || !inside(s.at, d.box.Grow(-1)) {
			continue
		}
		c := &scene.Circle{Class: "pause", Center: s.at, Radius: 0.9}
		one.Add(c)
		d.avoid(0, 0, c)
		n := ask{into: one, lines: []string{seconds(s.from) + "-" + seconds(s.to)}, model: scene.Text{Class: "quiet", Size: scene.Smallest, Halo: 0.35}}
		n.ID, n.At, n.Radius, n.Priority, n.Reach = one.ID+"-stop", s.at, 1, 8, 12
		d.say(n)
	}
}

// seen is the parts of a line that reach into the drawing.
func (d *drawing) seen(ps []scene.Point) [][]scene.Point {
	var out [][]scene.Point
	var cur []scene.Point
	wide := d.box.Grow(3)
	for i := 1; i < len(ps); i++ {
		b, _ := scene.BoundsOf(ps[i-1 : i+1])
		if !(b.Min.X <= wide.Max.X && b.Max.X >= wide.Min.X && b.Min.Y <= wide.Max.Y && b.Max.Y >= wide.Min.Y) {
			if len(cur) > 1 {
				out = append(out, cur)
			}
			cur = nil
			continue
		}
		if len(cur) == 0 {
			cur = []scene.Point{ps[i-1]}
		}
		cur = append(cur, ps[i])
	}
	if len(cur) > 1 {
		out = append(out, cur)
	}
	return out
}

// lensPath draws where a lens goes when that is not where its rig or operator
// goes: on an arm, or in the middle of changing hands.
func (d *drawing) lensPath(g *scene.Group, c *motion.CameraTrack) {
	on := false
	d.each(d.span, func(t units.Seconds) {
		if _, ok := c.Arm(t); ok {
			on = true
		}
	})
	if !on {
		return
	}
	at := func(t units.Seconds) geom.Vec { v := c.At(t); return geom.Vec{X: v.X, Y: v.Y} }
	ways, _ := d.ways(d.span, func(t units.Seconds) (geom.Vec, bool) {
		_, ok := c.Arm(t)
		return at(t), ok
	})
	if len(ways) == 0 {
		return
	}
	one := &scene.Group{ID: d.id("path", "lens", c.Camera.Name), Class: "camera" + d.dims(lookers["camera"]), Title: "path of the lens of " + c.Camera.Name}
	g.Add(one)
	d.drawWays(one, "camera", ways, at)
}
