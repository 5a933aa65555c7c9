package check

import (
	"math"
	"strings"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var tooFast = &Rule{
	Entry: diag.Entry{
		Code:     "too-fast",
		Title:    "faster than the body or the rig goes",
		Severity: diag.Error,
		At:       these(going, "beat turns", "beat spins", "beat sits", "beat sees", "beat pans", "beat racks", "beat takes", "look speed"),
		Explain: `A line asks for a pace, a turn, a pan, a rise or a focus pull above what whoever
does it is taken to manage. The finding names the limit and where it comes from:
the class of the rig, the rig's own line in the kit, or the look's "speed CLASS
at most".

Either the text says so itself ("at 3 m/s", "in 2 s"), or it follows from
somebody else: an operator who leads a performer walks backwards as fast as the
performer walks, and one who keeps to the outside of a curve walks faster than
whoever is inside it.

A move of length L in a time T needs a pace v where T = L/v + v/a, a being what
is gathered and lost a second. In a curve of radius r the body is pushed
outwards by v²/r.

To mend it: take more time, shorten the way, let the one who is followed go
slower, or take a faster rig. A limit that is really higher is stated in the
kit: "rig vest body-rig speed 2 m/s back 1.4 m/s".`,
		Bad: `take "Sprint"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 2.6 m/s
`,
		Good: `take "Walk"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1.4 m/s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		type key struct {
			action   *plan.Action
			subject  plan.Thing
			quantity motion.Quantity
		}
		worst := map[key]int{}
		list := p.demands()
		for i, d := range list {
			if !paced(d.Quantity) || !d.Over() || refocuses(p, d) || p.aloneOnTheRoad(d) {
				continue
			}
			k := key{d.Action, d.Subject, d.Quantity}
			if j, ok := worst[k]; ok && list[j].Peak >= d.Peak {
				continue
			}
			worst[k] = i
		}
		for k := range worst { // who goes too fast gathers speed too fast, too
			_, fore := worst[key{k.action, k.subject, motion.Speed}]
			_, back := worst[key{k.action, k.subject, motion.BackSpeed}]
			if k.quantity == motion.Accel && (fore || back) {
				delete(worst, k)
			}
		}
		for i, d := range list {
			if j, ok := worst[key{d.Action, d.Subject, d.Quantity}]; ok && i == j {
				p.tooFast(d)
			}
		}
	},
}

// demands is what all lines ask of bodies, rigs and lenses.
func (p *Pass) demands() []motion.Demand {
	return p.known().demands.get(func() []motion.Demand {
		asked := append(append([]motion.Demand{}, p.Tracks.Demands...), p.Tracks.LensDemands()...)
		for i := range asked {
			if d := &asked[i]; (d.Quantity == motion.Speed || d.Quantity == motion.BackSpeed) && d.Action != nil && d.Action.Timing.At != nil {
				// A pace that is asked for is, even where the way is too short to
				// reach it.
				d.Peak = math.Max(d.Peak, float64(*d.Action.Timing.At))
			}
		}
		return asked
	})
}

func paced(q motion.Quantity) bool {
	switch q {
	case motion.LensLow, motion.LensHigh, motion.Radius:
		return false
	}
	return true
}

// refocusTime is how long a focus may be on its way to another subject. How fast
// it goes then depends on how far apart the two are, and is no fault: the limit
// is for following a subject that moves.
const refocusTime units.Seconds = 2

func refocuses(p *Pass, d motion.Demand) bool {
	if d.Quantity != motion.FocusRate || d.Action == nil {
		return false
	}
	if _, rack := d.Action.Deed.(*plan.Rack); rack {
		return true
	}
	return d.At < p.Clock.Of(d.Action).Start+refocusTime || d.At < d.From+refocusTime
}

// aloneOnTheRoad says that a vehicle's limit, which is for people on foot near
// by, doesn't bind: there are none. A limit of the look's always does.
func (p *Pass) aloneOnTheRoad(d motion.Demand) bool {
	v, ok := d.Subject.(*plan.Vehicle)
	if !ok || d.Quantity != motion.Speed && d.Quantity != motion.BackSpeed || strings.HasPrefix(d.Source, "look") {
		return false
	}
	near := safety.StoppingDistance(units.MetresPerSecond(d.Peak), safety.Dry) + body.VehicleGap.Typical
	track := p.Tracks.Body(v)
	for _, t := range p.Tracks.Bodies {
		if personOf(t.Thing) == nil {
			continue
		}
		for at := d.From; at <= d.To; at += 0.5 {
			if t.Carrier(at) == nil && t.At(at).Point().Dist(track.At(at).Point()) < float64(near) {
				return false
			}
		}
	}
	return true
}

// amount prints a demand's number in its unit.
func (p *Pass) amount(q motion.Quantity, v float64) string {
	switch q {
	case motion.Accel, motion.Lateral:
		return units.MetresPerSecond2(v).Text(p.Plan.Take.Units)
	case motion.TurnRate, motion.PanRate, motion.TiltRate:
		return units.DegreesPerSecond(v).String()
	case motion.LensLow, motion.LensHigh, motion.Radius:
		return p.Length(units.Metres(v))
	}
	return p.Speed(units.MetresPerSecond(v))
}

// doing says what somebody does at a rate.
func doing(d motion.Demand) string {
	person := personOf(d.Subject) != nil
	switch d.Quantity {
	case motion.Speed:
		return "goes at"
	case motion.BackSpeed:
		if person {
			return "walks backwards at"
		}
		return "goes backwards at"
	case motion.Accel:
		return "gathers or loses speed by"
	case motion.Lateral:
		return "is pushed sideways in the curve by"
	case motion.TurnRate:
		return "turns at"
	case motion.PanRate:
		return "pans at"
	case motion.TiltRate:
		return "tilts at"
	case motion.RiseRate:
		return "takes the lens up or down at"
	}
	return "follows focus at"
}

func (p *Pass) tooFast(d motion.Demand) {
	over := p.amount(d.Quantity, d.Peak-d.Limit)
	f := p.foundOn(d.Action, d.Subject, d.From, d.To, "%s %s %s, %s over the limit of %s",
		nameOf(d.Subject), doing(d), p.amount(d.Quantity, d.Peak), over, p.amount(d.Quantity, d.Limit))
	f.Worst = p.stretch(d.At, d.At).From
	f.Note("the limit is of %s", d.Source)
	if d.Action == nil {
		return
	}
	f.Note("the most is at %s, in: %s", d.At.Clock(), clock.Describe(d.Action))
	p.slower(f, d)
}
