package geom

import "math"

// runner is a curve in a parameter u, known by how fast it runs (metres of curve
// for one of u) and by how fast that changes.
type runner interface {
	speed(u float64) float64
	swell(u float64) float64 // the derivative of speed
}

// The abscissas and weights of the eight-point Gauss-Legendre rule on [-1, 1],
// the positive half (Abramowitz & Stegun, table 25.4).
var gaussX = [4]float64{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363}
var gaussW = [4]float64{0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763}

// gauss is the length of c from u0 to u1 by one eight-point rule: exact where
// the speed is a polynomial of degree 15.
func gauss[C runner](c C, u0, u1 float64) float64 {
	mid, half := (u0+u1)/2, (u1-u0)/2
	sum := 0.0
	for i, x := range gaussX {
		sum += gaussW[i] * (c.speed(mid-half*x) + c.speed(mid+half*x))
	}
	return sum * half
}

// stretch is an interval of a curve: from parameter u and length s on. inverse is
// the parameter as a polynomial in the fraction of the interval's length.
type stretch struct {
	s, perLength float64 // 1/length, 0 for none
	inverse      [6]float64
}

// ruler is the lengths along a curve, tabulated; its intervals are in order.
type ruler struct {
	stretches []stretch
	length    float64
	last      float64 // the parameter at the end
}

const (
	// lengthSlop is how far, of the whole length, a rule may differ from the
	// same rule on both halves before the interval is cut. The halves are some
	// 2^16 times better than the whole, so what is kept is good to rounding.
	lengthSlop = 1e-11
	// inverseSlop is how far, of the whole length, the point found for a length
	// may lie from it along the curve: ten nanometres on ten metres.
	inverseSlop = 1e-9
	// minCuts and maxCuts bound the halvings: the inverse polynomials need a few
	// intervals anyway, and a cusp, where the speed is zero, ends them.
	minCuts, maxCuts = 2, 24
	// mostLength is how long a curve may be, in metres: the square of a speed on a
	// much longer one is no number, and would have it cut without end.
	mostLength = 1e150
)

// measure tabulates c from u0 to u1: intervals on which one Gauss-Legendre rule
// is exact to rounding and the inverse polynomial within inverseSlop.
func measure[C runner](c C, u0, u1 float64) ruler {
	r := ruler{last: u1}
	whole := gauss(c, u0, u1)
	if !(whole > 0 && whole <= mostLength) { // a point, or not a number
		r.stretches = []stretch{{inverse: [6]float64{u0}}}
		return r
	}
	r.stretches = make([]stretch, 0, 32)
	var cut func(a, b, rough float64, depth int)
	cut = func(a, b, rough float64, depth int) {
		m := (a + b) / 2
		left, right := gauss(c, a, m), gauss(c, m, b)
		length := left + right
		inverse := invert(c, a, b, length)
		good := depth >= minCuts && math.Abs(length-rough) <= lengthSlop*whole &&
			inverts(c, a, m, left, length, inverse, inverseSlop*whole)
		if good || depth >= maxCuts {
			next := stretch{s: r.length, inverse: inverse}
			if length > 0 {
				next.perLength = 1 / length
			}
			r.stretches = append(r.stretches, next)
			r.length += length
			return
		}
		cut(a, m, left, depth+1)
		cut(m, b, right, depth+1)
	}
	cut(u0, u1, whole, 0)
	return r
}

// invert is the quintic in the fraction of length that meets the parameter at
// both ends of an interval with its slope and its bend; a line where the curve
// stands still at an end.
func invert[C runner](c C, a, b, length float64) [6]float64 {
	va, vb := c.speed(a), c.speed(b)
	if !(va*(b-a) > 1e-3*length && vb*(b-a) > 1e-3*length) {
		return [6]float64{a, b - a}
	}
	// du/ds = 1/v and d²u/ds² = -v'/v³, both for s in units of the length.
	k, la, lb := b-a, length/va, length/vb
	ba, bb := -c.swell(a)*la*la/va, -c.swell(b)*lb*lb/vb
	// The quintic through k with slopes la, lb and second derivatives ba, bb.
	d0, d1, d2 := k-la-ba/2, lb-la-ba, bb-ba
	return [6]float64{a, la, ba / 2, 10*d0 - 4*d1 + d2/2, -15*d0 + 7*d1 - d2, 6*d0 - 3*d1 + d2/2}
}

// inverts checks an inverse where it strays most, a little off the quarters:
// the middle of a quintic may be right by symmetry alone.
func inverts[C runner](c C, a, m, left, length float64, inverse [6]float64, slop float64) bool {
	for _, x := range [...]float64{0.28, 0.5, 0.72} {
		u := horner(&inverse, x)
		if math.Abs(left+gauss(c, m, u)-x*length) > slop {
			return false
		}
	}
	return true
}

func horner(p *[6]float64, x float64) float64 {
	return p[0] + x*(p[1]+x*(p[2]+x*(p[3]+x*(p[4]+x*p[5]))))
}

// param is the parameter at which s metres of curve lie behind. It doesn't
// allocate.
func (r *ruler) param(s float64) float64 {
	switch {
	case !(s > 0):
		return r.stretches[0].inverse[0]
	case s >= r.length:
		return r.last
	}
	low, high := 0, len(r.stretches)
	for high-low > 1 {
		if mid := (low + high) / 2; r.stretches[mid].s <= s {
			low = mid
		} else {
			high = mid
		}
	}
	at := &r.stretches[low]
	return horner(&at.inverse, (s-at.s)*at.perLength)
}
