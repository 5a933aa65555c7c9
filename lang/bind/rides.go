package bind

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
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
	if deed.AtGiven {
		l.onDeck(s.At, deed.Carrier, deed.At)
	}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{}})
}

// overhang is how far outside of a carrier's outline somebody may ride, on a
// running board or a platform hung to it (common practice, no source).
const overhang units.Metres = 0.6

// onDeck reports a place to ride at that lies beyond the carrier, or beyond the
// platform at the end of a crane's arm.
func (l *line) onDeck(at *syntax.Place, carrier plan.Thing, p geom.Vec) {
	length, width := units.Metres(0), units.Metres(0)
	deck := ""
	switch c := carrier.(type) {
	case *plan.Vehicle:
		length, width = c.Length, c.Width
	case *plan.Rig:
		class, _ := body.ParseClass(c.Class)
		of := body.RigOf(class)
		length, width = of.Length, of.Width
		if class == body.Crane {
			deck, length, width = "the platform of ", body.ArmPlatform, body.ArmPlatform
		} else if c.Length > 0 {
			length, width = c.Length, c.Width
		}
	}
	if length == 0 || width == 0 || carrier.ID().Bad {
		return
	}
	x, y := units.Metres(math.Abs(p.X)), units.Metres(math.Abs(p.Y))
	if x > length/2+overhang || y > width/2+overhang {
		l.errorf(CodeOutOfRange, l.at(at), "%s is beyond %s`%s`, which is %s long and %s wide; the point is told from its middle", tidy(l.at(at).Text()),
			deck, carrier.ID().Name, length.Text(l.system), width.Text(l.system)).Relate(carrier.ID().At, "declared here")
	}
}

func (l *line) leave(s *syntax.Leave) {
	who := l.find(s.Who, "only people and rigs leave what carries them", passengers...)
	deed := &plan.Leave{Carrier: l.carrier(s.Carrier, who, "leaves"), To: l.place(s.To)}
	if who != nil && deed.Carrier != nil {
		l.leaves = append(l.leaves, leaving{l, who, deed.Carrier, l.at(s.Carrier)})
	}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{paced: true}})
}

func (l *line) board(s *syntax.Board) {
	who := l.find(s.Who, "only a person boards", people...)
	deed := &plan.Board{Carrier: l.carrier(s.Carrier, who, "boards")}
	if at, ok := l.aboard(s.At, deed.Carrier); ok {
		deed.At = &geom.Vec{X: at.X, Y: at.Y}
		l.onDeck(s.At, deed.Carrier, at)
	}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{}})
}
