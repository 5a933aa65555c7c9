package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// headedFor is where somebody who gets off goes next; nil where they stay.
func (l *lane) headedFor(e *event, to *plan.Place, at float64) *geom.Vec {
	if to != nil {
		return &to.Point
	}
	for i := range l.events {
		next := &l.events[i]
		if next == e || next.start < e.start || !next.feet() || next.ride != nil || next.leave != nil || next.action == e.action {
			continue
		}
		switch d := next.action.Deed.(type) {
		case *plan.Move:
			if stops := d.Path.Stops(); len(stops) > 0 {
				return &stops[0].Point
			}
			return &d.Path.Centre.Point
		case *plan.Keep, *plan.Beside, *plan.Circle:
			if g, ok := l.b.target(targetOf(d)); ok {
				p := g.point(at)
				return &p
			}
		}
		return nil
	}
	return nil
}

// ground is the floor beside a carrier, on the side nearest to a seat in its
// frame; on the right where the seat is in the middle.
func (b *builder) ground(t plan.Thing, on frame, at geom.Vec, when float64) geom.Vec3 {
	return b.exit(t, on, at, when, nil)
}

// footprint is half the length and half the width of what is stepped off.
func (b *builder) footprint(t plan.Thing) (long, wide float64) {
	switch t := t.(type) {
	case *plan.Vehicle:
		return float64(t.Length) / 2, float64(t.Width) / 2
	case *plan.Rig:
		if !b.isArm(t) {
			r := classOf(t)
			return float64(r.Length) / 2, float64(r.Width) / 2
		}
	}
	return 0.3, 0.3
}

// exit is the floor beside a carrier where a rider gets off: on the nearest side
// from which the way on doesn't lead through the carrier itself, else on the
// other, else at the end; the nearest where none does or nobody goes on.
func (b *builder) exit(t plan.Thing, on frame, at geom.Vec, when float64, next *geom.Vec) geom.Vec3 {
	o, heading := on.frame(when)
	long, wide := b.footprint(t)
	y := wide + stepClear
	if at.Y <= 0 {
		y = -y
	}
	x := math.Copysign(long+stepClear, at.X)
	// Who crosses to the other side gets off behind who sits there.
	ways := []geom.Vec{{X: at.X, Y: y}, {X: at.X - acrossBehind, Y: -y}, {X: x, Y: at.Y}, {X: -x, Y: at.Y}}
	best := ways[0]
	if next != nil {
		to := next.Sub(o.Floor()).Rotate(-heading)
		box := geom.Rectangle(geom.Vec{X: -long, Y: -wide}, geom.Vec{X: long, Y: wide})
		for _, w := range ways {
			if w.Dist(at) <= stepFar && box.DistanceToSegment(geom.Segment{A: w, B: to}) > stepClear/2 {
				best = w
				break
			}
		}
	}
	p := o.Floor().Add(best.Rotate(heading))
	return p.At(b.g.under(p, o.Z))
}

func (g ground) under(p geom.Vec, z float64) float64 {
	if g.flat {
		return 0
	}
	return g.floors.Under(p, z)
}

// outside says that a place isn't taken up by the carrier itself.
func (b *builder) outside(t plan.Thing, on frame, p geom.Vec, when float64) bool {
	o, heading := on.frame(when)
	q := p.Sub(o.Floor()).Rotate(-heading)
	if b.isArm(t) {
		return true
	}
	long, wide := b.footprint(t)
	return math.Abs(q.X) > long+0.2 || math.Abs(q.Y) > wide+0.2
}
