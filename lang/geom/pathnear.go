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

// cubicNearest halves the cubic by length. Between two points of it h apart
// along it, no point is closer than half of what their distances have over h,
// which rules most halves out.
func (p *piece) cubicNearest(to Vec, best float64) (s, distance float64) {
	s, distance = 0, math.Inf(1)
	var look func(s0, s1, d0, d1 float64)
	look = func(s0, s1, d0, d1 float64) {
		if (d0+d1-(s1-s0))/2 >= min(best, distance) {
			return
		}
		mid := (s0 + s1) / 2
		if s1-s0 <= 1e-3 {
			mid = p.polish(to, s0, s1)
		}
		d := p.at(mid).Dist(to)
		if d < distance {
			s, distance = mid, d
		}
		if s1-s0 > 1e-3 {
			look(s0, mid, d0, d)
			look(mid, s1, d, d1)
		}
	}
	d0, d1 := p.a.Dist(to), p.b.Dist(to)
	s, distance = 0, d0
	if math.IsNaN(d0 + d1) {
		return s, distance
	}
	if d1 < distance {
		s, distance = p.length, d1
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
