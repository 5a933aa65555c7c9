package sight

import (
	"math"
	"sort"

	"longhand/lang/units"
)

// Covering is what hides a body from a camera at a frame: what the rays that
// would meet the body within the frame meet first, by how much of its in-frame
// part each hides, most first. It is empty where nothing hides any of it, and
// where none of it is in frame.
func (r *Report) Covering(camera, body int, f units.Frame) []Backing {
	l := newGlancer(r.stage)
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
	byName := map[[2]string]*Backing{}
	area := 0.0
	for i := range behindRays {
		p := p0 + (p1-p0)*(float64(i)+0.5)/behindRays
		cx, cy := e.column(p)
		_, lo, hi := t.slopes(cx, cy)
		wlo, whi := e.win.span(cx, cy)
		lo, hi = math.Max(lo, wlo), math.Min(hi, whi)
		if lo >= hi {
			continue
		}
		for j := range behindRays {
			s0 := lo + (hi-lo)*float64(j)/behindRays
			s1 := lo + (hi-lo)*float64(j+1)/behindRays
			w := e.weight(cx, cy, s0, s1)
			area += w
			if b, ok := l.before(t, p, cx, cy, (s0+s1)/2); ok {
				key := [2]string{b.Name, b.Kind}
				if have := byName[key]; have != nil {
					have.Share += w
					have.Distance = math.Min(have.Distance, b.Distance)
				} else {
					b.Share = w
					byName[key] = &b
				}
			}
		}
	}
	out := make([]Backing, 0, len(byName))
	for _, b := range byName {
		b.Share /= area
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

// before is what a ray meets nearer than an item that it meets.
func (l *looker) before(t *item, p, cx, cy, s float64) (Backing, bool) {
	own, ok := t.reach(cx, cy, s)
	if !ok {
		return Backing{}, false
	}
	nearest := own
	var first *item
	for i := range l.items[:l.n] {
		o := &l.items[i]
		if o == t || !l.eye.holds(o, p) {
			continue
		}
		if d, ok := o.reach(cx, cy, s); ok && d < nearest {
			nearest, first = d, o
		}
	}
	if first == nil {
		return Backing{}, false
	}
	b := l.named(first)
	b.Distance = nearest * math.Sqrt(cx*cx+cy*cy+s*s)
	return b, true
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
