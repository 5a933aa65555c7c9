package geom

import (
	"math"
	"sort"
)

// speeder is a curve in a parameter u, known by how fast it runs: metres of
// curve for one of u.
type speeder interface{ speed(u float64) float64 }

// The abscissas and weights of the eight-point Gauss-Legendre rule on [-1, 1],
// the positive half (Abramowitz & Stegun, table 25.4).
var gaussX = [4]float64{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363}
var gaussW = [4]float64{0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763}

// gauss is the length of c from u0 to u1 by one eight-point rule: exact where
// the speed is a polynomial of degree 15.
func gauss[C speeder](c C, u0, u1 float64) float64 {
	mid, half := (u0+u1)/2, (u1-u0)/2
	sum := 0.0
	for i, x := range gaussX {
		sum += gaussW[i] * (c.speed(mid-half*x) + c.speed(mid+half*x))
	}
	return sum * half
}

// knot ties a parameter to the length of curve before it.
type knot struct{ u, s float64 }

const (
	// lengthSlop is how far, of the whole length, a rule may differ from the
	// same rule on both halves before the interval is cut. The halves are some
	// 2^16 times better than the whole, so what is kept is good to rounding.
	lengthSlop = 1e-11
	// minCuts and maxCuts bound the halvings: at least 4 intervals so that
	// Newton starts close, and an end where the speed has a corner.
	minCuts, maxCuts = 2, 24
)

// measure tabulates the length of c from u0 to u1: adaptive Gauss-Legendre,
// knots close enough that one rule is exact to rounding between neighbours.
func measure[C speeder](c C, u0, u1 float64) []knot {
	whole := gauss(c, u0, u1)
	knots := append(make([]knot, 0, 9), knot{u0, 0})
	if !(whole > 0 && whole <= math.MaxFloat64) { // a point, or not a number
		return append(knots, knot{u1, 0})
	}
	var cut func(a, b, rough float64, depth int)
	cut = func(a, b, rough float64, depth int) {
		m := (a + b) / 2
		l, r := gauss(c, a, m), gauss(c, m, b)
		fine := math.Abs(l+r-rough) <= lengthSlop*whole
		if depth >= maxCuts || depth >= minCuts && fine {
			knots = append(knots, knot{b, knots[len(knots)-1].s + l + r})
			return
		}
		cut(a, m, l, depth+1)
		cut(m, b, r, depth+1)
	}
	cut(u0, u1, whole, 0)
	return knots
}

// paramAt is the parameter at which s metres of curve lie behind: a search in
// the table, then Newton, kept inside its interval by bisection. The speed is
// the derivative of the length, so each step doubles the digits. It doesn't
// allocate.
func paramAt[C speeder](c C, knots []knot, s float64) float64 {
	last := len(knots) - 1
	if s <= 0 {
		return knots[0].u
	}
	if s >= knots[last].s {
		return knots[last].u
	}
	i := sort.Search(last, func(i int) bool { return knots[i+1].s > s })
	from, to := knots[i], knots[i+1]
	lo, hi := from.u, to.u
	u := inverseHermite(from, to, c.speed(from.u), c.speed(to.u), s)
	slop := 1e-13 * knots[last].s
	for range 60 {
		miss := from.s + gauss(c, from.u, u) - s
		if math.Abs(miss) <= slop {
			break
		}
		if miss > 0 {
			hi = u
		} else {
			lo = u
		}
		next := u - miss/c.speed(u)
		if !(next > lo && next < hi) { // also where the speed is zero
			next = (lo + hi) / 2
		}
		if next == u {
			break
		}
		u = next
	}
	return u
}

// inverseHermite is a first guess of the parameter at s: the cubic through both
// knots with their slopes du/ds.
func inverseHermite(from, to knot, v0, v1, s float64) float64 {
	h, k := to.s-from.s, to.u-from.u
	x := (s - from.s) / h
	straight := from.u + k*x
	if v0*4*k < h || v1*4*k < h {
		return straight
	}
	m0, m1 := h/v0, h/v1
	y := 1 - x
	u := from.u + k*x*x*(3-2*x) + m0*x*y*y - m1*x*x*y
	if !(u > from.u && u < to.u) {
		return straight
	}
	return u
}
