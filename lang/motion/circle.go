package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/pace"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// circling goes round the target at a distance, wherever the target goes.
type circling struct {
	g       target
	at      float64
	from    float64 // bearing from the target at the start
	turned  func(t float64) float64
	towards bool // what carries the camera faces the target, else its way round
	sense   float64
}

func (c circling) bearing(t float64) float64 { return c.from + c.turned(t) }

func (c circling) want(t float64) geom.Vec {
	return c.g.point(t).Add(geom.Polar(c.at, c.bearing(t)))
}

func (c circling) face(t float64) float64 {
	if c.towards {
		return c.bearing(t) + math.Pi
	}
	return c.bearing(t) + c.sense*math.Pi/2
}

// circle goes round by an angle, or against the target's own spin.
func (b *builder) circle(e *event, d *plan.Circle, lim Limits, from *geom.Vec) relation {
	g, ok := b.target(d.Target)
	if !ok {
		return nil
	}
	c := circling{g: g, at: float64(d.At), sense: 1, towards: true}
	if e.hold != nil && !e.hold.worn() {
		c.towards = false
	}
	c.from = g.heading(e.start) // nothing is known: it starts before the face
	if from != nil {
		off := from.Sub(g.point(e.start))
		if off.Len() > 1e-6 {
			c.from = off.Angle()
		}
		if c.at <= 0 {
			c.at = off.Len()
		}
	}
	if c.at <= 0 {
		c.at = 2
	}
	if d.Counter {
		spun := spunBy(g, e.start)
		c.turned = func(t float64) float64 {
			t = min(t, e.end)
			now := spunBy(g, t)
			// Against the spin: as far round to the right as the target turns to
			// the left.
			return spun - now
		}
		if c.turned(e.end) < 0 {
			c.sense = -1
		}
		return c
	}
	angle := d.Angle.Radians()
	if d.Turn == plan.Right {
		angle, c.sense = -angle, -1
	}
	profile := b.arcProfile(e, lim, c.at, math.Abs(angle))
	start, whole := e.start, max(float64(profile.Length()), 1e-9)
	c.turned = func(t float64) float64 {
		return angle * float64(profile.At(units.Seconds(t-start))) / whole
	}
	return c
}

// spunBy is how far a target has turned about itself.
func spunBy(g target, t float64) float64 {
	if g.track == nil {
		return 0
	}
	return g.track.spun(t)
}

// arcProfile is the way round in time.
func (b *builder) arcProfile(e *event, lim Limits, at, angle float64) *pace.Profile {
	r := route{path: geom.NewArc(geom.Vec{}, at, 0, angle), memo: &memo{}}
	m := mover{limits: lim, stated: e.action.Timing.At}
	b.lengths.move(e.action, m, r)
	return m.in(r, units.Seconds(e.end-e.start))
}
