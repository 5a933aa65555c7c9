package label

import (
	"math"

	"longhand/render/scene"
)

// quad is a turned rectangle, its corners in order.
type quad = [4]scene.Point

func makeQuad(center scene.Point, w, h, turn float64) quad {
	along, up := w/2, h/2
	right := func(k, l float64) scene.Point { return center.Polar(k*along, turn).Polar(l*up, turn+90) }
	return quad{right(-1, -1), right(1, -1), right(1, 1), right(-1, 1)}
}

func boundsOf(points []scene.Point) scene.Box {
	b, _ := scene.BoundsOf(points)
	return b
}

// apart is whether a line along one of a's edges separates the convex a from b;
// shapes that only touch are apart.
func apart(a, b []scene.Point) bool {
	for i, p := range a {
		e := a[(i+1)%len(a)].Sub(p)
		if e.X == 0 && e.Y == 0 {
			continue
		}
		n := scene.Pt(e.Y, -e.X)
		la, ha := span(a, n)
		lb, hb := span(b, n)
		if ha <= lb+touch || hb <= la+touch {
			return true
		}
	}
	return false
}

// touch is in square millimetres (a length times an edge's length): rounding of
// coordinates must not make neighbours overlap.
const touch = 1e-9

func span(points []scene.Point, n scene.Point) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		d := p.Dot(n)
		low, high = math.Min(low, d), math.Max(high, d)
	}
	return low, high
}

// overlap is whether two convex shapes share more than an edge.
func overlap(a, b []scene.Point) bool { return !apart(a, b) && !apart(b, a) }

// crossesQuad is whether a segment goes through or into a quad.
func crossesQuad(a, b scene.Point, q []scene.Point) bool {
	return overlap(q, []scene.Point{a, b})
}

// crosses is whether two segments meet.
func crosses(a, b, c, d scene.Point) bool {
	side := func(p, q, r scene.Point) float64 {
		return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X)
	}
	return side(a, b, c)*side(a, b, d) <= 0 && side(c, d, a)*side(c, d, b) <= 0 &&
		math.Max(a.X, b.X) >= math.Min(c.X, d.X) && math.Max(c.X, d.X) >= math.Min(a.X, b.X) &&
		math.Max(a.Y, b.Y) >= math.Min(c.Y, d.Y) && math.Max(c.Y, d.Y) >= math.Min(a.Y, b.Y)
}

// segmentDistance is how far p is from the segment.
func segmentDistance(p, a, b scene.Point) float64 {
	d := b.Sub(a)
	k := 0.0
	if l := d.Dot(d); l > 0 {
		k = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l))
	}
	return p.Dist(a.Add(d.Mul(k)))
}

// inRing is whether p lies inside a ring (even-odd).
func inRing(p scene.Point, ring []scene.Point) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// quadDistance is how far p is from a quad, 0 inside.
func quadDistance(p scene.Point, q []scene.Point) float64 {
	if inRing(p, q) {
		return 0
	}
	best := math.Inf(1)
	for i, a := range q {
		best = math.Min(best, segmentDistance(p, a, q[(i+1)%len(q)]))
	}
	return best
}
