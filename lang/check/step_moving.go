package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var stepMoving = &Rule{
	Entry: diag.Entry{
		Code:     "step-moving",
		Title:    "somebody steps on or off what is moving",
		Severity: diag.Error,
		At:       []string{"beat leaves", "beat boards", "beat rides", "beat handoff"},
		Explain: `Somebody gets on a vehicle or a rig, or off it, while it goes faster than 0.3 m/s,
a slow step beside it (common practice, no source). A camera that is handed over
on the move is found as handoff-moving.

To mend it: let it stop first: "mina leaves van when van reaches D1".`,
		Bad: `take "Jump off"
  rate 24 fps
set "Yard"
  mark D0 (-20, 0)
  mark D1 (10, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
beat "Off"
  van drives from D0 to D1 at 2 m/s
  mina rides van at (-1.6, 0)
  mina leaves van to (-12, 6) starting +4 s
`,
		Good: `take "Step off"
  rate 24 fps
set "Yard"
  mark D0 (-20, 0)
  mark D1 (10, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
beat "Off"
  van drives from D0 to D1 at 2 m/s
  mina rides van at (-1.6, 0)
  mina leaves van when van reaches D1
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, r := range p.Tracks.Rides {
			if personOf(r.Who) == nil {
				continue
			}
			if r.From > 0 {
				p.stepsMoving(r, r.From, "on", r.Action)
			}
			if r.To < p.Tracks.Length() {
				p.stepsMoving(r, r.To, "off", p.leavingLine(r))
			}
		}
	},
}

// stepSpeed is how fast something may go that is stepped on or off (common
// practice, no source: that of a dolly).
const stepSpeed units.MetresPerSecond = 0.3

// leavingLine is the line by which a ride ends; nil where it ends otherwise.
func (p *Pass) leavingLine(r motion.Ride) *plan.Action {
	const about = 1e-3
	for _, a := range p.Plan.Actions {
		if d, ok := a.Deed.(*plan.Leave); ok && d.Carrier == r.Carrier && a.Subject == r.Who {
			if s := p.Clock.Of(a).Start; s > r.To-about && s < r.To+about {
				return a
			}
		}
	}
	return nil
}

func (p *Pass) stepsMoving(r motion.Ride, at units.Seconds, how string, line *plan.Action) {
	t := p.Tracks.Body(r.Carrier)
	if t == nil || line == nil {
		return
	}
	if _, handoff := line.Deed.(*plan.Handoff); handoff {
		return
	}
	v := t.Speed(at)
	if v <= stepSpeed {
		return
	}
	d := p.foundOn(line, r.Who, at, at, "%s steps %s %s at %s while it goes at %s, %s more than the %s that is a slow step",
		nameOf(r.Who), how, nameOf(r.Carrier), at.Clock(), p.Speed(v), p.Speed(v-stepSpeed), p.Speed(stepSpeed))
	d.Note("the limit is %s", body.Practice)
	p.stepsAtRest(d, t, at, line)
	d.Note("%s", safety.Vehicles.Caution())
}

// stepsAtRest offers to step when the carrier has arrived.
func (p *Pass) stepsAtRest(d *diag.Diagnostic, t *motion.Track, at units.Seconds, line *plan.Action) {
	cue, ok := arrival(t, at)
	if !ok {
		return
	}
	span := endOf(line.Span)
	if s := line.Timing.Start; s != nil {
		if span, ok = startPhrase(s); !ok {
			return
		}
	}
	d.Fix("step"+cue, replaced(span, cue))
}
