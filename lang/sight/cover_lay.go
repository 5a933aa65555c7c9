package sight

import "math"

// lay fills breaks with the columns between which every bound is a line, or
// nearly one.
func (c *cover) lay(from, to float64) {
	c.breaks = append(c.breaks[:0], from)
	if c.clipped {
		c.add(from, to, c.win.kinks)
	}
	c.bends(c.t, c.reach, from, to)
	for i := range c.partial {
		o := &c.partial[i]
		if !o.inside {
			c.add(from, to, []float64{o.p0, o.p1})
		}
		c.bends(o.item, o.reach, from, to)
		if o.reach {
			c.breaks = appendMeetings(c.breaks, o.item, c.t, from, to)
		}
	}
	if c.e.steep {
		step := 0.02 // radians: columns by bearing bend what is straight
		if c.fine {
			step = 0.005
		}
		for p := from + step; p < to; p += step {
			c.breaks = append(c.breaks, p)
		}
	}
	c.breaks = append(c.breaks, to)
	b := c.breaks
	for i := 1; i < len(b); i++ {
		for j := i; j > 0 && b[j] < b[j-1]; j-- {
			b[j], b[j-1] = b[j-1], b[j]
		}
	}
}

// bends adds where an item's bounds bend; reach is whether it reaches into the
// item measured, or the other way round.
func (c *cover) bends(o *item, reach bool, from, to float64) {
	if o.round {
		c.bendRound(o, reach, from, to)
		return
	}
	c.add(from, to, o.corners)
	if o.h0 >= 0 || o.h1 <= 0 || o.capped {
		c.add(from, to, o.rear)
	}
}

// roundCuts are cosines of evenly spaced angles, without the ends: the columns
// that cut a cylinder's curve into chords of one arc each.
var roundCuts = func() (cuts [finest + 1][]float64) {
	for n := range cuts {
		for i := 1; i < n; i++ {
			cuts[n] = append(cuts[n], -math.Cos(math.Pi*float64(i)/float64(n)))
		}
	}
	return cuts
}()

// finest is the most chords a cylinder's curve is cut into.
const finest = 128

// bendRound cuts a cylinder's curve: into as few chords as stay within
// roundSlack of it, or where it is to be fine, a quarter as wide.
func (c *cover) bendRound(o *item, reach bool, from, to float64) {
	a, b := o.p0, o.p1
	if !c.e.steep || o.inside {
		a, b = max(a, c.win.p0), min(b, c.win.p1)
	}
	n := finest / 4
	if !o.inside && !c.e.steep {
		n = c.arcs(o, reach)
	}
	if c.fine {
		n = min(4*n, finest)
	}
	if c.finer {
		n = finest
	}
	m, h := (a+b)/2, (b-a)/2
	for _, k := range roundCuts[n] {
		p := m + h*k
		if c.e.steep {
			c.add(from, to, []float64{p})
		} else if p > from && p < to {
			c.breaks = append(c.breaks, p)
		}
	}
}

// arcs is how many chords keep a cylinder's curves within roundSlack. Its
// nearness in level columns is (b +- sqrt(b^2 - a k))/k with b linear in the
// column, so that the curve of a face at height h lies off the line between its
// ends by up to h sqrt(max(b^2 - a k))/k = h r / sqrt(k (q^2 - r^2)); n arcs leave
// that times 1 - cos(pi/2n), nearly (pi/2n)^2/2. A face out of the window does
// not matter.
func (c *cover) arcs(o *item, reach bool) int {
	r2 := o.q*o.q + o.l*o.l - o.k
	ahead := o.q*o.q - r2
	if ahead <= 0 || o.q <= 0 {
		return finest / 4
	}
	h := 0.0
	for _, v := range [2]float64{o.h0, o.h1} {
		lo, hi := min(v*o.w0, v*o.w1), max(v*o.w0, v*o.w1)
		if hi > c.win.smin && lo < c.win.smax {
			h = max(h, math.Abs(v))
		}
	}
	if reach {
		// Where one begins within the other also bounds the other's faces.
		h = c.reached
	}
	height := min(c.t.hi, c.win.smax) - max(c.t.lo, c.win.smin)
	n := int(math.Pi/2*math.Sqrt(h*math.Sqrt(r2/(o.k*ahead))/(2*roundSlack*height))) + 1
	return max(1, min(finest/4, n))
}

func (c *cover) add(from, to float64, ps []float64) {
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
