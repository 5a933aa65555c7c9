package sight

import "math"

// eye is a lens at one frame. Its floor coordinates are depth q along the
// level direction it is panned to, l to the left of that, and h above it.
//
// A direction is (cx, cy, s): a ray that runs (cx, cy) on the floor and climbs
// s on the way. Directions with one (cx, cy) make a column: an upright half
// plane through the lens. Columns are numbered by a parameter p:
//
//	level:    (cx, cy) = (1, p)             p = l/q
//	steep:    (cx, cy) = (cos p, sin p)     p = the bearing off the pan
//
// In level columns everything straight in the world is straight in (p, s), but
// columns beside or behind the lens have no p; a frame that holds a nearly
// upright direction is swept in steep columns.
type eye struct {
	x, y, z  float64
	cos, sin float64 // of the pan
	steep    bool
	win      window
	fwd      [3]float64 // the optical axis in (q, l, h)
	left, up [3]float64
	tx, ty   float64 // half the frame's width and height at distance 1
	area     float64 // of the frame at distance 1
	wedge    wedge   // of the floor that is looked at, level only: all that matters of what holds the frame
}

// wedge is the floor between two columns: reach times n0 or n1 is how far past its
// sides a circle's middle may lie for the circle to reach in. What is deeper than
// deep is not looked at.
type wedge struct{ p0, p1, n0, n1, deep float64 }

func newWedge(p0, p1 float64) wedge {
	return wedge{p0, p1, math.Sqrt(1 + p0*p0), math.Sqrt(1 + p1*p1), math.Inf(1)}
}

// line is s = a*cx + b*cy.
type line struct{ a, b float64 }

// window is the convex part of the directions that is looked at: p0 to p1, above
// every line of lo, below every line of hi.
type window struct {
	p0, p1     float64
	lo, hi     []line
	kinks      []float64 // p at which the lines cross
	smin, smax float64   // bounds of s in it
	loBuf      [8]line
	hiBuf      [8]line
	kinkBuf    [40]float64
}

// steepest is the least depth per length of a frame's corner at which the frame
// is still swept in level columns.
const steepest = 0.2

// far is a slope or a nearness (1/depth) as good as infinite.
const far = 1e9

// set turns the eye to a view; it is false where the camera sees nothing.
func (e *eye) set(c *Camera, v View) bool {
	if !(v.Focal > 0 && c.Width > 0 && c.Height > 0) {
		return false
	}
	e.x, e.y, e.z = v.X, v.Y, v.Z
	e.sin, e.cos = math.Sincos(v.Pan)
	st, ct := math.Sincos(v.Tilt)
	e.fwd = [3]float64{ct, 0, st}
	e.left = [3]float64{0, 1, 0}
	e.up = [3]float64{-st, 0, ct}
	if v.Roll != 0 {
		sr, cr := math.Sincos(v.Roll)
		e.left = [3]float64{-st * sr, cr, ct * sr}
		e.up = [3]float64{-st * cr, -sr, ct * cr}
	}
	e.tx, e.ty = c.Width/(2*v.Focal), c.Height/(2*v.Focal)
	e.area = 4 * e.tx * e.ty
	e.frameWindow()
	return true
}

// frameWindow makes the window of the frame's rectangle.
func (e *eye) frameWindow() {
	var corner [4][3]float64
	for k := range 3 {
		f, l, u := e.fwd[k], e.tx*e.left[k], e.ty*e.up[k]
		corner[0][k], corner[1][k], corner[2][k], corner[3][k] = f+l+u, f-l+u, f-l-u, f+l-u
	}
	least := math.Inf(1)
	across := e.tx*e.tx + e.ty*e.ty + 1 // as far as all corners are from the lens, squared
	for i := range corner {
		least = min(least, corner[i][0])
	}
	least /= math.Sqrt(across)
	w := &e.win
	e.steep = least < steepest
	w.lo, w.hi, w.kinks = w.loBuf[:0], w.hiBuf[:0], w.kinkBuf[:0]
	w.smin, w.smax = -far, far
	if !e.steep {
		w.p0, w.p1, w.smin, w.smax = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	} else {
		w.p0, w.p1 = e.bearings(&corner)
	}
	for i := range corner {
		c := corner[i]
		p := c[1] / c[0]
		if e.steep {
			p = math.Atan2(c[1], c[0])
		} else {
			w.p0, w.p1 = min(w.p0, p), max(w.p1, p)
			s := c[2] / c[0]
			w.smin, w.smax = min(w.smin, s), max(w.smax, s)
		}
		w.kinks = append(w.kinks, p)
	}
	for k := range 4 {
		// the half space n . d >= 0 of one side of the frame
		t, axis, sign := e.tx, e.left, 1.0
		if k >= 2 {
			t, axis = e.ty, e.up
		}
		if k&1 == 1 {
			sign = -1
		}
		e.bound([3]float64{t*e.fwd[0] + sign*axis[0], t*e.fwd[1] + sign*axis[1], t*e.fwd[2] + sign*axis[2]})
	}
	e.wedge = newWedge(w.p0, w.p1)
}

// bound adds the half space n . (cx, cy, s) >= 0 to the window.
func (e *eye) bound(n [3]float64) {
	const upright = 1e-12
	w := &e.win
	switch {
	case n[2] < -upright:
		w.hi = append(w.hi, line{-n[0] / n[2], -n[1] / n[2]})
	case n[2] > upright:
		w.lo = append(w.lo, line{-n[0] / n[2], -n[1] / n[2]})
	case e.steep: // all of a column or none of it
		w.lo = append(w.lo, line{-n[0] / upright, -n[1] / upright})
	}
	// An upright side in level columns bounds p alone, which p0 and p1 already
	// do: its two corners have the same p.
}

// bearings is the range of bearings off the pan in a steep frame: the whole
// turn where the frame holds the zenith or the nadir.
func (e *eye) bearings(corner *[4][3]float64) (float64, float64) {
	// d is inside the frame where |d.left| <= tx d.fwd and |d.up| <= ty d.fwd
	for _, z := range [2]float64{1, -1} {
		ahead := z * e.fwd[2]
		if ahead > 0 && math.Abs(e.left[2]) <= e.tx*ahead && math.Abs(e.up[2]) <= e.ty*ahead {
			return -math.Pi, math.Pi
		}
	}
	// Without them the frame lies in less than half a turn about its middle.
	middle := math.Atan2(e.fwd[1], e.fwd[0])
	lo, hi := 0.0, 0.0
	for i := range corner {
		d := math.Atan2(corner[i][1], corner[i][0]) - middle
		if d > math.Pi {
			d -= 2 * math.Pi
		} else if d < -math.Pi {
			d += 2 * math.Pi
		}
		lo, hi = min(lo, d), max(hi, d)
	}
	return middle + lo, middle + hi
}

// column is the (cx, cy) of a parameter.
func (e *eye) column(p float64) (cx, cy float64) {
	if e.steep {
		s, c := math.Sincos(p)
		return c, s
	}
	return 1, p
}

// span is the part of a column that the window lets through; empty where lo >= hi.
func (w *window) span(cx, cy float64) (lo, hi float64) {
	lo, hi = -far, far
	for _, l := range w.lo {
		lo = max(lo, l.a*cx+l.b*cy)
	}
	for _, l := range w.hi {
		hi = min(hi, l.a*cx+l.b*cy)
	}
	return lo, hi
}

// weight is the picture's area, at distance 1, of the slopes from lo to hi in a
// column, per unit of the column's parameter. The picture plane's area element
// is dp ds / D^3, D being the way along the optical axis of (cx, cy, s), for
// level and steep columns alike; over s that integrates in closed form.
func (e *eye) weight(cx, cy, lo, hi float64) float64 {
	flat := e.fwd[0]*cx + e.fwd[1]*cy
	d0, d1 := flat+e.fwd[2]*lo, flat+e.fwd[2]*hi
	d := d0 * d1
	return (hi - lo) * (d0 + d1) / (2 * d * d)
}

// place puts a point of the world in the eye's coordinates.
func (e *eye) place(x, y float64) (q, l float64) {
	dx, dy := x-e.x, y-e.y
	return dx*e.cos + dy*e.sin, dy*e.cos - dx*e.sin
}

// picture is where a direction falls in the frame, in fractions from its left
// and from its bottom.
func (e *eye) picture(cx, cy, s float64) (x, y float64) {
	d := e.fwd[0]*cx + e.fwd[1]*cy + e.fwd[2]*s
	l := e.left[0]*cx + e.left[1]*cy + e.left[2]*s
	u := e.up[0]*cx + e.up[1]*cy + e.up[2]*s
	return 0.5 - l/(2*e.tx*d), 0.5 + u/(2*e.ty*d)
}
