package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// relation is where a camera's line wants its lens, and which way what carries
// it faces.
type relation interface {
	want(t float64) geom.Vec
	face(t float64) float64
}

// based is a relation as its base has to follow it: the base so placed that the
// lens is where it is wanted.
type based struct {
	relation
	at geom.Vec // of the lens in the base's frame
}

func (r based) base(t float64) geom.Vec {
	p := r.want(t)
	if r.at == (geom.Vec{}) {
		return p
	}
	return p.Sub(r.at.Rotate(r.face(t)))
}

// relation makes the relation of an event as it is at its start; nil where its
// target is nowhere or the line is none.
func (l *lane) relation(e *event) *based { return l.relationTo(e, e.start) }

func (l *lane) relationTo(e *event, until float64) *based {
	at := geom.Vec{}
	wears := true
	if e.hold != nil {
		wears = e.hold.worn()
		if !e.hold.armed() {
			at = e.hold.at
		}
	}
	var from *geom.Vec
	if len(l.t.Segments) > 0 && l.known {
		p := l.here().Floor().Add(at.Rotate(l.heading()))
		from = &p
	}
	var r relation
	switch d := e.action.Deed.(type) {
	case *plan.Keep:
		r = l.b.keep(d, wears, from, l.b.limits(l.t.Thing, e.start, false), e.start, until)
	case *plan.Beside:
		r = l.b.beside(d.Target, besideAngle(d.Side), float64(d.By), 0, l.b.limits(l.t.Thing, e.start, false), e.start, until)
	case *plan.Spot:
		if d.Whom != nil {
			r = l.b.beside(plan.Target{Thing: d.Whom}, math.Pi, spotBehind, math.Pi, l.b.limits(l.t.Thing, e.start, false), e.start, until)
		}
	case *plan.Circle:
		r = l.b.circle(e, d, l.b.limits(l.t.Thing, e.start, false), from)
	}
	if r == nil {
		return nil
	}
	return &based{r, at}
}

// spotBehind is how far behind the operator's back the spotter walks, between
// their middles, metres (common practice, no source: a hand on the back).
const spotBehind = 0.75

// beginRelation starts the track in place: the relation is the first that is
// known of where it is.
func (l *lane) beginRelation(e *event, i int) bool {
	r := l.relation(e)
	if r == nil {
		l.noTarget(e)
		return false
	}
	p := r.base(e.start)
	return l.place(p, l.b.g.stand(p))
}

func (l *lane) noTarget(e *event) {
	to := targetOf(e.action.Deed)
	l.b.problem(Problem{Kind: NoTarget, Subject: l.t.Thing, Other: to.Thing, Action: e.action, Note: nowhere(to)})
}

func targetOf(d plan.Deed) plan.Target {
	switch d := d.(type) {
	case *plan.Keep:
		return d.Target
	case *plan.Beside:
		return d.Target
	case *plan.Circle:
		return d.Target
	case *plan.Spot:
		if d.Whom != nil {
			return plan.Target{Thing: d.Whom}
		}
	}
	return plan.Target{}
}

// relate follows a relation until its end, or until the feet are needed for
// something else.
func (l *lane) relate(e *event, until float64) {
	if d, ok := e.action.Deed.(*plan.Travel); ok {
		l.travel(e, d)
		return
	}
	if clockless(e.action.Deed) {
		return
	}
	if !e.open {
		until = min(until, max(e.end, e.start))
	}
	r := l.relationTo(e, until)
	if r == nil {
		l.noTarget(e)
		return
	}
	lim := l.b.limits(l.t.Thing, e.start, false)
	if e.hold != nil && l.boom == nil && lim.Forward.Hard <= 0 {
		here := l.here().Floor()
		l.b.short(e, func(t float64) float64 { return r.base(t).Dist(here) }, e.start, until)
		l.known = true
		return
	}
	l.disembark(e.start)
	start := l.done
	at := l.here()
	gap := at.Floor().Sub(r.base(start))
	inPlace := !l.known
	l.known = true
	if inPlace {
		gap = geom.Vec{}
	}
	v := l.leftOver()
	l.still = nil
	if until <= start { // over as it begins
		l.b.facts.Joins = append(l.b.facts.Joins, Join{
			Camera: e.camera, Subject: l.t.Thing, Action: e.action, Gap: units.Metres(gap.Len()), Left: units.Metres(gap.Len()),
			Start: units.Seconds(start), Done: units.Seconds(start), Cut: l.boom == nil, Limit: lim.Forward.Hard, Source: lim.Source, InPlace: inPlace,
		})
		return
	}
	flat := r.base
	done, there := start, true
	if !inPlace {
		c := newChase(r.base, at.Floor(), v, chasingFor(e, lim), start, until)
		done, there = c.done, c.there
		flat = func(t float64) geom.Vec {
			if p, on := c.at(t); on {
				return p
			}
			return r.base(t)
		}
	}
	wanted := flat
	if l.boom != nil {
		flat = l.boom.swinging(flat, lim, start, until)
	}
	lv := l.b.g.over(flat, start, until, at.Z)
	s := Segment{Kind: Relating, Action: e.action, End: units.Seconds(until), Limits: lim, Camera: e.camera,
		way: l.wrap(levelled{flat, lv})}
	l.push(s)
	l.t.face(start, turning(r.face), lim, -1, false)
	if l.boom != nil {
		l.b.short(e, func(t float64) float64 { return wanted(t).Dist(l.t.point(t).Floor()) }, start, until)
	}
	left := 0.0
	if !there && l.boom == nil { // what an arm is short of is told of as such
		left = r.base(until).Dist(l.t.point(until).Floor())
	}
	peak := l.b.demandRelation(l.t, e, lim, start, until)
	l.b.facts.Joins = append(l.b.facts.Joins, Join{
		Camera: e.camera, Subject: l.t.Thing, Action: e.action, Gap: units.Metres(gap.Len()),
		Start: units.Seconds(start), Done: units.Seconds(done), Cut: !there, Left: units.Metres(left),
		Peak: units.MetresPerSecond(peak), Limit: lim.Forward.Hard, Source: lim.Source, InPlace: inPlace,
	})
}

// clockless are lines a lane has nothing to do for.
func clockless(d plan.Deed) bool {
	switch d.(type) {
	case *plan.Mount, *plan.Hide, *plan.Handoff:
		return true
	}
	return false
}

// leftOver is the velocity that the subject comes with from what it did before.
func (l *lane) leftOver() geom.Vec {
	if l.still != nil {
		return *l.still
	}
	if n := len(l.t.Segments); n > 0 {
		last := &l.t.Segments[n-1]
		if last.Kind == Relating || last.Kind == Riding {
			from, end := last.span()
			return velocity(last.way, end, from, end)
		}
	}
	return geom.Vec{}
}

// chasingFor is how a camera gets to where a relation wants it: at the stated
// pace, else at the usual one, up to the limit where the target is as fast.
func chasingFor(e *event, lim Limits) chasing {
	c := chasing{
		usual: max(float64(lim.Forward.Typical), 0.3),
		most:  float64(lim.Forward.Hard),
		accel: max(float64(lim.Accel.Typical), 0.3),
	}
	if v := e.action.Timing.At; v != nil && *v > 0 {
		c.usual, c.most = float64(*v), float64(*v)
	}
	return c
}
