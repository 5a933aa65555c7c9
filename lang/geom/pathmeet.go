package geom

import (
	"cmp"
	"math"
	"slices"
)

// A Hit is where a path meets a segment.
type Hit struct {
	S  float64 // along the path
	On float64 // fraction of the way along the segment
	At Vec
}

// Crossings is where the path meets a segment, in order along the path. Where
// they run along each other it is the ends of the shared stretch.
func (p *Path) Crossings(t Segment) []Hit {
	var hits []Hit
	add := func(s float64) {
		at := p.At(s)
		on := t.Closest(at)
		if t.At(on).Dist(at) <= hitSlop {
			hits = append(hits, Hit{s, on, at})
		}
	}
	for i := range p.pieces {
		piece := &p.pieces[i]
		for _, s := range piece.meets(t) {
			add(p.starts[i] + s)
		}
	}
	slices.SortFunc(hits, func(a, b Hit) int { return cmp.Compare(a.S, b.S) })
	return slices.CompactFunc(hits, func(a, b Hit) bool { return math.Abs(b.S-a.S) <= hitSlop })
}

// hitSlop is how far from the segment a computed meeting may lie, and how near
// two may be to count as one: a tenth of a micrometre, above the rounding of
// roots of curves, below anything on a floor.
const hitSlop = 1e-7

// IntersectsSegment says that the path and the segment share a point.
func (p *Path) IntersectsSegment(t Segment) bool { return len(p.Crossings(t)) > 0 }

// meets is the lengths at which a piece may meet a segment; those on its line
// but off its ends are for the caller to drop.
func (p *piece) meets(t Segment) []float64 {
	switch p.kind {
	case linePiece:
		return p.lineMeets(t)
	case arcPiece:
		return p.arcMeets(t)
	}
	n := t.B.Sub(t.A).Left().Unit()
	c := &p.cubic
	var out []float64
	for _, u := range unitRoots(c.d.Dot(n), c.c.Dot(n), c.b.Dot(n), c.a.Sub(t.A).Dot(n)) {
		out = append(out, p.lengthTo(u))
	}
	return out
}

func (p *piece) lineMeets(t Segment) []float64 {
	line := Segment{p.a, p.b}
	var out []float64
	if k, _, ok := line.Intersect(t); ok {
		out = append(out, k*p.length)
	}
	for _, end := range [...]Vec{t.A, t.B} { // running along, or touching to rounding
		if k := line.Closest(end); line.At(k).Dist(end) <= joinSlop {
			out = append(out, k*p.length)
		}
	}
	for _, k := range [...]float64{0, 1} {
		if t.Distance(line.At(k)) <= joinSlop {
			out = append(out, k*p.length)
		}
	}
	return out
}

func (p *piece) arcMeets(t Segment) []float64 {
	d, w := t.B.Sub(t.A), t.A.Sub(p.centre)
	roots := quadraticRoots(d.Dot(d), 2*w.Dot(d), w.Dot(w)-p.radius*p.radius)
	if len(roots) == 0 { // grazing, to rounding
		foot := t.Closest(p.centre)
		if math.Abs(t.At(foot).Dist(p.centre)-p.radius) > joinSlop {
			return nil
		}
		roots = []float64{foot}
	}
	var out []float64
	for _, k := range roots {
		k = max(0, min(k, 1))
		into := math.Mod((t.At(k).Sub(p.centre).Angle()-p.start)*math.Copysign(1, p.arc), 2*math.Pi)
		if into < -joinSlop {
			into += 2 * math.Pi
		}
		for ; into <= math.Abs(p.arc)+joinSlop; into += 2 * math.Pi {
			out = append(out, max(0, min(into*p.radius, p.length)))
		}
		if into-2*math.Pi < 0 && math.Abs(p.arc) >= 2*math.Pi-joinSlop {
			out = append(out, p.length)
		}
	}
	return out
}

// lengthTo is the length before a cubic's parameter: the inverse of param, by
// halving.
func (p *piece) lengthTo(u float64) float64 {
	lo, hi := 0.0, p.length
	for range 80 {
		mid := (lo + hi) / 2
		if mid == lo || mid == hi {
			break
		}
		if p.param(mid) < u {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}
