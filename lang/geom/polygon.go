package geom

import (
	"math"
	"slices"
)

// Polygon is a closed chain of corners, the last joined to the first, that
// doesn't cross itself. Counter-clockwise is the usual order; methods that need
// it say so.
type Polygon []Vec

// Rectangle is the counter-clockwise rectangle between two opposite corners.
func Rectangle(p, q Vec) Polygon {
	x0, x1, y0, y1 := min(p.X, q.X), max(p.X, q.X), min(p.Y, q.Y), max(p.Y, q.Y)
	return Polygon{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

// Edge i, from corner i to the next.
func (p Polygon) Edge(i int) Segment { return Segment{p[i], p[(i+1)%len(p)]} }

// Edges of the polygon, in order.
func (p Polygon) Edges() []Segment {
	edges := make([]Segment, len(p))
	for i := range p {
		edges[i] = p.Edge(i)
	}
	return edges
}

// SignedArea is positive counter-clockwise (the shoelace formula, from the
// first corner so that far-off polygons lose no digits), square metres.
func (p Polygon) SignedArea() float64 {
	sum := 0.0
	for i := 1; i+1 < len(p); i++ {
		sum += p[i].Sub(p[0]).Cross(p[i+1].Sub(p[0]))
	}
	return sum / 2
}

// Area in square metres.
func (p Polygon) Area() float64 { return math.Abs(p.SignedArea()) }

// Centroid is the centre of the area; of a polygon of none, the mean corner.
func (p Polygon) Centroid() Vec {
	var sum, mean Vec
	total := 0.0
	for i := range p {
		mean = mean.Add(p[i].Mul(1 / float64(len(p))))
	}
	for i := 1; i+1 < len(p); i++ {
		u, v := p[i].Sub(p[0]), p[i+1].Sub(p[0])
		area := u.Cross(v)
		sum, total = sum.Add(u.Add(v).Mul(area/3)), total+area
	}
	if total == 0 {
		return mean
	}
	return p[0].Add(sum.Mul(1 / total))
}

// Place says where a point lies to a polygon.
type Place int8

const (
	Outside Place = iota
	OnEdge
	Inside
)

// Locate says where q lies, exactly for the coordinates given.
func (p Polygon) Locate(q Vec) Place {
	inside := false
	for i := range p {
		e := p.Edge(i)
		if e.A == q {
			return OnEdge
		}
		if (e.A.Y > q.Y) == (e.B.Y > q.Y) {
			if e.A.Y == q.Y && e.B.Y == q.Y && e.holds(q) {
				return OnEdge
			}
			continue
		}
		switch side := Orient(e.A, e.B, q); {
		case side == Straight:
			return OnEdge
		case (side == Left) == (e.B.Y > e.A.Y):
			inside = !inside
		}
	}
	if inside {
		return Inside
	}
	return Outside
}

// Contains says that q lies inside or on the edge.
func (p Polygon) Contains(q Vec) bool { return p.Locate(q) != Outside }

// Winding is how often the polygon goes round q counter-clockwise; for a q on
// its edge, either answer of its sides.
func (p Polygon) Winding(q Vec) int {
	turns := 0
	for i := range p {
		e := p.Edge(i)
		switch {
		case e.A.Y <= q.Y && e.B.Y > q.Y && Orient(e.A, e.B, q) == Left:
			turns++
		case e.A.Y > q.Y && e.B.Y <= q.Y && Orient(e.A, e.B, q) == Right:
			turns--
		}
	}
	return turns
}

// CCW is the polygon counter-clockwise: itself, or a reversed copy.
func (p Polygon) CCW() Polygon {
	if p.SignedArea() >= 0 {
		return p
	}
	q := slices.Clone(p)
	slices.Reverse(q)
	return q
}

// Clean is a copy counter-clockwise, without corners that repeat or that lie on
// the line between their neighbours, to a nanometre.
func (p Polygon) Clean() Polygon {
	q := slices.Clone(p.CCW())
	for i := 0; i < len(q) && len(q) > 2; {
		before, after := q[(i+len(q)-1)%len(q)], q[(i+1)%len(q)]
		if before.Dist(q[i]) <= joinSlop || (Segment{before, after}).Distance(q[i]) <= joinSlop {
			q = slices.Delete(q, i, i+1)
			i = max(0, i-1)
			continue
		}
		i++
	}
	return q
}

// IsConvex says that all corners turn the same way, and once round.
func (p Polygon) IsConvex() bool {
	turns, angle := Straight, 0.0
	for i := range p {
		a, b, c := p[i], p[(i+1)%len(p)], p[(i+2)%len(p)]
		turn := Orient(a, b, c)
		if turn*turns < 0 {
			return false
		}
		if turn != Straight {
			turns = turn
		}
		u, v := b.Sub(a), c.Sub(b)
		angle += math.Atan2(u.Cross(v), u.Dot(v))
	}
	return turns != Straight && math.Abs(math.Abs(angle)-2*math.Pi) < 1e-6
}

// Hull is the convex hull of points, counter-clockwise, without corners on its
// edges (Andrew 1979, the monotone chain).
func Hull(points []Vec) Polygon {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, compareVec)
	sorted = slices.Compact(sorted)
	if len(sorted) < 3 {
		return sorted
	}
	hull := make(Polygon, 0, len(sorted)+1)
	half := func(floor int, p Vec) {
		for len(hull) > floor && Orient(hull[len(hull)-2], hull[len(hull)-1], p) != Left {
			hull = hull[:len(hull)-1]
		}
		hull = append(hull, p)
	}
	for _, p := range sorted {
		half(1, p)
	}
	lower := len(hull)
	for _, p := range slices.Backward(sorted[:len(sorted)-1]) {
		half(lower, p)
	}
	return hull[:len(hull)-1]
}

// compareVec orders by x, then y.
func compareVec(a, b Vec) int {
	switch {
	case a.X < b.X || a.X == b.X && a.Y < b.Y:
		return -1
	case a == b:
		return 0
	}
	return 1
}

// Placed is the polygon turned by heading (radians, counter-clockwise) and then
// moved so that its origin is at a point: from a body's own frame to the floor.
func (p Polygon) Placed(at Vec, heading float64) Polygon {
	s, c := math.Sincos(heading)
	q := make(Polygon, len(p))
	for i, v := range p {
		q[i] = Vec{at.X + v.X*c - v.Y*s, at.Y + v.X*s + v.Y*c}
	}
	return q
}

// Bounds is the least and the greatest corner of the box round points; two
// zero vectors for none.
func Bounds(points []Vec) (low, high Vec) {
	if len(points) == 0 {
		return Vec{}, Vec{}
	}
	low, high = points[0], points[0]
	for _, p := range points[1:] {
		low = Vec{min(low.X, p.X), min(low.Y, p.Y)}
		high = Vec{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return low, high
}
