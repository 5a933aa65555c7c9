package bind

import (
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func (l *line) wall(s *syntax.Wall) {
	w := &plan.Wall{Thick: solid.WallThick, Wild: s.Wild, Glass: s.Glass}
	l.declare(s.Name, w)
	l.plan.Set.Walls = append(l.plan.Set.Walls, w)
	l.fillFirst(w, func() {
		w.Line = l.corners(s.Corners)
		w.High = l.high(s.High, plan.Range{High: wallHigh})
		if s.Thick != nil {
			w.Thick, w.ThickGiven = l.length(s.Thick, "thick", limits{0, 5, true}), true
		}
		if !l.bad {
			for i := 1; i < len(w.Line); i++ {
				if w.Line[i-1].Dist(w.Line[i]) < nothing {
					l.errorf(CodeOutOfRange, l.at(s.Points[i]), "this piece of wall `%s` has no length: it ends where it begins", s.Name.Text)
				}
			}
		}
	})
}

// nothing is a length too short to build, in metres.
const nothing = 0.001

// corners are the points of a line or outline.
func (l *line) corners(c syntax.Corners) []geom.Vec {
	var out []geom.Vec
	for _, p := range c.Points {
		s, _, ok := l.somewhere(&syntax.Place{Node: p.Node, Name: p.Name, Point: p.Point, Plus: p.Plus}, false)
		if !ok {
			l.bad = true
		}
		l.flat(p.Point)
		out = append(out, s.Vec)
	}
	return out
}

// flat reports a height where a point can only lie on the floor.
func (l *line) flat(p *syntax.Point) {
	if p != nil && p.Z != nil {
		l.errorf(CodeWrongPhrase, l.at(p.Z), "a point of the ground plan has no height; heights are said with `high`")
	}
}

// high is a range of heights; one length reaches that high from the floor.
func (l *line) high(r *syntax.Range, otherwise plan.Range) plan.Range {
	if r == nil {
		return otherwise
	}
	lim := limits{-100, 1000, false}
	if r.High == nil {
		return plan.Range{High: l.length(r.Low, "high", limits{0, 1000, true})}
	}
	low, ok := l.quantity(r.Low, units.Length, "high", lim)
	if !ok {
		return otherwise
	}
	high, ok := l.quantity(r.High, units.Length, "high", lim)
	if ok && high <= low {
		l.errorf(CodeOutOfRange, l.at(r), "`high` goes from %s up to %s; the second must be higher", l.show(low, units.Length), l.show(high, units.Length))
	}
	return plan.Range{Low: units.Metres(low), High: units.Metres(high)}
}

func lengthOf(line []geom.Vec) units.Metres {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += line[i-1].Dist(line[i])
	}
	return units.Metres(sum)
}

// onWall finds a wall; nil where it is none or has a mistake.
func (l *line) onWall(n *syntax.Name) *plan.Wall {
	w := is[*plan.Wall](l, n, "only a wall has openings, holes and mirrors", plan.KindWall)
	if w == nil || w.Bad {
		l.bad = true
		return nil
	}
	return w
}

// slop forgives the rounding of converted lengths, in metres.
const slop = 0.0005

// opening is a stretch of a wall and its heights, inside of the wall.
func (l *line) opening(o *syntax.Opening, r *syntax.Range, what string, otherwise plan.Range) (plan.On, plan.Range) {
	w := l.onWall(o.Wall)
	from, ok := l.quantity(o.From, units.Length, "on", limits{0, 10000, false})
	to, ok2 := 0.0, false
	if ok {
		to, ok2 = l.quantity(o.To, units.Length, "to", limits{0, 10000, false})
	}
	high := l.high(r, otherwise)
	on := plan.On{Wall: w, From: units.Metres(from), To: units.Metres(to)}
	if ok && ok2 && to <= from {
		l.errorf(CodeOutOfRange, l.at(o.From).Join(l.at(o.To)), "the %s goes from %s to %s; the second must be farther along the wall", what,
			l.show(from, units.Length), l.show(to, units.Length))
	}
	if w == nil || l.bad {
		return on, high
	}
	if long := lengthOf(w.Line); on.To > long+slop {
		l.errorf(CodeOutOfRange, l.at(o.To), "the %s ends %s along wall `%s`, which is %s long", what, l.show(to, units.Length), w.Name, long.Text(l.system)).
			Relate(w.At, "the wall")
	}
	l.inWallHeight(r, w, high, what)
	return on, high
}

// inWallHeight checks that heights given lie in the wall's.
func (l *line) inWallHeight(r *syntax.Range, w *plan.Wall, high plan.Range, what string) {
	if r != nil && (high.High > w.High.High+slop || high.Low < w.High.Low-slop) {
		l.errorf(CodeOutOfRange, l.at(r), "the %s is %s to %s high, and wall `%s` is %s to %s", what,
			high.Low.Text(l.system), high.High.Text(l.system), w.Name, w.High.Low.Text(l.system), w.High.High.Text(l.system)).
			Relate(w.At, "the wall")
	}
}

// skins are the walls with a lens hole in them: where the text says no thickness
// they are a flat's skin there.
func (b *binder) skins() {
	for _, h := range b.plan.Set.Holes {
		if h.Wall != nil && !h.Wall.ThickGiven {
			h.Wall.Thick = solid.SkinThick
		}
	}
}
