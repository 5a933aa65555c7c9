package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func (l *line) performer(s *syntax.Performer) {
	l.person(s.Name, &plan.Person{Role: s.Role.Value()}, s.Height, nil, s.Spread)
}

func (l *line) crew(s *syntax.Crew) {
	l.person(s.Name, &plan.Person{Crew: true, Role: s.Role.Value()}, s.Height, s.Weighs, s.Spread)
}

func (l *line) person(name *syntax.Name, p *plan.Person, height, weighs, spread *syntax.Quantity) {
	anybody := body.Anybody()
	p.Height, p.Weight, p.Spread = anybody.Stature, anybody.Weight, -1
	l.declare(name, p)
	l.plan.People = append(l.plan.People, p)
	l.fill(p, func() {
		if h := l.length(height, "height", limits{0.4, 2.6, false}); h > 0 {
			p.Height, p.HeightGiven = h, true
		}
		if w := l.mass(weighs, "weighs", limits{2, 300, false}); w > 0 {
			p.Weight = w
		}
		if v, ok := l.quantity(spread, units.Share, "spread", percentage); ok {
			p.Spread = units.Percent(v)
		}
	})
}
