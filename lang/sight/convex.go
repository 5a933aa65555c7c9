package sight

import (
	"longhand/lang/geom"
)

// flat is the area, in square metres, under which a corner or a polygon counts
// as none: a hair's breadth by a millimetre.
const flat = 1e-9

// counterClockwise is the polygon with its inside to the left of every side.
func counterClockwise(poly []geom.Vec) []geom.Vec {
	out := make([]geom.Vec, len(poly))
	copy(out, poly)
	if area2(out) < 0 {
		for i, j := 0, len(out)-1; i < j; i, j = i+1, j-1 {
			out[i], out[j] = out[j], out[i]
		}
	}
	return out
}

func area2(poly []geom.Vec) float64 {
	sum := 0.0
	for i := range poly {
		sum += poly[i].Cross(poly[(i+1)%len(poly)])
	}
	return sum
}

func turn(a, b, c geom.Vec) float64 { return b.Sub(a).Cross(c.Sub(b)) }

// tidy drops corners that repeat or lie on a straight side.
func tidy(poly []geom.Vec) []geom.Vec {
	for again := true; again && len(poly) > 2; {
		again = false
		for i := range poly {
			n := len(poly)
			a, b, c := poly[(i+n-1)%n], poly[i], poly[(i+1)%n]
			if cr := turn(a, b, c); cr < flat && cr > -flat {
				poly = append(poly[:i:i], poly[i+1:]...)
				again = true
				break
			}
		}
	}
	return poly
}

// convexPieces cuts a simple polygon into convex ones that cover it: ears are
// clipped to triangles (Meisters 1975) and triangles joined again while they
// stay convex (Hertel and Mehlhorn 1983).
func convexPieces(poly []geom.Vec) [][]geom.Vec {
	ring := tidy(counterClockwise(poly))
	if len(ring) < 3 || area2(ring) < flat {
		return nil
	}
	if isConvex(ring) {
		return [][]geom.Vec{ring}
	}
	var pieces [][]geom.Vec
	for len(ring) > 3 {
		i := ear(ring)
		n := len(ring)
		pieces = append(pieces, []geom.Vec{ring[(i+n-1)%n], ring[i], ring[(i+1)%n]})
		ring = tidy(append(ring[:i:i], ring[i+1:]...))
	}
	if len(ring) == 3 {
		pieces = append(pieces, ring)
	}
	return joinConvex(pieces)
}

func isConvex(ring []geom.Vec) bool {
	n := len(ring)
	for i := range ring {
		if turn(ring[(i+n-1)%n], ring[i], ring[(i+1)%n]) < 0 {
			return false
		}
	}
	return true
}

// ear is a corner that can be cut off; a polygon that crosses itself has none,
// and gives up its sharpest corner instead.
func ear(ring []geom.Vec) int {
	n := len(ring)
	best, bestTurn := 0, 0.0
	for i := range ring {
		a, b, c := ring[(i+n-1)%n], ring[i], ring[(i+1)%n]
		t := turn(a, b, c)
		if t <= 0 {
			continue
		}
		if t > bestTurn {
			best, bestTurn = i, t
		}
		clear := true
		for j := range ring {
			p := ring[j]
			if p == a || p == b || p == c {
				continue
			}
			if turn(a, b, p) >= 0 && turn(b, c, p) >= 0 && turn(c, a, p) >= 0 {
				clear = false
				break
			}
		}
		if clear {
			return i
		}
	}
	return best
}

func joinConvex(pieces [][]geom.Vec) [][]geom.Vec {
	for i := 0; i < len(pieces); i++ {
		for j := i + 1; j < len(pieces); j++ {
			if joined := join(pieces[i], pieces[j]); joined != nil {
				pieces[i] = joined
				pieces = append(pieces[:j], pieces[j+1:]...)
				i = -1
				break
			}
		}
	}
	return pieces
}

// join merges two counter-clockwise polygons along a common side, or is nil
// where there is none or the whole would not be convex.
func join(a, b []geom.Vec) []geom.Vec {
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		for j := range b {
			if b[j] != q || b[(j+1)%len(b)] != p {
				continue
			}
			var out []geom.Vec
			for k := range len(a) {
				out = append(out, a[(i+1+k)%len(a)])
			}
			for k := 2; k < len(b); k++ {
				out = append(out, b[(j+k)%len(b)])
			}
			if isConvex(out) {
				return tidy(out)
			}
		}
	}
	return nil
}
