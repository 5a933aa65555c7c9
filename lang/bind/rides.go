package bind

import (
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// rideable are the classes of rig that carry people.
var rideable = map[string]bool{"dolly": true, "crane": true, "cart": true}

// carrier is a vehicle, or a rig that carries people.
func (l *line) carrier(n *syntax.Name, who plan.Thing, verb string) plan.Thing {
	c := l.find(n, "only vehicles, dollies, cranes and carts carry anybody", carriers...)
	if r, ok := c.(*plan.Rig); ok && r.Class != "" && !rideable[r.Class] && r.Seats == 0 {
		l.errorf(CodeWrongKind, l.at(n), "`%s` is a rig of class %s, which carries nobody; dollies, cranes, carts and vehicles do", r.Name, r.Class).
			Relate(r.At, "declared here")
		return nil
	}
	if c != nil && c == who {
		l.errorf(CodeWrongKind, l.at(n), "`%s` is the one who %s; name what carries it", n.Text, verb)
		return nil
	}
	return c
}

// passengers are who and what is carried.
var passengers = []plan.Kind{plan.KindPerformer, plan.KindCrew, plan.KindRig}

func (l *line) ride(s *syntax.Ride) {
	who := l.find(s.Who, "only people and rigs ride", passengers...)
	deed := &plan.Ride{Carrier: l.carrier(s.Carrier, who, "rides")}
	deed.At, deed.AtGiven = l.aboard(s.At, deed.Carrier)
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{}})
}

func (l *line) leave(s *syntax.Leave) {
	who := l.find(s.Who, "only people and rigs leave what carries them", passengers...)
	deed := &plan.Leave{Carrier: l.carrier(s.Carrier, who, "leaves"), To: l.place(s.To)}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{paced: true}})
}

func (l *line) board(s *syntax.Board) {
	who := l.find(s.Who, "only a person boards", people...)
	deed := &plan.Board{Carrier: l.carrier(s.Carrier, who, "boards")}
	if at, ok := l.aboard(s.At, deed.Carrier); ok {
		deed.At = &geom.Vec{X: at.X, Y: at.Y}
	}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{}})
}
