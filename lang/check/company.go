package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Who belongs together at a time, and may touch: who is carried and what carries
// them, an operator and their rig, the hands at a handoff, a spotter and the one
// they spot.

// bond is a time for which two things may touch.
type bond struct{ from, to units.Seconds }

type pair struct{ a, b plan.Thing }

// How long before and after they are together two may touch, s: a step on or
// off and the turn to go (common practice, no source).
const bondMargin units.Seconds = 2

// bonds are by pair, each both ways round.
func (p *Pass) bonds() map[pair][]bond { return p.known().bonds.get(p.findBonds) }

func (p *Pass) findBonds() map[pair][]bond {
	out := map[pair][]bond{}
	tie := func(a, b plan.Thing, from, to units.Seconds) {
		if a == nil || b == nil || a == b {
			return
		}
		t := bond{from - bondMargin, to + bondMargin}
		out[pair{a, b}] = append(out[pair{a, b}], t)
		out[pair{b, a}] = append(out[pair{b, a}], t)
	}
	t := p.Tracks
	for i, r := range t.Rides {
		from := r.From
		if p.unplaced(r.Who, r.From) {
			from = 0 // put beside where it will stop, for want of a better place
		}
		tie(r.Who, r.Carrier, from, r.To)
		for _, o := range t.Rides[i+1:] {
			if from, to := max(r.From, o.From), min(r.To, o.To); o.Carrier == r.Carrier && from <= to+bondMargin {
				tie(r.Who, o.Who, min(from, to), max(from, to)) // one gets on as the other gets off
			}
		}
	}
	for _, c := range t.Cameras {
		for _, h := range c.Holds {
			if h.Rig != nil && h.Operator != nil {
				tie(h.Rig, h.Operator, h.Start, h.End)
			}
		}
	}
	for _, h := range t.Handoffs {
		var hands []plan.Thing
		for _, x := range [...]*plan.Rig{h.From, h.To} {
			if x != nil {
				hands = append(hands, x)
			}
		}
		for _, x := range [...]*plan.Person{h.Giver, h.Taker, h.Weight} {
			if x != nil {
				hands = append(hands, x)
			}
		}
		from := h.Start
		if h.Taker != nil && p.unplaced(h.Taker, h.Start) {
			from = 0
		}
		for i, a := range hands {
			for _, b := range hands[i+1:] {
				tie(a, b, from, h.End)
			}
		}
	}
	for _, a := range p.Plan.Actions {
		if d, ok := a.Deed.(*plan.Spot); ok && d.Whom != nil && a.Subject != nil {
			i := p.Clock.Of(a)
			tie(a.Subject, d.Whom, i.Start, i.End)
		}
	}
	return out
}

// unplaced says that no line up to a time says where somebody is but by what
// they get on or take over.
func (p *Pass) unplaced(who plan.Thing, until units.Seconds) bool {
	for _, a := range p.Plan.Actions {
		if a.Subject != who || p.Clock.Of(a).Start >= until {
			continue
		}
		switch d := a.Deed.(type) {
		case *plan.Move, *plan.Leave:
			return false
		case *plan.Stand:
			if d.At != nil {
				return false
			}
		}
	}
	return true
}

// bonded says that two belong together at a time.
func (p *Pass) bonded(a, b plan.Thing, t units.Seconds) bool {
	for _, x := range p.bonds()[pair{a, b}] {
		if t >= x.from && t <= x.to {
			return true
		}
	}
	return false
}

// meets says that a finding about two who come together is about a thing as the
// second of them: whichever of the two an allow names.
func (p *Pass) meets(d *diag.Diagnostic, thing plan.Thing) bool {
	switch d.Code {
	case bump.Code, closePass.Code, armOver.Code:
	default:
		return false
	}
	for _, a := range p.Plan.Actions {
		if a.Subject != thing {
			continue
		}
		if d.Span == a.Span {
			return true
		}
		for _, r := range d.Related {
			if r.Span == a.Span {
				return true
			}
		}
	}
	return false
}

// root is what carries a thing at a time, and what carries that; the thing
// itself on the ground.
func (m *movers) root(thing plan.Thing, t units.Seconds) plan.Thing {
	for range 4 { // a person on a rig on a vehicle, and one to spare
		b := m.by[thing]
		if b == nil {
			return thing
		}
		s := b.track.Segment(t)
		if s.Carrier == nil || s.Kind != motion.Riding {
			return thing
		}
		thing = s.Carrier
	}
	return thing
}

// onFoot says that a person stands on the floor at a time, and isn't stepping on
// or off something.
func (b *mover) onFoot(t units.Seconds) bool {
	s := b.track.Segment(t)
	return s.Kind != motion.Riding && s.Kind != motion.Stepping
}

// counts says that a body is to be held against others at a time. Who sits in or
// on a carrier is in its box; only who is at the end of an arm is out in the
// open. Who steps on or off is handed along.
func (b *mover) counts(t units.Seconds) bool {
	if b.person == nil {
		return true
	}
	switch s := b.track.Segment(t); s.Kind {
	case motion.Stepping:
		return false
	case motion.Riding:
		r := rigOf(s.Carrier)
		if r == nil {
			return false
		}
		class, _ := body.ParseClass(r.Class)
		return class == body.Crane
	}
	return true
}

// touch is how deep two bodies are in each other at their poses, less what is
// let off; false where they don't touch. People brush past each other by 0.06 m,
// and squeeze past a vehicle sideways.
func touch(a, b *mover, p, q motion.Pose) (float64, bool) {
	alow, ahigh := a.span(p)
	blow, bhigh := b.span(q)
	if alow >= bhigh || blow >= ahigh {
		return 0, false
	}
	gap := p.Point().Dist(q.Point())
	if gap > a.reach+b.reach {
		return 0, false
	}
	switch {
	case a.person != nil && b.person != nil:
		deep := a.radius + b.radius - gap
		return deep, deep > brush
	case a.person != nil:
		deep := bodyDepth - away(b.box(q), p.Point())
		return deep, deep > wallSlop
	case b.person != nil:
		return touch(b, a, q, p)
	}
	deep := overlap(a.box(p), b.box(q))
	return deep, deep > fenderSlop
}

// brush is how far the circles of two people may overlap while they pass each
// other: they turn a shoulder (common practice, no source).
const brush = 0.06

// away is the distance of a point from a polygon, negative inside.
func away(p geom.Polygon, q geom.Vec) float64 {
	if p.Contains(q) {
		return -p.EdgeDistance(q)
	}
	return p.EdgeDistance(q)
}

// meetings calls f, in order, for each frame at which two bodies may be within a
// margin of each other.
func (m *movers) meetings(a, b *mover, margin float64, f func(frame int, p, q motion.Pose)) {
	m.meetingsEvery(1, a, b, margin, nil, f)
}

// meetingsEvery is meetings for the frames that are a multiple of some number
// alone, and of those after a look for which may says that it is worth it: it is
// told how near the two come to each other until the next if both go straight. Nil
// is for all.
func (m *movers) meetingsEvery(every int, a, b *mover, margin float64, may func(look int, nearest float64) bool,
	f func(frame int, p, q motion.Pose)) {
	reach := a.reach + b.reach + margin
	sa, sb := m.stages(a), m.stages(b)
	if a.whole.Apart(b.whole) > reach+2*lookSlack {
		return
	}
	for n := range sa {
		if sa[n].Apart(sb[n]) > reach+2*lookSlack {
			continue
		}
		for look := n * stageLooks; look < min((n+1)*stageLooks, len(m.lookAt)); look++ {
			nearest, still := m.nearest(a, b, look)
			slack := 2 * lookSlack
			if still {
				slack = 0
			}
			if nearest > reach+slack || may != nil && !may(look, nearest) {
				continue
			}
			i := look * m.stride
			for k := (i + every - 1) / every * every; k < min(i+m.stride, m.frames); k += every {
				if still {
					f(k, a.looks[look], b.looks[look])
				} else {
					f(k, m.at(a, k), m.at(b, k))
				}
			}
		}
	}
}

// nearest is how near two bodies come from one look to the next if both go
// straight, and whether they stand still.
func (m *movers) nearest(a, b *mover, look int) (nearest float64, still bool) {
	p, r := &a.looks[look], &a.looks[look+1]
	q, s := &b.looks[look], &b.looks[look+1]
	if *p == *r && *q == *s {
		return p.Point().Dist(q.Point()), true
	}
	va := geom.Mover{At: p.Point(), Velocity: r.Point().Sub(p.Point())}
	vb := geom.Mover{At: q.Point(), Velocity: s.Point().Sub(q.Point())}
	_, d := geom.ClosestApproach(va, vb, 1)
	return d, false
}

// speed of a body at a frame, from its neighbours.
func (m *movers) speed(b *mover, frame int) float64 {
	i, j := max(0, frame-1), min(m.frames-1, frame+1)
	if i == j {
		return 0
	}
	return m.at(b, j).Point().Dist(m.at(b, i).Point()) / float64(m.time(j)-m.time(i))
}

// velocity of a body at a frame.
func (m *movers) velocity(b *mover, frame int) geom.Vec {
	i, j := max(0, frame-1), min(m.frames-1, frame+1)
	if i == j {
		return geom.Vec{}
	}
	return m.at(b, j).Point().Sub(m.at(b, i).Point()).Mul(1 / math.Max(1e-9, float64(m.time(j)-m.time(i))))
}
