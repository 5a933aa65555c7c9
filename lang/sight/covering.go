package sight

import (
	"math"

	"longhand/lang/units"
)

// coverRays is how many rays across and up sound what hides a body.
const coverRays = 48

// Covering is what hides a body from a camera at a frame: what the rays that
// would meet the body within the frame meet first, by how much of its in-frame
// part each hides, most first. It is empty where nothing hides any of it, and
// where none of it is in frame.
func (r *Report) Covering(camera, body int, f units.Frame) []Backing {
	return r.CoveringBy(coverRays, camera, body, f)
}

// CoveringBy is Covering with as many rays across and up as one likes.
func (r *Report) CoveringBy(rays, camera, body int, f units.Frame) []Backing {
	l := r.stage.glance()
	defer r.stage.glanced(l)
	if !l.frame(camera, f) {
		return nil
	}
	var t *item
	for i := l.nset; i < l.n; i++ {
		if int(l.items[i].ref) == body {
			t = &l.items[i]
		}
	}
	if t == nil {
		return nil
	}
	tally := newTally(l)
	var held []int
	area := l.eye.sound(rays, t, &l.eye.win, func(p float64) { held = l.eye.holding(held, l.items[:l.n], t, p) }, func(r sounding) {
		if k, distance, ok := nearer(l.items, t, held, r); ok {
			tally.add(k, r.weight, distance)
		}
	})
	return tally.backings(area)
}

// sounding is one of the rays at an item: (cx, cy) in its column, s its slope, and
// the part of the frame that it stands for.
type sounding struct{ cx, cy, s, weight float64 }

// sound sends so many rays across and up at all of an item that lies in a window,
// column by column, of which it tells before their rays, and returns how much of the
// frame that is.
func (e *eye) sound(rays int, t *item, w *window, column func(p float64), each func(sounding)) (area float64) {
	p0, p1 := t.p0, t.p1
	if !e.steep || p1-p0 >= 2*math.Pi {
		p0, p1 = math.Max(p0, w.p0), math.Min(p1, w.p1)
	}
	many := float64(rays)
	for i := range rays {
		p := p0 + (p1-p0)*(float64(i)+0.5)/many
		cx, cy := e.column(p)
		_, lo, hi := t.slopes(cx, cy)
		wlo, whi := w.span(cx, cy)
		lo, hi = math.Max(lo, wlo), math.Min(hi, whi)
		if lo >= hi {
			continue
		}
		column(p)
		for j := range rays {
			s0 := lo + (hi-lo)*float64(j)/many
			s1 := lo + (hi-lo)*float64(j+1)/many
			r := sounding{cx, cy, (s0 + s1) / 2, e.weight(cx, cy, s0, s1)}
			area += r.weight
			each(r)
		}
	}
	return area
}

// holding is which of some items, but for one, are in a column, in room that is used
// again.
func (e *eye) holding(room []int, items []item, but *item, p float64) []int {
	room = room[:0]
	for k := range items {
		if o := &items[k]; o != but && e.holds(o, p) {
			room = append(room, k)
		}
	}
	return room
}

// nearer is which of some items a ray meets nearer than an item that it meets, and
// how far away.
func nearer(items []item, t *item, held []int, r sounding) (first int, distance float64, ok bool) {
	nearest, ok := t.reach(r.cx, r.cy, r.s)
	if !ok {
		return 0, 0, false
	}
	first = nothingBeyond
	for _, i := range held {
		if d, ok := items[i].reach(r.cx, r.cy, r.s); ok && d < nearest {
			nearest, first = d, i
		}
	}
	return first, nearest * math.Sqrt(r.cx*r.cx+r.cy*r.cy+r.s*r.s), first != nothingBeyond
}

// named is what an item is.
func (l *looker) named(t *item) Backing {
	if t.ref >= 0 {
		of := &l.st.scene.Bodies[t.ref]
		return Backing{Name: of.Name, Kind: of.Kind}
	}
	of := &l.st.scene.Solids[l.st.prisms[-1-t.ref].solid]
	return Backing{Name: of.Name, Kind: of.Kind}
}
