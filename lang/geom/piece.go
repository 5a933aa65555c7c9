package geom

import "math"

// A piece is a smooth part of a path: a line, an arc or a cubic. It is one
// struct and not an interface so that asking for a point takes no allocation.
type piece struct {
	kind   pieceKind
	length float64

	a, b Vec // its ends

	centre             Vec // arc: round it, from angle start, sweep radians, left positive
	radius, start, arc float64

	cubic cubic // cubic: u runs from 0 to 1
	ruler ruler
}

type pieceKind uint8

const (
	linePiece pieceKind = iota
	arcPiece
	cubicPiece
)

func newLine(a, b Vec) piece { return piece{kind: linePiece, a: a, b: b, length: a.Dist(b)} }

func newArc(centre Vec, radius, start, sweep float64) piece {
	radius = math.Abs(radius)
	return piece{
		kind: arcPiece, length: radius * math.Abs(sweep),
		a: centre.Add(Polar(radius, start)), b: centre.Add(Polar(radius, start+sweep)),
		centre: centre, radius: radius, start: start, arc: sweep,
	}
}

func newCubic(c cubic) piece {
	r := measure(&c, 0, 1)
	return piece{kind: cubicPiece, length: r.length, a: c.a, b: c.end, cubic: c, ruler: r}
}

// angle is the direction from an arc's centre at s.
func (p *piece) angle(s float64) float64 {
	if p.radius == 0 {
		return p.start
	}
	return p.start + math.Copysign(s/p.radius, p.arc)
}

// param is a cubic's parameter at s, exact at both ends.
func (p *piece) param(s float64) float64 { return p.ruler.param(s) }

// at is the point at s in [0, length]; both ends are met exactly.
func (p *piece) at(s float64) Vec {
	switch {
	case !(s > 0):
		return p.a
	case s >= p.length:
		return p.b
	case p.kind == linePiece:
		return p.a.Lerp(p.b, s/p.length)
	case p.kind == arcPiece:
		return p.centre.Add(Polar(p.radius, p.angle(s)))
	}
	return p.cubic.at(p.param(s))
}

// tangent is the unit direction of travel at s; zero on a piece of no length.
func (p *piece) tangent(s float64) Vec {
	switch p.kind {
	case linePiece:
		return p.b.Sub(p.a).Unit()
	case arcPiece:
		return Polar(math.Copysign(1, p.arc), p.angle(s)).Left()
	}
	return p.cubic.tangent(p.param(s))
}

// curvature at s in 1/m, positive to the left.
func (p *piece) curvature(s float64) float64 {
	switch p.kind {
	case linePiece:
		return 0
	case arcPiece:
		if p.radius == 0 {
			return 0
		}
		return math.Copysign(1/p.radius, p.arc)
	}
	return p.cubic.curvature(p.param(s))
}

// sub is the part from s0 to s1, run backwards where s1 < s0.
func (p *piece) sub(s0, s1 float64) piece {
	switch p.kind {
	case linePiece:
		return newLine(p.at(s0), p.at(s1))
	case arcPiece:
		if p.radius == 0 {
			return *p
		}
		return newArc(p.centre, p.radius, p.angle(s0), math.Copysign((s1-s0)/p.radius, p.arc*(s1-s0)))
	}
	return newCubic(p.cubic.sub(p.param(s0), p.param(s1)))
}
