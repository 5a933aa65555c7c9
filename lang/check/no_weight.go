package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var noWeight = &Rule{
	Entry: diag.Entry{
		Code:     "no-weight",
		Title:    "somebody steps off a balanced arm and nobody steps on",
		Severity: diag.Error,
		At:       []string{"beat handoff", "beat leaves"},
		Explain: `An arm that carries a person is balanced with them on it. The moment they step
off, the far end comes down with their weight times the arm's length, and the end
they stood on goes up: 80 kg off an arm of 4 m are more than 3000 N·m.

So somebody of about the same weight steps on before they step off, and stays:
"handoff A from lift to vest weight jon", or "jon boards lift" first.

To mend it: name who steps on.`,
		Bad: `take "Off the arm"
  rate 24 fps
set "Hall"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig lift crane reach 4 m seats 1
  rig vest body-rig
people
  crew ida
  crew jon
beat "Down"
  lift stands at C1
  A on lift with ida up 1.5 m
  A takes w35 T4
  A rests
  jon stands at (3.6, 1.4)
  handoff A from lift to vest starting +2 s
`,
		Good: `take "Off the arm"
  rate 24 fps
set "Hall"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig lift crane reach 4 m seats 1
  rig vest body-rig
people
  crew ida
  crew jon
beat "Down"
  lift stands at C1
  A on lift with ida up 1.5 m
  A takes w35 T4
  A rests
  jon stands at (3.6, 1.4)
  handoff A from lift to vest weight jon starting +2 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, h := range p.Tracks.Handoffs {
			if h.StepsOff && h.Weight == nil && seatedArm(h.From) && !p.standsIn(h.From, h.Giver, h.Start, h.End) {
				p.noWeight(h.Action, h.Giver, h.From, h.Start, h.End)
			}
		}
		for _, r := range p.Tracks.Rides {
			who, rig := personOf(r.Who), rigOf(r.Carrier)
			if who == nil || rig == nil || !seatedArm(rig) || r.To >= p.Tracks.Length() || p.handsOver(who, rig, r.To) {
				continue
			}
			if !p.standsIn(rig, who, r.To, r.To+weightWithin) {
				p.noWeight(p.leaving(who, rig, r.To), who, rig, r.To, r.To)
			}
		}
	},
}

// weightWithin is how soon after somebody has stepped off another must be on
// (common practice, no source: the grips hold the arm for the step itself).
const weightWithin units.Seconds = 1

// swapWithin is how long before somebody steps off another may have stepped on
// for the two to be a swap: the time an operator takes onto a platform, with as
// much again (common practice, no source).
const swapWithin units.Seconds = 20

// seatedArm says that a rig is an arm that carries people.
func seatedArm(r *plan.Rig) bool {
	c, _ := body.ParseClass(r.Class)
	return c == body.Crane && r.Seats > 0
}

func rigOf(t plan.Thing) *plan.Rig {
	r, _ := t.(*plan.Rig)
	return r
}

// standsIn says that somebody gets on a rig before another is off it, for their
// weight or to work it, and stays.
func (p *Pass) standsIn(rig *plan.Rig, who *plan.Person, from, to units.Seconds) bool {
	for _, r := range p.Tracks.Rides {
		if rigOf(r.Carrier) == rig && r.Who != plan.Thing(who) && (r.Weight || from-r.From <= swapWithin) && r.From <= to && r.To > from {
			return true
		}
	}
	return false
}

// handsOver says that somebody leaves a rig by a handoff.
func (p *Pass) handsOver(who *plan.Person, rig *plan.Rig, at units.Seconds) bool {
	const about = 0.5
	for _, h := range p.Tracks.Handoffs {
		if h.From == rig && h.Giver == who && at >= h.Start-about && at <= h.End+about {
			return true
		}
	}
	return false
}

// leaving is the line by which somebody leaves a rig at a time.
func (p *Pass) leaving(who *plan.Person, rig *plan.Rig, at units.Seconds) *plan.Action {
	const about = 1e-3
	for _, a := range p.Plan.Actions {
		if d, ok := a.Deed.(*plan.Leave); ok && d.Carrier == plan.Thing(rig) && a.Subject == plan.Thing(who) {
			if s := p.Clock.Of(a).Start; s > at-about && s < at+about {
				return a
			}
		}
	}
	return nil
}

func (p *Pass) noWeight(a *plan.Action, who *plan.Person, rig *plan.Rig, from, to units.Seconds) {
	arm := body.RigOf(body.Crane).Reach
	if rig.Reach > 0 {
		arm = rig.Reach
	}
	d := p.foundOn(a, who, from, to, "%s steps off %s at %s and nobody steps on: %s are missing at the end of an arm of %s",
		nameOf(who), rig.Name, from.Clock(), who.Weight, p.Length(arm))
	d.Note("the arm is thrown with up to %s: weight x 9.81 m/s² x reach", safety.ThrowUp(who.Weight, arm))
	d.Note("name who steps on: weight NAME on the handoff, or NAME boards %s before it", rig.Name)
	d.Note("%s", safety.Cranes.Caution())
	p.nameTheWeight(d, a, rig, from)
}

// nameTheWeight offers the one of the crew who stands by the arm anyway.
func (p *Pass) nameTheWeight(d *diag.Diagnostic, a *plan.Action, rig *plan.Rig, at units.Seconds) {
	if a == nil {
		return
	}
	h, ok := a.Deed.(*plan.Handoff)
	if !ok {
		return
	}
	camera := p.Tracks.Camera(h.Camera)
	if camera == nil {
		return
	}
	var nearest *plan.Person
	best := byTheArm
	for _, who := range p.Plan.People {
		t := p.Tracks.Body(who)
		if !who.Crew || t == nil || who == camera.Operator(at) || t.Segment(at).Kind != motion.Resting {
			continue
		}
		v := camera.At(at)
		if gap := t.At(at).Point().Sub(vec(v.X, v.Y)).Len(); gap < best {
			nearest, best = who, gap
		}
	}
	if nearest == nil || h.To == nil {
		return
	}
	span := a.Span
	text := span.Text()
	i := lastWord(text, h.To.Name)
	if i < 0 {
		return
	}
	span.Start += i + len(h.To.Name)
	span.End = span.Start
	d.Fix("let "+nearest.Name+" step on", replaced(span, " weight "+nearest.Name))
}

// byTheArm is how near the lens somebody stands who can step on at once, m.
const byTheArm = 2.0
