package frames

import (
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/scene"
)

// near is how close before the lens a line is cut off, in metres.
const near = 0.02

// lens turns the world into what it sees. Its own coordinates are metres with X
// to the right, Y up and Z along the optical axis.
type lens struct {
	at               geom.Vec3
	ahead, right, up geom.Vec3
	k                float64   // millimetres on paper of 1 at depth 1
	box              scene.Box // of the frame on paper
}

// view is a camera's view as optics has it.
func view(v sight.View) optics.View {
	return optics.View{
		At:  geom.Vec3{X: v.X, Y: v.Y, Z: v.Z},
		Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Roll: units.FromRadians(v.Roll),
		Focal: units.Millimetres(v.Focal),
	}
}

// newLens looks through a view whose frame is so many millimetres wide on the
// sensor and fills a box on paper.
func newLens(v sight.View, width float64, box scene.Box) *lens {
	o := view(v)
	l := &lens{at: o.At, box: box}
	l.ahead, l.right, l.up = o.Axes()
	l.k = v.Focal * box.Width() / width
	return l
}

// see is a point of the world in the lens's own coordinates.
func (l *lens) see(p geom.Vec3) geom.Vec3 {
	d := p.Sub(l.at)
	return geom.Vec3{X: d.Dot(l.right), Y: d.Dot(l.up), Z: d.Dot(l.ahead)}
}

// turn is a direction of the world in the lens's own coordinates.
func (l *lens) turn(d geom.Vec3) geom.Vec3 {
	return geom.Vec3{X: d.Dot(l.right), Y: d.Dot(l.up), Z: d.Dot(l.ahead)}
}

// paper is where a point in the lens's own coordinates falls on the sheet; it
// must lie before the lens.
func (l *lens) paper(p geom.Vec3) scene.Point {
	c := l.box.Center()
	return scene.Pt(c.X+l.k*p.X/p.Z, c.Y-l.k*p.Y/p.Z)
}

// ray is the point at depth 1 that falls at a place on the sheet.
func (l *lens) ray(p scene.Point) geom.Vec3 {
	c := l.box.Center()
	return geom.Vec3{X: (p.X - c.X) / l.k, Y: (c.Y - p.Y) / l.k, Z: 1}
}

func cross(a, b geom.Vec3) geom.Vec3 {
	return geom.Vec3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

func lerp(a, b geom.Vec3, t float64) geom.Vec3 { return a.Add(b.Sub(a).Mul(t)) }

// frame is the half spaces before the lens and in the frame, in the lens's own
// coordinates.
func (l *lens) frame() []plane {
	w, h := l.box.Width()/2/l.k, l.box.Height()/2/l.k
	return []plane{
		{geom.Vec3{Z: 1}, near},
		{geom.Vec3{X: -1, Z: w}, 0}, {geom.Vec3{X: 1, Z: w}, 0},
		{geom.Vec3{Y: -1, Z: h}, 0}, {geom.Vec3{Y: 1, Z: h}, 0},
	}
}

// clipped is what of a line lies within some half spaces; ok is false where
// nothing does.
func clipped(a, b geom.Vec3, planes []plane) (from, to geom.Vec3, ok bool) {
	t0, t1 := 0.0, 1.0
	for i := range planes {
		fa, fb := planes[i].n.Dot(a)-planes[i].d, planes[i].n.Dot(b)-planes[i].d
		switch {
		case fa < 0 && fb < 0:
			return a, b, false
		case fa < 0:
			t0 = max(t0, fa/(fa-fb))
		case fb < 0:
			t1 = min(t1, fa/(fa-fb))
		}
	}
	if t0 >= t1 {
		return a, b, false
	}
	return lerp(a, b, t0), lerp(a, b, t1), true
}
