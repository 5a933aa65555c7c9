package scene

import "math"

// Op is what a path does next.
type Op uint8

const (
	Move  Op = iota // to At
	Draw            // a straight line to At
	Curve           // a cubic through the controls C1 and C2 to At
	Turn            // an arc of a circle about C1, swept by Sweep degrees, to At
	Close           // back to the last Move
)

// Cmd is one step of a path. At is always where the step ends.
type Cmd struct {
	Op     Op
	At     Point
	C1, C2 Point
	Radius float64
	From   float64 // degrees, where an arc starts
	Sweep  float64 // degrees, positive counter-clockwise as seen, at most 360
}

// Path is any line or area. Several closed rings in one path make holes
// (even-odd).
type Path struct {
	Class string
	Cmds  []Cmd
}

func (*Path) item() {}

// NewPath starts an empty path.
func NewPath(class string) *Path { return &Path{Class: class} }

// MoveTo lifts the pen.
func (p *Path) MoveTo(at Point) *Path { return p.add(Cmd{Op: Move, At: at}) }

// LineTo draws a straight line; on an empty path it only moves.
func (p *Path) LineTo(at Point) *Path {
	if len(p.Cmds) == 0 {
		return p.MoveTo(at)
	}
	return p.add(Cmd{Op: Draw, At: at})
}

// CurveTo draws a cubic curve.
func (p *Path) CurveTo(c1, c2, at Point) *Path {
	if len(p.Cmds) == 0 {
		p.MoveTo(c1)
	}
	return p.add(Cmd{Op: Curve, C1: c1, C2: c2, At: at})
}

// Arc draws part of a circle from a direction by a sweep, both in degrees,
// positive sweeps counter-clockwise as seen. A straight line leads to its start
// from wherever the pen is; on an empty path it moves there.
func (p *Path) Arc(center Point, radius, from, sweep float64) *Path {
	sweep = math.Max(-360, math.Min(360, sweep))
	if start := center.Polar(radius, from); len(p.Cmds) == 0 || p.pen().Dist(start) > 1e-9 {
		p.LineTo(start)
	}
	return p.add(Cmd{Op: Turn, C1: center, Radius: radius, From: from, Sweep: sweep, At: center.Polar(radius, from+sweep)})
}

// Close draws back to where the ring began.
func (p *Path) Close() *Path { return p.add(Cmd{Op: Close, At: p.start()}) }

// Through moves to the first point and draws lines through the others.
func (p *Path) Through(points ...Point) *Path {
	for i, q := range points {
		if i == 0 {
			p.MoveTo(q)
		} else {
			p.LineTo(q)
		}
	}
	return p
}

// Ring adds a closed ring of straight lines.
func (p *Path) Ring(points ...Point) *Path {
	if len(points) == 0 {
		return p
	}
	return p.Through(points...).Close()
}

func (p *Path) add(c Cmd) *Path { p.Cmds = append(p.Cmds, c); return p }

func (p *Path) pen() Point {
	if len(p.Cmds) == 0 {
		return Point{}
	}
	return p.Cmds[len(p.Cmds)-1].At
}

func (p *Path) start() Point {
	for i := len(p.Cmds) - 1; i >= 0; i-- {
		if p.Cmds[i].Op == Move {
			return p.Cmds[i].At
		}
	}
	return Point{}
}

// Cubics is the path without arcs: each becomes cubics of at most a quarter
// turn, which stay within 0.03 % of the radius of the true circle.
func (p *Path) Cubics() []Cmd {
	out := make([]Cmd, 0, len(p.Cmds))
	for _, c := range p.Cmds {
		if c.Op != Turn {
			out = append(out, c)
			continue
		}
		n := int(math.Ceil(math.Abs(c.Sweep)/90 - 1e-9))
		for i := range n {
			from := c.From + c.Sweep*float64(i)/float64(n)
			out = append(out, quarter(c.C1, c.Radius, from, c.Sweep/float64(n)))
		}
	}
	return out
}

// quarter is the usual cubic for an arc: controls on the tangents at
// 4/3 tan(sweep/4) of the radius, which makes the middle exact.
func quarter(center Point, r, from, sweep float64) Cmd {
	k := r * 4 / 3 * math.Tan(sweep*math.Pi/180/4)
	a, b := center.Polar(r, from), center.Polar(r, from+sweep)
	return Cmd{Op: Curve, C1: a.Polar(k, from+90), C2: b.Polar(k, from+sweep-90), At: b}
}

// Flat is the path as polylines that leave it by no more than the tolerance in
// millimetres; closed tells for each whether it is a ring.
func (p *Path) Flat(tolerance float64) (lines [][]Point, closed []bool) {
	var line []Point
	end := func(ring bool) {
		if len(line) > 1 {
			lines, closed = append(lines, line), append(closed, ring)
		}
		line = nil
	}
	var pen Point
	for _, c := range p.Cubics() {
		if c.Op != Move && line == nil {
			line = []Point{pen} // goes on after a Close
		}
		switch c.Op {
		case Move:
			end(false)
			line = []Point{c.At}
		case Draw:
			line = append(line, c.At)
		case Curve:
			line = flatten(line, pen, c, tolerance)
		case Close:
			end(true)
		}
		pen = c.At
	}
	end(false)
	return lines, closed
}

// flatten adds points of a cubic. Over a step h a curve leaves its chord by at
// most h^2/8 |B”|, and |B”| is at most 6 times the larger second difference
// of the control points, so n steps leave 0.75 of that over n squared.
func flatten(line []Point, from Point, c Cmd, tolerance float64) []Point {
	d1 := from.Sub(c.C1.Mul(2)).Add(c.C2).Len()
	d2 := c.C1.Sub(c.C2.Mul(2)).Add(c.At).Len()
	n := int(math.Ceil(math.Sqrt(0.75 * math.Max(d1, d2) / math.Max(tolerance, 1e-4))))
	n = max(1, min(n, 1000))
	for i := 1; i < n; i++ {
		t := float64(i) / float64(n)
		u := 1 - t
		line = append(line, from.Mul(u*u*u).Add(c.C1.Mul(3*u*u*t)).Add(c.C2.Mul(3*u*t*t)).Add(c.At.Mul(t*t*t)))
	}
	return append(line, c.At)
}
