package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
)

var handoffMoving = &Rule{
	Entry: diag.Entry{
		Code:     "handoff-moving",
		Title:    "the two rigs of a handoff are not at rest to each other",
		Severity: diag.Error,
		At:       []string{"beat handoff"},
		Explain: `A camera changes hands while one of the two that hand it over moves away from the
other, at more than 0.15 m/s. Hand to hand the two may walk together; a platform,
an arm, a cart or a vehicle that somebody steps on or off with a camera stands
still (common practice, no source).

To mend it: let the handoff wait until both have stopped: "when NAME reaches
MARK".`,
		Bad: `take "On the fly"
  rate 24 fps
set "Yard"
  mark C0 (0, 0)
  mark C1 (16, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3
  rig vest body-rig
people
  crew ida
beat "Along"
  cart drives from C0 to C1 at 2 m/s
  A on cart with ida up 1.5 m
  A takes w35 T4
  handoff A from cart to vest starting +4 s
`,
		Good: `take "At rest"
  rate 24 fps
set "Yard"
  mark C0 (0, 0)
  mark C1 (16, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3
  rig vest body-rig
people
  crew ida
beat "Along"
  cart drives from C0 to C1 at 2 m/s
  A on cart with ida up 1.5 m
  A takes w35 T4
  handoff A from cart to vest when cart reaches C1
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, h := range p.Tracks.Handoffs {
			v, what := h.Relative, "to each other"
			if h.Way.Still {
				v, what = max(h.Moving, h.Relative), "where both have to stand still"
			}
			if v <= body.HandoffDrift {
				continue
			}
			d := p.foundOn(h.Action, h.Camera, h.Start, h.End, "%s goes from %s to %s while they move at %s %s, %s more than counts as rest",
				h.Camera.Name, heldBy(h.From, h.Giver), heldBy(h.To, h.Taker), p.Speed(v), what, p.Speed(v-body.HandoffDrift))
			d.Note("%s: up to %s counts as rest, %s", h.Way.How, p.Speed(body.HandoffDrift), body.Practice)
			p.atRest(d, h)
			if h.Way.Weight {
				d.Note("%s", safety.Cranes.Caution())
			} else if h.Way.Still {
				d.Note("%s", safety.Vehicles.Caution())
			}
		}
	},
}

// atRest offers to begin a handoff when the one that moves has arrived.
func (p *Pass) atRest(d *diag.Diagnostic, h motion.Handoff) {
	if h.Action == nil || !h.Written {
		return
	}
	for _, thing := range [...]plan.Thing{h.From, h.To, thingOf(h.Giver), thingOf(h.Taker)} {
		t := p.Tracks.Body(thing)
		if t == nil || t.Speed(h.Start) <= body.HandoffDrift {
			continue
		}
		cue, ok := arrival(t, h.Start)
		if !ok {
			continue
		}
		span := endOf(h.Action.Span)
		if s := h.Action.Timing.Start; s != nil {
			if span, ok = startPhrase(s); !ok {
				return
			}
		}
		d.Fix("begin"+cue, replaced(span, cue))
		return
	}
}
