package bind

import (
	"strings"

	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func (l *line) lamp(s *syntax.Lamp) {
	p := &plan.Lamp{Changes: s.Changes, Modern: s.Modern, Seen: s.Seen}
	l.declare(s.Name, p)
	l.plan.Kit.Lamps = append(l.plan.Kit.Lamps, p)
	l.fillFirst(p, func() {
		l.need(s.Power != nil, s.Name, "lamp `%s` needs its power: 650 W", s.Name.Text)
		w, _ := l.quantity(s.Power, units.Power, "lamp", limits{0, 1e6, true})
		cd, _ := l.quantity(s.Intensity, units.Intensity, "lamp", aboveZero)
		p.Power, p.Candela = units.Watts(w), units.Candela(cd)
		if s.Colour == nil {
			return
		}
		if s.Colour.Name != nil {
			p.Colour = s.Colour.Name.Text
		}
		k, _ := l.quantity(s.Colour.Kelvin, units.Temperature, "colour", limits{1000, 40000, false})
		p.Kelvin = units.Kelvin(k)
	})
}

func (l *line) wash(s *syntax.Wash) {
	w := &plan.Wash{Count: 1}
	l.declare(s.Name, w)
	l.plan.Kit.Washes = append(l.plan.Kit.Washes, w)
	l.fill(w, func() {
		w.Lamp = is[*plan.Lamp](l, s.Lamp, "a wash is made of lamps", plan.KindLamp)
		w.Grid = is[*plan.Grid](l, s.Grid, "a wash hangs on a grid", plan.KindGrid)
		if s.Times != nil {
			w.Count = l.whole(s.Times, "x", 1, 10000)
		}
		l.bad = l.bad || w.Lamp != nil && w.Lamp.Bad || w.Grid != nil && w.Grid.Bad
	})
}

func (l *line) supply(s *syntax.Supply) {
	p := &plan.Supply{Count: 1}
	l.declare(s.Name, p)
	l.plan.Set.Supplies = append(l.plan.Set.Supplies, p)
	l.fill(p, func() {
		if s.Volts.Dimension() == units.Current && s.Amperes.Dimension() == units.Voltage {
			l.errorf(CodeWrongUnit, l.at(s.Volts).Join(l.at(s.Amperes)), "the voltage comes first: supply %s %s %s", s.Name.Text, tidy(s.Amperes.Text), tidy(s.Volts.Text))
			return
		}
		v, _ := l.quantity(s.Volts, units.Voltage, "supply", limits{0, 1e5, true})
		i, _ := l.quantity(s.Amperes, units.Current, "supply", limits{0, 1e5, true})
		p.Volts, p.Amperes = units.Volts(v), units.Amperes(i)
		if s.Times != nil {
			p.Count = l.whole(s.Times, "x", 1, 10000)
		}
		p.ThreePhase = s.Three
		if s.Cable != nil {
			run := l.length(s.Cable.Run, "cable", limits{0, 5000, true})
			section, _ := l.quantity(s.Cable.Section, units.Section, "cable", limits{0.5, 1000, false})
			p.Cable = &plan.Cable{Run: run, Section: units.SquareMillimetres(section), Span: l.at(s.Cable.Section)}
			if text := tidy(s.Cable.Section.Text); strings.HasSuffix(text, "AWG") {
				p.Cable.Gauge = text
			}
		}
	})
}

// placeLamp stands a lamp in the set.
func (l *line) placeLamp(s *syntax.PlaceLamp) {
	l.fills = append(l.fills, func() {
		lamp := is[*plan.Lamp](l, s.Lamp, "`place` stands a lamp in the set", plan.KindLamp)
		l.need(s.At != nil, s.Lamp, "lamp `%s` needs where it stands: at (4, 2)", s.Lamp.Text)
		l.need(s.Up != nil, s.Lamp, "lamp `%s` needs how high it is: up 2.4 m", s.Lamp.Text)
		at, aims := l.stand(s.At), l.stand(s.Aims)
		up := l.length(s.Up, "up", limits{0, 1000, false})
		if l.misplaced[s.Lamp.Text] = l.bad; !l.bad {
			l.plan.Set.Placed = append(l.plan.Set.Placed, &plan.PlacedLamp{Lamp: lamp, At: *at, Up: up, Aims: aims, Span: l.span})
		}
	})
}
