package motion

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Aim is what a camera sees, from a time on. What it sees first it sees from
// the first frame.
type Aim struct {
	Start  units.Seconds
	Done   units.Seconds // the pan to it is over
	Action *plan.Action
	See    *plan.See
	Size   body.Size // NoSize where none is asked for
}

// aim is an Aim as it is computed.
type aim struct {
	start   float64
	targets []target
	size    body.Size
	gap     closing // X is pan, Y is tilt
	lags    []lag
}

// swing is a pan or a tilt that comes on top of the aim.
type swing struct {
	start, end float64
	pan, tilt  float64
	action     *plan.Action
}

// swung is how far pans and tilts have gone since a time.
func (c *CameraTrack) swung(since, t float64) (pan, tilt float64) {
	for _, s := range c.swings {
		k := easedBy(aimEase, t, s.start, s.end) - easedBy(aimEase, since, s.start, s.end)
		pan += s.pan * k
		tilt += s.tilt * k
	}
	return pan, tilt
}

// aimed is the pan and the tilt at a time, from a place through a lens.
func (c *CameraTrack) aimed(t float64, from geom.Vec3, focal float64) (pan, tilt float64) {
	return c.aimedBy(t, from, focal, len(c.aims))
}

// aimedBy is the aim by the first n of them.
func (c *CameraTrack) aimedBy(t float64, from geom.Vec3, focal float64, n int) (pan, tilt float64) {
	if l := c.lagAt(t, n); l != nil {
		return l.pan.at(t), l.tilt.at(t)
	}
	return c.wantedBy(t, from, focal, n)
}

// lagAt is what the lens does at a time, by the first n aims, where it can't keep up
// with what they want; nil where it can.
func (c *CameraTrack) lagAt(t float64, n int) *lag {
	if i := c.aimAt(t, n); i >= 0 {
		for k := range c.aims[i].lags {
			if l := &c.aims[i].lags[k]; t >= l.from && t <= l.to {
				return l
			}
		}
	}
	return nil
}

// aimAt is the index of the aim of a time, of the first n; -1 where there is
// none.
func (c *CameraTrack) aimAt(t float64, n int) int {
	i := n - 1
	for i > 0 && c.aims[i].start > t {
		i--
	}
	return i
}

// wantedBy is aimedBy as if a lens could be flung round.
func (c *CameraTrack) wantedBy(t float64, from geom.Vec3, focal float64, n int) (pan, tilt float64) {
	i := c.aimAt(t, n)
	if i < 0 {
		pan = c.mounts[c.mountAt(t)].ahead(t)
		p, q := c.swung(0, t)
		return pan + p, q
	}
	a := &c.aims[i]
	pan, tilt, ok := a.at(t, from, focal, float64(c.Frame.Height))
	if !ok {
		pan = c.mounts[c.mountAt(t)].ahead(t)
	}
	off := a.gap.at(t)
	p, q := c.swung(a.start, t)
	return pan + off.X + p, clamp(tilt+off.Y+q, -math.Pi/2, math.Pi/2)
}

// pan at a time.
func (c *CameraTrack) pan(t float64) float64 {
	if later := c.aimLater; later != nil {
		c.aimLater = nil
		later(c)
	}
	pan, _ := c.aimed(t, c.pupil(t), c.focalAt(t))
	return pan
}

// aimsOf builds the aims and swings of a camera.
func (b *builder) aimsOf(c *CameraTrack) {
	for _, a := range b.inTime {
		if !mine(a, c.Camera) {
			continue
		}
		iv := b.c.Of(a)
		switch d := a.Deed.(type) {
		case *plan.Swing:
			c.swings = append(c.swings, newSwing(a, d, iv.Start, iv.End))
		case *plan.See:
			c.follow(float64(iv.Start))
			b.addAim(c, a, d, float64(iv.Start), float64(iv.End))
		}
	}
	c.follow(c.end)
}

func newSwing(a *plan.Action, d *plan.Swing, start, end units.Seconds) swing {
	s := swing{start: float64(start), end: float64(end), action: a}
	angle := d.Angle.Radians()
	switch d.Turn {
	case plan.Left:
		s.pan = angle
	case plan.Right:
		s.pan = -angle
	case plan.Up:
		s.tilt = angle
	case plan.Down:
		s.tilt = -angle
	}
	return s
}

// addAim turns to new targets from whatever the lens did before: in the time the
// line gives, else as quickly as is usual on the rig.
func (b *builder) addAim(c *CameraTrack, action *plan.Action, d *plan.See, start, end float64) {
	a := aim{start: start}
	a.size, _ = body.ParseSize(d.Size)
	for _, to := range d.Targets {
		g, ok := b.target(to)
		if !ok {
			b.problem(Problem{Kind: NoTarget, Subject: c.Camera, Other: to.Thing, Action: action, Note: nowhere(to)})
			continue
		}
		a.targets = append(a.targets, g)
	}
	first := len(c.aims) == 0
	if first && len(c.swings) == 0 {
		a.start = 0
	} else {
		a.gap = c.aimGap(&a, start)
		if action.Timing.In != nil && end > start {
			a.gap.time = end - start
		}
	}
	c.aims = append(c.aims, a)
	c.Aims = append(c.Aims, Aim{
		Start: units.Seconds(a.start), Done: units.Seconds(max(a.start, a.gap.end())),
		Action: action, See: d, Size: a.size,
	})
}

// aimGap is the closing from what the lens did before an aim to what it wants.
func (c *CameraTrack) aimGap(a *aim, start float64) closing {
	const h = 1e-3
	look := func(t float64) (was, want geom.Vec) {
		from, focal := c.pupil(t), c.focalAt(t)
		p, q := c.aimedBy(t, from, focal, len(c.aims))
		pan, tilt, ok := a.at(t, from, focal, float64(c.Frame.Height))
		if !ok {
			pan = c.mounts[c.mountAt(t)].ahead(t)
		}
		return geom.Vec{X: p, Y: q}, geom.Vec{X: pan, Y: tilt}
	}
	was, want := look(start)
	lim := c.Holds[c.mountAt(start)].Limits
	rate := float64(lim.Pan.Typical)
	if rate <= 0 {
		rate = 45
	}
	speed := units.Degrees(rate).Radians()
	gap := geom.Vec{X: geom.AngleDiff(want.X, was.X), Y: was.Y - want.Y}
	var drift geom.Vec
	if start > h {
		was0, _ := look(start - h)
		drift = geom.Vec{X: geom.AngleDiff(was0.X, was.X), Y: was.Y - was0.Y}.Mul(1 / h)
	}
	_, want1 := look(start + h)
	drift = drift.Sub(geom.Vec{X: geom.AngleDiff(want.X, want1.X), Y: want1.Y - want.Y}.Mul(1 / h))
	return closeGap(gap, drift, start, speed, speed/aimGather)
}

// aimGather is the time in which a pan gathers its speed, seconds (common
// practice, no source).
const aimGather = 0.4

// Aim is what it sees at a time; nil where nothing in particular.
func (c *CameraTrack) Aim(at units.Seconds) *Aim {
	for i := len(c.Aims) - 1; i >= 0; i-- {
		if c.Aims[i].Start <= at || i == 0 {
			return &c.Aims[i]
		}
	}
	return nil
}

// Targets is what it sees at a time.
func (c *CameraTrack) Targets(at units.Seconds) []plan.Target {
	if a := c.Aim(at); a != nil {
		return a.See.Targets
	}
	return nil
}

// Size is the size asked for at a time.
func (c *CameraTrack) Size(at units.Seconds) body.Size {
	if a := c.Aim(at); a != nil {
		return a.Size
	}
	return body.NoSize
}
