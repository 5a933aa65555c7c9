package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// travel pushes towards what the camera sees, or pulls away from it, in a
// straight line.
func (l *lane) travel(e *event, d *plan.Travel) {
	lim := l.b.limits(l.t.Thing, e.start, false)
	dir, ok := l.b.sightline(e, l.here().Floor())
	if !ok {
		dir = geom.Polar(1, l.heading())
	}
	if d.Pull {
		dir = dir.Mul(-1)
	}
	start := l.here().Floor()
	r := newRoute(geom.NewStraight(start, start.Add(dir.Mul(float64(d.By)))), nil)
	m := mover{limits: lim, back: d.Pull, stated: e.action.Timing.At}
	l.b.lengths.move(e.action, m, r)
	if l.boom == nil && lim.Forward.Hard <= 0 {
		l.b.facts.Armed = append(l.b.facts.Armed, ArmShort{Camera: e.camera, Rig: e.hold.rig, Action: e.action,
			At: units.Seconds(e.end), Short: d.By})
		return
	}
	l.disembark(e.start)
	l.known = true
	profile := m.in(r, units.Seconds(e.end-e.start))
	heads := len(l.t.heads)
	facing := l.heading()
	began := l.done
	l.walk(e, r, m, profile, nil)
	if l.boom != nil {
		l.b.short(e, func(t float64) float64 {
			return r.path.At(float64(profile.At(units.Seconds(t - began)))).Dist(l.t.point(t).Floor())
		}, began, l.done)
	}
	// What carries the camera faces as it did: a wheeled rig along its way, a
	// wearer the way the lens looks.
	if heads < len(l.t.heads) && e.hold != nil && !e.hold.worn() && math.Abs(geom.AngleDiff(facing, dir.Angle())) > 1e-9 {
		l.t.heads = l.t.heads[:heads]
		l.t.look(head{from: float64(l.t.Segments[len(l.t.Segments)-1].Start), dir: fixed(facing)})
	}
}

// sightline is the direction on the floor from a place to the middle of what
// the camera sees at the start of a line.
func (b *builder) sightline(e *event, from geom.Vec) (geom.Vec, bool) {
	see := b.seeing(e.camera, e.start, e.action.Index)
	if see == nil {
		return geom.Vec{}, false
	}
	var first float64
	low, high := math.Inf(1), math.Inf(-1)
	n := 0
	for _, to := range see.Targets {
		g, ok := b.target(to)
		if !ok {
			continue
		}
		d := g.point(e.start).Sub(from)
		if d.Len() < 1e-6 {
			continue
		}
		a := d.Angle()
		if n == 0 {
			first = a
		}
		off := geom.AngleDiff(first, a)
		low, high = min(low, off), max(high, off)
		n++
	}
	if n == 0 {
		return geom.Vec{}, false
	}
	return geom.Polar(1, first+(low+high)/2), true
}

// seeing is the aim in force at a time, as a line in the text sees it; before
// the first aim it is that one.
func (b *builder) seeing(camera *plan.Camera, at float64, index int) *plan.See {
	var best *plan.See
	for _, a := range b.inTime {
		see, ok := a.Deed.(*plan.See)
		if !ok || a.Subject != plan.Thing(camera) {
			continue
		}
		start := float64(b.c.Of(a).Start)
		if best != nil && (start > at+1e-9 || start > at-1e-9 && a.Index > index) {
			break
		}
		best = see
	}
	return best
}
