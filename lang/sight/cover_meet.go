package sight

import "math"

// Footprints of which one is round, in level columns: whether they meet, and in
// which columns their edges do. Of two convex things apart, one is before the
// other in every column that holds both; of two that reach into each other, which
// begins or ends nearer changes where their edges meet, and nowhere else.

// apart is whether two footprints are known not to meet.
func apart(o, t *item) bool {
	switch {
	case o.inside || t.inside:
		return false
	case o.round && t.round:
		return math.Hypot(o.q-t.q, o.l-t.l) >= o.r+t.r
	case o.round:
		return t.outside(o.q, o.l, o.r)
	}
	return o.outside(t.q, t.l, t.r)
}

// outside is whether a circle lies beyond one of a prism's sides. The line of a
// side with nearness a cx + b cy is a q + b l = 1.
func (t *item) outside(q, l, r float64) bool {
	for _, s := range t.front {
		if 1-s.a*q-s.b*l >= r*math.Hypot(s.a, s.b) {
			return true
		}
	}
	for _, s := range t.back {
		if s.a*q+s.b*l-1 >= r*math.Hypot(s.a, s.b) {
			return true
		}
	}
	return false
}

// appendMeetings adds the columns, of those between two, in which the edges of
// two footprints meet.
func appendMeetings(columns []float64, o, t *item, from, to float64) []float64 {
	add := func(q, l float64) {
		if p := l / q; q > 0 && p > from && p < to {
			columns = append(columns, p)
		}
	}
	switch {
	case o.round && t.round:
		dq, dl := t.q-o.q, t.l-o.l
		d2 := dq*dq + dl*dl
		// From o's axis, k of the way to t's is the chord that both edges share.
		k := (o.r*o.r - t.r*t.r + d2) / (2 * d2)
		h := o.r*o.r/d2 - k*k
		if d2 == 0 || h <= 0 {
			break
		}
		h = math.Sqrt(h)
		add(o.q+k*dq-h*dl, o.l+k*dl+h*dq)
		add(o.q+k*dq+h*dl, o.l+k*dl-h*dq)
	case o.round:
		t.meetCircle(o, add)
	default:
		o.meetCircle(t, add)
	}
	return columns
}

// meetCircle finds where a prism's sides meet a cylinder's edge.
func (t *item) meetCircle(c *item, add func(q, l float64)) {
	for _, sides := range [2][]line{t.front, t.back} {
		for _, s := range sides {
			m2 := s.a*s.a + s.b*s.b
			off := (1 - s.a*c.q - s.b*c.l) / m2
			h := c.r*c.r/m2 - off*off
			if h <= 0 {
				continue
			}
			h = math.Sqrt(h)
			q, l := c.q+off*s.a, c.l+off*s.b
			add(q-h*s.b, l+h*s.a)
			add(q+h*s.b, l-h*s.a)
		}
	}
}
