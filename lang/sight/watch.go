package sight

import (
	"math"

	"longhand/lang/units"
)

// watch makes the stage one whose report is asked about some bodies only.
func (st *stage) watch(o Options) {
	st.unlit = o.NoGlares
	if o.Watch == nil {
		return
	}
	st.watched = make([][]int, len(st.scene.Cameras))
	st.ignored = make([][]bool, len(st.scene.Cameras))
	for c := range st.watched {
		st.ignored[c] = make([]bool, len(st.shapes))
		for i := range st.shapes {
			if o.Watch(c, i) {
				st.watched[c] = append(st.watched[c], i)
			} else {
				st.ignored[c][i] = true
			}
		}
	}
}

// partly is whether the report has less than everything.
func (st *stage) partly() bool { return st.watched != nil || st.unlit }

// ignores is whether nobody asks what a camera sees of a body.
func (st *stage) ignores(camera, body int) bool {
	return st.ignored != nil && st.ignored[camera][body]
}

// lookOut makes the wedge of the eye, which is set, no larger than it has to be
// for the bodies that are watched, and is false where none of them is in frame.
// What is before them is in the wedge, too.
func (w *tileWorker) lookOut(camera int, f units.Frame) bool {
	if w.st.watched == nil || w.eye.steep || !w.direct() {
		return true
	}
	e := &w.eye
	places := w.places(f)
	p0, p1, least := math.Inf(1), math.Inf(-1), far
	for _, i := range w.st.watched[camera] {
		q, left := e.place(places[i].X, places[i].Y)
		if e.misses(q, left, w.st.shapes[i].reach) || w.st.owned(camera, i, f) {
			continue
		}
		if t := &w.shown; w.seeBody(t, &w.st.shapes[i], w.st.scene.Bodies[i].At(f)) {
			p0, p1, least = min(p0, t.p0), max(p1, t.p1), min(least, t.w0)
		}
	}
	if p0 > p1 {
		return false
	}
	e.wedge = newWedge(max(p0, e.win.p0), min(p1, e.win.p1))
	if least > 0 {
		e.wedge.deep = (1 + 1e-9) / least
	}
	return true
}

// owned is whether a body is a camera's own at a frame.
func (st *stage) owned(camera, body int, f units.Frame) bool {
	for _, o := range st.owns[camera] {
		if o.body == body && o.From <= f && f <= o.To {
			return true
		}
	}
	return false
}
