package bind

import (
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

func (l *line) operate(s *syntax.Operate) {
	who := l.find(s.Who, "only a person opens and shuts a door; one that moves by itself is written: door "+s.Door.Text+" "+s.Verb, people...)
	deed := &plan.Operate{Door: l.doorCalled(s.Door), Open: s.Verb == "opens"}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{}})
}

func (l *line) doorMoves(s *syntax.DoorMoves) {
	d := l.doorCalled(s.Door)
	a := action{verb: s.Verb, deed: &plan.Operate{Door: d, Open: s.Verb == "opens"}, timed: &s.Timed}
	if d != nil {
		a.subject = d
	}
	l.add(a)
}

func (l *line) doorCalled(n *syntax.Name) *plan.Door {
	return is[*plan.Door](l, n, "only a door opens and shuts", plan.KindDoor)
}
