package geom

import "math"

// cubic is a + b u + c u² + d u³ for u from 0 to 1. end is the point at u = 1,
// kept so that it is met without rounding.
type cubic struct{ a, b, c, d, end Vec }

// hermite is the cubic from p to q that leaves with derivative m and arrives
// with n.
func hermite(p, q, m, n Vec) cubic {
	d := q.Sub(p)
	return cubic{
		a: p, b: m,
		c: d.Mul(3).Sub(m.Mul(2)).Sub(n),
		d: m.Add(n).Sub(d.Mul(2)), end: q,
	}
}

func (c *cubic) at(u float64) Vec {
	if u == 1 {
		return c.end
	}
	return Vec{c.a.X + u*(c.b.X+u*(c.c.X+u*c.d.X)), c.a.Y + u*(c.b.Y+u*(c.c.Y+u*c.d.Y))}
}

func (c *cubic) d1(u float64) Vec {
	return Vec{c.b.X + u*(2*c.c.X+u*3*c.d.X), c.b.Y + u*(2*c.c.Y+u*3*c.d.Y)}
}

func (c *cubic) d2(u float64) Vec { return Vec{2*c.c.X + 6*u*c.d.X, 2*c.c.Y + 6*u*c.d.Y} }

func (c *cubic) speed(u float64) float64 {
	x := c.b.X + u*(2*c.c.X+u*3*c.d.X)
	y := c.b.Y + u*(2*c.c.Y+u*3*c.d.Y)
	return math.Sqrt(x*x + y*y)
}

// swell is the derivative of speed; 0 where the cubic stands still.
func (c *cubic) swell(u float64) float64 {
	if v := c.speed(u); v > 0 {
		return c.d1(u).Dot(c.d2(u)) / v
	}
	return 0
}

// stillSlop is the part of its greatest speed below which a cubic counts as
// standing still, in a cusp: there its direction is that of what comes next.
const stillSlop = 1e-9

func (c *cubic) scale() float64 { return c.b.Len() + c.c.Len() + c.d.Len() }

// tangent is the unit direction at u. In a cusp (a way there and back) it is
// the direction of leaving at the start, of arriving at the end.
func (c *cubic) tangent(u float64) Vec {
	d, scale := c.d1(u), c.scale()
	if d.Len() > stillSlop*scale {
		return d.Unit()
	}
	d = c.d2(u)
	if d.Len() <= stillSlop*scale {
		d = c.d
	} else if u > 0.5 {
		d = d.Mul(-1)
	}
	return d.Unit()
}

// curvature is (x'y" - y'x") / v³; 0 on a straight run through a cusp.
func (c *cubic) curvature(u float64) float64 {
	d := c.d1(u)
	v := d.Len()
	if v <= stillSlop*c.scale() {
		return 0
	}
	return d.Cross(c.d2(u)) / (v * v * v)
}

// sub is the same curve from u0 to u1, backwards where u1 < u0.
func (c *cubic) sub(u0, u1 float64) cubic {
	k := u1 - u0
	return cubic{
		a:   c.at(u0),
		b:   c.d1(u0).Mul(k),
		c:   c.c.Add(c.d.Mul(3 * u0)).Mul(k * k),
		d:   c.d.Mul(k * k * k),
		end: c.at(u1),
	}
}
