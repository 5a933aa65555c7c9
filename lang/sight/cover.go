package sight

import (
	"math"
)

// cover measures how much of an item shows in a window past nearer items.
//
// Most of what hides a body hides it from top to bottom: a wall, a door, somebody
// in front. Those are taken first, as ranges of columns. In the columns that are
// left, cells are cut wherever anything bends: at corners of silhouettes and of
// the window, and, for the curve of a cylinder, at a few columns across it.
// Between the ends of a cell every bound of what covers what is then a line, or
// within roundSlack of one; where two bounds change places it is cut again. What
// is left has its bounds in one order from end to end: it shows something
// everywhere within or nowhere, and its area is that of trapezoids.
type cover struct {
	e   *eye
	win *window
	box *Box // grown by what shows, when wanted

	from, to    float64 // the item's columns in the window
	reach       bool    // one of partial reaches into the item
	reached     float64 // the most that a face of such is above or below the lens
	fine        bool    // cut the curves of cylinders finely
	finer       bool    // always do
	t           *item
	clipped     bool // the window's bounds cross the item's
	under, over bool // a line of the window is the item's lower, upper bound
	bottom, top line
	partial     []over
	free        []gap // ranges of columns not hidden from top to bottom
	breaks      []float64
	ends        [2]station // of a cell, the first being a
	a           int
	zoid        trapezoid
	splits      int     // how deep in split
	chords      float64 // by how much chords may lie off curves, of the item and what covers it, in slope
	unsure      bool    // something may show by less than that
	cuts        []float64
	gaps        []gap
}

// over is an item that may cover part of another.
type over struct {
	*item
	of    *item // what it hides: the item measured or the pane of a mirror
	reach bool  // it reaches into the item, and one of them is round
}

// station is every bound at one column: of the item, the window, and the slopes
// that each of the partial items covers.
type station struct {
	p              float64
	lo, hi         float64 // the item's
	floor, ceiling float64 // the window's
	over           []bound
}

type bound struct {
	near, of float64 // nearness of it, and of what it may hide
	lo, hi   float64 // slopes it covers
}

// ahead is how much nearer it is than what it may hide.
func (b bound) ahead() float64 { return b.near - b.of }

type gap struct{ lo, hi float64 }

// thin is the width of a cell, or of what shows in a column, below which it is
// nothing: what is left between two walls that meet when their corners are
// rounded apart.
const thin = 1e-9

// roundSlack is how far the chords across a cylinder's curve may lie off it, as
// a part of the height of what is measured.
const roundSlack = 0.004

// begin readies the cover to measure t; false where none of it is in the
// window's columns.
func (c *cover) begin(t *item) bool {
	from, to := t.p0, t.p1
	if !c.e.steep {
		from, to = max(from, c.win.p0), min(to, c.win.p1)
	} else if t.inside || to-from >= 2*math.Pi {
		from, to = c.win.p0, c.win.p1
	}
	c.t, c.fine, c.reach, c.reached = t, c.finer, false, 0
	c.from, c.to = from, to
	c.partial = c.partial[:0]
	c.free = append(c.free[:0], gap{from, to})
	c.clipped = from < to && c.clips(t, from, to)
	return from < to
}

// clips is whether a line of the window comes and goes across t. A line below
// which, or above which, all of t's lower or upper bound lies takes its place.
func (c *cover) clips(t *item, from, to float64) bool {
	c.under, c.over = false, false
	if c.e.steep {
		return true
	}
	known := false
	var lo0, hi0, lo1, hi1 float64
	// t's upper bound is concave and its lower one convex: where they keep to one
	// side of a line at both ends, so they do between, if it is the right side.
	crosses := func(l line) bool {
		if !known {
			known = true
			_, lo0, hi0 = t.slopes(1, from)
			_, lo1, hi1 = t.slopes(1, to)
		}
		a, b := l.a+l.b*from, l.a+l.b*to
		return lo0 > a || lo1 > b || hi0 < a || hi1 < b
	}
	for _, l := range c.win.lo {
		if t.lo < l.a+max(l.b*from, l.b*to) {
			if c.under || crosses(l) {
				return true
			}
			c.under, c.bottom = true, l
		}
	}
	for _, l := range c.win.hi {
		if t.hi > l.a+min(l.b*from, l.b*to) {
			if c.over || crosses(l) {
				return true
			}
			c.over, c.top = true, l
		}
	}
	return false
}

// inWindow is whether some of t, of which begin was true, is in the window.
func (c *cover) inWindow(t *item) bool {
	if !c.clipped {
		return true
	}
	// Nearly always its middle tells.
	if !c.e.steep && !t.inside {
		p := (max(t.p0, c.win.p0) + min(t.p1, c.win.p1)) / 2
		_, lo, hi := t.slopes(1, p)
		floor, ceiling := c.win.span(1, p)
		if min(hi, ceiling)-max(lo, floor) > 1e-6 {
			return true
		}
	}
	return c.whole(t) > 0
}

// hide takes an item that may cover part of t, or of the pane t is seen in, into
// account; false when nothing of t is left.
func (c *cover) hide(o, of *item) bool {
	if c.e.steep || o.capped || of != c.t {
		c.partial = append(c.partial, over{item: o, of: of})
		return true
	}
	t := c.t
	n := len(c.free)
	a, b := max(o.p0, c.free[0].lo), min(o.p1, c.free[n-1].hi)
	if a >= b {
		return true
	}
	ea, eb, most := o.entry(a, b)
	// What begins beyond t hides none of it; nor does what begins beyond its
	// front, where nothing but the front shows.
	least := t.w0
	if t.h0 <= 0 && t.h1 >= 0 {
		least = min(t.enter(1, a), t.enter(1, b))
	} else if !t.round {
		least = t.rearmost(a, b)
	}
	if most <= least {
		return true
	}
	lo, hi := max(t.lo, c.win.smin), min(t.hi, c.win.smax)
	// Its upper bound is concave over the columns and its lower one convex, so
	// that it covers in between what it covers at both ends.
	top, bottom := o.h1*min(ea, eb), o.h0*min(ea, eb)
	if o.h1 < 0 {
		top = o.h1 * max(o.leave(1, a), o.leave(1, b))
		if o.h1 < t.h1 {
			top = min(top, o.h1*t.w1)
		}
	}
	if o.h0 > 0 {
		bottom = o.h0 * max(o.leave(1, a), o.leave(1, b))
		if o.h0 > t.h0 {
			bottom = max(bottom, o.h0*t.w1)
		}
	}
	if top >= hi && bottom <= lo && (min(ea, eb) >= t.w1 || min(ea, eb) >= t.foremost(a, b)) {
		c.take(a, b)
		return len(c.free) > 0
	}
	// Where it nowhere reaches up or down to t it is no matter.
	if o.h1 > 0 && o.h1*most <= lo || o.h0 < 0 && o.h0*most >= hi {
		return true
	}
	reach := false
	if (o.round || t.round) && o.w0 < t.w1 && t.w0 < o.w1 && !apart(o, t) {
		reach = o.shelves() || t.shelves() || t.mayPass(a, b, min(ea, eb), most)
	}
	c.partial = append(c.partial, over{o, of, reach})
	if reach {
		c.reach = true
		c.reached = max(c.reached, -o.h0, o.h1, -t.h0, t.h1, o.h0, -o.h1, t.h0, -t.h1)
	}
	return true
}

// shelves is whether its upper or lower face is seen, which is where another may
// stand on it, hang from it or come up behind its edge.
func (t *item) shelves() bool { return t.h1 < 0 || t.h0 > 0 }

// mayPass is whether another item, as near as given from the columns a to b, could
// come out of t or go into it between them: where a column enters a convex body
// is nowhere between two columns farther than at both.
func (t *item) mayPass(a, b, least, most float64) bool {
	ta, tb, tmost := t.entry(a, b)
	return least < tmost && min(ta, tb) < most
}

// take removes a range of columns from free.
func (c *cover) take(a, b float64) {
	for i := 0; i < len(c.free); i++ {
		g := c.free[i]
		switch {
		case b <= g.lo || a >= g.hi:
		case a <= g.lo && b >= g.hi:
			c.free = append(c.free[:i], c.free[i+1:]...)
			i--
		case a <= g.lo:
			c.free[i].lo = b
		case b >= g.hi:
			c.free[i].hi = a
		default:
			c.free[i].hi = a
			c.free = append(c.free, gap{})
			copy(c.free[i+2:], c.free[i+1:])
			c.free[i+1] = gap{b, g.hi}
			return
		}
	}
}

// entry is the nearness at which two columns enter o, and a bound of it between
// them.
func (o *item) entry(a, b float64) (ea, eb, most float64) {
	if o.inside {
		return far, far, far
	}
	if o.round {
		return o.enter(1, a), o.enter(1, b), o.w1
	}
	ea, eb, most = far, far, far
	for _, s := range o.front {
		va, vb := s.a+s.b*a, s.a+s.b*b
		ea, eb = min(ea, va), min(eb, vb)
		most = min(most, max(va, vb))
	}
	return ea, eb, most
}

// foremost is an upper bound of the nearness at which the columns from a to b
// enter t.
func (t *item) foremost(a, b float64) float64 {
	_, _, most := t.entry(a, b)
	return most
}

// rearmost is a lower bound of the nearness at which the columns from a to b
// leave a prism.
func (t *item) rearmost(a, b float64) float64 {
	w := t.w0
	for _, s := range t.back {
		w = max(w, min(s.a+s.b*a, s.a+s.b*b))
	}
	return w
}

// area is some of an item in the window, and how much of it nothing covers, in
// the picture plane at distance 1.
type area struct{ whole, open float64 }

func (a area) add(b area) area { return area{a.whole + b.whole, a.open + b.open} }

// result is the area of the item begun, when all that may hide it has been.
func (c *cover) result() area {
	c.unsure, c.chords = false, 2*roundSlack*(min(c.t.hi, c.win.smax)-max(c.t.lo, c.win.smin))
	a := c.sweep()
	if a.whole > 0 && a.open == 0 && !c.unsure {
		return a // in frame, and covered by more than chords may lie off their curves
	}
	if c.curved() && a.open < sliver*c.bounds() {
		// Chords won't do for so little, if there is anything.
		c.fine = true
		a = c.sweep()
	}
	return a
}

// sliver is the part of an item's bounds below which cylinders' curves are cut
// finely.
const sliver = 0.02

// bounds is about the area within the bounds of t and the window.
func (c *cover) bounds() float64 {
	wide := min(c.t.p1, c.win.p1) - max(c.t.p0, c.win.p0)
	return wide * (min(c.t.hi, c.win.smax) - max(c.t.lo, c.win.smin))
}

func (c *cover) curved() bool {
	for i := range c.partial {
		if c.partial[i].round {
			return true
		}
	}
	return c.t.round
}

// sweep measures the free columns, and the others as covered.
func (c *cover) sweep() area {
	var a area
	for _, g := range c.free {
		a = a.add(c.between(g.lo, g.hi))
	}
	if len(c.free) == 1 && c.free[0] == (gap{c.from, c.to}) {
		return a
	}
	partial := c.partial
	c.partial = c.partial[:0]
	box := c.box
	c.box = nil
	at := c.from
	for _, g := range c.free {
		a.whole += c.between(at, g.lo).whole
		at = g.hi
	}
	a.whole += c.between(at, c.to).whole
	c.partial, c.box = partial, box
	return a
}

// whole is the area of t in the window, whatever covers it.
func (c *cover) whole(t *item) float64 {
	if !c.begin(t) {
		return 0
	}
	box := c.box
	c.box = nil
	a := c.result()
	c.box = box
	return a.whole
}

// between measures the columns from one to another.
func (c *cover) between(from, to float64) area {
	if !c.smooth() {
		return c.cells(from, to)
	}
	// What stands before nothing of a cylinder needs no chords there.
	var sum area
	for from < to {
		next, free := c.stretch(from, to)
		if free {
			sum = sum.add(c.plain(from, next))
		} else {
			sum = sum.add(c.cells(from, next))
		}
		from = next
	}
	return sum
}

// cells measures the columns from one to another cell by cell.
func (c *cover) cells(from, to float64) area {
	var sum area
	if to-from < thin {
		return sum
	}
	c.lay(from, to)
	c.stand(&c.ends[c.a], c.breaks[0])
	for _, p := range c.breaks[1:] {
		if p-c.ends[c.a].p < thin {
			continue
		}
		c.stand(&c.ends[1-c.a], p)
		sum = sum.add(c.cell())
		c.a = 1 - c.a
	}
	return sum
}

// stand works out the bounds at a column.
func (c *cover) stand(st *station, p float64) {
	cx, cy := c.e.column(p)
	w, lo, hi := c.t.slopes(cx, cy)
	st.p, st.lo, st.hi = p, lo, hi
	switch {
	case c.clipped:
		st.floor, st.ceiling = c.win.span(cx, cy)
	default:
		if c.under {
			st.lo = c.bottom.a + c.bottom.b*p
		}
		if c.over {
			st.hi = c.top.a + c.top.b*p
		}
	}
	if cap(st.over) < len(c.partial) {
		st.over = make([]bound, len(c.partial)+8)
	}
	st.over = st.over[:len(c.partial)]
	for i := range c.partial {
		o := &c.partial[i]
		if !c.e.steep && (p < o.p0-2*thin || p > o.p1+2*thin) {
			continue // no cell with an end here is within it
		}
		b := bound{of: w}
		if o.of != c.t {
			b.of = o.of.enter(cx, cy)
		}
		b.near, b.lo, b.hi = o.slopes(cx, cy)
		st.over[i] = b
	}
}

// before narrows an interval of slopes that o covers at a column to those at
// which a ray meets it before t; it matters only where the ray meets t.
//
// A ray enters a rectangle through its near side, or, if it falls and the top is
// below the lens, through the top where that is farther along; and so from below.
// Comparing where it enters o and t gives an interval in every case, and is exact
// also for one standing on, hanging over or reaching into the other. Which of
// them begins nearer is for the caller to say, since at the very column where
// they meet it could be either.
func (o *item) before(t *item, b bound, nearer bool) (lo, hi float64) {
	lo, hi = b.lo, b.hi
	if nearer {
		if o.h1 < 0 && o.h1 < t.h1 {
			hi = min(hi, o.h1*b.of)
		}
		if o.h0 > 0 && o.h0 > t.h0 {
			lo = max(lo, o.h0*b.of)
		}
		return lo, hi
	}
	switch {
	case t.h1 < 0 && o.h1 > t.h1:
		return max(lo, t.h1*b.near), hi
	case t.h0 > 0 && o.h0 < t.h0:
		return lo, min(hi, t.h0*b.near)
	}
	return 0, 0
}

// bend is where, between the columns of two bounds as a part of the way, before
// changes from one of its two limits to the other, or 0: where the far edge of o
// comes out from under t, or goes in under it.
func (o *item) bend(t *item, a, b bound) float64 {
	var da, db float64
	switch {
	case o.h1 < 0 && o.h1 < t.h1:
		da, db = a.hi-o.h1*a.of, b.hi-o.h1*b.of
	case o.h0 > 0 && o.h0 > t.h0:
		da, db = a.lo-o.h0*a.of, b.lo-o.h0*b.of
	}
	if da < -thin && db > thin || da > thin && db < -thin {
		return da / (da - db)
	}
	return 0
}
