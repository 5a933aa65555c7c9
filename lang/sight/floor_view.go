package sight

import (
	"math/bits"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// floorView sees the floor one frame at a time.
//
// At one height above the floor, what a frame shows is a convex area of half
// planes, and what a solid hides of it is another: the solid drawn out from the
// lens. So a row of the grid is a few spans of bits. With a height to see up to,
// the same is done at a few levels, which settles nearly every cell; the rest
// are settled one at a time, by the slopes at which their column is open.
type floorView struct {
	r        *floorRun
	look     *looker
	unseen   []uint64
	times    []int32
	backward bool

	frame   floorArea
	shadows []floorArea
	nshadow int
	row     []uint64
	wide    floorArea // with a height: all that could be in frame
	gaps    []gap
	onSeen  func(column, row int, f units.Frame)
}

func newFloorView(r *floorRun) *floorView {
	return &floorView{r: r, look: newLooker(r.st), unseen: make([]uint64, r.m.words*r.m.Rows),
		shadows: make([]floorArea, len(r.st.prisms)),
		row:     make([]uint64, r.m.words)}
}

// chunk goes through frames, every camera at each.
func (v *floorView) chunk(c Frames) {
	step, from, end := units.Frame(1), c.From, c.To+1
	if v.backward {
		step, from, end = -1, c.To, c.From-1
	}
	for f := from; f != end; f += step {
		for k, camera := range v.r.cameras {
			if !v.r.rolling[k].has(f) {
				continue
			}
			if f == from || !v.r.rolling[k].has(f-step) || v.r.st.changes(camera, f-step, f) {
				v.see(camera, f)
			}
		}
	}
}

// changes is whether a camera's view or a door differs between two frames.
func (st *stage) changes(camera int, f, g units.Frame) bool {
	c := &st.scene.Cameras[camera]
	if c.At(f) != c.At(g) {
		return true
	}
	for i := range st.prisms {
		if s := st.prisms[i].shut; s != nil && s.has(f) != s.has(g) {
			return true
		}
	}
	return false
}

// see clears the cells that a camera sees at a frame.
func (v *floorView) see(camera int, f units.Frame) {
	c := &v.r.st.scene.Cameras[camera]
	if !v.look.eye.set(c, c.At(f)) {
		return
	}
	m := v.r.m
	if v.look.eye.z > 0 { // from below the floor nobody sees it
		v.level(0, f)
	}
	if m.Height > 0 {
		v.level(m.Height, f)
		v.level(m.Height/2, f)
		v.column(f)
	}
}

// level clears the cells whose middles, at a height, are in sight.
func (v *floorView) level(z float64, f units.Frame) {
	m, e := v.r.m, &v.look.eye
	h := z - e.z
	v.frame.reset()
	v.frameArea(&v.frame, h, h)
	ready := false
	for row := range m.Rows {
		from, to := v.frame.span(row, m.Columns)
		if from > to || !v.candidates(row, from, to) {
			continue
		}
		if !ready {
			v.cast(h, h, f)
			ready = true
		}
		v.uncover(row, from, to)
		v.mark(row, from, to, f)
	}
}

// candidates puts the unseen cells of a span in row; false where there are none.
func (v *floorView) candidates(row, from, to int) bool {
	line := v.unseen[row*v.r.m.words:]
	var any uint64
	for w := from >> 6; w <= to>>6; w++ {
		v.row[w] = line[w] & spanMask(w, from, to)
		any |= v.row[w]
	}
	return any != 0
}

// uncover takes what the shadows hide out of row.
func (v *floorView) uncover(row, from, to int) {
	for i := range v.shadows[:v.nshadow] {
		a, b := v.shadows[i].span(row, v.r.m.Columns)
		a, b = max(a, from), min(b, to)
		if a > b {
			continue
		}
		clearSpan(v.row, a, b)
		var any uint64
		for w := from >> 6; w <= to>>6; w++ {
			any |= v.row[w]
		}
		if any == 0 {
			return
		}
	}
}

// mark notes the cells left in row as seen.
func (v *floorView) mark(row, from, to int, f units.Frame) {
	line := v.unseen[row*v.r.m.words:]
	for w := from >> 6; w <= to>>6; w++ {
		line[w] &^= v.row[w]
		if v.times == nil && v.onSeen == nil {
			continue
		}
		for b := v.row[w]; b != 0; b &= b - 1 {
			column := w<<6 + bits.TrailingZeros64(b)
			if v.onSeen != nil {
				v.onSeen(column, row, f)
			} else {
				v.times[row*v.r.m.Columns+column] = int32(f)
			}
		}
	}
}

// frameArea adds the four sides of the frame, at the heights above the lens from
// h0 to h1: all of the floor that has a point in frame between them, and
// perhaps, for two heights, a little more.
func (v *floorView) frameArea(a *floorArea, h0, h1 float64) {
	e := &v.look.eye
	for k := range 4 {
		t, axis, sign := e.tx, e.left, 1.0
		if k >= 2 {
			t, axis = e.ty, e.up
		}
		if k&1 == 1 {
			sign = -1
		}
		// t*fwd + sign*axis of (q, l, h) >= 0, turned back to the floor's x and y
		nq, nl := t*e.fwd[0]+sign*axis[0], t*e.fwd[1]+sign*axis[1]
		nh := t*e.fwd[2] + sign*axis[2]
		v.halfPlane(a, -(nq*e.cos - nl*e.sin), -(nq*e.sin + nl*e.cos), max(nh*h0, nh*h1))
	}
}

// halfPlane adds n . (p - lens) <= c.
func (v *floorView) halfPlane(a *floorArea, nx, ny, c float64) {
	e, o := &v.look.eye, v.r.m.Origin
	a.within(v.r.m, nx, ny, c+nx*(e.x-o.X)+ny*(e.y-o.Y))
}

// cast draws out what every solid hides at two heights above the lens, which may
// be one, at a frame.
func (v *floorView) cast(h0, h1 float64, f units.Frame) {
	v.nshadow = 0
	e := &v.look.eye
	for i := range v.r.st.prisms {
		p := &v.r.st.prisms[i]
		q, l := e.place(p.middle.X, p.middle.Y)
		if p.shut != nil && !p.shut.has(f) || e.misses(q, l, p.reach) {
			continue
		}
		a := &v.shadows[v.nshadow]
		a.reset()
		if v.shadow(a, p, h0) && (h1 == h0 || v.shadow(a, p, h1)) {
			v.nshadow++
		}
	}
}

// shadow adds to a the half planes of what a solid hides at a height h above
// the lens: the union of its footprint drawn out by 1/t for every t at which the
// way from the lens to there is between its faces.
func (v *floorView) shadow(a *floorArea, p *prism, h float64) bool {
	e := &v.look.eye
	h0, h1 := p.z0-e.z, p.z1-e.z
	near, farther := 0.0, 1.0 // t from near to farther
	switch {
	case h < 0:
		near, farther = max(0, h1/h), min(1, h0/h)
	case h > 0:
		near, farther = max(0, h0/h), min(1, h1/h)
	case h0 > 0 || h1 < 0:
		return false
	}
	if near > farther || farther <= 0 {
		return false
	}
	lens := geom.Vec{X: e.x, Y: e.y}
	n := len(p.points)
	front := false
	facing := func(i int) float64 {
		return p.points[i].Sub(lens).Cross(p.points[(i+1)%n].Sub(lens))
	}
	before := facing(n - 1)
	for i := range n {
		s, cross := p.points[i].Sub(lens), facing(i)
		d := p.points[(i+1)%n].Sub(p.points[i])
		switch {
		case cross < -1e-12: // faces the lens
			front = true
			v.halfPlane(a, d.Y, -d.X, cross/farther)
			if before >= -1e-12 { // all lies to the right of this corner
				v.halfPlane(a, -s.Y, s.X, 0)
			}
		case cross > 1e-12 && near > 0:
			v.halfPlane(a, d.Y, -d.X, cross/near)
		}
		if cross >= -1e-12 && before < -1e-12 {
			v.halfPlane(a, s.Y, -s.X, 0)
		}
		before = cross
	}
	return front || !(h0 < 0 && h1 > 0)
}
