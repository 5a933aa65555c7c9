package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

func (l *line) move(s *syntax.Move) {
	who := l.mover(s)
	path := l.path(&s.Path, who, s.Verb)
	path.Span = l.pathSpan(s)
	if v, ok := who.(*plan.Vehicle); ok && s.Path.Facing != nil {
		l.errorf(CodeWrongPhrase, l.at(s.Path.Facing), "`%s` is a vehicle, which points where it drives; leave `facing` away, or write backwards", v.Name)
	}
	if len(s.Path.Via) == 0 && s.Path.To == nil && s.Timed.Timing.Until == nil && path.Shape == plan.Round && path.Angle == 0 && !l.bad {
		l.need(false, s.Path.Round, "`round` needs how far round: 180 deg left")
	}
	l.add(action{who, s.Verb, &plan.Move{Path: path, Run: s.Verb == "runs"}, &s.Timed, phrases{paced: true, fixed: true}})
}

// pathSpan is the part of the line that tells the way.
func (l *line) pathSpan(s *syntax.Move) source.Span {
	var out source.Span
	for _, p := range s.Phrases {
		switch p.Word() {
		case "from", "via", "to", "round", "eight", "straight", "curved":
			out = out.Join(l.at(p))
		}
	}
	return out
}

// mover is who goes somewhere: people walk and run, vehicles and rigs drive, and
// all of them move.
func (l *line) mover(s *syntax.Move) plan.Thing {
	reason, kinds := "only people "+map[string]string{"walks": "walk", "runs": "run"}[s.Verb], people
	switch s.Verb {
	case "drives":
		reason, kinds = "only vehicles and rigs drive", carriers
	case "moves":
		reason, kinds = "only people, vehicles and rigs move", movers
	}
	who := l.find(s.Who, reason, kinds...)
	if who == nil {
		if c, ok := l.names[s.Who.Text].(*plan.Camera); ok {
			l.hint("a camera goes where its rig or its operator goes: %s leads, follows, circles or pushes, or the rig moves", c.Name)
		}
		return nil
	}
	if r, ok := who.(*plan.Rig); ok && r.Class != "" {
		class, err := body.ParseClass(r.Class)
		if of := body.RigOf(class); err == nil && of.Crewing != body.Worn && !of.Travels() {
			l.errorf(CodeWrongKind, l.at(s.Who), "`%s` is a rig of class %s, which does not travel over the floor", r.Name, r.Class).Relate(r.At, "declared here")
		}
	}
	return who
}

// hint adds a note to the finding made last.
func (l *line) hint(format string, args ...any) {
	if n := len(l.found); n > 0 {
		l.found[n-1].Note(format, args...)
	}
}

func (l *line) path(s *syntax.Path, who plan.Thing, verb string) plan.Path {
	p := plan.Path{From: l.stand(s.From), To: l.place(s.To), Backwards: s.Backwards}
	for _, v := range s.Via {
		if via := l.place(v); via != nil {
			p.Via = append(p.Via, *via)
		}
	}
	if s.Shape == "straight" {
		p.Shape = plan.Straight
	}
	p.Facing = l.target(s.Facing, who, verb)
	if s.Facing != nil && s.Backwards {
		l.errorf(CodeSaidTwice, l.at(s.Facing), "`facing` and `backwards` both say which way `%s` looks; keep one", verb)
	}
	if s.Round != nil {
		p.Shape = plan.Round
		p.Centre = l.centre(s.Round.What)
		if s.Round.Turn != nil {
			p.Angle, p.Turn = l.turnBy(s.Round.Turn, "round")
		}
	}
	if s.Eight != nil {
		p.Shape = plan.Eight
		p.Centre, p.Other = l.centre(s.Eight.First), l.centre(s.Eight.Second)
		if !l.bad && p.Centre.Point.Dist(p.Other.Point) < nothing {
			l.errorf(CodeOutOfRange, l.at(s.Eight.Second), "an eight goes round two places, and these are one")
		}
	}
	round := s.Round != nil || s.Eight != nil
	switch {
	case s.Round != nil && s.Eight != nil:
		l.errorf(CodeSaidTwice, l.at(s.Eight), "a way goes `round` one place or makes an `eight` round two, not both")
	case round && s.Shape != "":
		l.errorf(CodeWrongPhrase, l.span, "a way round a place is neither `straight` nor `curved`; leave `%s` away", s.Shape)
	case s.Radius != nil && !round:
		l.errorf(CodeWrongPhrase, l.at(s.Radius), "`at %s` is a radius, and this way goes round nothing; a speed is written at 1.2 m/s", tidy(s.Radius.Text))
	}
	p.Radius = l.length(s.Radius, "at", limits{0, 1000, true})
	l.noStandstill(s, &p)
	return p
}

// centre is what a way goes round; its zero value where it has a mistake.
func (l *line) centre(s *syntax.Place) plan.Place {
	if p := l.stand(s); p != nil {
		return *p
	}
	return plan.Place{}
}

// noStandstill reports two stops in a row that are the same point.
func (l *line) noStandstill(s *syntax.Path, p *plan.Path) {
	if l.bad || p.Shape == plan.Round || p.Shape == plan.Eight {
		return
	}
	stops := p.Stops()
	texts := append(append([]*syntax.Place(nil), s.Via...), s.To)
	before := p.From
	for i := range stops {
		if before != nil && before.Before == 0 && stops[i].Before == 0 && before.Point.Dist(stops[i].Point) < nothing {
			l.errorf(CodeOutOfRange, l.at(texts[i]), "%s is where this piece of the way begins; it has no length", stops[i].Text)
			return
		}
		before = &stops[i]
	}
}

// turnBy is an angle with a side.
func (l *line) turnBy(m *syntax.Measure, word string) (units.Degrees, plan.Side) {
	if m == nil {
		return 0, plan.Left
	}
	v, ok := l.angle(m.Amount, word, manyTurns)
	dir := m.Dir()
	if ok && dir != "left" && dir != "right" {
		l.errorf(CodeNoDefault, l.at(m), "`%s` needs a side: %s left", word, tidy(m.Amount.Text))
	}
	return v, sideOf(dir)
}

func sideOf(dir string) plan.Side {
	switch dir {
	case "right":
		return plan.Right
	case "up":
		return plan.Up
	case "down":
		return plan.Down
	}
	return plan.Left
}

func (l *line) standing(s *syntax.Stand) {
	reason := "only people, vehicles, rigs and cameras " + map[string]string{"stands": "stand", "waits": "wait"}[s.Verb]
	who := l.find(s.Who, reason, append(append([]plan.Kind(nil), movers...), plan.KindCamera)...)
	if c, ok := who.(*plan.Camera); ok && s.At != nil {
		l.errorf(CodeWrongKind, l.at(s.At), "`%s` is a camera, which stands where its rig does; place the rig or its operator", c.Name)
	}
	if c, ok := who.(*plan.Camera); ok && s.Facing != nil {
		l.errorf(CodeWrongKind, l.at(s.Facing), "`%s` is a camera, which looks at what it `sees`", c.Name)
	}
	l.add(action{who, s.Verb, &plan.Stand{At: l.stand(s.At), Facing: l.target(s.Facing, who, s.Verb)}, &s.Timed, phrases{}})
}

func (l *line) turn(s *syntax.Turn) {
	who := l.find(s.Who, "only people, vehicles and rigs turn; a camera pans", movers...)
	deed := &plan.Turn{}
	switch {
	case s.To == nil:
	case s.To.Place != nil:
		deed.To = l.target(s.To.Place, who, "turns")
	default:
		if v, ok := l.angle(s.To.Amount, "to", limits{-360, 360, false}); ok {
			deed.Angle = &v
		}
	}
	l.add(action{who, s.Verb, deed, &s.Timed, phrases{}})
}

func (l *line) spin(s *syntax.Spin) {
	who := l.find(s.Who, "only people spin; a camera pans, circles or counters", people...)
	angle, side := l.turnBy(s.Turn, "spins")
	l.add(action{who, s.Verb, &plan.Spin{Angle: angle, Turn: side}, &s.Timed, phrases{}})
}

func (l *line) spotting(s *syntax.Spot) {
	who := l.find(s.Who, "only people spot", people...)
	whom := is[*plan.Person](l, s.Crew, "one spots a person who backs up", people...)
	if whom != nil && plan.Thing(whom) == who {
		l.errorf(CodeWrongKind, l.at(s.Crew), "`%s` is the one who spots; name the one who backs up", whom.Name)
	}
	l.add(action{who, s.Verb, &plan.Spot{Whom: whom}, &s.Timed, phrases{}})
}

var postures = map[string]string{"sits": "sitting", "kneels": "kneeling", "crouches": "crouching", "rises": "standing", "lowers": ""}

// pose is a person who sits, kneels, crouches or rises, or a camera that rises
// or lowers to a height.
func (l *line) pose(s *syntax.Pose) {
	posture := postures[s.Verb]
	kinds, reason := append(append([]plan.Kind(nil), people...), plan.KindCamera), "only people and cameras rise"
	switch {
	case posture == "":
		kinds, reason = []plan.Kind{plan.KindCamera}, "only a camera lowers; a person sits, kneels or crouches"
	case s.Verb != "rises":
		kinds, reason = people, "only a person "+s.Verb
	}
	who := l.find(s.Who, reason, kinds...)
	if s.At != nil {
		l.errorf(CodeWrongPhrase, l.at(s.At), "`%s` happens where one is and takes no place; go there in a line before it", s.Verb)
	}
	if c, ok := who.(*plan.Camera); ok {
		l.need(s.To != nil, s, "`%s` needs how high the lens of `%s` goes: %s to 2.4 m", s.Verb, c.Name, s.Verb)
		to := l.length(s.To, "to", limits{0, 1000, true})
		l.add(action{who, s.Verb, &plan.Lift{To: to}, &s.Timed, phrases{paced: true, fixed: true}})
		return
	}
	if s.To != nil && who != nil {
		l.errorf(CodeWrongKind, l.at(s.To), "`%s` is a person, who %s and has no height to go to; a camera %s to a height", s.Who.Text, s.Verb, s.Verb)
	}
	l.add(action{who, s.Verb, &plan.Pose{Posture: posture}, &s.Timed, phrases{}})
}
