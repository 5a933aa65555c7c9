package bind

import (
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

func (l *line) pillar(s *syntax.Pillar) {
	p := &plan.Pillar{}
	l.declare(s.Name, p)
	l.plan.Set.Pillars = append(l.plan.Set.Pillars, p)
	l.fill(p, func() {
		at, _, ok := l.somewhere(s.At, false)
		l.bad = l.bad || !ok
		l.flat(s.At.Point)
		p.Centre = at.Vec
		p.High = l.high(s.High, plan.Range{High: wallHigh})
		l.need(s.Round != nil, s.Name, "pillar `%s` needs how thick it is: round 0.4 m", s.Name.Text)
		p.Round = l.length(s.Round, "round", limits{0, 100, true})
	})
}

func (l *line) block(s *syntax.Block) {
	b := &plan.Block{}
	l.declare(s.Name, b)
	l.plan.Set.Blocks = append(l.plan.Set.Blocks, b)
	l.fill(b, func() {
		b.Polygon = l.outline(s.Corners, s.Name, "block")
		b.High = l.high(s.High, plan.Range{High: wallHigh})
	})
}

func (l *line) platform(s *syntax.Platform) {
	p := &plan.Platform{}
	l.declare(s.Name, p)
	l.plan.Set.Platforms = append(l.plan.Set.Platforms, p)
	l.fill(p, func() {
		p.Polygon = l.outline(s.Corners, s.Name, "platform")
		l.need(s.High != nil, s.Name, "platform `%s` needs its height: high 1.2 m", s.Name.Text)
		p.High = l.high(s.High, plan.Range{})
	})
}

func (l *line) stairs(s *syntax.Stairs) {
	st := &plan.Stairs{}
	l.declare(s.Name, st)
	l.plan.Set.Stairs = append(l.plan.Set.Stairs, st)
	l.fill(st, func() {
		if len(s.Points) != 2 {
			l.bad = true // the grammar has seen to it
			return
		}
		foot, head := l.end(s.Points[0]), l.end(s.Points[1])
		st.Foot, st.Head = foot.Vec, head.Vec
		if foot.z != nil {
			st.FootZ = *foot.z
		}
		if p := s.Points[1].Point; p != nil && p.Z != nil {
			l.errorf(CodeWrongPhrase, l.at(p.Z), "how high the head of stairs is comes from `rise`")
		}
		l.need(s.Width != nil, s.Name, "stairs `%s` need their width: width 1.2 m", s.Name.Text)
		l.need(s.Rise != nil, s.Name, "stairs `%s` need how far they rise: rise 2.7 m", s.Name.Text)
		st.Width = l.length(s.Width, "width", limits{0, 100, true})
		st.Rise = l.length(s.Rise, "rise", limits{0, 100, true})
		if !l.bad && st.Foot.Dist(st.Head) < nothing {
			l.errorf(CodeOutOfRange, l.at(s.Points[1]), "stairs `%s` have no length: head and foot are the same point", s.Name.Text)
		}
	})
}

func (l *line) grid(s *syntax.Grid) {
	g := &plan.Grid{}
	l.declare(s.Name, g)
	l.plan.Set.Grids = append(l.plan.Set.Grids, g)
	l.fillFirst(g, func() {
		g.Polygon = l.outline(s.Corners, s.Name, "grid")
		g.High = l.high(s.High, plan.Range{High: wallHigh})
		l.need(s.Hang != nil, s.Name, "grid `%s` needs its hanging points: points 48", s.Name.Text)
		g.Points = l.whole(s.Hang, "points", 1, 100000)
	})
}

// end is the foot or head of stairs.
func (l *line) end(c *syntax.Corner) spot {
	s, _, ok := l.somewhere(&syntax.Place{Node: c.Node, Name: c.Name, Point: c.Point, Plus: c.Plus}, false)
	l.bad = l.bad || !ok
	return s
}

// outline is the outline of something with an area: three corners or more, whose
// sides do not cross.
func (l *line) outline(c syntax.Corners, name *syntax.Name, what string) []geom.Vec {
	points := l.corners(c)
	if l.bad || len(points) < 3 { // the grammar asks for three
		l.bad = true
		return points
	}
	n := len(points)
	for i := range points {
		if points[i].Dist(points[(i+1)%n]) < nothing {
			l.errorf(CodeOutOfRange, l.at(c.Points[(i+1)%n]), "this corner of %s `%s` is the same point as the one before it", what, name.Text)
			return points
		}
	}
	for i := range points {
		for j := i + 1; j < n; j++ {
			if cross(points[i], points[(i+1)%n], points[j], points[(j+1)%n]) {
				l.errorf(CodeOutOfRange, l.at(c.Points[0]).Join(l.at(c.Points[n-1])), "the sides of %s `%s` cross: give its corners in order, going round", what, name.Text)
				return points
			}
		}
	}
	if area(points) < nothing*nothing {
		l.errorf(CodeOutOfRange, l.at(c.Points[0]).Join(l.at(c.Points[n-1])), "%s `%s` has no area: its corners lie on a line", what, name.Text)
	}
	return points
}

// cross reports whether two sides cross inside of both.
func cross(p, q, r, s geom.Vec) bool {
	d := func(a, b, c geom.Vec) float64 { return b.Sub(a).Cross(c.Sub(a)) }
	return d(p, q, r)*d(p, q, s) < 0 && d(r, s, p)*d(r, s, q) < 0
}

func area(points []geom.Vec) float64 {
	sum := 0.0
	for i, p := range points {
		sum += p.Cross(points[(i+1)%len(points)])
	}
	if sum < 0 {
		sum = -sum
	}
	return sum / 2
}
