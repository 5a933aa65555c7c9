package sight

import (
	"math"
	"slices"
)

// cover measures how much of an item shows in a window past nearer items.
//
// The item's columns are cut where anything bends: at corners of silhouettes
// and of the window, and, for cylinders, a few times across. Within such a cell
// every bound of what covers what is a line or a gentle curve; where two bounds
// change places between the ends of a cell it is cut again at the crossing. What
// is left has bounds in one order from end to end, so that the open part of a
// column changes smoothly, is integrated by Simpson's rule, and is nowhere
// greater than nought unless it is so at an end or in the middle.
type cover struct {
	e      *eye
	win    *window
	breaks []float64
	cuts   []float64
	at     [3]stations // of a cell: its two ends, and a point within
	active []int32
	gaps   []gap // of a column
	box    *Box  // grown by what shows, when wanted

	// In a mirror the first before of the nearer items are real ones: they
	// count where they cover the pane, not the image beyond it.
	pane   *item
	before int
}

// stations are the bounds at one column: of the item, the window, and the slopes
// each nearer item covers.
type stations struct {
	cx, cy         float64
	lo, hi         float64 // the item's
	floor, ceiling float64 // the window's
	lows, highs    []float64
	ahead          []float64 // how much nearer than the item each is
}

type gap struct{ lo, hi float64 }

// parts across half a cylinder between the cuts made for its curve.
var roundCuts = [...]float64{-0.94, -0.77, -0.5, -0.17, 0.17, 0.5, 0.77, 0.94}

// measure is the item's area in the window and the part of it not covered, both
// in the picture plane at distance 1.
func (c *cover) measure(t *item, nearer []*item) (whole, seen float64) {
	from, to := t.p0, t.p1
	if !c.e.steep {
		from, to = math.Max(from, c.win.p0), math.Min(to, c.win.p1)
	} else if t.inside || to-from >= 2*math.Pi {
		from, to = c.win.p0, c.win.p1
	}
	if !(from < to) {
		return 0, 0
	}
	c.lay(t, nearer, from, to)
	for i := 1; i < len(c.breaks); i++ {
		w, s := c.cell(t, nearer, c.breaks[i-1], c.breaks[i])
		whole, seen = whole+w, seen+s
	}
	return whole, seen
}

// lay fills breaks with the columns between which everything is smooth.
func (c *cover) lay(t *item, nearer []*item, from, to float64) {
	c.breaks = append(c.breaks[:0], from, to)
	c.add(from, to, c.win.kinks...)
	c.add(from, to, t.corners...)
	if t.round || c.e.steep {
		c.addRound(t, from, to)
	}
	for _, o := range nearer {
		if !o.inside {
			c.add(from, to, o.p0, o.p1)
		}
		c.add(from, to, o.corners...)
		if o.round {
			c.addRound(o, from, to)
		}
	}
	if c.e.steep {
		for p := math.Ceil(from/0.1) * 0.1; p < to; p += 0.1 {
			c.add(from, to, p)
		}
	}
	slices.Sort(c.breaks)
}

func (c *cover) addRound(o *item, from, to float64) {
	a, b := math.Max(o.p0, from), math.Min(o.p1, to)
	if c.e.steep && !o.inside {
		a, b = o.p0, o.p1
	}
	for _, k := range roundCuts {
		c.add(from, to, (a+b)/2+(b-a)/2*k)
	}
}

func (c *cover) add(from, to float64, ps ...float64) {
	for _, p := range ps {
		if c.e.steep {
			const turn = 2 * math.Pi
			for p += math.Ceil((from-p)/turn) * turn; p < to; p += turn {
				c.breaks = append(c.breaks, p)
			}
		} else if p > from && p < to {
			c.breaks = append(c.breaks, p)
		}
	}
}

// thin is the width of a cell below which it is skipped: what is left of two
// walls that meet when their corners are rounded apart.
const thin = 1e-9

func (c *cover) cell(t *item, nearer []*item, a, b float64) (whole, seen float64) {
	if b-a < thin {
		return 0, 0
	}
	m := (a + b) / 2
	c.active = c.active[:0]
	for i, o := range nearer {
		if c.e.holds(o, m) {
			c.active = append(c.active, int32(i))
		}
	}
	c.stand(&c.at[0], t, nearer, a)
	c.stand(&c.at[2], t, nearer, b)
	c.cuts = c.cuts[:0]
	c.crossings(t, nearer, &c.at[0], &c.at[2], a, b)
	if len(c.cuts) == 0 {
		return c.simpson(t, nearer, a, b)
	}
	slices.Sort(c.cuts)
	last := a
	for _, p := range append(c.cuts, b) {
		if p-last < thin {
			continue
		}
		c.stand(&c.at[2], t, nearer, p)
		w, s := c.simpson(t, nearer, last, p)
		whole, seen = whole+w, seen+s
		last = p
		c.at[0], c.at[2] = c.at[2], c.at[0]
	}
	return whole, seen
}

// holds is whether a column passes through an item's range.
func (e *eye) holds(o *item, p float64) bool {
	if e.steep && !o.inside {
		const turn = 2 * math.Pi
		d := math.Mod(p-o.p0, turn)
		if d < 0 {
			d += turn
		}
		return d < o.p1-o.p0
	}
	return o.p0 < p && p < o.p1
}

// simpson integrates between stations 0 and 2.
func (c *cover) simpson(t *item, nearer []*item, a, b float64) (whole, seen float64) {
	c.stand(&c.at[1], t, nearer, (a+b)/2)
	k := [3]float64{(b - a) / 6, (b - a) / 6 * 4, (b - a) / 6}
	for i := range c.at {
		w, s := c.column(&c.at[i])
		whole, seen = whole+k[i]*w, seen+k[i]*s
	}
	return whole, seen
}

// stand works out the bounds at a column.
func (c *cover) stand(st *stations, t *item, nearer []*item, p float64) {
	cx, cy := c.e.column(p)
	st.cx, st.cy = cx, cy
	w, lo, hi := t.slopes(cx, cy)
	st.lo, st.hi = lo, hi
	st.floor, st.ceiling = c.win.span(cx, cy)
	st.lows, st.highs, st.ahead = st.lows[:0], st.highs[:0], st.ahead[:0]
	for _, i := range c.active {
		t, w := t, w
		if int(i) < c.before {
			t, w = c.pane, c.pane.enter(cx, cy)
		}
		ow, l, h := nearer[i].covers(cx, cy, t, w)
		st.lows, st.highs, st.ahead = append(st.lows, l), append(st.highs, h), append(st.ahead, ow-w)
	}
}

// covers is the interval of slopes at which a ray in a column meets o before t,
// whose nearness there is w; it matters only where the ray meets t.
//
// A ray enters a rectangle through its near side, or, if it falls and the top is
// below the lens, through the top where that is farther along; and so from below.
// Comparing where it enters o and t gives an interval in every case, and is exact
// also for one standing on, hanging over or reaching into the other.
func (o *item) covers(cx, cy float64, t *item, w float64) (ow, lo, hi float64) {
	ow, lo, hi = o.slopes(cx, cy)
	if ow >= w {
		if o.h1 < 0 && o.h1 < t.h1 {
			hi = math.Min(hi, o.h1*w)
		}
		if o.h0 > 0 && o.h0 > t.h0 {
			lo = math.Max(lo, o.h0*w)
		}
		return ow, lo, hi
	}
	switch {
	case t.h1 < 0 && o.h1 > t.h1:
		return ow, math.Max(lo, t.h1*ow), hi
	case t.h0 > 0 && o.h0 < t.h0:
		return ow, lo, math.Min(hi, t.h0*ow)
	}
	return ow, 0, 0
}

// crossings cuts a cell where two bounds change places between its ends.
func (c *cover) crossings(t *item, nearer []*item, a, b *stations, pa, pb float64) {
	cross := func(da, db float64) {
		if da < 0 && db > 0 || da > 0 && db < 0 {
			p := pa + (pb-pa)*da/(da-db)
			if p-pa > thin && pb-p > thin {
				c.cuts = append(c.cuts, p)
			}
		}
	}
	cross(a.lo-a.floor, b.lo-b.floor)
	cross(a.lo-a.ceiling, b.lo-b.ceiling)
	cross(a.hi-a.floor, b.hi-b.floor)
	cross(a.hi-a.ceiling, b.hi-b.ceiling)
	for i := range a.lows {
		if da, db := a.ahead[i], b.ahead[i]; int(c.active[i]) >= c.before && (da < 0 && db > 0 || da > 0 && db < 0) {
			p := c.swap(t, nearer[c.active[i]], pa, pb, da)
			c.cuts = append(c.cuts, math.Max(pa, p-2*thin), math.Min(pb, p+2*thin))
		}
		for _, s := range [4][2]float64{{a.lo, b.lo}, {a.hi, b.hi}, {a.floor, b.floor}, {a.ceiling, b.ceiling}} {
			cross(a.lows[i]-s[0], b.lows[i]-s[1])
			cross(a.highs[i]-s[0], b.highs[i]-s[1])
		}
		for j := range i {
			cross(a.lows[i]-a.lows[j], b.lows[i]-b.lows[j])
			cross(a.highs[i]-a.highs[j], b.highs[i]-b.highs[j])
			cross(a.lows[i]-a.highs[j], b.lows[i]-b.highs[j])
			cross(a.highs[i]-a.lows[j], b.highs[i]-b.lows[j])
		}
	}
}

// swap is the column between a and b where o, nearer or farther at a, passes t:
// where the two reach into each other.
func (c *cover) swap(t, o *item, a, b, ahead float64) float64 {
	for range 40 {
		m := (a + b) / 2
		cx, cy := c.e.column(m)
		if (o.enter(cx, cy)-t.enter(cx, cy) > 0) == (ahead > 0) {
			a = m
		} else {
			b = m
		}
	}
	return (a + b) / 2
}

// column is the weight of the item in a column and of the part not covered.
func (c *cover) column(st *stations) (whole, seen float64) {
	lo, hi := math.Max(st.lo, st.floor), math.Min(st.hi, st.ceiling)
	if !(hi-lo > thin) {
		return 0, 0
	}
	whole = c.e.weight(st.cx, st.cy, lo, hi)
	c.gaps = c.gaps[:0]
	for i, l := range st.lows {
		l, h := math.Max(l, lo), math.Min(st.highs[i], hi)
		if l < h {
			c.gaps = append(c.gaps, gap{l, h})
		}
	}
	for i := 1; i < len(c.gaps); i++ {
		for j := i; j > 0 && c.gaps[j].lo < c.gaps[j-1].lo; j-- {
			c.gaps[j], c.gaps[j-1] = c.gaps[j-1], c.gaps[j]
		}
	}
	for _, g := range c.gaps {
		if g.lo-lo > thin {
			seen += c.shows(st, lo, g.lo)
		}
		lo = math.Max(lo, g.hi)
	}
	if hi-lo > thin {
		seen += c.shows(st, lo, hi)
	}
	return whole, seen
}

func (c *cover) shows(st *stations, lo, hi float64) float64 {
	if c.box != nil {
		for _, s := range [2]float64{lo, hi} {
			x, y := c.e.picture(st.cx, st.cy, s)
			c.box.Left, c.box.Right = math.Min(c.box.Left, x), math.Max(c.box.Right, x)
			c.box.Bottom, c.box.Top = math.Min(c.box.Bottom, y), math.Max(c.box.Top, y)
		}
	}
	return c.e.weight(st.cx, st.cy, lo, hi)
}
