package motion

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

// focusing is what the focus is on, from a time on: a target or a distance. The
// difference to where it was is eased away, in dioptres: even steps of a
// practised hand on the ring.
type focusing struct {
	start, end float64
	g          target
	on         bool // a target; else dist
	dist       float64
	off        float64 // dioptres at the start
	action     *plan.Action
}

// faceDepth is how far ahead of the middle of a person, towards the lens, their
// face is: what is held sharp, metres (common practice, no source).
const faceDepth = 0.1

// nearest is the least distance the focus is ever asked for, metres.
const nearestFocus = 0.1

// offAxis is the cosine of the angle off the axis from which on a target counts
// as out of frame: 37 degrees, beyond the corner of a very wide frame.
const offAxis = 0.8

// raw is the distance along the axis to what the focus is on: a person's face,
// the near side of a thing, a place itself.
func (f *focusing) raw(t float64, from geom.Vec3, pan, tilt float64) float64 {
	if !f.on {
		return f.dist
	}
	var z, depth float64
	z, isHead := f.g.eyeline(t, body.Face)
	switch {
	case isHead:
		depth = faceDepth
	case f.g.track != nil:
		depth = f.g.radius()
	}
	d := f.g.point(t).At(z).Sub(from)
	axis := geom.Polar(math.Cos(tilt), pan).At(math.Sin(tilt))
	// A target far off the axis is on its way into frame: its distance is then
	// near enough that along the axis which will be.
	along := max(d.Dot(axis), offAxis*d.Len())
	return max(along-depth, nearestFocus)
}

// focused is the focus at a time, along the axis; +Inf where it is on nothing.
func (c *CameraTrack) focused(t float64, from geom.Vec3, pan, tilt float64) float64 {
	return c.focusedBy(t, from, pan, tilt, len(c.focus))
}

func (c *CameraTrack) focusedBy(t float64, from geom.Vec3, pan, tilt float64, n int) float64 {
	i := n - 1
	for i > 0 && c.focus[i].start > t {
		i--
	}
	if i < 0 {
		return math.Inf(1)
	}
	f := &c.focus[i]
	raw := f.raw(t, from, pan, tilt)
	if f.off == 0 || t >= f.end {
		return raw
	}
	d := 1/raw + f.off*(1-easedBy(aimEase, t, f.start, f.end))
	if d < 1e-4 {
		return math.Inf(1)
	}
	return 1 / d
}

// focusOf follows the first target of each aim, unless the focus is racked.
func (b *builder) focusOf(c *CameraTrack) {
	for _, a := range b.inTime {
		if !mine(a, c.Camera) {
			continue
		}
		iv := b.c.Of(a)
		f := focusing{start: float64(iv.Start), end: float64(iv.End), action: a}
		switch d := a.Deed.(type) {
		case *plan.See:
			i := len(c.aims) - 1
			for k := range c.Aims {
				if c.Aims[k].Action == a {
					i = k
				}
			}
			if i < 0 || len(c.aims[i].targets) == 0 {
				continue
			}
			f.g, f.on = c.aims[i].targets[0], true
			f.start, f.end = c.aims[i].start, max(c.aims[i].gap.end(), c.aims[i].start+0.5)
		case *plan.Rack:
			switch {
			case d.To != nil:
				g, ok := b.target(*d.To)
				if !ok {
					b.problem(Problem{Kind: NoTarget, Subject: c.Camera, Other: d.To.Thing, Action: a, Note: nowhere(*d.To)})
					continue
				}
				f.g, f.on = g, true
			case d.Distance != nil && *d.Distance > 0:
				f.dist = float64(*d.Distance)
			default:
				continue
			}
		default:
			continue
		}
		if len(c.focus) > 0 {
			p := c.pupil(f.start)
			pan, tilt := c.aimed(f.start, p, c.focalAt(f.start))
			was := c.focusedBy(f.start, p, pan, tilt, len(c.focus))
			f.off = 1/was - 1/f.raw(f.start, p, pan, tilt)
		}
		c.focus = append(c.focus, f)
	}
}
