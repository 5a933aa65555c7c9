package sight

import (
	"math"

	"longhand/lang/units"
)

// CoveringIn is what hides the image of a body in a mirror from a camera at a frame,
// of the part of it that lies within the mirror and the frame: what stands between
// lens and glass, and what stands between glass and body. Distances are those the
// light goes. It is empty where nothing hides any of it, and where the mirror shows
// none of it.
func (r *Report) CoveringIn(mirror, camera, body int, f units.Frame) []Backing {
	l := r.stage.glance()
	defer r.stage.glanced(l)
	if !l.frame(camera, f) {
		return nil
	}
	pane, shown, m := &l.pane, &l.shown, &l.st.flats[mirror]
	if !l.glassItem(pane, m, glassSlack) || !l.glassItem(shown, m, 0) || !l.glassWindow(shown) {
		return nil
	}
	l.reflect(mirror, shown, f)
	var t *item
	for i := range l.images[:l.nimage] {
		if int(l.images[i].ref) == body {
			t = &l.images[i]
		}
	}
	if t == nil {
		return nil
	}
	e, w := &l.eye, &l.glass
	p0, p1 := t.p0, t.p1
	if !e.steep || p1-p0 >= 2*math.Pi {
		p0, p1 = math.Max(p0, w.p0), math.Min(p1, w.p1)
	}
	tally := newTally(l)
	area := 0.0
	var before, beyond []int // items and images in the column
	for i := range coverRays {
		p := p0 + (p1-p0)*(float64(i)+0.5)/coverRays
		cx, cy := e.column(p)
		_, lo, hi := t.slopes(cx, cy)
		wlo, whi := w.span(cx, cy)
		lo, hi = math.Max(lo, wlo), math.Min(hi, whi)
		if lo >= hi {
			continue
		}
		before, beyond = before[:0], beyond[:0]
		for k := range l.items[:l.n] {
			if e.holds(&l.items[k], p) {
				before = append(before, k)
			}
		}
		for k := range l.images[:l.nimage] {
			if o := &l.images[k]; o != t && e.holds(o, p) {
				beyond = append(beyond, k)
			}
		}
		for j := range coverRays {
			s0 := lo + (hi-lo)*float64(j)/coverRays
			s1 := lo + (hi-lo)*float64(j+1)/coverRays
			weight := e.weight(cx, cy, s0, s1)
			area += weight
			s := (s0 + s1) / 2
			if k, distance, ok := nearer(l.items, pane, before, cx, cy, s); ok {
				tally.add(k, weight, distance)
			} else if k, distance, ok := nearer(l.images, t, beyond, cx, cy, s); ok {
				tally.add(l.n+k, weight, distance)
			}
		}
	}
	return tally.backings(area)
}
