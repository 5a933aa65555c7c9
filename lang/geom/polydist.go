package geom

import (
	"math"
	"slices"
)

// Distance from q to the polygon, metres: 0 inside or on it.
func (p Polygon) Distance(q Vec) float64 {
	if p.Contains(q) {
		return 0
	}
	return p.EdgeDistance(q)
}

// EdgeDistance from q to the polygon's nearest edge, from either side.
func (p Polygon) EdgeDistance(q Vec) float64 {
	least := math.Inf(1)
	for i := range p {
		least = min(least, p.Edge(i).Distance(q))
	}
	return least
}

// DistanceToSegment is 0 where they meet or the segment is inside.
func (p Polygon) DistanceToSegment(s Segment) float64 {
	if p.Contains(s.A) {
		return 0
	}
	least := math.Inf(1)
	for i := range p {
		if _, _, d := p.Edge(i).ClosestTo(s); d < least {
			least = d
		}
	}
	return least
}

// DistanceTo another polygon is 0 where they meet or one is inside the other.
func (p Polygon) DistanceTo(q Polygon) float64 {
	if len(p) == 0 || len(q) == 0 {
		return math.Inf(1)
	}
	if q.Contains(p[0]) {
		return 0
	}
	least := math.Inf(1)
	for i := range q {
		least = min(least, p.DistanceToSegment(q.Edge(i)))
		if least == 0 {
			break
		}
	}
	return least
}

// MeetsCircle says that the disc and the polygon share a point.
func (p Polygon) MeetsCircle(centre Vec, radius float64) bool { return p.Distance(centre) <= radius }

// MeetsSegment says how a segment lies to the polygon: Crossing where it passes
// through the inside, or is within; Touching where it only meets the edge.
func (p Polygon) MeetsSegment(s Segment) Meeting {
	// Between its meetings with the edges the segment is inside or out, so the
	// middles of the stretches tell.
	cuts := []float64{0, 1}
	meeting := Apart
	for i := range p {
		e := p.Edge(i)
		switch e.Meets(s) {
		case Crossing:
			return Crossing
		case Touching:
			meeting = Touching
			for _, end := range [...]Vec{e.A, e.B} {
				if Orient(s.A, s.B, end) == Straight && s.holds(end) {
					cuts = append(cuts, s.Closest(end))
				}
			}
		}
	}
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		if cuts[i] > cuts[i-1] && p.insideNear(s.At((cuts[i]+cuts[i-1])/2)) {
			return Crossing
		}
	}
	return meeting
}

// insideNear is inside by more than rounding.
func (p Polygon) insideNear(q Vec) bool {
	return p.Locate(q) == Inside && p.EdgeDistance(q) > joinSlop
}
