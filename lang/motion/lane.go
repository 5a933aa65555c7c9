package motion

import (
	"fmt"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// lane builds one track, line after line in the order of time.
type lane struct {
	b      *builder
	t      *Track
	events []event
	wrap   func(way) way // of what is at the end of an arm
	boom   *boom         // whose end this is; nil for a body of its own
	aboard *boarded      // nil on the ground
	done   float64       // the time up to which the track is built
	still  *geom.Vec     // the velocity left over from a relation, to be braked
	braked Limits
	known  bool // a place is known before the first relation
}

// boarded is what the subject rides, and where on it.
type boarded struct {
	thing  plan.Thing
	on     frame
	by     geom.Vec3
	action *plan.Action
	since  float64
	weight bool
	quiet  bool
}

func newLane(b *builder, t plan.Thing) *lane {
	l := &lane{b: b, t: sized(t), events: b.events[t], wrap: func(w way) way { return w }}
	l.t.Segments = make([]Segment, 0, 2*len(l.events)+1)
	return l
}

// build is the whole track, nil where nothing says where the thing is.
func (l *lane) build() *Track {
	told := len(l.b.facts.Problems)
	if !l.begin() {
		if len(l.events) > 0 && len(l.b.facts.Problems) == told {
			l.b.problem(Problem{Kind: NoStart, Subject: l.t.Thing, Action: l.events[0].action,
				Note: fmt.Sprintf("nothing says where %s is", l.t.Thing.ID().Name)})
		}
		return nil
	}
	for i := range l.events {
		e := &l.events[i]
		if e.feet() {
			l.cut(e.start)
		}
		l.advance(e.start)
		l.apply(e, l.until(i))
	}
	l.advance(l.b.end)
	l.disembark(l.b.end)
	l.t.tidy()
	return l.t
}

// until is when the feet of the subject are needed next, after event i.
func (l *lane) until(i int) float64 {
	for _, e := range l.events[i+1:] {
		if e.feet() {
			return max(e.start, l.events[i].start)
		}
	}
	return max(l.b.end, l.events[i].start)
}

// apply does one event.
func (l *lane) apply(e *event, until float64) {
	switch {
	case e.ride != nil:
		l.ride(e, *e.ride, until)
		return
	case e.leave != nil:
		l.leave(e, e.leave.carrier, e.leave.near, nil, until)
		return
	}
	switch d := e.action.Deed.(type) {
	case *plan.Move:
		l.move(e, d)
	case *plan.Stand:
		l.stand(e, d, until)
	case *plan.Ride:
		l.ride(e, l.b.riding(d), until)
	case *plan.Board:
		l.ride(e, *l.b.boarding(d), until)
	case *plan.Leave:
		l.leave(e, d.Carrier, nil, d.To, until)
	case *plan.Turn:
		l.turn(e, d)
	case *plan.Spin:
		angle := d.Angle.Radians()
		if d.Turn == plan.Right {
			angle = -angle
		}
		l.t.spins = append(l.t.spins, spin{e.start, e.end, angle})
		l.b.demandTurn(l.t.Thing, e, angle, l.b.limits(l.t.Thing, e.start, false))
	case *plan.Pose:
		l.pose(e, d)
	default:
		l.relate(e, until)
	}
}

// here is where the subject is at the time built up to.
func (l *lane) here() geom.Vec3 { return l.t.point(l.done) }

func (l *lane) heading() float64 {
	if len(l.t.heads) == 0 {
		return 0
	}
	return l.t.headed(l.done, len(l.t.heads))
}

// cut drops what was built past a time: the next line begins, done or not.
func (l *lane) cut(at float64) {
	if l.done <= at {
		return
	}
	if len(l.t.Segments) > 0 {
		last := &l.t.Segments[len(l.t.Segments)-1]
		if last.Kind == Relating || last.Kind == Moving {
			from, _ := last.span()
			v := velocity(last.way, max(at, from), from, max(at, from)+1e-4)
			l.still, l.braked = &v, last.Limits
		}
	}
	l.t.cut(at)
	l.done = at
}

// advance rests, or rides, up to a time.
func (l *lane) advance(to float64) {
	if to <= l.done {
		return
	}
	if l.aboard != nil {
		l.addHeld(to)
		return
	}
	l.addRest(to)
}

func (l *lane) addHeld(to float64) {
	if n := len(l.t.Segments); n > 0 && l.t.Segments[n-1].Kind == Riding {
		if s := &l.t.Segments[n-1]; s.Action == l.aboard.action && s.Carrier == l.aboard.thing {
			s.End = units.Seconds(to)
			l.done = to
			return
		}
	}
	l.push(Segment{Kind: Riding, Action: l.aboard.action, End: units.Seconds(to), Carrier: l.aboard.thing,
		way: l.wrap(held{l.aboard.on, l.aboard.by})})
}

func (l *lane) addRest(to float64) {
	if len(l.t.Segments) == 0 {
		return
	}
	if l.boom != nil { // rests where it is on its base
		l.aboard = l.boom.lashed(l.here(), l.done)
		l.addHeld(to)
		return
	}
	if last := &l.t.Segments[len(l.t.Segments)-1]; last.Kind == Resting {
		last.End, l.done = units.Seconds(to), to
		return
	}
	if last := &l.t.Segments[len(l.t.Segments)-1]; last.Kind == Relating && l.still == nil {
		from, end := last.span()
		v := velocity(last.way, end, from, end)
		l.still, l.braked = &v, last.Limits
	}
	l.holdHeading()
	if l.still != nil && l.still.Len() > 1e-3 {
		l.brake(to)
		if l.done >= to {
			return
		}
	}
	l.still = nil
	l.push(Segment{Kind: Resting, End: units.Seconds(to), way: rest{l.here()}})
}

// brake comes to rest from what a relation or a cut move left over.
func (l *lane) brake(to float64) {
	rate := max(float64(l.braked.Accel.Hard), 0.5)
	here := l.here()
	c := newCoast(here, *l.still, l.done, rate)
	l.still = nil
	end := min(to, l.done+c.time)
	flat := func(t float64) geom.Vec { return c.at(t).Floor() }
	lv := l.b.g.over(flat, l.done, end, here.Z)
	l.push(Segment{Kind: Braking, End: units.Seconds(end), Limits: l.braked, way: l.wrap(levelled{flat, lv})})
}

// holdHeading keeps the way the subject faces when it comes to rest, but lets a
// turn of its own go on.
func (l *lane) holdHeading() {
	if n := len(l.t.heads); n > 0 && !l.t.heads[n-1].turn {
		l.t.look(head{from: l.done, dir: fixed(l.heading())})
	}
}

// push adds a segment from the time built up to.
func (l *lane) push(s Segment) {
	s.Start = units.Seconds(l.done)
	if s.End < s.Start {
		s.End = s.Start
	}
	if s.End == s.Start && len(l.t.Segments) > 0 {
		return
	}
	l.t.add(s)
	l.done = float64(s.End)
}

func (l *lane) jump(a *plan.Action, to geom.Vec3, lim Limits) {
	from := l.here()
	gap := from.Dist(to)
	if gap <= nearEnough {
		return
	}
	l.b.facts.Jumps = append(l.b.facts.Jumps, Jump{
		Subject: l.t.Thing, Action: a, At: units.Seconds(l.done), From: from, To: to,
		Gap: units.Metres(gap), Needs: naturalTime(gap, lim),
	})
}

// nearEnough is how far from where a line begins its subject may be without
// that being a jump, metres: half a pace.
const nearEnough = 0.3
