package motion

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// mounted is a camera's track as far as where it is and what is fitted to it; nil
// where nothing says where it is.
func (b *builder) mounted(camera *plan.Camera) *CameraTrack {
	holds := b.holds[camera]
	c := &CameraTrack{Camera: camera, end: b.end}
	c.Frame, _ = optics.NewFrame(camera.Width, camera.Height, camera.Squeeze, b.p.Take.Aspect)
	for i := range holds {
		h := &holds[i]
		m, ok := b.mountOf(camera, h, i == len(holds)-1)
		if !ok {
			continue
		}
		c.mounts = append(c.mounts, m)
		c.Holds = append(c.Holds, Hold{
			Start: units.Seconds(h.start), Taken: units.Seconds(h.taken), End: units.Seconds(min(h.end, b.end)),
			Action: h.action, Rig: h.rig, Operator: h.operator, Hide: h.hide,
			Worn: h.worn(), Ridden: h.ridden(), Limits: b.r.limitsOfHold(h),
		})
	}
	if len(c.mounts) == 0 {
		return nil
	}
	c.Fits = b.fits(camera)
	return c
}

// camera builds a camera's track; nil where nothing says where it is.
func (b *builder) camera(camera *plan.Camera) *CameraTrack {
	c := b.mounted(camera)
	if c == nil {
		return nil
	}
	c.Rolls = b.rolls(camera)
	b.aimsOf(c)
	b.focusOf(c)
	b.handoffs(c)
	b.loads(c)
	return c
}

// placed is a camera's track that aims when it is first asked where to.
func (b *builder) placed(camera *plan.Camera) *CameraTrack {
	c := b.mounted(camera)
	if c != nil {
		c.aimLater = b.aimsOf
	}
	return c
}

func (b *builder) mountOf(camera *plan.Camera, h *hold, last bool) (mount, bool) {
	m := mount{h: h}
	if h.hide != nil {
		m.fixed, m.into = b.behind(camera, h)
		return m, true
	}
	base := h.base()
	if base == nil {
		return m, false
	}
	m.lift = b.lifts(camera, h, last)
	if m.base = b.track(base); m.base == nil {
		return m, false
	}
	if h.armed() {
		if m.boom = b.boom(h.rig); m.boom == nil {
			return m, false
		}
		m.tip = m.boom.tip
	}
	return m, true
}

// pupilBehind is how far behind a wall's back face the entrance pupil of a
// hidden lens is, metres (common practice, no source).
const pupilBehind = 0.03

// behind is the place of a hidden lens: behind its hole, on the side away from
// the first thing it sees once it rolls.
func (b *builder) behind(camera *plan.Camera, h *hold) (geom.Vec3, float64) {
	hole := h.hide.Hole
	on := plan.On{Wall: hole.Wall, From: hole.Along, To: hole.Along}
	p, _ := on.Ends()
	const near = 0.01
	a, _ := plan.On{Wall: hole.Wall, From: hole.Along - near, To: hole.Along}.Ends()
	c, _ := plan.On{Wall: hole.Wall, From: hole.Along, To: hole.Along + near}.Ends()
	normal := c.Sub(a).Unit().Left()
	side := 1.0 // the side the lens looks to
	// What counts is where its target is once it rolls: before, nobody looks.
	looks := h.start
	for _, r := range b.rolls(camera) {
		if float64(r.To) > looks {
			looks = max(looks, float64(r.From))
			break
		}
	}
	if see := b.seeing(camera, looks, math.MaxInt); see != nil {
		for _, to := range see.Targets {
			if g, ok := b.target(to); ok {
				if g.point(looks).Sub(p).Dot(normal) < 0 {
					side = -1
				}
				break
			}
		}
	}
	into := normal.Mul(side)
	q := p.Sub(into.Mul(float64(hole.Wall.Thick)/2 + pupilBehind))
	return q.At(float64(hole.Up)), into.Angle()
}

// rolls is when a camera rolls: all the take where no line says, else from its
// first `rolls`, or from the start where the first line is `rests`. A line with a
// length is over after it: who rests for 5 s rolls again then.
func (b *builder) rolls(camera *plan.Camera) []Roll {
	var out []Roll
	said := false
	on := false
	end := units.Seconds(b.end)
	turn := func(to bool, at units.Seconds, a *plan.Action) {
		switch {
		case to && !on:
			out = append(out, Roll{From: at, To: end, Action: a})
		case !to && !said:
			out = append(out, Roll{From: 0, To: at})
		case !to && on:
			out[len(out)-1].To = at
		}
		said, on = true, to
	}
	over, back := units.Seconds(-1), (*plan.Action)(nil) // when the last line is over, if it says so
	for _, a := range b.inTime {
		d, ok := a.Deed.(*plan.Roll)
		if !ok || a.Subject != plan.Thing(camera) {
			continue
		}
		iv := b.c.Of(a)
		if over >= 0 && over <= iv.Start {
			turn(!on, over, back)
		}
		turn(d.On, iv.Start, a)
		over, back = -1, a
		if a.Timing.In != nil || a.Timing.Until != nil {
			over = iv.End
		}
	}
	if over >= 0 && over < end {
		turn(!on, over, back)
	}
	if !said {
		// The last frame of the take is taken at its end, or just before it.
		return []Roll{{From: 0, To: end + units.Seconds(1e-6)}}
	}
	for i := range out {
		if out[i].To == end {
			out[i].To = end + units.Seconds(1e-6)
		}
	}
	return out
}

// mine says that a line is a camera's.
func mine(a *plan.Action, camera *plan.Camera) bool { return clock.SubjectOf(a) == plan.Thing(camera) }
