package sight

import (
	"math"
	"slices"
)

// live is one of the items that cover part of a cell: its bounds at both ends.
type live struct {
	lo0, hi0, lo1, hi1 float64
}

// trapezoid is a cell between stations a and b as lines: of the item within the
// window, and of what covers it.
type trapezoid struct {
	p0, p1             float64
	lo0, hi0, lo1, hi1 float64 // the item
	fl0, ce0, fl1, ce1 float64 // the window
	live               []live
}

// cell measures between stations a and b.
func (c *cover) cell() area {
	a, b := &c.ends[c.a], &c.ends[1-c.a]
	z := &c.zoid
	z.p0, z.p1 = a.p, b.p
	z.lo0, z.hi0, z.lo1, z.hi1 = a.lo, a.hi, b.lo, b.hi
	if c.clipped {
		z.fl0, z.ce0, z.fl1, z.ce1 = a.floor, a.ceiling, b.floor, b.ceiling
	}
	z.live = z.live[:0]
	m := (a.p + b.p) / 2
	for i := range c.partial {
		o := &c.partial[i]
		if !c.e.holds(o.item, m) {
			continue
		}
		oa, ob := a.over[i], b.over[i]
		if passes(oa.ahead(), ob.ahead()) && c.splits < maxSplits {
			return c.split(c.passing(o, a.p, b.p), true)
		}
		var l live
		nearer := oa.ahead()+ob.ahead() > 0
		if o.reach {
			// They may be as near as each other at both ends.
			cx, cy := c.e.column(m)
			nearer = o.enter(cx, cy) > o.of.enter(cx, cy)
		}
		if nearer && c.splits < maxSplits {
			if k := o.bend(o.of, oa, ob); k > 0 {
				return c.split(a.p+(b.p-a.p)*k, false)
			}
		}
		l.lo0, l.hi0 = o.before(o.of, oa, nearer)
		l.lo1, l.hi1 = o.before(o.of, ob, nearer)
		if l.hi0 <= l.lo0 && l.hi1 <= l.lo1 {
			continue
		}
		// wholly above or below the item at both ends, and so between
		if l.hi0 <= z.lo0 && l.hi1 <= z.lo1 || l.lo0 >= z.hi0 && l.lo1 >= z.hi1 {
			continue
		}
		if l.lo0 <= z.lo0 && l.lo1 <= z.lo1 && l.hi0 >= z.hi0 && l.hi1 >= z.hi1 {
			m := c.chords
			c.unsure = c.unsure || l.lo0 > z.lo0-m || l.lo1 > z.lo1-m || l.hi0 < z.hi0+m || l.hi1 < z.hi1+m
			z.live = z.live[:0]
			return area{whole: c.measure(z).whole}
		}
		z.live = append(z.live, l)
	}
	c.unsure = c.unsure || len(z.live) > 0
	return c.measure(z)
}

// passes is whether what is so much nearer at the two ends of a cell comes to the
// front or falls behind in it; faces that lie on each other do neither.
func passes(ahead0, ahead1 float64) bool {
	return (ahead0 < -thin && ahead1 > thin) || (ahead0 > thin && ahead1 < -thin)
}

// maxSplits bounds how often a cell is split within a split: two fronts that lie
// on each other pass at no column in particular, and what is left of the cell is
// then thinner than matters.
const maxSplits = 6

// split measures a cell on either side of a column within it. Where an item
// passes the one that is measured there, since they reach into each other, the
// cell is left out by a hair on both sides.
func (c *cover) split(p float64, hair bool) area {
	c.splits++
	start, end := c.ends[c.a].p, c.ends[1-c.a].p
	gap := 0.0
	if hair {
		gap = 2 * thin
	}
	var sum area
	if p-gap-start > thin {
		c.stand(&c.ends[1-c.a], p-gap)
		sum = sum.add(c.cell())
	}
	if end-(p+gap) > thin {
		c.stand(&c.ends[c.a], p+gap)
		c.stand(&c.ends[1-c.a], end)
		sum = sum.add(c.cell())
	} else {
		c.stand(&c.ends[1-c.a], end)
	}
	c.splits--
	return sum
}

// passing is the column between two at which o enters as near as what is
// measured: by false position, with the end that stays halved (the Illinois
// rule), which is done at once where both fronts are straight.
func (c *cover) passing(o *over, a, b float64) float64 {
	ahead := func(p float64) float64 {
		cx, cy := c.e.column(p)
		return o.enter(cx, cy) - o.of.enter(cx, cy)
	}
	da, db := ahead(a), ahead(b)
	p, side := a, 0
	for range 20 {
		p = (a*db - b*da) / (db - da)
		d := ahead(p)
		switch {
		case math.Abs(d) < 1e-10:
			return p
		case (d > 0) == (da > 0):
			a, da = p, d
			if side == 1 {
				db /= 2
			}
			side = 1
		default:
			b, db = p, d
			if side == 2 {
				da /= 2
			}
			side = 2
		}
	}
	return p
}

// measure measures a cell of lines.
func (c *cover) measure(z *trapezoid) area {
	c.cuts = c.cuts[:0]
	if c.clipped {
		c.cross(z.lo0-z.fl0, z.lo1-z.fl1)
		c.cross(z.lo0-z.ce0, z.lo1-z.ce1)
		c.cross(z.hi0-z.fl0, z.hi1-z.fl1)
		c.cross(z.hi0-z.ce0, z.hi1-z.ce1)
	}
	for i := range z.live {
		l := &z.live[i]
		c.cross(l.lo0-z.lo0, l.lo1-z.lo1)
		c.cross(l.lo0-z.hi0, l.lo1-z.hi1)
		c.cross(l.hi0-z.lo0, l.hi1-z.lo1)
		c.cross(l.hi0-z.hi0, l.hi1-z.hi1)
		c.cross(l.hi0-l.lo0, l.hi1-l.lo1)
		if c.clipped {
			c.cross(l.lo0-z.fl0, l.lo1-z.fl1)
			c.cross(l.lo0-z.ce0, l.lo1-z.ce1)
			c.cross(l.hi0-z.fl0, l.hi1-z.fl1)
			c.cross(l.hi0-z.ce0, l.hi1-z.ce1)
		}
		for j := range i {
			k := &z.live[j]
			c.cross(l.lo0-k.lo0, l.lo1-k.lo1)
			c.cross(l.hi0-k.hi0, l.hi1-k.hi1)
			c.cross(l.lo0-k.hi0, l.lo1-k.hi1)
			c.cross(l.hi0-k.lo0, l.hi1-k.lo1)
		}
	}
	bend := math.Abs(c.e.fwd[2])
	if bend > 0 {
		bend *= z.taper(c.clipped)
	}
	if len(c.cuts) == 0 {
		return c.piece(z, 0, 1, bend)
	}
	slices.Sort(c.cuts)
	var sum area
	last := 0.0
	for _, k := range c.cuts {
		sum = sum.add(c.piece(z, last, k, bend))
		last = k
	}
	return sum.add(c.piece(z, last, 1, bend))
}

// cross cuts a cell where a difference of two lines changes sign.
func (c *cover) cross(d0, d1 float64) {
	if d0 < 0 && d1 > 0 || d0 > 0 && d1 < 0 {
		c.cuts = append(c.cuts, d0/(d0-d1))
	}
}

// piece measures the part of a cell from k0 to k1, 0 and 1 being its ends, in
// which no two lines cross; bend is by how much the weight may bend over all of it.
func (c *cover) piece(z *trapezoid, k0, k1, bend float64) area {
	width := (z.p1 - z.p0) * (k1 - k0)
	if width < thin {
		return area{}
	}
	m := (k0 + k1) / 2
	var sum area
	// In level columns the weight only depends on the slope: where the bounds keep
	// to theirs its middle will do.
	bend *= k1 - k0
	if !c.e.steep && bend < 0.02 {
		sum = c.column(z, m, false)
		sum.whole, sum.open = sum.whole*width, sum.open*width
	} else { // two points of Gauss, over and over where the weight bends much
		n := 1
		if !c.e.steep {
			n += int(min(7, 4*bend))
		}
		half := (k1 - k0) / float64(2*n)
		for i := range n {
			m, d := k0+half*float64(2*i+1), half/math.Sqrt(3)
			sum = sum.add(c.column(z, m-d, false)).add(c.column(z, m+d, false))
		}
		sum.whole, sum.open = sum.whole*width/float64(2*n), sum.open*width/float64(2*n)
	}
	if c.box != nil && sum.open > 0 {
		c.column(z, k0, true)
		c.column(z, k1, true)
	}
	return sum
}

// taper is by how much the bounds of a cell change, in slope, from end to end:
// what comes to a corner of the frame, or of what covers it, does so from nothing.
func (z *trapezoid) taper(clipped bool) float64 {
	most := max(math.Abs(z.lo1-z.lo0), math.Abs(z.hi1-z.hi0))
	if clipped {
		most = max(most, math.Abs(z.fl1-z.fl0), math.Abs(z.ce1-z.ce0))
	}
	for i := range z.live {
		l := &z.live[i]
		most = max(most, math.Abs(l.lo1-l.lo0), math.Abs(l.hi1-l.hi0))
	}
	return most
}

// column is the weight of the item in a column of a cell and of what is open.
func (c *cover) column(z *trapezoid, k float64, grow bool) area {
	lo, hi := z.lo0+(z.lo1-z.lo0)*k, z.hi0+(z.hi1-z.hi0)*k
	if c.clipped {
		lo = max(lo, z.fl0+(z.fl1-z.fl0)*k)
		hi = min(hi, z.ce0+(z.ce1-z.ce0)*k)
	}
	if hi-lo <= thin && !grow {
		return area{}
	}
	cx, cy := c.e.column(z.p0 + (z.p1-z.p0)*k)
	whole := c.shows(cx, cy, lo, hi, grow && len(z.live) == 0)
	if len(z.live) == 0 {
		return area{whole, whole}
	}
	c.gaps = c.gaps[:0]
	for i := range z.live {
		l := &z.live[i]
		g := gap{max(lo, l.lo0+(l.lo1-l.lo0)*k), min(hi, l.hi0+(l.hi1-l.hi0)*k)}
		if g.lo >= g.hi {
			continue
		}
		c.gaps = append(c.gaps, g)
		for j := len(c.gaps) - 1; j > 0 && c.gaps[j].lo < c.gaps[j-1].lo; j-- {
			c.gaps[j], c.gaps[j-1] = c.gaps[j-1], c.gaps[j]
		}
	}
	open := 0.0
	for _, g := range c.gaps {
		if g.lo-lo > thin {
			open += c.shows(cx, cy, lo, g.lo, grow)
		}
		lo = max(lo, g.hi)
	}
	if hi-lo > thin {
		open += c.shows(cx, cy, lo, hi, grow)
	}
	return area{whole, open}
}

// shows is the weight of an open interval; it grows the box instead when asked.
func (c *cover) shows(cx, cy, lo, hi float64, grow bool) float64 {
	if !grow {
		return c.e.weight(cx, cy, lo, hi)
	}
	for _, s := range [2]float64{lo, hi} {
		x, y := c.e.picture(cx, cy, s)
		c.box.Left, c.box.Right = min(c.box.Left, x), max(c.box.Right, x)
		c.box.Bottom, c.box.Top = min(c.box.Bottom, y), max(c.box.Top, y)
	}
	return 0
}
