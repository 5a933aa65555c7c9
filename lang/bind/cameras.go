package bind

import (
	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// cameraCalled is the camera a line is about.
func (l *line) cameraCalled(n *syntax.Name, verb string) *plan.Camera {
	return is[*plan.Camera](l, n, "only a camera "+verb, plan.KindCamera)
}

// thing keeps a nil camera from becoming a thing that is not nil.
func thing(c *plan.Camera) plan.Thing {
	if c == nil {
		return nil
	}
	return c
}

// onTheFloor says that where a camera is put is a place in the set, where its
// rig is to stand, and not one on the rig: a mark always, and a point that lies
// farther from the middle of a rig that stays where it is put (sticks, a slider,
// an arm) than any part of that rig reaches.
func (l *line) onTheFloor(p *syntax.Place, rig *plan.Rig) bool {
	if p.Name != nil || p.Offset != nil || p.Plus != nil {
		return true
	}
	class, err := body.ParseClass(rig.Class)
	if err != nil || p.Point == nil {
		return false
	}
	usual := body.RigOf(class)
	if usual.Crewing != body.Beside && usual.Crewing != body.Unattended {
		return false
	}
	reach := max(usual.Reach, rig.Reach) + max(usual.Length, usual.Width, rig.Length, rig.Width)
	// A point with a mistake is reported by who reads it in earnest.
	found, bad := len(l.found), l.bad
	at := l.point(p.Point)
	l.found, l.bad = l.found[:found], bad
	return units.Metres(at.Len()) > reach
}

func (l *line) mount(s *syntax.Mount) {
	c := l.cameraCalled(s.Who, "goes on a rig")
	deed := &plan.Mount{Rig: l.rigCalled(s.Rig, "a camera goes on a rig")}
	deed.With = is[*plan.Person](l, s.Crew, "a camera is worked by a person", people...)
	if s.Up != nil {
		up := l.length(s.Up, "up", limits{0, 1000, true})
		deed.Up = &up
	}
	switch {
	case deed.Rig == nil || s.At == nil:
	case l.onTheFloor(s.At, deed.Rig):
		if at := l.stand(s.At); at != nil {
			l.add(action{deed.Rig, "stands", &plan.Stand{At: at}, &s.Timed, phrases{atOnce: true}})
		}
	default:
		if at, ok := l.aboard(s.At, deed.Rig); ok {
			deed.At = &at
		}
	}
	l.mountedOn(c)
	l.puts(c, deed.Rig, deed.With, l.at(s.Rig))
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{atOnce: true}})
}

func (l *line) rigCalled(n *syntax.Name, reason string) *plan.Rig {
	return is[*plan.Rig](l, n, reason, plan.KindRig)
}

func (l *line) hide(s *syntax.Hide) {
	c := l.cameraCalled(s.Who, "hides")
	deed := &plan.Hide{Hole: is[*plan.Hole](l, s.Hole, "a camera hides behind a lens hole", plan.KindHole)}
	deed.Card = is[*plan.Card](l, s.Card, "`card` takes a card", plan.KindCard)
	l.mountedOn(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{atOnce: true}})
}

func (l *line) see(s *syntax.See) {
	c := l.cameraCalled(s.Who, "sees")
	deed := &plan.See{Size: s.Size, Even: s.Fifty}
	for _, t := range s.Targets {
		target := l.seen(t.What, t.Glass, thing(c), "sees")
		if target == nil {
			continue
		}
		for _, other := range deed.Targets {
			if other.Name() == target.Name() {
				l.errorf(CodeSaidTwice, target.Span, "`%s` is named a second time", target.Name()).Relate(other.Span, "the first")
			}
		}
		deed.Targets = append(deed.Targets, *target)
	}
	for _, p := range s.Phrases {
		if p.Size != "" {
			deed.SizeSpan = l.at(p)
		}
	}
	if s.Fifty && len(s.Targets) != 2 {
		l.errorf(CodeOutOfRange, l.fiftySpan(s), "`fifty-fifty` shares the frame between two targets, and this line has %d", len(s.Targets))
	}
	l.uses(c)
	l.panTime(s, c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{}})
}

// panTime reports a length that a line of what a camera sees can't have: it
// holds until the next, and only the pan there takes a time. What is seen first
// is seen from the first frame on, without a pan.
func (l *line) panTime(s *syntax.See, c *plan.Camera) {
	if c == nil {
		return
	}
	switch t := &s.Timing; {
	case t.For != nil:
		l.errorf(CodeWrongPhrase, l.at(t.For), "what `%s` sees holds until its next `sees`, not `for` a time; write the next one, or in %s for how long the pan takes", c.Name, tidy(t.For.Text))
	case t.Until != nil:
		l.errorf(CodeWrongPhrase, l.at(t.Until), "what `%s` sees holds until its next `sees`; write that one, with when ...", c.Name)
	case t.In != nil && !l.aimed(c):
		l.errorf(CodeWrongPhrase, l.at(t.In), "what `%s` sees first it sees from the first frame on, without a pan; leave `in %s` away", c.Name, tidy(t.In.Text))
	}
}

// aimed reports whether a line before this one turns the camera anywhere.
func (l *line) aimed(c *plan.Camera) bool {
	for _, act := range l.earlier() {
		if act.Subject != plan.Thing(c) {
			continue
		}
		switch act.Deed.(type) {
		case *plan.See, *plan.Swing:
			return true
		}
	}
	return l.mayHave(c.Name, l.part(), "sees", "pans", "tilts")
}

// seen is what a camera looks at, in a mirror where one is named. A camera may see
// its own reflection.
func (l *line) seen(t *syntax.Target, glass *syntax.Name, subject plan.Thing, verb string) *plan.Target {
	if glass == nil {
		return l.target(t, subject, verb)
	}
	mirror := is[*plan.Mirror](l, glass, "what shows a reflection is a mirror of the set", plan.KindMirror)
	target := l.target(t, subject, verb)
	if target == nil || mirror == nil {
		return nil
	}
	if target.Thing == plan.Thing(mirror) {
		l.errorf(CodeWrongKind, target.Span, "`%s` does not show itself; name who is to be seen in it", mirror.Name)
		return nil
	}
	target.Glass = mirror
	return target
}

func (l *line) fiftySpan(s *syntax.See) source.Span {
	for _, p := range s.Phrases {
		if p.Fifty {
			return l.at(p)
		}
	}
	return l.span
}

func (l *line) keep(s *syntax.Lead) {
	c := l.cameraCalled(s.Who, s.Verb)
	deed := &plan.Keep{Lead: s.Verb == "leads", By: l.length(s.Distance, "by", limits{0, 1000, true})}
	if t := l.moving(s.Target, thing(c), s.Verb); t != nil {
		deed.Target = *t
	}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{}})
}

// moving is a target that goes places: a camera follows no mark.
func (l *line) moving(t *syntax.Target, subject plan.Thing, verb string) *plan.Target {
	target := l.target(t, subject, verb)
	if target == nil {
		return nil
	}
	if target.Thing == nil || !isOf(target.Thing, movers) {
		kind := plan.KindMark
		if target.Thing != nil {
			kind = target.Thing.Kind()
		}
		l.errorf(CodeWrongKind, target.Span, "`%s` is %s and goes nowhere; a camera %s people, vehicles and rigs", target.Name(), aPlace(target, kind), verb)
		return nil
	}
	return target
}

// aPlace says what a target is, a point without a name included.
func aPlace(t *plan.Target, k plan.Kind) string {
	if t.Place != nil && !t.Place.Exact() {
		return "a place"
	}
	return a(k)
}

func (l *line) beside(s *syntax.Beside) {
	c := l.cameraCalled(s.Who, "keeps beside anybody")
	deed := &plan.Beside{}
	if t := l.moving(s.Target, thing(c), "keeps beside"); t != nil {
		deed.Target = *t
	}
	if s.Side != nil {
		deed.By, deed.Side = l.length(s.Side.Amount, "beside", limits{0, 1000, true}), sideOf(s.Side.Dir())
	}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{}})
}

func (l *line) circle(s *syntax.Circle) {
	c := l.cameraCalled(s.Who, "circles")
	deed := &plan.Circle{At: l.length(s.Radius, "at", limits{0, 1000, true})}
	deed.Angle, deed.Turn = l.turnBy(s.Turn, "circles")
	if t := l.target(s.Target, thing(c), "circles"); t != nil {
		deed.Target = *t
	}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{paced: true, fixed: true}})
}

func (l *line) counter(s *syntax.Counter) {
	c := l.cameraCalled(s.Who, "counters")
	deed := &plan.Circle{Counter: true, At: l.length(s.Radius, "at", limits{0, 1000, true})}
	if t := l.target(s.Target, thing(c), "counters"); t != nil {
		deed.Target = *t
		if t.Thing == nil || !isOf(t.Thing, people) {
			l.errorf(CodeWrongKind, t.Span, "`%s` does not spin; a camera counters a person's spin", t.Name())
		} else {
			l.spins = append(l.spins, spinWanted{l, t})
		}
	}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{paced: true, fixed: true}})
}

func (l *line) push(s *syntax.Push) {
	c := l.cameraCalled(s.Who, s.Verb)
	deed := &plan.Travel{By: l.length(s.Distance, s.Verb, limits{0, 1000, true}), Pull: s.Verb == "pulls"}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{paced: true, fixed: true}})
}

func (l *line) swing(s *syntax.Pan) {
	c := l.cameraCalled(s.Who, s.Verb)
	deed := &plan.Swing{}
	if s.Turn != nil {
		lim := manyTurns
		if s.Verb == "tilts" {
			lim = limits{0, 180, true}
		}
		deed.Angle, _ = l.angle(s.Turn.Amount, s.Verb, lim)
		deed.Turn = sideOf(s.Turn.Dir())
	}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{}})
}

func (l *line) rack(s *syntax.Rack) {
	c := l.cameraCalled(s.Who, "racks")
	deed := &plan.Rack{}
	switch {
	case s.To == nil:
	case s.To.Place != nil:
		deed.To = l.seen(s.To.Place, s.Glass, thing(c), "racks")
	default:
		if s.Glass != nil {
			l.errorf(CodeWrongPhrase, l.at(s.Glass), "a distance is the same in a mirror; `in %s` goes with whom it shows", s.Glass.Text)
		}
		if v, ok := l.quantity(s.To.Amount, units.Length, "to", site); ok {
			d := units.Metres(v)
			deed.Distance = &d
		}
	}
	l.uses(c)
	l.add(action{thing(c), s.Verb, deed, &s.Timed, phrases{}})
}

func (l *line) rollCamera(s *syntax.RollCamera) {
	c := l.cameraCalled(s.Who, s.Verb)
	l.uses(c)
	l.add(action{thing(c), s.Verb, &plan.Roll{On: s.Verb == "rolls"}, &s.Timed, phrases{}})
}

func (l *line) cut(s *syntax.Cut) {
	c := is[*plan.Camera](l, s.Camera, "the edit cuts to a camera", plan.KindCamera)
	l.uses(c)
	l.add(action{nil, "cut", &plan.Cut{Camera: c}, &s.Timed, phrases{atOnce: true}})
}
