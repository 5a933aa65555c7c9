package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func (l *line) door(s *syntax.SetDoor) {
	d := &plan.Door{Open: s.Open}
	l.declare(s.Name, d)
	l.plan.Set.Doors = append(l.plan.Set.Doors, d)
	l.fill(d, func() { d.On, d.High = l.opening(s.On, s.High, "door", plan.Range{High: doorHigh}) })
}

func (l *line) pane(s *syntax.SetWindow) {
	w := &plan.Pane{}
	l.declare(s.Name, w)
	l.plan.Set.Windows = append(l.plan.Set.Windows, w)
	l.fill(w, func() { w.On, w.High = l.opening(s.On, s.High, "window", plan.Range{Low: sillHigh, High: doorHigh}) })
}

func (l *line) mirror(s *syntax.Mirror) {
	m := &plan.Mirror{}
	l.declare(s.Name, m)
	l.plan.Set.Mirrors = append(l.plan.Set.Mirrors, m)
	l.fill(m, func() { m.On, m.High = l.opening(s.On, s.High, "mirror", plan.Range{High: doorHigh}) })
}

func (l *line) glow(s *syntax.Glow) {
	g := &plan.Glow{}
	l.declare(s.Name, g)
	l.plan.Set.Glows = append(l.plan.Set.Glows, g)
	l.fill(g, func() {
		g.On, g.High = l.opening(s.On, s.High, "glow", plan.Range{Low: sillHigh, High: doorHigh})
		l.need(s.Luminance != nil, s.Name, "glow `%s` needs how bright it is: 600 cd/m2", s.Name.Text)
		v, _ := l.quantity(s.Luminance, units.Luminance, "glow", aboveZero)
		g.Nits = units.Nits(v)
	})
}

func (l *line) hole(s *syntax.Hole) {
	h := &plan.Hole{}
	l.declare(s.Name, h)
	l.plan.Set.Holes = append(l.plan.Set.Holes, h)
	l.fill(h, func() {
		h.Wall = l.onWall(s.Wall)
		l.need(s.At != nil, s.Name, "hole `%s` needs how far along the wall it is: at 6 m", s.Name.Text)
		l.need(s.Up != nil, s.Name, "hole `%s` needs how high it is: up 1.45 m", s.Name.Text)
		l.need(s.Wide != nil, s.Name, "hole `%s` needs how wide it is: wide 90 mm", s.Name.Text)
		h.Along = l.length(s.At, "at", site)
		h.Up = l.length(s.Up, "up", limits{-100, 1000, false}) // a wall may begin in a pit
		h.Wide = l.length(s.Wide, "wide", limits{0, 5, true})
		if l.bad {
			return
		}
		half := h.Wide / 2
		if long := lengthOf(h.Wall.Line); h.Along-half < -slop || h.Along+half > long+slop {
			l.errorf(CodeOutOfRange, l.at(s.At), "the hole is from %s to %s along wall `%s`, which is %s long", (h.Along-half).Text(l.system),
				(h.Along+half).Text(l.system), h.Wall.Name, long.Text(l.system)).Relate(h.Wall.At, "the wall")
		}
		if r := h.Wall.High; h.Up-half < r.Low-slop || h.Up+half > r.High+slop {
			l.errorf(CodeOutOfRange, l.at(s.Up), "the hole is %s to %s high, and wall `%s` is %s to %s", (h.Up-half).Text(l.system),
				(h.Up+half).Text(l.system), h.Wall.Name, r.Low.Text(l.system), r.High.Text(l.system)).Relate(h.Wall.At, "the wall")
		}
	})
}

// overlaps reports doors and windows that share a piece of their wall. Lens holes
// may be cut in a door, and a glow may lie in a window.
func (b *binder) overlaps() {
	type opening struct {
		id   *plan.Ident
		kind plan.Kind
		on   plan.On
		high plan.Range
	}
	var all []opening
	for _, d := range b.plan.Set.Doors {
		all = append(all, opening{&d.Ident, d.Kind(), d.On, d.High})
	}
	for _, w := range b.plan.Set.Windows {
		all = append(all, opening{&w.Ident, w.Kind(), w.On, w.High})
	}
	for i, o := range all {
		for _, first := range all[:i] {
			if o.id.Bad || first.id.Bad || o.on.Wall != first.on.Wall {
				continue
			}
			if min(o.on.To, first.on.To)-max(o.on.From, first.on.From) > slop && min(o.high.High, first.high.High)-max(o.high.Low, first.high.Low) > slop {
				s := b.plan.Take.Units
				b.report(CodeOutOfRange, o.id.At, "the %s `%s` lies in the %s `%s`, which goes from %s to %s along the same wall", o.kind, o.id.Name,
					first.kind, first.id.Name, first.on.From.Text(s), first.on.To.Text(s)).Relate(first.id.At, "the %s", first.kind)
				o.id.Bad = true
			}
		}
	}
}
