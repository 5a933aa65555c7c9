package geom

import (
	"math"
	"slices"
)

// unitRoots is the roots of a x³ + b x² + c x + d in [0, 1], in order: between
// its turning points it rises or falls throughout, so each stretch holds one at
// most, found by halving. A turning point on zero, to rounding, is a root.
func unitRoots(a, b, c, d float64) []float64 {
	f := func(x float64) float64 { return d + x*(c+x*(b+x*a)) }
	slop := 1e-14 * (math.Abs(a) + math.Abs(b) + math.Abs(c) + math.Abs(d))
	ends := []float64{0}
	for _, x := range quadraticRoots(3*a, 2*b, c) {
		if x > 0 && x < 1 {
			ends = append(ends, x)
		}
	}
	ends = append(ends, 1)
	var roots []float64
	add := func(x float64) {
		if n := len(roots); n == 0 || x-roots[n-1] > 1e-12 {
			roots = append(roots, x)
		}
	}
	for i := 1; i < len(ends); i++ {
		lo, hi := ends[i-1], ends[i]
		flo, fhi := f(lo), f(hi)
		if math.Abs(flo) <= slop {
			add(lo)
		}
		if math.Abs(flo) > slop && math.Abs(fhi) > slop && (flo < 0) != (fhi < 0) {
			for range 80 {
				mid := (lo + hi) / 2
				if mid == lo || mid == hi {
					break
				}
				if (f(mid) < 0) == (flo < 0) {
					lo = mid
				} else {
					hi = mid
				}
			}
			add((lo + hi) / 2)
		}
		if math.Abs(fhi) <= slop {
			add(hi)
		}
	}
	return roots
}

// quadraticRoots is the real roots of a x² + b x + c, the smaller first, without
// cancellation.
func quadraticRoots(a, b, c float64) []float64 {
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	var roots []float64
	if a != 0 {
		roots = append(roots, q/a)
	}
	if q != 0 {
		roots = append(roots, c/q)
	}
	slices.Sort(roots)
	return roots
}
