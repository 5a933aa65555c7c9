package sight

import "math"

// smooth is whether t is a cylinder in level columns of which the window takes
// nothing but by straight lines in place of its own bounds.
func (c *cover) smooth() bool {
	t := c.t
	return t.round && !c.clipped && !t.inside && !t.capped && !c.e.steep && t.p1-t.p0 < 1/thin
}

// stretch is how far on from a column, at most to another, either no partial item
// comes before t, or some item does at every column: and which of the two.
func (c *cover) stretch(from, to float64) (next float64, free bool) {
	next = to
	for i := range c.partial {
		o := &c.partial[i]
		if o.p0 <= from && o.p1 > from {
			return c.together(from, to), false
		}
		if o.p0 > from {
			next = min(next, o.p0)
		}
	}
	return next, true
}

// together is how far some partial item or other comes before t, one at from.
func (c *cover) together(from, to float64) float64 {
	for again := true; again && from < to; {
		again = false
		for i := range c.partial {
			if o := &c.partial[i]; o.p0 <= from && o.p1 > from {
				from, again = o.p1, true
			}
		}
	}
	return min(from, to)
}

// angled is a point of Gauss and Legendre's rule of four over angles: its sine
// and cosine, and its weight times the latter.
type angled struct{ sin, weight float64 }

// gauss4 are the points and weights of Gauss and Legendre's rule on -1 to 1.
var gauss4 = [4][2]float64{
	{-0.8611363115940526, 0.3478548451374538}, {-0.3399810435848563, 0.6521451548625461},
	{0.3399810435848563, 0.6521451548625461}, {0.8611363115940526, 0.3478548451374538},
}

// overAngles is the rule over the angles from a to b.
func overAngles(a, b float64) (rule [4]angled) {
	middle, half := (a+b)/2, (b-a)/2
	for i, g := range &gauss4 {
		sin, cos := math.Sincos(middle + half*g[0])
		rule[i] = angled{sin, half * g[1] * cos}
	}
	return rule
}

var overHalfTurn = overAngles(-math.Pi/2, math.Pi/2)

// plain measures columns of a cylinder before which nothing comes. Its bounds run
// like a circle's, so that by the angle about the middle of its columns
// everything is smooth.
func (c *cover) plain(from, to float64) area {
	if to-from < thin {
		return area{}
	}
	t := c.t
	if c.box != nil {
		c.cells(from, to)
	}
	m, h := (t.p0+t.p1)/2, (t.p1-t.p0)/2
	rule := &overHalfTurn
	if from != t.p0 || to != t.p1 {
		angle := func(p float64) float64 { return math.Asin(max(-1, min(1, (p-m)/h))) }
		part := overAngles(angle(from), angle(to))
		rule = &part
	}
	sum := 0.0
	for i := range rule {
		p := m + h*rule[i].sin
		_, lo, hi := t.slopes(1, p)
		if c.under {
			lo = c.bottom.a + c.bottom.b*p
		}
		if c.over {
			hi = c.top.a + c.top.b*p
		}
		if hi > lo {
			sum += rule[i].weight * c.e.weight(1, p, lo, hi)
		}
	}
	return area{h * sum, h * sum}
}
