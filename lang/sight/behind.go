package sight

import (
	"math"

	"longhand/lang/units"
)

// behindRays is how many rays across and up sound what stands behind a body.
const behindRays = 32

// Behind is what stands behind a body in a camera's frame: what the rays that
// meet the body first would meet next, by how much of the body's visible part
// it backs, most first. Where that is the floor, Kind is "floor"; where it is
// nothing at all, Name and Kind are empty. It is empty where nothing of the body
// shows.
func (r *Report) Behind(camera, body int, f units.Frame) []Backing {
	l := r.stage.glance()
	defer r.stage.glanced(l)
	if !l.frame(camera, f) {
		return nil
	}
	box, ok := l.box(body)
	if !ok {
		return nil
	}
	t := newTally(l)
	held := l.within(box)
	rays := 0
	for j := range behindRays {
		for i := range behindRays {
			x := box.Left + (box.Right-box.Left)*(float64(i)+0.5)/behindRays
			y := box.Bottom + (box.Top-box.Bottom)*(float64(j)+0.5)/behindRays
			if next, distance, ok := l.past(body, held, x, y); ok {
				rays++
				t.add(next, 1, distance)
			}
		}
	}
	return t.backings(float64(rays))
}

// box is the bounds of what shows of a body in the frame turned to.
func (l *looker) box(body int) (Box, bool) {
	for i := l.nset; i < l.n; i++ {
		if t := &l.items[i]; int(t.ref) == body {
			box := noBox
			l.cover.box = &box
			a := l.measure(t)
			l.cover.box = nil
			return box.clamped(), a.whole > 0 && a.open > 0
		}
	}
	return Box{}, false
}

// within is the items that may show in a part of the frame; what is straight in
// the frame is straight in level columns, so that the corners bound it.
func (l *looker) within(b Box) []int {
	part := extent{p0: math.Inf(1), p1: math.Inf(-1), lo: math.Inf(1), hi: math.Inf(-1)}
	for _, x := range [2]float64{b.Left, b.Right} {
		for _, y := range [2]float64{b.Bottom, b.Top} {
			cx, cy, s := l.eye.direction(x, y)
			part.p0, part.p1 = min(part.p0, cy/cx), max(part.p1, cy/cx)
			part.lo, part.hi = min(part.lo, s), max(part.hi, s)
		}
	}
	var out []int
	for i := range l.extents[:l.n] {
		if t := &l.extents[i]; l.eye.steep || t.p0 <= part.p1 && t.p1 >= part.p0 && t.lo <= part.hi && t.hi >= part.lo {
			out = append(out, i)
		}
	}
	return out
}

// past is the index of that of some items that a ray through a point of the frame
// meets after a body, if it meets that first, or one of beyond, and how far away
// it is.
func (l *looker) past(body int, held []int, x, y float64) (next int, distance float64, ok bool) {
	cx, cy, s := l.eye.direction(x, y)
	length := math.Sqrt(cx*cx + cy*cy + s*s)
	p := cy / cx
	if l.eye.steep {
		p = math.Atan2(cy, cx)
	}
	first, nearest := math.Inf(1), math.Inf(1)
	next = nothingBeyond
	for _, i := range held {
		t := &l.items[i]
		if !l.eye.holds(t, p) {
			continue
		}
		d, ok := t.reach(cx, cy, s)
		switch {
		case !ok:
		case int(t.ref) == body:
			first = d
		case d < nearest:
			nearest, next = d, i
		}
	}
	switch {
	case math.IsInf(first, 1) || nearest < first:
		return 0, 0, false
	case next != nothingBeyond:
		return next, nearest * length, true
	case s < 0 && l.eye.z > 0:
		return floorBeyond, -l.eye.z / s * length, true
	}
	return nothingBeyond, 0, true
}

// reach is how many times (cx, cy, s) it takes to enter the item.
func (t *item) reach(cx, cy, s float64) (float64, bool) {
	w, lo, hi := t.slopes(cx, cy)
	if s < lo || s > hi {
		return 0, false
	}
	d := 1 / w
	switch {
	case t.h1 < 0:
		d = max(d, t.h1/s)
	case t.h0 > 0:
		d = max(d, t.h0/s)
	}
	return d, true
}

// direction is the ray through a point of the frame, in its column.
func (e *eye) direction(x, y float64) (cx, cy, s float64) {
	var d [3]float64
	for k := range 3 {
		d[k] = e.fwd[k] + (1-2*x)*e.tx*e.left[k] + (2*y-1)*e.ty*e.up[k]
	}
	n := d[0]
	if e.steep {
		n = math.Hypot(d[0], d[1])
	}
	return d[0] / n, d[1] / n, d[2] / n
}
