package geom

import "math"

// Segment is the straight stretch from A to B.
type Segment struct{ A, B Vec }

// Length in metres.
func (s Segment) Length() float64 { return s.A.Dist(s.B) }

// At is the point at a fraction of the way from A to B.
func (s Segment) At(k float64) Vec { return s.A.Lerp(s.B, k) }

// Closest is the fraction of the way, in [0, 1], at which the segment is
// closest to p.
func (s Segment) Closest(p Vec) float64 {
	d := s.B.Sub(s.A)
	square := d.Dot(d)
	if square == 0 {
		return 0
	}
	return max(0, min(p.Sub(s.A).Dot(d)/square, 1))
}

// Distance from p, metres.
func (s Segment) Distance(p Vec) float64 { return s.At(s.Closest(p)).Dist(p) }

// Meeting is how two things lie to each other.
type Meeting int8

const (
	Apart    Meeting = iota
	Touching         // they share a point of an edge or an end, no more
	Crossing         // each runs through the other
)

// Meets says how two segments lie, exactly for the coordinates given: Crossing
// where each has an end on either side of the other, Touching where they share
// a point otherwise.
func (s Segment) Meets(t Segment) Meeting {
	a, b := Orient(s.A, s.B, t.A), Orient(s.A, s.B, t.B)
	c, d := Orient(t.A, t.B, s.A), Orient(t.A, t.B, s.B)
	if a*b < 0 && c*d < 0 {
		return Crossing
	}
	if a == Straight && s.holds(t.A) || b == Straight && s.holds(t.B) ||
		c == Straight && t.holds(s.A) || d == Straight && t.holds(s.B) {
		return Touching
	}
	return Apart
}

// holds says that a point on the segment's line is within its box.
func (s Segment) holds(p Vec) bool {
	return p.X >= min(s.A.X, s.B.X) && p.X <= max(s.A.X, s.B.X) &&
		p.Y >= min(s.A.Y, s.B.Y) && p.Y <= max(s.A.Y, s.B.Y)
}

// Intersect is the fractions of the way along s and t at which they share a
// point. Where they run along each other it is the first shared point of s.
func (s Segment) Intersect(t Segment) (onS, onT float64, ok bool) {
	switch s.Meets(t) {
	case Apart:
		return 0, 0, false
	case Crossing:
		d, e, w := s.B.Sub(s.A), t.B.Sub(t.A), t.A.Sub(s.A)
		det := d.Cross(e)
		if det == 0 { // crossing, but by less than the arithmetic can tell
			k := s.Closest(t.A)
			return k, t.Closest(s.At(k)), true
		}
		clamp := func(k float64) float64 { return max(0, min(k, 1)) }
		return clamp(w.Cross(e) / det), clamp(w.Cross(d) / det), true
	}
	onS, onT = math.Inf(1), 0
	try := func(k, l float64) {
		if k < onS {
			onS, onT = k, l
		}
	}
	if Orient(t.A, t.B, s.A) == Straight && t.holds(s.A) {
		try(0, t.Closest(s.A))
	}
	if Orient(s.A, s.B, t.A) == Straight && s.holds(t.A) {
		try(s.Closest(t.A), 0)
	}
	if Orient(s.A, s.B, t.B) == Straight && s.holds(t.B) {
		try(s.Closest(t.B), 1)
	}
	if Orient(t.A, t.B, s.B) == Straight && t.holds(s.B) {
		try(1, t.Closest(s.B))
	}
	return onS, onT, true
}

// ClosestTo is the shortest way between two segments: the points and their
// distance, 0 where they meet.
func (s Segment) ClosestTo(t Segment) (onS, onT Vec, distance float64) {
	if k, l, ok := s.Intersect(t); ok {
		return s.At(k), t.At(l), 0
	}
	distance = math.Inf(1)
	try := func(p, q Vec) {
		if d := p.Dist(q); d < distance {
			onS, onT, distance = p, q, d
		}
	}
	try(s.A, t.At(t.Closest(s.A)))
	try(s.B, t.At(t.Closest(s.B)))
	try(s.At(s.Closest(t.A)), t.A)
	try(s.At(s.Closest(t.B)), t.B)
	return onS, onT, distance
}

// Mirror is the image of p in the line through the segment.
func (s Segment) Mirror(p Vec) Vec {
	n := s.B.Sub(s.A).Left()
	square := n.Dot(n)
	if square == 0 {
		return p
	}
	return p.Sub(n.Mul(2 * p.Sub(s.A).Dot(n) / square))
}

// MirrorInPlane is the image of p in the plane through q with normal n (of any
// length): p - 2((p-q)·n/|n|²)n.
func MirrorInPlane(p, q, n Vec3) Vec3 {
	square := n.Dot(n)
	if square == 0 {
		return p
	}
	return p.Sub(n.Mul(2 * p.Sub(q).Dot(n) / square))
}
