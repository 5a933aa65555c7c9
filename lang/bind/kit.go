package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func (l *line) camera(s *syntax.Camera) {
	c := &plan.Camera{Squeeze: 1}
	l.declare(s.Name, c)
	l.plan.Kit.Cameras = append(l.plan.Kit.Cameras, c)
	l.fill(c, func() {
		if l.need(s.Sensor != nil, s.Name, "camera `%s` needs its sensor: sensor 24.9 mm x 14 mm", s.Name.Text) {
			chip := limits{0.001, 0.25, false}
			width, height := l.size(s.Sensor, "sensor", chip)
			c.Width, c.Height = width.Millimetres(), height.Millimetres()
		}
		if v, ok := l.number(s.Squeeze, "squeeze", limits{1, 4, false}, false); ok {
			c.Squeeze = v
		}
		c.Weight = l.mass(s.Weighs, "weighs", limits{0, 500, true})
	})
}

func (l *line) lens(s *syntax.Lens) {
	n := &plan.Lens{}
	l.declare(s.Name, n)
	l.plan.Kit.Lenses = append(l.plan.Kit.Lenses, n)
	l.fill(n, func() {
		focal := limits{0.001, 3, false}
		n.Short = l.length(s.Focal.Low, "lens", focal).Millimetres()
		n.Long = n.Short
		if s.Focal.High != nil && !l.bad {
			n.Long = l.length(s.Focal.High, "lens", focal).Millimetres()
			if !l.bad && n.Long <= n.Short {
				l.errorf(CodeOutOfRange, l.at(s.Focal), "the zoom goes from %s to %s; the second must be longer", n.Short, n.Long)
			}
		}
		if s.Stops != nil {
			n.Widest, n.Closest = l.stop(s.Stops.Wide), l.stop(s.Stops.Small)
			if n.Widest > 0 && n.Closest > 0 && n.Closest <= n.Widest {
				l.errorf(CodeOutOfRange, l.at(s.Stops), "the stops go from %s to %s; the first must be the wider opening, the smaller number", n.Widest, n.Closest)
			}
		}
		n.Weight = l.mass(s.Weighs, "weighs", limits{0, 200, true})
		n.Close = l.length(s.Close, "close", limits{0, 100, true})
	})
}

// stop is a T-stop; 0 where none is given.
func (l *line) stop(s *syntax.Stop) units.Stop {
	if s == nil {
		return 0
	}
	if v := s.Value(); v >= 0.5 && v <= 128 {
		return v
	}
	l.errorf(CodeOutOfRange, l.at(s), "`%s` is no stop of a lens; they go from T0.5 to T128", s.Text)
	return 0
}

func (l *line) rig(s *syntax.Rig) {
	r := &plan.Rig{Class: s.Class.Text}
	l.declare(s.Name, r)
	l.plan.Kit.Rigs = append(l.plan.Kit.Rigs, r)
	l.fill(r, func() {
		if !l.knownWord(s.Class, s.Class.Text, "class of rig", classNames()) {
			r.Class = ""
		}
		if s.Carries != nil {
			load := limits{0, 5000, true}
			r.CarriesMax = l.mass(s.Carries.Low, "carries", load)
			if s.Carries.High != nil && r.CarriesMax > 0 {
				r.CarriesMin = r.CarriesMax
				r.CarriesMax = l.mass(s.Carries.High, "carries", load)
				if !l.bad && r.CarriesMax <= r.CarriesMin {
					l.errorf(CodeOutOfRange, l.at(s.Carries), "`carries` goes from %s to %s; the second must be more", r.CarriesMin, r.CarriesMax)
				}
			}
		}
		r.Length, r.Width = l.size(s.Size, "size", limits{0, 50, true})
		if s.High != nil {
			r.High = l.high(s.High, plan.Range{}).High
		}
		r.Reach = l.length(s.Reach, "reach", limits{0, 100, true})
		r.Seats = l.whole(s.Seats, "seats", 0, 50)
		r.Speed = l.speed(s.Speed, "speed")
		r.Back = l.speed(s.Back, "back")
		pan, _ := l.quantity(s.Pan, units.AngularSpeed, "pan", limits{0, 3600, true})
		r.Pan = units.DegreesPerSecond(pan)
	})
}

func classNames() []string {
	var out []string
	for _, c := range body.Classes() {
		out = append(out, c.String())
	}
	return out
}

func (l *line) vehicle(s *syntax.Vehicle) {
	v := &plan.Vehicle{Gear: s.Gear}
	l.declare(s.Name, v)
	l.plan.Kit.Vehicles = append(l.plan.Kit.Vehicles, v)
	l.fill(v, func() {
		v.Length, v.Width = l.size(s.Size, "vehicle", limits{0, 100, true})
		l.need(s.High != nil, s.Name, "vehicle `%s` needs its height: high 2.3 m", s.Name.Text)
		v.High = l.high(s.High, plan.Range{})
	})
}

func (l *line) card(s *syntax.Card) {
	c := &plan.Card{}
	l.declare(s.Name, c)
	l.plan.Kit.Cards = append(l.plan.Kit.Cards, c)
	l.fill(c, func() {
		c.Width, c.Height = l.size(s.Size, "card", limits{0, 50, true})
		if s.Colour != nil {
			if s.Colour.Kelvin != nil {
				l.errorf(CodeWrongUnit, l.at(s.Colour.Kelvin), "`%s` is %s; a card's colour is a name, such as grey", tidy(s.Colour.Kelvin.Text), s.Colour.Kelvin.Dimension())
			} else {
				c.Colour = s.Colour.Name.Text
			}
		}
	})
}
