package sight

import (
	"math"
	"sort"

	"longhand/lang/units"
)

// behindRays is how many rays across and up sound what stands behind a body.
const behindRays = 48

// Behind is what stands behind a body in a camera's frame: what the rays that
// meet the body first would meet next, by how much of the body's visible part
// it backs, most first. Where that is the floor, Kind is "floor"; where it is
// nothing at all, Name and Kind are empty. It is empty where nothing of the body
// shows.
func (r *Report) Behind(camera, body int, f units.Frame) []Backing {
	box, ok := r.Box(camera, body, f)
	l := newGlancer(r.stage)
	if !ok || !l.frame(camera, f) {
		return nil
	}
	byName := map[[2]string]*Backing{}
	rays := 0
	for j := range behindRays {
		for i := range behindRays {
			x := box.Left + (box.Right-box.Left)*(float64(i)+0.5)/behindRays
			y := box.Bottom + (box.Top-box.Bottom)*(float64(j)+0.5)/behindRays
			next, ok := l.past(body, x, y)
			if !ok {
				continue
			}
			rays++
			key := [2]string{next.Name, next.Kind}
			if b := byName[key]; b != nil {
				b.Share++
				b.Distance = min(b.Distance, next.Distance)
			} else {
				next.Share = 1
				byName[key] = &next
			}
		}
	}
	out := make([]Backing, 0, len(byName))
	for _, b := range byName {
		b.Share /= float64(rays)
		out = append(out, *b)
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := &out[i], &out[j]
		if a.Share != b.Share {
			return a.Share > b.Share
		}
		return a.Name+"\x00"+a.Kind < b.Name+"\x00"+b.Kind
	})
	return out
}

// past is what a ray through a point of the frame meets after a body, if it
// meets that first.
func (l *looker) past(body int, x, y float64) (Backing, bool) {
	cx, cy, s := l.eye.direction(x, y)
	length := math.Sqrt(cx*cx + cy*cy + s*s)
	p := cy / cx
	if l.eye.steep {
		p = math.Atan2(cy, cx)
	}
	first, next := math.Inf(1), math.Inf(1)
	var nextItem *item
	for i := range l.items[:l.n] {
		t := &l.items[i]
		if !l.eye.holds(t, p) {
			continue
		}
		d, ok := t.reach(cx, cy, s)
		switch {
		case !ok:
		case int(t.ref) == body:
			first = d
		case d < next:
			next, nextItem = d, t
		}
	}
	if math.IsInf(first, 1) || next < first {
		return Backing{}, false
	}
	switch {
	case nextItem == nil && s < 0 && l.eye.z > 0:
		return Backing{Kind: "floor", Distance: -l.eye.z / s * length}, true
	case nextItem == nil:
		return Backing{}, true
	}
	b := Backing{Distance: next * length}
	if nextItem.ref >= 0 {
		of := &l.st.scene.Bodies[nextItem.ref]
		b.Name, b.Kind = of.Name, of.Kind
	} else {
		of := &l.st.scene.Solids[l.st.prisms[-1-nextItem.ref].solid]
		b.Name, b.Kind = of.Name, of.Kind
	}
	return b, true
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
