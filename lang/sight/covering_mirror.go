package sight

import "longhand/lang/units"

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
	tally := newTally(l)
	var before, beyond []int // items and images in the column
	area := l.eye.sound(coverRays, t, &l.glass, func(p float64) {
		before = l.eye.holding(before, l.items[:l.n], nil, p)
		beyond = l.eye.holding(beyond, l.images[:l.nimage], t, p)
	}, func(r sounding) {
		if k, distance, ok := nearer(l.items, pane, before, r); ok {
			tally.add(k, r.weight, distance)
		} else if k, distance, ok := nearer(l.images, t, beyond, r); ok {
			tally.add(l.n+k, r.weight, distance)
		}
	})
	return tally.backings(area)
}
