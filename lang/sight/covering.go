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
	e := &l.eye
	p0, p1 := t.p0, t.p1
	if !e.steep || p1-p0 >= 2*math.Pi {
		p0, p1 = math.Max(p0, e.win.p0), math.Min(p1, e.win.p1)
	}
	tally := newTally(l)
	area := 0.0
	var held []int // items in the column
	for i := range coverRays {
		p := p0 + (p1-p0)*(float64(i)+0.5)/coverRays
		cx, cy := e.column(p)
		_, lo, hi := t.slopes(cx, cy)
		wlo, whi := e.win.span(cx, cy)
		lo, hi = math.Max(lo, wlo), math.Min(hi, whi)
		if lo >= hi {
			continue
		}
		held = held[:0]
		for k := range l.items[:l.n] {
			if o := &l.items[k]; o != t && e.holds(o, p) {
				held = append(held, k)
			}
		}
		for j := range coverRays {
			s0 := lo + (hi-lo)*float64(j)/coverRays
			s1 := lo + (hi-lo)*float64(j+1)/coverRays
			w := e.weight(cx, cy, s0, s1)
			area += w
			if k, distance, ok := nearer(l.items, t, held, cx, cy, (s0+s1)/2); ok {
				tally.add(k, w, distance)
			}
		}
	}
	return tally.backings(area)
}

// nearer is which of some items a ray meets nearer than an item that it meets, and
// how far away.
func nearer(items []item, t *item, held []int, cx, cy, s float64) (first int, distance float64, ok bool) {
	nearest, ok := t.reach(cx, cy, s)
	if !ok {
		return 0, 0, false
	}
	first = nothingBeyond
	for _, i := range held {
		if d, ok := items[i].reach(cx, cy, s); ok && d < nearest {
			nearest, first = d, i
		}
	}
	return first, nearest * math.Sqrt(cx*cx+cy*cy+s*s), first != nothingBeyond
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
