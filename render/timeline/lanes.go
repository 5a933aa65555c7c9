package timeline

import (
	"math"
	"slices"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// taker makes the lanes of a take, or of a pickup.
type taker struct {
	r      *compile.Result
	p      *plan.Plan
	pickup *plan.Pickup // nil for the take
	clock  *clock.Clock
	length units.Seconds
}

func (t *taker) lanes() []lane {
	var out []lane
	if l, ok := t.cuts(); ok {
		out = append(out, l)
	}
	for _, c := range t.p.Kit.Cameras {
		if l, ok := t.camera(c); ok && t.rolls(c) {
			out = append(out, l)
		}
	}
	for _, who := range t.p.People {
		if !who.Crew {
			out = t.subject(out, who, "performer", who.Role)
		}
	}
	for _, who := range t.p.People {
		if who.Crew {
			out = t.subject(out, who, "crew", who.Role)
		}
	}
	for _, v := range t.p.Kit.Vehicles {
		out = t.subject(out, v, "vehicle", "")
	}
	for _, r := range t.p.Kit.Rigs {
		out = t.subject(out, r, "rig", r.Class)
	}
	if l, ok := t.doors(); ok {
		out = append(out, l)
	}
	out = append(out, t.lights()...)
	if l, ok := t.findings(); ok {
		out = append(out, l)
	}
	return out
}

// rolls is whether a camera has anything to do with it: in a pickup, one with a line
// there.
func (t *taker) rolls(c *plan.Camera) bool {
	if t.pickup == nil {
		return true
	}
	return slices.ContainsFunc(t.p.Actions, func(a *plan.Action) bool { return clock.SubjectOf(a) == plan.Thing(c) })
}

// subject adds the lane of someone, or something, that does anything.
func (t *taker) subject(out []lane, who plan.Thing, kind, role string) []lane {
	l := lane{name: who.ID().Name, under: kind}
	if role != "" && !strings.EqualFold(role, kind) {
		l.under = role
	}
	var does, says group
	for _, a := range t.p.Actions {
		if a.Subject != who {
			continue
		}
		it := t.action(a)
		if d, ok := a.Deed.(*plan.Say); ok {
			it.text, it.bar = "“"+d.Text+"”", "bar-say"
			says.items = append(says.items, it)
			continue
		}
		does.items = append(does.items, it)
	}
	for _, h := range t.r.Tracks.Handoffs {
		if h.Weight != nil && plan.Thing(h.Weight) == who {
			does.items = append(does.items, item{from: h.Start, to: h.End, text: "steps on for weight", bar: "bar-hand"})
		}
	}
	if len(does.items)+len(says.items) == 0 {
		return out
	}
	does.name, says.name = "does", "says"
	if len(does.items) > 0 {
		l.groups = append(l.groups, does)
	}
	if len(says.items) > 0 {
		l.groups = append(l.groups, says)
	}
	return append(out, l)
}

// action is a line as an item: what it does without its subject, for as long as it
// takes, and how much later it could be.
func (t *taker) action(a *plan.Action) item {
	i := t.clock.Of(a)
	it := item{from: i.Start, to: i.End, bar: "bar-do", text: t.short(a)}
	if i.Open {
		it.to, it.hold = i.Start, i.End
	}
	switch a.Deed.(type) {
	case *plan.Move, *plan.Leave, *plan.Board, *plan.Travel, *plan.Circle, *plan.Lift:
		it.bar = "bar-move"
	}
	if !i.Open {
		if i.Free >= 0.05 && !math.IsInf(float64(i.Free), 1) {
			it.slack = i.Free
		}
		switch {
		case i.Slack <= -0.05:
			it.text += ", late by " + (-i.Slack).String()
		case i.Slack >= 0.05 && i.Slack < tight:
			it.text += ", slack " + i.Slack.String()
		}
	}
	if !i.Placed {
		it.text += " (no time)"
	}
	return it
}

// tight is the slack from which on it is worth no words.
const tight units.Seconds = 10

// short is a line without its subject, with its lengths.
func (t *taker) short(a *plan.Action) string {
	s := clock.Describe(a)
	if who := a.Who(); who != "" {
		s = strings.TrimPrefix(strings.TrimPrefix(s, who), " ")
	}
	length := func(m units.Metres) string { return " " + m.Text(t.p.Take.Units) }
	switch d := a.Deed.(type) {
	case *plan.Fit:
		if d.Focal > 0 {
			s += " " + d.Focal.String()
		}
		if d.Stop > 0 {
			s += " " + d.Stop.String()
		}
	case *plan.Keep:
		s += " by" + length(d.By)
	case *plan.Beside:
		s += " " + d.Side.String() + length(d.By)
	case *plan.Circle:
		if !d.Counter {
			s += " " + d.Angle.String() + " " + d.Turn.String()
		}
		if d.At > 0 {
			s += " at" + length(d.At)
		}
	case *plan.Travel:
		s += length(d.By)
	case *plan.Lift:
		s += " to" + length(d.To)
	case *plan.Rack:
		if d.Distance != nil {
			s += " to" + length(*d.Distance)
		}
	}
	return s
}
