package light

import (
	"sort"

	"longhand/lang/units"
)

// Load is a lamp, or many alike, on a curve.
type Load struct {
	Full  units.Watts
	Law   Law
	Curve Curve
}

// Power is what loads draw together at a time.
func Power(loads []Load, t units.Seconds) units.Watts {
	var sum units.Watts
	for _, l := range loads {
		sum += l.Law.Power(l.Full, l.Curve.At(t))
	}
	return sum
}

// Peak is the most that loads draw together between two times, and the first
// time they do. Between knots each level is a straight line and each law a
// convex function of it, so that the sum has its maximum at a knot or an end.
func Peak(loads []Load, from, to units.Seconds) (units.Watts, units.Seconds) {
	most, when := units.Watts(-1), from
	for _, t := range Bends(loads, from, to) {
		for _, w := range []units.Watts{powerBefore(loads, t, from), Power(loads, t)} {
			if w > most {
				most, when = w, t
			}
		}
	}
	return max(most, 0), when
}

func powerBefore(loads []Load, t, from units.Seconds) units.Watts {
	if t <= from {
		return Power(loads, t)
	}
	var sum units.Watts
	for _, l := range loads {
		sum += l.Law.Power(l.Full, l.Curve.before(t))
	}
	return sum
}

// Bends are the times between two, both included, at which any of the loads'
// curves bends, in order: a chart drawn through them misses no peak.
func Bends(loads []Load, from, to units.Seconds) []units.Seconds {
	out := []units.Seconds{from, to}
	for _, l := range loads {
		for _, t := range l.Curve.Knots() {
			if t > from && t < to {
				out = append(out, t)
			}
		}
	}
	sort.Slice(out, func(a, b int) bool { return out[a] < out[b] })
	n := 0
	for i, t := range out {
		if i == 0 || t != out[n-1] {
			out[n] = t
			n++
		}
	}
	return out[:n]
}
