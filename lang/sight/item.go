package sight

import "math"

// item is a prism or a cylinder as one eye sees it.
//
// In a column an upright convex solid is a rectangle: from the nearness
// (1 over the way along (cx, cy)) at which the column enters its footprint to
// that at which it leaves it, and from h0 to h1. The nearness along a straight
// side is linear in the column, so that entering is the least of the sides that
// face the lens and leaving the most of those that face away.
type item struct {
	extent
	ref    int32 // a body's index, or -1 - a prism's
	round  bool
	inside bool    // the lens is above or below the footprint
	h0, h1 float64 // lower and upper face above the lens

	q, l, r float64 // round: the axis and the radius
	k, perK float64 // round: the axis's distance squared less the radius's, and 1 over that
	front   []line  // nearness along the sides that face the lens
	back    []line
	corners []float64 // columns at which front bends, its ends left out
	rear    []float64 // and back

	capped bool
	cap    line // nothing of it is nearer than this: the plane of a mirror
}

// extent is what an item keeps within.
type extent struct {
	p0, p1 float64 // its range of columns
	lo, hi float64 // bounds of its slopes
	w0, w1 float64 // least and most nearness
}

// enter is the nearness at which a column enters the footprint.
func (t *item) enter(cx, cy float64) float64 {
	w := far
	switch {
	case t.inside:
	case t.round:
		b := t.q*cx + t.l*cy
		d := b*b - (cx*cx+cy*cy)*t.k
		if d < 0 {
			d = 0
		}
		w = (b + math.Sqrt(d)) * t.perK
	default:
		for _, s := range t.front {
			if v := s.a*cx + s.b*cy; v < w {
				w = v
			}
		}
	}
	if t.capped {
		w = min(w, t.cap.a*cx+t.cap.b*cy)
	}
	return w
}

// leave is the nearness at which a column leaves the footprint.
func (t *item) leave(cx, cy float64) float64 {
	if t.round {
		a := cx*cx + cy*cy
		b := t.q*cx + t.l*cy
		d := b*b - a*t.k
		if d < 0 {
			d = 0
		}
		return a / (b + math.Sqrt(d))
	}
	w := 0.0
	for _, s := range t.back {
		if v := s.a*cx + s.b*cy; v > w {
			w = v
		}
	}
	return w
}

// slopes is the interval of slopes the item covers in a column that it is in,
// and its nearness there.
func (t *item) slopes(cx, cy float64) (w, lo, hi float64) {
	w = t.enter(cx, cy)
	if t.capped && t.leave(cx, cy) >= t.cap.a*cx+t.cap.b*cy {
		return w, 0, 0
	}
	switch {
	case t.h0 >= 0: // above the lens
		return w, t.h0 * t.leave(cx, cy), t.h1 * w
	case t.h1 <= 0: // below it
		return w, t.h0 * w, t.h1 * t.leave(cx, cy)
	}
	return w, t.h0 * w, t.h1 * w
}

// bounds works out lo and hi from the heights and the nearness.
func (t *item) bounds() {
	t.hi, t.lo = t.h1*t.w1, t.h0*t.w1
	if t.h1 < 0 {
		t.hi = t.h1 * t.w0
	}
	if t.h0 > 0 {
		t.lo = t.h0 * t.w0
	}
}

// roundItem sees a cylinder; false where none of it is before the lens, or the
// lens is in it.
func (e *eye) roundItem(t *item, q, l, r, h0, h1 float64) bool {
	d2 := q*q + l*l
	k := d2 - r*r
	t.round, t.capped, t.q, t.l, t.r, t.k, t.perK, t.h0, t.h1 = true, false, q, l, r, k, 1/k, h0, h1
	t.corners, t.rear = t.corners[:0], t.rear[:0]
	t.inside = k <= 1e-12
	if t.inside {
		if h0 < 0 && h1 > 0 {
			return false
		}
		t.p0, t.p1 = math.Inf(-1), math.Inf(1)
		t.w0, t.w1 = 1/(math.Sqrt(d2)+r), far
		if !e.steep {
			t.w0 = 1 / (q + r)
		}
		t.bounds()
		return true
	}
	ql, ll, qr, lr := tangents(q, l, r, k)
	if e.steep {
		d := math.Sqrt(d2)
		t.p0, t.p1 = math.Atan2(lr, qr), math.Atan2(ll, ql)
		if t.p1 < t.p0 {
			t.p1 += 2 * math.Pi
		}
		t.w0, t.w1 = 1/(d+r), 1/(d-r)
		t.bounds()
		return true
	}
	if ql <= 0 && qr <= 0 {
		return false
	}
	t.p0, t.p1 = math.Inf(-1), math.Inf(1)
	if ql > 0 {
		t.p1 = ll / ql
	}
	if qr > 0 {
		t.p0 = lr / qr
	}
	t.w0, t.w1 = 1/(q+r), far
	if q-r > 1/far {
		t.w1 = 1 / (q - r)
	}
	t.bounds()
	return true
}

// tangents are the ways, of any length, along the two tangents from the lens to a
// circle, left and right: a turn of the way to its middle; k is the square of that
// way less the radius's.
func tangents(q, l, r, k float64) (leftQ, leftL, rightQ, rightL float64) {
	s := math.Sqrt(k)
	return q*s - l*r, l*s + q*r, q*s + l*r, l*s - q*r
}

// prismItem sees a prism whose footprint, counter-clockwise in the eye's
// coordinates, is pts: pairs of depth and left. It is false where none of it is
// before the lens, or the lens is in it.
func (e *eye) prismItem(t *item, pts [][2]float64, h0, h1 float64) bool {
	t.round, t.capped, t.h0, t.h1 = false, false, h0, h1
	t.front, t.back, t.corners, t.rear = t.front[:0], t.back[:0], t.corners[:0], t.rear[:0]
	n := len(pts)
	var faces uint64 // of the sides, a bit for each that faces the lens
	edge := -1       // a side whose line the lens is over
	a := pts[n-1]
	for i := range n {
		b := pts[i] // the side that ends at corner i
		cross := a[0]*b[1] - a[1]*b[0]
		// The side's line is (lb-la) q - (qb-qa) l = cross.
		switch {
		case cross < -1e-12:
			t.front = append(t.front, line{(b[1] - a[1]) / cross, (a[0] - b[0]) / cross})
			faces |= 1 << uint(i&63)
		case cross > 1e-12:
			t.back = append(t.back, line{(b[1] - a[1]) / cross, (a[0] - b[0]) / cross})
		default:
			edge = i
		}
		a = b
	}
	t.inside = len(t.front) == 0
	if t.inside && (len(t.back) == 0 || h0 < 0 && h1 > 0) {
		return false
	}
	if t.inside && edge >= 0 {
		// Over its very edge the lens has it on one side only: a hair off it.
		a, b := pts[(edge+n-1)%n], pts[edge]
		if off := math.Hypot(b[0]-a[0], b[1]-a[1]); off > 0 {
			const hair = 1e-6 // metres
			dq, dl := -(b[1]-a[1])*hair/off, (b[0]-a[0])*hair/off
			for i := range pts {
				pts[i][0], pts[i][1] = pts[i][0]+dq, pts[i][1]+dl
			}
			return e.prismItem(t, pts, h0, h1)
		}
	}
	if e.steep {
		e.steepRange(t, pts)
	} else if !e.levelRange(t, pts, faces) {
		return false
	}
	t.bounds()
	return true
}

// levelRange works out the columns and the nearness of a footprint, cut where
// it runs behind the lens.
func (e *eye) levelRange(t *item, pts [][2]float64, faces uint64) bool {
	const ahead = 1e-6 // metres
	t.p0, t.p1 = math.Inf(1), math.Inf(-1)
	qmin, qmax := math.Inf(1), 0.0
	n := len(pts)
	a := pts[n-1]
	for i, b := range pts {
		if b[0] > ahead {
			p := b[1] / b[0]
			// Where a side that faces the lens meets one that does not is an end.
			next := i + 1
			if next == n {
				next = 0
			}
			before, after := faces>>uint(i&63)&1, faces>>uint(next&63)&1
			if before != 0 && after != 0 {
				t.corners = append(t.corners, p)
			}
			if before == 0 && after == 0 || n > 64 {
				t.rear = append(t.rear, p)
			}
			t.p0, t.p1 = min(t.p0, p), max(t.p1, p)
			qmin, qmax = min(qmin, b[0]), max(qmax, b[0])
		}
		if (a[0] > ahead) != (b[0] > ahead) {
			l := a[1] + (b[1]-a[1])*(ahead-a[0])/(b[0]-a[0])
			p := l / ahead
			t.p0, t.p1 = min(t.p0, p), max(t.p1, p)
			qmin = ahead
		}
		a = b
	}
	if qmax == 0 {
		return false
	}
	t.w0, t.w1 = 1/qmax, 1/qmin
	if t.inside {
		t.w1 = far
	}
	return true
}

// steepRange does the same by bearing, all round.
func (e *eye) steepRange(t *item, pts [][2]float64) {
	if t.inside {
		t.p0, t.p1 = math.Inf(-1), math.Inf(1)
	} else {
		first := math.Atan2(pts[0][1], pts[0][0])
		t.p0, t.p1 = first, first
		at := first
		for i := 1; i < len(pts); i++ {
			d := math.Atan2(pts[i][1], pts[i][0]) - at
			d -= 2 * math.Pi * math.Round(d/(2*math.Pi))
			at += d
			t.p0, t.p1 = min(t.p0, at), max(t.p1, at)
		}
	}
	t.w0, t.w1 = far, 0
	for i := range pts {
		a, b := pts[i], pts[(i+1)%len(pts)]
		t.corners = append(t.corners, math.Atan2(a[1], a[0]))
		t.w0 = min(t.w0, 1/math.Hypot(a[0], a[1]))
		// nearest point of the side
		dq, dl := b[0]-a[0], b[1]-a[1]
		k := max(0, min(1, -(a[0]*dq+a[1]*dl)/(dq*dq+dl*dl)))
		t.w1 = max(t.w1, 1/max(1/far, math.Hypot(a[0]+k*dq, a[1]+k*dl)))
	}
	if t.inside {
		t.w1 = far
	}
}
