package motion

import (
	"longhand/lang/geom"
)

// A way is where something is, as a function of time. Times are seconds on the
// take's clock.
type way interface {
	at(t float64) geom.Vec3
}

// rest stays where it is.
type rest struct{ p geom.Vec3 }

func (r rest) at(float64) geom.Vec3 { return r.p }

// coast comes to rest from a velocity, braking steadily.
type coast struct {
	p     geom.Vec3
	v     geom.Vec
	start float64
	time  float64 // it takes to stop
}

func newCoast(p geom.Vec3, v geom.Vec, start, brake float64) coast {
	return coast{p, v, start, v.Len() / brake}
}

func (c coast) at(t float64) geom.Vec3 {
	if c.time <= 0 {
		return c.p
	}
	u := clamp(t-c.start, 0, c.time)
	q := c.p.Floor().Add(c.v.Mul(u - u*u/(2*c.time)))
	return q.At(c.p.Z)
}

// held is fixed in a carrier's frame.
type held struct {
	on frame
	by geom.Vec3 // x ahead, y left, z over the carrier's deck
}

func (h held) at(t float64) geom.Vec3 {
	o, heading := h.on.frame(t)
	return o.Add(h.by.Floor().Rotate(heading).At(h.by.Z))
}

// A frame is what carries: the middle of its deck, and its heading.
type frame interface {
	frame(t float64) (origin geom.Vec3, heading float64)
}

// blend goes from one way to another in a time, at rest relative to the first
// at the start and to the second at the end.
type blend struct {
	from, to   way
	start, end float64
}

func (b blend) at(t float64) geom.Vec3 {
	k := eased(t, b.start, b.end)
	p, q := b.from.at(t), b.to.at(t)
	return p.Add(q.Sub(p).Mul(k))
}

// faded is a way with an error that closes.
type faded struct {
	way
	gap closing
}

func (f faded) at(t float64) geom.Vec3 {
	p := f.way.at(t)
	return p.Floor().Add(f.gap.at(t)).At(p.Z)
}

// velocity over the floor, from both sides of t but never from outside its
// segment.
func velocity(w way, t, from, to float64) geom.Vec {
	const h = 1e-4
	a, b := max(from, t-h), min(to, t+h)
	if b <= a {
		return geom.Vec{}
	}
	return w.at(b).Floor().Sub(w.at(a).Floor()).Mul(1 / (b - a))
}

func clamp(v, low, high float64) float64 { return max(low, min(v, high)) }
