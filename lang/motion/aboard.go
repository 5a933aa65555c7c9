package motion

import (
	"fmt"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

const (
	stepTime  = 1.0  // seconds to step on or off a carrier
	stepReach = 2.5  // metres within which a carrier can be stepped on
	stepClear = 0.35 // metres from a carrier's side to the middle of who stands beside it

	stepFar = 2.2 // metres from the seat to where somebody gets off, at most

	acrossBehind = 0.8 // metres, of who gets off on the far side
)

// carrier is what a rider is held by; nil where it is nowhere.
func (b *builder) carrier(t plan.Thing, tip bool) frame {
	if rig, ok := t.(*plan.Rig); ok && tip {
		if bm := b.boom(rig); bm != nil {
			return bm
		}
		return nil
	}
	if t == nil {
		return nil
	}
	switch t.(type) {
	case *plan.Person, *plan.Vehicle, *plan.Rig:
	default:
		return nil
	}
	if tr := b.track(t); tr != nil {
		return tr
	}
	return nil
}

// isArm says that a thing is a rig whose riders are at the end of its arm.
func (b *builder) isArm(t plan.Thing) bool {
	rig, ok := t.(*plan.Rig)
	if !ok {
		return false
	}
	class, _ := body.ParseClass(rig.Class)
	return class == body.Crane
}

// seat is where somebody is put who boards without a place being said.
func (b *builder) seat(t plan.Thing) geom.Vec {
	if rig, ok := t.(*plan.Rig); ok && !b.isArm(t) {
		return geom.Vec{X: -float64(classOf(rig).Length) / 4}
	}
	return geom.Vec{}
}

// riding and boarding are what the lines of those names ask for.
func (b *builder) riding(d *plan.Ride) riding {
	return riding{carrier: d.Carrier, at: d.At, given: d.AtGiven, tip: b.isArm(d.Carrier)}
}

func (b *builder) boarding(d *plan.Board) *riding {
	r := riding{carrier: d.Carrier, at: b.seat(d.Carrier), tip: b.isArm(d.Carrier), weight: true}
	if d.At != nil {
		r.at, r.given = *d.At, true
	}
	return &r
}

// seatAt is the rider's place in the carrier's frame, over its deck. Whoever
// works a rig from beside it stands on the floor.
func (b *builder) seatAt(r riding) geom.Vec3 {
	p := r.at
	if r.tip && !r.given {
		p = geom.Vec{X: -armSeat} // behind the lens
	}
	z := 0.0
	if rig, ok := r.carrier.(*plan.Rig); ok && r.aside && classOf(rig).Crewing == body.Ridden {
		z = -rigDeck
	}
	return p.At(z)
}

// armSeat is how far behind the lens its operator is on an arm's platform.
const armSeat = 0.4

// ride gets aboard.
func (l *lane) ride(e *event, r riding, until float64) {
	on := l.b.carrier(r.carrier, r.tip)
	if on == nil {
		l.b.problem(Problem{Kind: NoTarget, Subject: l.t.Thing, Other: r.carrier, Action: e.action, Note: "it is nowhere"})
		return
	}
	by := l.b.seatAt(r)
	was := l.aboard
	if was != nil && was.thing == r.carrier && (was.by == by || r.weight && !r.given) {
		if was.since == 0 && len(l.t.Segments) == 1 {
			was.action = e.action
		}
		was.weight = was.weight || r.weight
		return
	}
	seat := held{on, by}
	var from way = l.wrap(rest{l.here()})
	if was != nil {
		from = held{was.on, was.by}
	}
	l.disembark(e.start)
	l.aboard = &boarded{thing: r.carrier, on: on, by: by, action: e.action, since: e.start, weight: r.weight, quiet: r.quiet}
	gap := l.here().Dist(seat.at(e.start))
	took := e.end - e.start
	if took < 1e-9 {
		took = stepTime
	}
	if gap > stepReach {
		l.jump(e.action, seat.at(e.start), l.b.limits(l.t.Thing, e.start, false))
	}
	l.t.face(l.done, turning(func(t float64) float64 { _, h := on.frame(t); return h }), l.b.limits(l.t.Thing, e.start, false), -1, false)
	l.still = nil
	if gap < 1e-6 {
		return
	}
	l.push(Segment{Kind: Stepping, Action: e.action, End: units.Seconds(min(l.done+took, max(until, l.done))),
		Carrier: r.carrier, way: blend{from, seat, l.done, l.done + took}})
}

// disembark records the ride that ends.
func (l *lane) disembark(at float64) {
	if l.aboard == nil {
		return
	}
	if r := l.aboard; !r.quiet {
		l.b.facts.Rides = append(l.b.facts.Rides, Ride{
			Who: l.t.Thing, Carrier: r.thing, Action: r.action, At: r.by.Floor(),
			From: units.Seconds(r.since), To: units.Seconds(at), Weight: r.weight,
		})
	}
	l.aboard = nil
}

// leave steps off to a place near by, or to the nearest side, and walks on.
func (l *lane) leave(e *event, carrier plan.Thing, near, to *plan.Place, until float64) {
	if l.aboard == nil || l.aboard.thing != carrier {
		name := "nothing"
		if carrier != nil {
			name = carrier.ID().Name
		}
		l.b.problem(Problem{Kind: NotAboard, Subject: l.t.Thing, Other: carrier, Action: e.action,
			Note: fmt.Sprintf("%s is not on %s", l.t.Thing.ID().Name, name)})
		if to != nil && len(l.t.Segments) > 0 {
			l.walkTo(e, to, e.start)
		}
		return
	}
	was := l.aboard
	l.disembark(e.start)
	took := e.end - e.start
	step := took
	if to != nil {
		step = min(stepTime, took*0.4)
	}
	if took < 1e-9 {
		step = stepTime
	}
	done := l.done + step
	ground := l.b.exit(was.thing, was.on, was.by.Floor(), done, l.headedFor(e, to, done))
	if near != nil {
		if p := near.Point; l.b.outside(was.thing, was.on, p, done) && p.Dist(l.here().Floor()) <= stepReach {
			ground = p.At(l.b.placeZ(near))
		}
	}
	l.holdHeading()
	l.push(Segment{Kind: Stepping, Action: e.action, End: units.Seconds(min(done, max(until, l.done))), Carrier: nil,
		way: blend{held{was.on, was.by}, rest{ground}, l.done, done}})
	if to != nil && done < until {
		l.walkTo(e, to, done)
	}
}

// walkTo is the rest of a leave: from where the step ended to its place.
func (l *lane) walkTo(e *event, to *plan.Place, from float64) {
	lim := l.b.limits(l.t.Thing, from, false)
	way := &plan.Move{Path: plan.Path{To: to}}
	r, err := l.b.r.route(e.action, l.here().Floor(), 0, 0, way)
	if err != nil || r.path.Length() == 0 {
		return
	}
	m := moverFor(lim, &way.Path, e.action.Timing)
	l.b.lengths.leave(e.action, m, r)
	profile := m.in(r, units.Seconds(e.end-from))
	l.walk(e, r, m, profile, to)
}
