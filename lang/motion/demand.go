package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// isFixed says that the text fixes the time or the pace of a line.
func isFixed(a *plan.Action) bool {
	return a != nil && (a.Timing.In != nil || a.Timing.At != nil || a.Timing.Until != nil)
}

func (b *builder) demand(d Demand) {
	d.Fixed = isFixed(d.Action)
	b.facts.Demands = append(b.facts.Demands, d)
}

// demandMove records what a move along a path asks for.
func (b *builder) demandMove(t plan.Thing, e *event, s *Segment) {
	lim := s.Limits
	base := Demand{Subject: t, Action: e.action, From: s.Start, To: s.End, Source: lim.Source}
	sideways, when := s.sideways()
	d := base
	v := lim.pace(s.Backwards)
	d.Quantity, d.Peak, d.Typical, d.Limit = Speed, float64(s.Profile.Peak()), float64(v.Typical), float64(v.Hard)
	if s.Backwards {
		d.Quantity = BackSpeed
	}
	d.At = s.Start + s.Profile.PeakAt()
	b.demand(d)
	d = base
	d.Quantity, d.Peak, d.Typical, d.Limit = Accel, float64(s.Profile.Strain()), float64(lim.Accel.Typical), float64(lim.Accel.Hard)
	d.At = s.Start
	b.demand(d)
	if sideways > 1e-6 {
		d = base
		d.Quantity, d.Peak, d.Typical, d.Limit = Lateral, sideways, float64(lim.Lateral.Typical), float64(lim.Lateral.Hard)
		d.At = s.Start + when
		b.demand(d)
	}
	if k := s.bends.tightest(); k > 1e-6 && lim.Radius.Hard > 0 {
		if _, person := t.(*plan.Person); !person {
			d = base
			d.Quantity, d.Peak, d.Typical, d.Limit = Radius, 1/k, float64(lim.Radius.Typical), float64(lim.Radius.Hard)
			b.demand(d)
		}
	}
}

// sideways is the most a move asks for in its curves, m/s², and how long after its
// start.
func (s *Segment) sideways() (most float64, when units.Seconds) {
	if len(s.bends.kappa) == 0 {
		return 0, 0
	}
	const points = 96
	step := float64(s.Profile.Duration()) / points
	for i := 0; i <= points; i++ {
		u := units.Seconds(step * float64(i))
		v := float64(s.Profile.Speed(u))
		if k := s.bends.at(float64(s.Profile.At(u))); v*v*k > most {
			most, when = v*v*k, u
		}
	}
	return most, when
}

// demandTurn records what a turn on the spot asks for.
func (b *builder) demandTurn(t plan.Thing, e *event, angle float64, lim Limits) {
	took := e.end - e.start
	if took <= 0 || math.Abs(angle) < 1e-6 || lim.Turn.Hard <= 0 {
		return
	}
	b.demand(Demand{
		Subject: t, Action: e.action, Quantity: TurnRate,
		From: units.Seconds(e.start), To: units.Seconds(e.end), At: units.Seconds((e.start + e.end) / 2),
		Peak:    math.Abs(angle) / took * turnEase.PeakSpeed() * 180 / math.Pi,
		Typical: float64(lim.Turn.Typical), Limit: float64(lim.Turn.Hard), Source: lim.Source,
	})
}

// relationStep is the time between looks at a relation's speed.
const relationStep = 1.0 / 12

// demandRelation records what following a relation asks for, forwards and
// backwards, and returns the most of either.
func (b *builder) demandRelation(t *Track, e *event, lim Limits, start, until float64) float64 {
	fore := Demand{Subject: t.Thing, Action: e.action, Quantity: Speed, Typical: float64(lim.Forward.Typical), Limit: float64(lim.Forward.Hard)}
	back := Demand{Subject: t.Thing, Action: e.action, Quantity: BackSpeed, Typical: float64(lim.Back.Typical), Limit: float64(lim.Back.Hard)}
	seg := &t.Segments[len(t.Segments)-1]
	n, step := looks(until-start, relationStep)
	p := seg.way.at(start).Floor()
	round := Demand{Subject: t.Thing, Action: e.action, Quantity: Radius, Peak: math.Inf(1),
		Typical: float64(lim.Radius.Typical), Limit: float64(lim.Radius.Hard)}
	var before geom.Vec
	for i := range n {
		at := start + step*float64(i+1)
		q := seg.way.at(at).Floor()
		v := q.Sub(p).Mul(1 / step)
		p = q
		d := &fore
		if goesBack(v, t.heading(at-step/2)) {
			d = &back
		}
		if s := v.Len(); s > d.Peak {
			d.Peak, d.At = s, units.Seconds(at-step/2)
		}
		if u, w := before.Len(), v.Len(); u > turningPace && w > turningPace {
			turn := math.Abs(math.Atan2(before.Cross(v), before.Dot(v)))
			if r := (u + w) / 2 * step / max(turn, 1e-9); r < round.Peak {
				round.Peak, round.At = r, units.Seconds(at-step)
			}
		}
		before = v
	}
	if lim.Radius.Hard > 0 && round.Peak < 1e3 && !noWheels(t.Thing) {
		round.From, round.To, round.Source = units.Seconds(start), units.Seconds(until), lim.Source
		b.demand(round)
	}
	for _, d := range []Demand{fore, back} {
		if d.Peak > 0.05 {
			d.From, d.To, d.Source = units.Seconds(start), units.Seconds(until), lim.Source
			b.demand(d)
		}
	}
	return max(fore.Peak, back.Peak)
}

// turningPace is the speed below which wheels are turned on the spot, by hand,
// rather than steered, m/s.
const turningPace = 0.15

// noWheels says that what moves is no wheels of its own: a person, or the end of
// an arm.
func noWheels(t plan.Thing) bool {
	rig, ok := t.(*plan.Rig)
	if !ok {
		_, person := t.(*plan.Person)
		return person
	}
	return armedClass(classOf(rig).Class)
}

// goesBack says that a velocity is backwards for a heading: more than 120
// degrees from it.
func goesBack(v geom.Vec, heading float64) bool {
	return v.Dot(geom.Polar(1, heading)) < -0.5*v.Len()
}

// short records a relation on an arm, a rail or a tripod that can't be where it
// is wanted: by how much at the worst.
func (b *builder) short(e *event, miss func(t float64) float64, start, until float64) {
	worst, at := 0.0, start
	n, step := looks(until-start, 0.25)
	for i := range n + 1 {
		t := start + step*float64(i)
		if d := miss(t); d > worst {
			worst, at = d, t
		}
	}
	if worst > nearEnough {
		b.facts.Armed = append(b.facts.Armed, ArmShort{Camera: e.camera, Rig: e.hold.rig, Action: e.action,
			At: units.Seconds(at), Short: units.Metres(worst)})
	}
}
