package frames

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/render/scene"
)

// figure is a person on paper: convex outlines, nearest first, and lines on them.
type figure struct {
	parts []part
	lines []partLine
	box   scene.Box
}

type part struct {
	ring  []scene.Point
	depth float64
}

type partLine struct {
	part   int
	points []scene.Point
	hair   bool
}

// cylinderBox is where an upright cylinder falls on paper; ok is false where some
// of it is beside or behind the lens.
func cylinderBox(l *lens, at sight.Pose, radius float64) (scene.Box, bool) {
	const around = 96
	points := make([]scene.Point, 0, 2*around)
	for i := range around {
		p := geom.Vec{X: at.X, Y: at.Y}.Add(geom.Polar(radius, 2*math.Pi*float64(i)/around))
		for _, z := range [2]float64{at.Z, at.Z + at.Height} {
			q := l.see(p.At(z))
			if q.Z < near {
				return scene.Box{}, false
			}
			points = append(points, l.paper(q))
		}
	}
	return scene.BoundsOf(points)
}

// newFigure draws a person; nil where they are too near to be drawn whole.
func newFigure(l *lens, at sight.Pose, radius float64, posture body.Posture, stature float64) *figure {
	want, ok := cylinderBox(l, at, radius)
	if !ok {
		return nil
	}
	s, fraction := held(posture, at.Height, stature)
	unit := at.Height / fraction
	sin, cos := math.Sincos(at.Heading)
	world := func(j joint) geom.Vec3 {
		x, y := j.x*unit, j.y*unit
		return geom.Vec3{X: at.X + x*cos - y*sin, Y: at.Y + x*sin + y*cos, Z: at.Z + j.z*unit}
	}
	f := &figure{}
	var all []scene.Point
	head, trunk := 0, 0
	for i, b := range s.limbs() {
		var points []scene.Point
		var middle geom.Vec3
		for _, r := range b.rings {
			for k := range 16 {
				sk, ck := math.Sincos(2 * math.Pi * float64(k) / 16)
				p := l.see(world(joint{r.at.x + r.rx*ck, r.at.y + r.ry*sk, r.at.z}))
				p.Z = max(p.Z, near)
				points = append(points, l.paper(p))
			}
			middle = middle.Add(l.see(world(r.at)).Mul(1 / float64(len(b.rings))))
		}
		if b.head {
			head = i
		}
		if b.trunk {
			trunk = i
		}
		f.parts = append(f.parts, part{hull(points), middle.Len()})
		all = append(all, points...)
	}
	for _, m := range s.features() {
		f.feature(l, m, world, at, head, trunk)
	}
	have, _ := scene.BoundsOf(all)
	f.fit(have, want)
	f.box = want
	return f
}

// feature adds what of a line on the figure is turned to the lens.
func (f *figure) feature(l *lens, m mark, world func(joint) geom.Vec3, at sight.Pose, head, trunk int) {
	sin, cos := math.Sincos(at.Heading)
	on := head
	if len(m.points) != arcPoints {
		on = trunk
	}
	var run []scene.Point
	flush := func() {
		if len(run) > 1 {
			f.lines = append(f.lines, partLine{on, run, m.hair})
		}
		run = nil
	}
	for i, j := range m.points {
		n := m.normals[i]
		p := world(j)
		normal := geom.Vec3{X: n.x*cos - n.y*sin, Y: n.x*sin + n.y*cos, Z: n.z}
		to := l.at.Sub(p)
		if normal.Dot(to)/to.Len() < 0.12 {
			flush()
			continue
		}
		q := l.see(p)
		q.Z = max(q.Z, near)
		run = append(run, l.paper(q))
	}
	flush()
}

// fit moves and stretches the figure from its own box into another.
func (f *figure) fit(have, want scene.Box) {
	if !(have.Width() > 0 && have.Height() > 0) {
		return
	}
	kx, ky := want.Width()/have.Width(), want.Height()/have.Height()
	move := func(ps []scene.Point) {
		for i, p := range ps {
			ps[i] = scene.Pt(want.Min.X+(p.X-have.Min.X)*kx, want.Min.Y+(p.Y-have.Min.Y)*ky)
		}
	}
	for _, p := range f.parts {
		move(p.ring)
	}
	for _, m := range f.lines {
		move(m.points)
	}
}

// hull is the convex hull of points on paper.
func hull(points []scene.Point) []scene.Point {
	vs := make([]geom.Vec, len(points))
	for i, p := range points {
		vs[i] = geom.Vec{X: p.X, Y: p.Y}
	}
	h := geom.Hull(vs)
	out := make([]scene.Point, len(h))
	for i, v := range h {
		out[i] = scene.Pt(v.X, v.Y)
	}
	return out
}
