package geom

import "math"

// Mover is a point that moves straight and steadily: at time 0 at At, going
// Velocity (metres a second).
type Mover struct{ At, Velocity Vec }

// Position at a time.
func (m Mover) Position(t float64) Vec { return m.At.Add(m.Velocity.Mul(t)) }

// ClosestApproach is when, from time 0 to until (which may be +Inf), two movers
// are closest, and how far apart they then are. Of equal moments it is the
// first.
func ClosestApproach(a, b Mover, until float64) (time, distance float64) {
	w, v := b.At.Sub(a.At), b.Velocity.Sub(a.Velocity)
	if square := v.Dot(v); square > 0 {
		time = max(0, min(-w.Dot(v)/square, until))
	}
	return time, w.Add(v.Mul(time)).Len()
}

// FirstContact is when, from time 0 to until, two movers first come within
// reach metres of each other: for two discs the sum of their radii. Discs that
// overlap at time 0 are in contact then; discs that only graze are too.
func FirstContact(a, b Mover, reach, until float64) (time float64, ok bool) {
	w, v := b.At.Sub(a.At), b.Velocity.Sub(a.Velocity)
	if w.Len() <= reach {
		return 0, true
	}
	// |w + vt| = reach: the smaller root of At² + 2Bt + C, C > 0, as C over the
	// sum, so that a slow approach loses no digits.
	square, closing := v.Dot(v), -w.Dot(v)
	if !(closing > 0) {
		return 0, false
	}
	c := (w.Len() - reach) * (w.Len() + reach)
	disc := closing*closing - square*c
	if disc < 0 {
		return 0, false
	}
	time = c / (closing + math.Sqrt(disc))
	return time, time <= until
}

// FirstContactSegment is when, from time 0 to until, a moving point first comes
// within reach metres of a segment that stands still.
func FirstContactSegment(m Mover, s Segment, reach, until float64) (time float64, ok bool) {
	if s.Distance(m.At) <= reach {
		return 0, true
	}
	best := math.Inf(1)
	for _, end := range [...]Vec{s.A, s.B} {
		if t, hit := FirstContact(m, Mover{At: end}, reach, until); hit {
			best = min(best, t)
		}
	}
	along := s.B.Sub(s.A).Unit()
	gap, closing := along.Cross(m.At.Sub(s.A)), -along.Cross(m.Velocity)
	if gap < 0 {
		gap, closing = -gap, -closing
	}
	if closing > 0 && gap >= reach {
		t := (gap - reach) / closing
		foot := m.Position(t).Sub(s.A).Dot(along)
		if foot >= 0 && foot <= s.Length() {
			best = min(best, t)
		}
	}
	return best, best <= until
}

// FirstContactPolygon is when, from time 0 to until, a moving point first comes
// within reach metres of a polygon that stands still; 0 where it begins inside.
func FirstContactPolygon(m Mover, p Polygon, reach, until float64) (time float64, ok bool) {
	if len(p) > 0 && p.Contains(m.At) {
		return 0, true
	}
	time = math.Inf(1)
	for i := range p {
		if t, hit := FirstContactSegment(m, p.Edge(i), reach, until); hit {
			time, ok = min(time, t), true
		}
	}
	return time, ok
}
