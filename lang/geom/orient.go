package geom

import (
	"math"
	"math/big"
)

// Turn is which way three points turn.
type Turn int8

const (
	Right    Turn = -1
	Straight Turn = 0
	Left     Turn = 1
)

// orientSlop bounds the rounding of the fast determinant, as a part of the sum
// of its two products: (3 + 16e)e with e = 2^-53 (Shewchuk 1997, "Adaptive
// Precision Floating-Point Arithmetic", ccwerrboundA).
const orientSlop = (3 + 16*epsilon) * epsilon

const epsilon = 1.0 / (1 << 53)

// Orient says on which side of the line from a to b the point c lies. The
// answer is exact for the coordinates given: swapping two points negates it,
// rotating them keeps it. Coordinates that are not finite are Straight.
func Orient(a, b, c Vec) Turn {
	l, r := (a.X-c.X)*(b.Y-c.Y), (a.Y-c.Y)*(b.X-c.X)
	det := l - r
	if bound := orientSlop * (math.Abs(l) + math.Abs(r)); det > bound || -det > bound {
		return sign(det)
	}
	for _, v := range [...]float64{a.X, a.Y, b.X, b.Y, c.X, c.Y} {
		if math.IsInf(v, 0) || math.IsNaN(v) {
			return Straight
		}
	}
	return orientExact(a, b, c)
}

func orientExact(a, b, c Vec) Turn {
	minus := func(x, y float64) *big.Rat {
		p, q := new(big.Rat).SetFloat64(x), new(big.Rat).SetFloat64(y)
		return p.Sub(p, q)
	}
	l, r := minus(a.X, c.X), minus(a.Y, c.Y)
	l.Mul(l, minus(b.Y, c.Y))
	r.Mul(r, minus(b.X, c.X))
	return Turn(l.Cmp(r))
}

func sign(v float64) Turn {
	switch {
	case v > 0:
		return Left
	case v < 0:
		return Right
	}
	return Straight
}
