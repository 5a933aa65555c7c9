package bind

import (
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// CodeMarkLoop says that marks are told from each other in a circle.
const CodeMarkLoop diag.Code = "mark-loop"

// spot is a point worked out from the text, with its height where one is given,
// and the mark it was told from, if any.
type spot struct {
	geom.Vec
	z    *units.Metres
	mark *plan.Mark
}

// coordinate is one number of a point; ok is false with a mistake.
func (l *line) coordinate(c *syntax.Coordinate) (v float64, ok bool) {
	m, err := c.Metres(l.system)
	if err != nil {
		q := syntax.Quantity{Node: c.Node, Text: c.Text}
		if got := q.Dimension(); got != units.NoDimension {
			l.errorf(CodeWrongUnit, l.at(c), "`%s` is %s; a point takes lengths, such as %s", tidy(c.Text), got, units.Length.Example())
		} else {
			l.errorf(CodeWrongUnit, l.at(c), "%s", err)
		}
		return 0, false
	}
	if !sitePoint.hold(float64(m)) {
		l.outOfRange(c, "the coordinate", units.Length, sitePoint)
		return 0, false
	}
	return float64(m), true
}

// point converts (x, y) or (x, y, z); of several numbers that are wrong the first
// is told.
func (l *line) point(p *syntax.Point) spot {
	s, ok := spot{}, false
	if s.X, ok = l.coordinate(p.X); !ok {
		return s
	}
	if s.Y, ok = l.coordinate(p.Y); !ok {
		return s
	}
	if p.Z != nil {
		if z, ok := l.coordinate(p.Z); ok {
			m := units.Metres(z)
			s.z = &m
		}
	}
	return s
}

func (s spot) plus(o spot) spot {
	s.Vec = s.Add(o.Vec)
	if o.z != nil {
		z := *o.z
		if s.z != nil {
			z += *s.z
		}
		s.z = &z
	}
	return s
}

// named is where a mark lies.
func (l *line) named(n *syntax.Name) (s spot, ok bool) {
	m := is[*plan.Mark](l, n, "a place is a mark or a point such as (4, 2)", plan.KindMark)
	if m == nil || !l.settle(m) {
		l.bad = true
		return spot{}, false
	}
	return spot{m.Point, m.Z, m}, true
}

// somewhere works out a place; before is how far short of it, along the way
// there, where the text says so and a way leads there.
func (l *line) somewhere(p *syntax.Place, onTheWay bool) (s spot, before units.Metres, ok bool) {
	clean := !l.bad
	l.bad = false
	switch {
	case p.Name != nil:
		if s, ok = l.named(p.Name); !ok {
			return spot{}, 0, false
		}
	case p.Point != nil:
		s = l.point(p.Point)
	default:
		return spot{}, 0, false
	}
	if p.Plus != nil {
		s = s.plus(l.point(p.Plus))
	}
	if p.Offset != nil && p.Side != nil {
		by := l.length(p.Offset, p.Side.Word, site)
		switch p.Side.Word {
		case "left":
			s.X -= float64(by)
		case "right":
			s.X += float64(by)
		case "before", "after":
			if before = by; p.Side.Word == "after" {
				before = -by
			}
			if !onTheWay {
				l.errorf(CodeWrongKind, l.at(p.Side), "`%s` tells a place from the way that leads there, and no way leads here; say left of, right of, or + (x, y)", p.Side.Word)
			}
		default:
			l.errorf(CodeWrongKind, l.at(p.Side), "`%s` a place on the floor could be anywhere; say left of, right of, before, or + (x, y)", tidy(l.at(p.Side).Text()))
		}
	}
	ok = !l.bad
	l.bad = l.bad || !clean
	return s, before, ok
}

// place is a place a way leads to; nil where it has a mistake.
func (l *line) place(p *syntax.Place) *plan.Place { return l.placed(p, true) }

// stand is a place that no way leads to; nil where it has a mistake.
func (l *line) stand(p *syntax.Place) *plan.Place { return l.placed(p, false) }

func (l *line) placed(p *syntax.Place, onTheWay bool) *plan.Place {
	if p == nil {
		return nil
	}
	s, before, ok := l.somewhere(p, onTheWay)
	if !ok {
		l.bad = true
		return nil
	}
	return &plan.Place{Point: s.Vec, Z: s.z, Mark: s.mark, Before: before, Text: tidy(l.at(p).Text()), Span: l.at(p)}
}

// aboard is a point in a carrier's frame: ahead of its centre, and to its left.
func (l *line) aboard(p *syntax.Place, carrier plan.Thing) (geom.Vec, bool) {
	if p == nil || carrier == nil {
		return geom.Vec{}, false
	}
	if p.Point == nil || p.Offset != nil || p.Plus != nil {
		l.errorf(CodeWrongKind, l.at(p), "a place on %s is a point such as (0.6, -0.3): that far ahead of its centre and to its left", carrier.ID().Name)
		return geom.Vec{}, false
	}
	if p.Point.Z != nil {
		l.errorf(CodeWrongPhrase, l.at(p.Point.Z), "a place on %s has no third number; how high a lens is, is said with `up`", carrier.ID().Name)
		return geom.Vec{}, false
	}
	return l.point(p.Point).Vec, true
}

// target is what is looked at or turned to.
func (l *line) target(t *syntax.Target, subject plan.Thing, verb string) *plan.Target {
	if t == nil {
		return nil
	}
	if t.Name != nil && t.Offset == nil && t.Plus == nil {
		thing := l.find(t.Name, "it cannot be looked at", append([]plan.Kind{plan.KindMark}, visible...)...)
		switch {
		case thing == nil:
			return nil
		case thing == subject:
			l.errorf(CodeWrongKind, l.at(t), "`%s` is the one who %s; name somebody or something else", t.Name.Text, verb)
			return nil
		case thing.Kind() != plan.KindMark:
			return &plan.Target{Thing: thing, Span: l.at(t)}
		}
	}
	p := l.stand(t)
	if p == nil {
		return nil
	}
	return &plan.Target{Place: p, Span: p.Span}
}
