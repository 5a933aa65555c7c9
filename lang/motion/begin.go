package motion

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// begin puts the subject where it is at the first frame: the first place any
// line knows of it. False where none does.
func (l *lane) begin() bool {
	for i := range l.events {
		if l.beginAt(&l.events[i], i) {
			l.beginHeading(i)
			return true
		}
	}
	return false
}

// place starts the track on the floor.
func (l *lane) place(p geom.Vec, z float64) bool {
	l.t.add(Segment{Kind: Resting, way: l.wrap(rest{p.At(z)})})
	return true
}

func (l *lane) placeAt(p *plan.Place) bool { return l.place(p.Point, l.b.placeZ(p)) }

func (l *lane) beginAt(e *event, i int) bool {
	switch {
	case e.wait != nil:
		l.known = true
		if e.wait.place != nil {
			p := *e.wait.place
			if e.hold != nil && e.hold.rig == l.t.Thing {
				p.Point = p.Point.Sub(e.hold.at)
			}
			return l.placeAt(&p)
		}
		return l.beginBeside(e.wait.from, e.start)
	case e.ride != nil:
		l.known = true
		if e.start > 1e-9 && !e.ride.aside {
			return l.beginNear(e.ride, e.start)
		}
		return l.embark(e.action, *e.ride, 0)
	case e.leave != nil:
		return false
	}
	switch d := e.action.Deed.(type) {
	case *plan.Move:
		if d.Path.From != nil {
			l.known = true
			return l.placeAt(d.Path.From)
		}
		return l.beginUnknown(e.action, d)
	case *plan.Stand:
		if d.At != nil {
			l.known = true
			return l.placeAt(d.At)
		}
	case *plan.Ride:
		l.known = true
		return l.embark(e.action, l.b.riding(d), 0)
	case *plan.Board:
		l.known = true
		return l.beginNear(l.b.boarding(d), e.start)
	case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Spot:
		return l.beginRelation(e, i)
	}
	return false
}

// beginUnknown is a move from nowhere: it starts at the first place it knows.
func (l *lane) beginUnknown(a *plan.Action, d *plan.Move) bool {
	p := d.Path.Centre
	if d.Path.Shape != plan.Round && d.Path.Shape != plan.Eight {
		stops := d.Path.Stops()
		if len(stops) == 0 {
			return false
		}
		p = stops[0]
	} else {
		r := max(float64(d.Path.Radius), 1)
		p.Point = p.Point.Add(geom.Vec{X: r})
	}
	l.b.problem(Problem{Kind: NoStart, Subject: l.t.Thing, Action: a,
		Note: fmt.Sprintf("nothing says where %s is before it moves", l.t.Thing.ID().Name)})
	l.known = true
	return l.placeAt(&p)
}

// beginNear is on the floor beside what the subject will board.
func (l *lane) beginNear(r *riding, at float64) bool {
	on := l.b.carrier(r.carrier, r.tip)
	if on == nil {
		return false
	}
	p := l.b.ground(r.carrier, on, r.at, at)
	return l.place(p.Floor(), p.Z)
}

// beginBeside is next to what hands a camera over.
func (l *lane) beginBeside(from *hold, at float64) bool {
	base := from.base()
	if base == nil {
		return false
	}
	tr := l.b.track(base)
	if tr == nil {
		return false
	}
	p := tr.point(at)
	side := geom.Polar(0.7+float64(tr.Width)/2, tr.heading(at)+math.Pi/2)
	q := p.Floor().Add(side)
	return l.place(q, l.b.g.stand(q))
}

// embark starts the track aboard.
func (l *lane) embark(a *plan.Action, r riding, since float64) bool {
	on := l.b.carrier(r.carrier, r.tip)
	if on == nil {
		return false
	}
	l.aboard = &boarded{thing: r.carrier, on: on, by: l.b.seatAt(r), action: a, since: since, weight: r.weight, quiet: r.quiet}
	l.t.add(Segment{Kind: Riding, Action: a, Carrier: r.carrier, way: held{on, l.aboard.by}})
	return true
}

// beginHeading faces the subject the way it first goes.
func (l *lane) beginHeading(i int) {
	if l.aboard != nil {
		on := l.aboard.on
		l.t.look(head{dir: turning(func(t float64) float64 { _, h := on.frame(t); return h })})
		return
	}
	for k := i; k < len(l.events); k++ {
		if dir, ok := l.firstHeading(&l.events[k]); ok {
			l.t.look(head{dir: fixed(dir)})
			return
		}
	}
	l.t.look(head{dir: fixed(0)})
}

// firstHeading is the way a line has its subject face when it begins; false
// where it says nothing of that.
func (l *lane) firstHeading(e *event) (float64, bool) {
	if e.ride != nil || e.leave != nil || e.wait != nil {
		return 0, false
	}
	start := l.here().Floor()
	switch d := e.action.Deed.(type) {
	case *plan.Stand:
		if d.Facing == nil {
			return 0, false
		}
		return l.towards(*d.Facing, start, e.start)
	case *plan.Move:
		if d.Path.From != nil {
			start = d.Path.From.Point
		}
		if d.Path.Facing != nil {
			if dir, ok := l.towards(*d.Path.Facing, start, e.start); ok {
				return dir, true
			}
		}
		r, err := l.b.r.route(e.action, start, 0, 0, d)
		if err != nil || r.path.Length() == 0 {
			return 0, true
		}
		if d.Path.Backwards {
			return r.path.Heading(0) + math.Pi, true
		}
		return r.path.Heading(0), true
	}
	if r := l.relation(e); r != nil {
		return r.face(e.start), true
	}
	return 0, false
}

// towards is the direction from a place to a target at a time.
func (l *lane) towards(to plan.Target, from geom.Vec, at float64) (float64, bool) {
	g, ok := l.b.target(to)
	if !ok {
		return 0, false
	}
	d := g.point(at).Sub(from)
	return d.Angle(), d.Len() > 1e-6
}
