package sight

import (
	"math"
	"slices"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// A mirror shows the world turned over across its plane, through the mirror as
// through a window. An upright mirror's images are upright prisms and cylinders
// again, so they are swept like the rest: within the window that is both in the
// frame and in the glass, behind what really stands between lens and glass, and
// behind other images. Nothing is left out as the camera's own: its own image is
// what a mirror gives away.

// glassSlack is how far before the mirror's plane a real thing must stand to
// hide it: the wall it hangs on doesn't.
const glassSlack = 0.01 // metres

// mirrors measures every body in every mirror that a camera sees at a frame,
// which the looker has turned to.
func (l *looker) mirrors(camera int, f units.Frame, put func(row int, s area)) {
	for m := range l.st.scene.Mirrors {
		pane, shown := &l.pane, &l.shown
		if !l.glassItem(pane, &l.st.flats[m], glassSlack) || !l.glassItem(shown, &l.st.flats[m], 0) || !l.glassWindow(shown) {
			continue
		}
		l.reflect(m, shown, f)
		l.cover.win = &l.glass
		for i := range l.images[:l.nimage] {
			t := &l.images[i]
			if t.ref < 0 || l.st.ignores(camera, int(t.ref)) {
				continue
			}
			put((m+1)*len(l.st.shapes)+int(t.ref), l.image(t, pane))
		}
	}
}

// image measures an image in the glass, past what hides the glass and past
// other images.
func (l *looker) image(t, pane *item) area {
	c := &l.cover
	if !c.begin(t) {
		return area{}
	}
	for i := range l.items[:l.n] {
		if o := &l.items[i]; l.eye.mayCover(&o.extent, &pane.extent) && !c.hide(o, pane) {
			return c.hidden(t)
		}
	}
	for i := range l.images[:l.nimage] {
		if o := &l.images[i]; o != t && l.eye.mayCover(&o.extent, &t.extent) && !c.hide(o, t) {
			return c.hidden(t)
		}
	}
	return c.shown(t)
}

// glassItem sees the mirror itself, moved a little towards its bright face;
// false where the lens is not before that face or the mirror is out of frame.
func (l *looker) glassItem(t *item, m *upflat, toward float64) bool {
	e := &l.eye
	n := m.b.Sub(m.a).Unit().Left().Mul(toward)
	aq, al := e.place(m.a.X+n.X, m.a.Y+n.Y)
	bq, bl := e.place(m.b.X+n.X, m.b.Y+n.Y)
	if aq*bl-al*bq <= 1e-9 {
		return false
	}
	l.pts = append(l.pts[:0], [2]float64{aq, al}, [2]float64{bq, bl})
	return e.prismItem(t, l.pts, m.z0-e.z, m.z1-e.z) && e.meets(t)
}

// glassWindow is the part of the frame that the glass fills.
func (l *looker) glassWindow(t *item) bool {
	e, w, g := &l.eye, &l.eye.win, &l.glass
	*g = window{p0: w.p0, p1: w.p1, smin: w.smin, smax: w.smax}
	g.lo, g.hi, g.kinks = append(g.loBuf[:0], w.lo...), append(g.hiBuf[:0], w.hi...), append(g.kinkBuf[:0], w.kinks...)
	near := t.front[0]
	g.lo = append(g.lo, line{near.a * t.h0, near.b * t.h0})
	g.hi = append(g.hi, line{near.a * t.h1, near.b * t.h1})
	at := func(i int) line {
		if i < len(g.lo) {
			return g.lo[i]
		}
		return g.hi[i-len(g.lo)]
	}
	for i := range len(g.lo) + len(g.hi) {
		for j := range i {
			a, b := at(i).a-at(j).a, at(i).b-at(j).b
			switch {
			case e.steep:
				p := math.Atan2(-a, b)
				g.kinks = append(g.kinks, p, p+math.Pi)
			case b != 0:
				g.kinks = append(g.kinks, -a/b)
			}
		}
	}
	if !e.steep {
		g.p0, g.p1 = max(g.p0, t.p0), min(g.p1, t.p1)
		return g.p0 < g.p1
	}
	// Only the columns between the mirror's ends, which are l.pts.
	g.kinks = append(g.kinks, t.corners...)
	a, b := l.pts[0], l.pts[1]
	const steep = 1e12
	g.lo = append(g.lo, line{steep * a[1], -steep * a[0]}, line{-steep * b[1], steep * b[0]})
	return true
}

// reflect makes the images of everything before a mirror.
func (l *looker) reflect(m int, glass *item, f units.Frame) {
	if l.images == nil {
		l.images = make([]item, len(l.items))
	}
	e := &l.eye
	fl := &l.st.flats[m]
	aq, al := e.place(fl.a.X, fl.a.Y)
	bq, bl := e.place(fl.b.X, fl.b.Y)
	a := geom.Vec{X: aq, Y: al}
	n := geom.Vec{X: bq, Y: bl}.Sub(a).Unit().Left()
	turn := func(p [2]float64) ([2]float64, float64) { // the image, and how far before the plane it is
		d := (p[0]-a.X)*n.X + (p[1]-a.Y)*n.Y
		return [2]float64{p[0] - 2*d*n.X, p[1] - 2*d*n.Y}, d
	}
	l.nimage = 0
	add := func(ref int32, ok bool) {
		t := &l.images[l.nimage]
		if ok && e.meets(t) {
			t.ref, t.capped, t.cap = ref, true, glass.front[0]
			l.nimage++
		}
	}
	turnAll := func() bool {
		before := false
		for i, p := range l.pts {
			q, d := turn(p)
			l.pts[i] = q
			before = before || d > 1e-6
		}
		slices.Reverse(l.pts)
		return before
	}
	for i := range l.st.prisms {
		p := &l.st.prisms[i]
		if p.shut != nil && !p.shut.has(f) {
			continue
		}
		l.pts = l.pts[:0]
		for _, v := range p.points {
			q, left := e.place(v.X, v.Y)
			l.pts = append(l.pts, [2]float64{q, left})
		}
		add(int32(-1-i), turnAll() && e.prismItem(&l.images[l.nimage], l.pts, p.z0-e.z, p.z1-e.z))
	}
	for i := range l.st.shapes {
		s, pose := &l.st.shapes[i], l.st.scene.Bodies[i].At(f)
		if pose.Height <= 0 || s.reach == 0 {
			continue
		}
		q, left := e.place(pose.X, pose.Y)
		h0 := pose.Z - e.z
		if s.radius > 0 {
			c, d := turn([2]float64{q, left})
			add(int32(i), d > -s.radius && e.roundItem(&l.images[l.nimage], c[0], c[1], s.radius, h0, h0+pose.Height))
			continue
		}
		l.placeShape(s, pose, q, left)
		add(int32(i), turnAll() && e.prismItem(&l.images[l.nimage], l.pts, h0, h0+pose.Height))
	}
}
