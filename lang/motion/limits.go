package motion

import (
	"fmt"
	"math"

	"longhand/lang/body"
	"longhand/lang/plan"
	"longhand/lang/units"
)

type (
	speedLimit = body.Limit[units.MetresPerSecond]
	accelLimit = body.Limit[units.MetresPerSecond2]
	turnLimit  = body.Limit[units.DegreesPerSecond]
)

// Limits is what moves a subject, and how much of it is usual and possible.
type Limits struct {
	Forward, Back speedLimit
	Rise          speedLimit
	Accel         accelLimit
	Lateral       accelLimit
	Turn          turnLimit // of a body on the spot; 0: only along its way
	Pan           turnLimit // of the lens
	Radius        body.Limit[units.Metres]
	Low, High     units.Metres // of the lens
	Source        string       // of Forward and Back, for people
}

// pace is the usual speed forwards or backwards.
func (l Limits) pace(back bool) speedLimit {
	if back && l.Back.Hard > 0 {
		return l.Back
	}
	return l.Forward
}

// LimitsOf is what a person, a vehicle or a rig does by itself; running widens
// a person's. Other things have none.
func LimitsOf(p *plan.Plan, thing plan.Thing, running bool) Limits {
	switch thing := thing.(type) {
	case *plan.Person:
		return personLimits(p, thing, running)
	case *plan.Vehicle:
		return vehicleLimits(p)
	case *plan.Rig:
		return rigLimits(p, thing)
	}
	return Limits{}
}

func personLimits(p *plan.Plan, who *plan.Person, running bool) Limits {
	any := body.Anybody()
	l := Limits{
		Forward: any.Walk, Back: any.Back, Accel: any.Accel, Lateral: any.Lateral, Turn: any.Turn,
		Source: "a person's walk, " + body.Practice,
	}
	if running {
		l.Forward, l.Source = any.Run, "a person's run, "+body.Practice
	}
	return ruled(p, l, string(who.Kind()))
}

func vehicleLimits(p *plan.Plan) Limits {
	any := body.AnyVehicle()
	return ruled(p, Limits{
		Forward: any.Speed, Back: any.Back, Accel: any.Accel, Lateral: any.Lateral,
		Radius: body.Limit[units.Metres]{Typical: any.Radius, Hard: any.Radius},
		Source: "a vehicle with people on foot nearby, " + body.Practice,
	}, "vehicle")
}

func rigLimits(p *plan.Plan, rig *plan.Rig) Limits {
	class, _ := body.ParseClass(rig.Class)
	r := body.RigOf(class)
	if class == body.Crane && rig.Seats > 0 {
		r = r.WithRider()
	}
	l := Limits{
		Forward: r.Forward, Back: r.Back, Rise: r.Rise, Accel: r.Accel, Pan: r.Pan, Radius: r.Radius,
		Low: r.LensLow, High: r.LensUp,
		Lateral: body.AnyVehicle().Lateral,
		Source:  fmt.Sprintf("rig %s (%s), %s", rig.Name, rig.Class, body.Practice),
	}
	if r.Crewing == body.Worn {
		any := body.Anybody()
		l.Lateral = any.Lateral
		l.Turn = turnLimit{Typical: any.Turn.Typical, Hard: any.Turn.Hard}
		if class == body.BodyRig { // all of the rig turns with its wearer
			l.Turn = r.Pan
		}
	}
	l = ruled(p, l, rig.Class)
	if rig.Speed > 0 {
		l.Forward = stated(l.Forward, rig.Speed)
		l.Source = fmt.Sprintf("rig %s, speed %s in the plan", rig.Name, rig.Speed)
	}
	if rig.Back > 0 {
		l.Back = stated(l.Back, rig.Back)
	}
	if rig.Pan > 0 {
		l.Pan = turnLimit{Typical: min(l.Pan.Typical, rig.Pan), Hard: rig.Pan}
	}
	return l
}

// ruled applies the production's own speed limits to a class.
func ruled(p *plan.Plan, l Limits, class string) Limits {
	for _, rule := range p.Look.Speeds {
		if rule.Class != class {
			continue
		}
		l.Forward = stated(l.Forward, rule.Speed)
		if rule.Back > 0 {
			l.Back = stated(l.Back, rule.Back)
		} else {
			l.Back = speedLimit{Typical: min(l.Back.Typical, rule.Speed), Hard: min(l.Back.Hard, rule.Speed)}
		}
		l.Source = fmt.Sprintf("look, speed %s at most %s", class, rule.Speed)
	}
	return l
}

func stated(l speedLimit, v units.MetresPerSecond) speedLimit {
	return speedLimit{Typical: min(l.Typical, v), Hard: v}
}

// worn is what an operator does with a rig on: no more than either.
func worn(person, rig Limits) Limits {
	l := rig
	l.Forward = lesser(person.Forward, rig.Forward)
	l.Back = lesser(person.Back, rig.Back)
	return l
}

func lesser(a, b speedLimit) speedLimit {
	return speedLimit{Typical: min(a.Typical, b.Typical), Hard: min(a.Hard, b.Hard)}
}

// turnTime is how long a turn by an angle takes at the usual rate.
func (l Limits) turnTime(angle float64) float64 {
	return turnEase.Time(math.Abs(angle), l.turnRate(), 0)
}

// swayRate is how fast somebody goes on facing what moves, radians a second:
// with the turn to it on top, which is up to one and a half times the usual rate
// in its middle, no more than a body does.
func (l Limits) swayRate() float64 {
	hard := l.Turn.Hard
	if hard <= 0 {
		hard = body.Anybody().Turn.Hard
	}
	usual := l.turnRate()
	return max(min(2*usual, units.Degrees(hard).Radians()-1.5*usual), usual/2)
}

// turnRate is the usual rate of turning on the spot, radians a second; what
// only turns along its way is turned by hand where it has to be.
func (l Limits) turnRate() float64 {
	rate := l.Turn.Typical
	if rate <= 0 {
		rate = body.Anybody().Turn.Typical
	}
	return units.Degrees(rate).Radians()
}
