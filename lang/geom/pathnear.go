package geom

import "math"

// Nearest is where the path comes closest to a point: the length along it and
// the distance. Of places as close, it is the first.
func (p *Path) Nearest(to Vec) (s, distance float64) {
	s, distance = 0, p.At(0).Dist(to)
	for i := range p.pieces {
		into, d := p.pieces[i].nearest(to, distance)
		if d < distance {
			s, distance = p.starts[i]+into, d
		}
	}
	return s, distance
}

// nearest is the closest place of a piece, where it is closer than best.
func (p *piece) nearest(to Vec, best float64) (s, distance float64) {
	switch p.kind {
	case linePiece:
		line := Segment{p.a, p.b}
		k := line.Closest(to)
		return k * p.length, line.At(k).Dist(to)
	case arcPiece:
		return p.arcNearest(to)
	}
	return p.cubicNearest(to, best)
}

func (p *piece) arcNearest(to Vec) (s, distance float64) {
	s, distance = 0, p.a.Dist(to)
	if d := p.b.Dist(to); d < distance {
		s, distance = p.length, d
	}
	away := to.Sub(p.centre)
	into := math.Mod((away.Angle()-p.start)*math.Copysign(1, p.arc), 2*math.Pi)
	if into < 0 {
		into += 2 * math.Pi
	}
	if d := math.Abs(away.Len() - p.radius); into <= math.Abs(p.arc) && d < distance {
		s, distance = into*p.radius, d
	}
	return s, distance
}

func (p *piece) cubicNearest(to Vec, best float64) (s, distance float64) {
	return p.search(to.Dist, best, func(s0, s1 float64) float64 { return p.polish(to, s0, s1) })
}

// fineLength is the length of path, metres, below which a search no longer
// halves: too short to bend much. finePart is the same as a part of the piece,
// so that the search ends soon on pieces of any size.
const (
	fineLength = 1e-3
	finePart   = 1e-5
)

// search finds where a distance from the piece is least, where it is less than
// best, by halving its length. A distance changes by no more than the way
// walked, so between two points h apart along the piece none is closer than
// half of what their distances have over h, which rules most halves out. refine
// finishes a stretch that is fine.
func (p *piece) search(from func(Vec) float64, best float64, refine func(s0, s1 float64) float64) (s, distance float64) {
	d0, d1 := from(p.a), from(p.b)
	s, distance = 0, d0
	if d1 < distance {
		s, distance = p.length, d1
	}
	if math.IsNaN(d0 + d1 + p.length) {
		return s, distance
	}
	enough := max(fineLength, finePart*p.length)
	var look func(s0, s1, d0, d1 float64)
	look = func(s0, s1, d0, d1 float64) {
		if (d0+d1-(s1-s0))/2 >= min(best, distance) {
			return
		}
		fine := s1-s0 <= enough
		mid := (s0 + s1) / 2
		if fine {
			mid = refine(s0, s1)
		}
		d := from(p.at(mid))
		if d < distance {
			s, distance = mid, d
		}
		if !fine {
			look(s0, mid, d0, d)
			look(mid, s1, d, d1)
		}
	}
	look(0, p.length, d0, d1)
	return s, distance
}

// polish finds where, on a stretch too short to bend much, the way to the point
// is square to the path.
func (p *piece) polish(to Vec, s0, s1 float64) float64 {
	for range 40 {
		mid := (s0 + s1) / 2
		if to.Sub(p.at(mid)).Dot(p.tangent(mid)) > 0 {
			s0 = mid
		} else {
			s1 = mid
		}
	}
	return (s0 + s1) / 2
}

// NearestSegment is where the path comes closest to a segment: the length along
// it and the distance, 0 where they meet. Of places as close, it is the first.
func (p *Path) NearestSegment(to Segment) (s, distance float64) {
	if hits := p.Crossings(to); len(hits) > 0 {
		return hits[0].S, 0
	}
	s, distance = 0, to.Distance(p.At(0))
	for i := range p.pieces {
		piece := &p.pieces[i]
		var into, d float64
		switch piece.kind {
		case linePiece:
			line := Segment{piece.a, piece.b}
			on, _, gap := line.ClosestTo(to)
			into, d = line.Closest(on)*piece.length, gap
		case arcPiece:
			into, d = piece.arcNearestSegment(to)
		default:
			into, d = piece.search(to.Distance, distance, func(s0, s1 float64) float64 {
				return piece.golden(to.Distance, s0, s1)
			})
		}
		if d < distance {
			s, distance = p.starts[i]+into, d
		}
	}
	return s, distance
}

// arcNearestSegment is for an arc that doesn't meet the segment: then the least
// distance is at an end of either, or where the arc runs alongside.
func (p *piece) arcNearestSegment(to Segment) (s, distance float64) {
	beside := to.B.Sub(to.A).Left().Unit().Mul(2 * p.radius)
	distance = math.Inf(1)
	for _, near := range [...]Vec{p.a, p.b, to.A, to.B, p.centre.Add(beside), p.centre.Sub(beside)} {
		into, _ := p.arcNearest(near)
		if d := to.Distance(p.at(into)); d < distance || d == distance && into < s {
			s, distance = into, d
		}
	}
	return s, distance
}

// golden narrows a stretch down to the least of a distance with one minimum in
// it, by the golden section.
func (p *piece) golden(from func(Vec) float64, s0, s1 float64) float64 {
	const ratio = 0.6180339887498949
	a, b := s1-ratio*(s1-s0), s0+ratio*(s1-s0)
	da, db := from(p.at(a)), from(p.at(b))
	for range 30 {
		if da <= db {
			s1, b, db = b, a, da
			a = s1 - ratio*(s1-s0)
			da = from(p.at(a))
		} else {
			s0, a, da = a, b, db
			b = s0 + ratio*(s1-s0)
			db = from(p.at(b))
		}
	}
	return (s0 + s1) / 2
}
