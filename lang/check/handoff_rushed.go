package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var handoffRushed = &Rule{
	Entry: diag.Entry{
		Code:     "handoff-rushed",
		Title:    "no time for a handoff",
		Severity: diag.Error,
		At:       []string{"beat handoff", "beat boards", "beat rides"},
		Explain: `A handoff is given less time than its kind takes at the least: 2 s from hand to
hand, 4 s onto a hook or lock and 2.5 s off it, 6 s to step on a platform with a
body rig and 4 s to step off, 8 s onto a standing vehicle, 3 s onto a dolly and
1.5 s off it (common practice, no source). What is rushed here is a camera
dropped, or a wearer who isn't belted yet. So is a vehicle that drives off less than
5 s after an operator with a camera has sat into it.

To mend it: give it the time, or begin it sooner.`,
		Bad: `take "Quick"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3
  rig vest body-rig
people
  crew ida
beat "Down"
  cart stands at C1
  A on cart with ida up 1.5 m
  A takes w35 T4
  handoff A from cart to vest starting +2 s in 2 s
`,
		Good: `take "In good time"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3
  rig vest body-rig
people
  crew ida
beat "Down"
  cart stands at C1
  A on cart with ida up 1.5 m
  A takes w35 T4
  handoff A from cart to vest starting +2 s in 6 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		const slop = 1e-6
		for _, h := range p.Tracks.Handoffs {
			took := h.End - h.Start
			if took >= h.Way.Minimum-slop {
				continue
			}
			d := p.foundOn(h.Action, h.Camera, h.Start, h.End, "%s has %s to go from %s to %s, %s less than the %s it takes at the least",
				h.Camera.Name, took, heldBy(h.From, h.Giver), heldBy(h.To, h.Taker), h.Way.Minimum-took, h.Way.Minimum)
			d.Note("%s: usually %s, at the least %s, %s", h.Way.How, h.Way.Typical, h.Way.Minimum, body.Practice)
			if h.Action != nil && h.Action.Timing.In != nil {
				d.Fix("take "+h.Way.Minimum.String(), replaced(h.Action.Timing.InSpan, atLeast(float64(h.Way.Minimum))))
			}
			if h.Way.Weight || h.Way.Still {
				d.Note("%s", handoffCaution(h.From, h.To))
			}
		}
		for _, r := range p.Tracks.Rides {
			p.sitsIn(r)
		}
	},
}

// sitsIn finds a vehicle that goes off before an operator with a camera on has sat
// down in it.
func (p *Pass) sitsIn(r motion.Ride) {
	who := personOf(r.Who)
	vehicle, ok := r.Carrier.(*plan.Vehicle)
	t := p.Tracks.Body(r.Carrier)
	if who == nil || !ok || t == nil || r.From <= 0 || !p.wearing(p.moving(), who, r.From) {
		return
	}
	way := body.SitsInVehicle
	const step = 0.05
	for wait := units.Seconds(0); wait < way.Minimum; wait += step {
		at := r.From + wait
		if at >= p.Tracks.Length() || at >= r.To {
			return
		}
		if t.Speed(at) <= stepSpeed {
			continue
		}
		d := p.foundOn(r.Action, r.Who, r.From, at, "%s, with a camera, sits into %s at %s and it drives off %s later, %s less than the %s it takes at the least",
			who.Name, vehicle.Name, r.From.Clock(), wait, way.Minimum-wait, way.Minimum)
		d.Note("%s: usually %s, at the least %s, %s", way.How, way.Typical, way.Minimum, body.Practice)
		d.Note("%s", safety.Vehicles.Caution())
		return
	}
}

// handoffCaution is the caution for stepping on or off one of two rigs.
func handoffCaution(from, to *plan.Rig) string {
	for _, r := range [...]*plan.Rig{from, to} {
		if c, _ := body.ParseClass(r.Class); c == body.Crane {
			return safety.Cranes.Caution()
		}
	}
	return safety.Vehicles.Caution()
}
