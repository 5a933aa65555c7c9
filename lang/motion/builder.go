package motion

import (
	"math"
	"sort"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// builder makes the tracks of one round: one clock, all bodies.
type builder struct {
	r    *Resolver
	p    *plan.Plan
	c    *clock.Clock
	g    ground
	prev *Tracks // of the round before; nil in the first
	end  float64 // of the take

	inTime    []*plan.Action // in the order of their starts
	holds     map[*plan.Camera][]hold
	events    map[plan.Thing][]event
	tipEvents map[*plan.Rig][]event
	tracks    map[plan.Thing]*Track
	booms     map[*plan.Rig]*boom
	building  map[plan.Thing]bool
	arming    map[*plan.Rig]bool
	looped    bool // something follows something that follows it
	lengths   *lengths
	facts     Facts
}

func newBuilder(r *Resolver, c *clock.Clock, prev *Tracks) *builder {
	b := &builder{
		r: r, p: r.plan, c: c, g: r.ground, prev: prev, end: float64(c.Length),
		tipEvents: make(map[*plan.Rig][]event),
		tracks:    make(map[plan.Thing]*Track),
		booms:     make(map[*plan.Rig]*boom),
		building:  make(map[plan.Thing]bool),
		arming:    make(map[*plan.Rig]bool),
		lengths:   newLengths(r),
	}
	b.inTime = byStart(r.actions, c)
	b.holds = holdsOf(b.inTime, c)
	b.gather()
	return b
}

func (b *builder) problem(p Problem) { b.facts.Problems = append(b.facts.Problems, p) }

// track is where a person, a vehicle or a rig is, built when first asked for.
// In a circle, where it is still being built, it is that of the round before,
// or nil in the first.
func (b *builder) track(t plan.Thing) *Track {
	if tr, ok := b.tracks[t]; ok {
		return tr
	}
	if b.building[t] {
		b.looped = true
		if b.prev != nil {
			return b.prev.Body(t)
		}
		return nil
	}
	b.building[t] = true
	var tr *Track
	if rig, ok := t.(*plan.Rig); ok && b.wearer(rig, 0) != nil {
		tr = b.wornTrack(rig)
	} else {
		tr = newLane(b, t).build()
	}
	delete(b.building, t)
	b.tracks[t] = tr
	return tr
}

// sized is an empty track with the thing's size.
func sized(t plan.Thing) *Track {
	tr := &Track{Thing: t}
	switch t := t.(type) {
	case *plan.Person:
		any := body.Anybody()
		tr.Radius = any.Diameter / 2
		tr.Stature = t.Height
		if tr.Stature <= 0 {
			tr.Stature = any.Stature
		}
	case *plan.Vehicle:
		tr.Length, tr.Width, tr.Stature = t.Length, t.Width, t.High.High
		tr.deck = vehicleFloor
	case *plan.Rig:
		r := classOf(t)
		tr.Length, tr.Width, tr.Stature = r.Length, r.Width, r.Height
		if r.Crewing == body.Ridden {
			tr.deck = rigDeck
		}
	}
	return tr
}

// The heights of decks over the ground, metres: common practice, no source.
const (
	vehicleFloor = 0.4
	rigDeck      = 0.2
)

// limits is what moves a thing at a time, loaded as it is then.
func (b *builder) limits(t plan.Thing, at float64, running bool) Limits {
	who, ok := t.(*plan.Person)
	if !ok {
		return b.r.limitsOf(t, running)
	}
	l := b.r.limitsOf(who, running)
	for _, camera := range b.p.Kit.Cameras {
		if h := holdAt(b.holds[camera], at); h != nil && h.worn() && h.operator == who && (h.start <= at+1e-9 && at < h.end+1e-9) {
			return worn(l, b.r.limitsOf(h.rig, false))
		}
	}
	return l
}

// wornTrack is a worn rig's: with its wearer, whoever that is. Who changes to
// another rig with the camera steps out of it: it stays where that began.
func (b *builder) wornTrack(rig *plan.Rig) *Track {
	tr := sized(rig)
	type change struct {
		at   float64
		who  *plan.Person
		left bool // where who is at the time
	}
	changes := []change{{at: 0, who: b.wearer(rig, 0)}}
	for _, camera := range b.p.Kit.Cameras {
		holds := b.holds[camera]
		for i, h := range holds {
			if h.rig != rig || !h.worn() {
				continue
			}
			if h.start > 0 {
				changes = append(changes, change{at: h.start, who: h.operator})
			}
			if i+1 < len(holds) && holds[i+1].rig != rig && holds[i+1].operator == h.operator {
				changes = append(changes, change{at: holds[i+1].start, who: h.operator, left: true})
			}
		}
	}
	sort.SliceStable(changes, func(i, j int) bool { return changes[i].at < changes[j].at })
	for i, ch := range changes {
		end := b.end
		if i+1 < len(changes) {
			end = changes[i+1].at
		}
		who := b.track(ch.who)
		if who == nil || end < ch.at {
			continue
		}
		if ch.left {
			p, facing := who.point(ch.at), who.heading(ch.at)
			tr.add(Segment{Kind: Resting, Start: units.Seconds(ch.at), End: units.Seconds(end), way: rest{p}})
			tr.look(head{from: ch.at, dir: fixed(facing)})
			continue
		}
		tr.add(Segment{Kind: Riding, Start: units.Seconds(ch.at), End: units.Seconds(end), Carrier: ch.who,
			Limits: b.limits(rig, ch.at, false), way: heldBy{who}})
		tr.look(head{from: ch.at, dir: turning(who.heading)})
	}
	if len(tr.Segments) == 0 {
		return nil
	}
	tr.Segments[0].Start = 0
	return tr
}

// heldBy is where a person is.
type heldBy struct{ who *Track }

func (h heldBy) at(t float64) geom.Vec3 { return h.who.point(t) }

// placeZ is the height of the floor at a place: stated, or what is there.
func (b *builder) placeZ(p *plan.Place) float64 {
	if z, ok := statedZ(p); ok {
		return z
	}
	return b.g.stand(p.Point)
}

func statedZ(p *plan.Place) (float64, bool) {
	switch {
	case p.Z != nil:
		return float64(*p.Z), true
	case p.Mark != nil && p.Mark.Z != nil:
		return float64(*p.Mark.Z), true
	}
	return 0, false
}

func (g ground) stand(p geom.Vec) float64 {
	if g.flat {
		return 0
	}
	return g.floors.Stand(p)
}

func newGround(set *plan.Set) ground {
	return ground{floors: solid.NewFloors(set), flat: len(set.Platforms)+len(set.Stairs) == 0}
}

// settled compares two rounds: whether anything moved by more than a millimetre
// or a millisecond.
func settled(a, b *Tracks) bool {
	const slop = 1e-3
	if math.Abs(float64(a.Clock.Length-b.Clock.Length)) > slop {
		return false
	}
	for i := range a.Clock.Actions {
		x, y := a.Clock.Actions[i], b.Clock.Actions[i]
		if math.Abs(float64(x.Start-y.Start)) > slop || math.Abs(float64(x.End-y.End)) > slop {
			return false
		}
	}
	return true
}
