package motion

import (
	"sync"

	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// View is a lens at a moment: the place of its entrance pupil, where it points,
// how long it is and where it is focused.
type View struct {
	X, Y, Z float64 // metres
	Pan     float64 // radians, counter-clockwise from +x, in (-pi, pi]
	Tilt    float64 // radians, up from the horizon
	Roll    float64 // radians; always 0
	Focal   float64 // millimetres; 0 where no lens is fitted
	Focus   float64 // metres along the axis; +Inf where it sees nothing
}

// CameraTrack is a camera over the whole take. It never changes once resolved.
type CameraTrack struct {
	Camera *plan.Camera
	Frame  optics.Frame // zero where the sensor has no area
	Holds  []Hold       // in order of time; never empty
	Rolls  []Roll       // in order of time
	Aims   []Aim        // in order of time
	Fits   []Fit        // in order of time

	mounts []mount
	aims   []aim
	swings []swing
	focus  []focusing
	end    float64

	aimLater func(*CameraTrack) // adds the aims; nil once they are there

	once  sync.Once
	views []View // at every frame, made when first asked for
}

// Hold is a time a camera spends on one rig, or behind one hole.
type Hold struct {
	// Start is when it begins to change hands, Taken when it is on this rig
	// alone: equal where nothing changes hands. End is the next one's Start, or
	// the take's end.
	Start, Taken, End units.Seconds
	Action            *plan.Action // Mount, Handoff or Hide; nil for the rig that only a handoff names
	Rig               *plan.Rig    // nil behind a hole
	Operator          *plan.Person
	Hide              *plan.Hide // nil on a rig
	Worn              bool       // by the operator
	Ridden            bool       // by the operator
	Limits            Limits
}

// Roll is a time a camera rolls.
type Roll struct {
	From, To units.Seconds
	Action   *plan.Action // nil for a camera that no line starts
}

// mount is a hold as the lens knows it.
type mount struct {
	h     *hold
	base  *Track // nil behind a hole
	tip   *Track // of an arm; nil where there is none
	boom  *boom
	fixed geom.Vec3 // behind a hole
	into  float64   // behind a hole: the direction through it
	lift  *lift
}

func (m *mount) pupil(t float64) geom.Vec3 {
	switch {
	case m.base == nil:
		return m.fixed
	case m.tip != nil:
		p := m.tip.point(t)
		p.Z += m.lift.at(t)
		return p
	}
	p := m.base.point(t)
	p.Z += m.lift.at(t)
	if m.h.at == (geom.Vec{}) {
		return p
	}
	return p.Floor().Add(m.h.at.Rotate(m.base.heading(t))).At(p.Z)
}

// ahead is where the lens points while it sees nothing in particular.
func (m *mount) ahead(t float64) float64 {
	switch {
	case m.base == nil:
		return m.into
	case m.boom != nil:
		return m.boom.bearing(m.tip, t)
	}
	return m.base.heading(t)
}

// mountAt is the index of the hold of a time.
func (c *CameraTrack) mountAt(t float64) int {
	i := len(c.mounts) - 1
	for i > 0 && c.mounts[i].h.start > t {
		i--
	}
	return i
}

// pupil is the place of the lens: while it changes hands, on the way from one
// rig's lens to the other's.
func (c *CameraTrack) pupil(t float64) geom.Vec3 {
	t = clamp(t, 0, c.end)
	i := c.mountAt(t)
	m := &c.mounts[i]
	p := m.pupil(t)
	if i > 0 && t < m.h.taken {
		k := eased(t, m.h.start, m.h.taken)
		q := c.mounts[i-1].pupil(t)
		p = q.Add(p.Sub(q).Mul(k))
	}
	return p
}

// At is the lens at a time; before the take it is that of its start, after it
// that of its end.
func (c *CameraTrack) At(at units.Seconds) View {
	t := clamp(float64(at), 0, c.end)
	p := c.pupil(t)
	focal := c.focalAt(t)
	pan, tilt := c.aimed(t, p, focal)
	return View{
		X: p.X, Y: p.Y, Z: p.Z, Pan: wrap(pan), Tilt: tilt, Focal: focal,
		Focus: c.focused(t, p, pan, tilt),
	}
}

// mostViews bounds the frames looked at: twelve hours. No take is longer.
const mostViews = 1 << 20

// Views is the lens at every frame of the take. Nobody may write to it.
func (t *Tracks) Views(c *CameraTrack) []View {
	c.once.Do(func() {
		c.views = make([]View, min(t.Frames, mostViews))
		for f := range c.views {
			c.views[f] = c.At(t.Rate.Time(units.Frame(f)))
		}
	})
	return c.views
}

// Speed of the lens in space.
func (c *CameraTrack) Speed(at units.Seconds) units.MetresPerSecond {
	const h = 1e-3
	a, b := max(0, float64(at)-h), min(c.end, float64(at)+h)
	if b <= a {
		return 0
	}
	return units.MetresPerSecond(c.pupil(b).Dist(c.pupil(a)) / (b - a))
}

// Hold is the one of a time.
func (c *CameraTrack) Hold(at units.Seconds) *Hold { return &c.Holds[c.mountAt(float64(at))] }

// Rig is what it is on at a time, the new one while it changes hands; nil
// behind a hole.
func (c *CameraTrack) Rig(at units.Seconds) *plan.Rig { return c.Hold(at).Rig }

// Operator is who has it at a time; nil where nobody is named.
func (c *CameraTrack) Operator(at units.Seconds) *plan.Person { return c.Hold(at).Operator }

// Arm is the arm it hangs from at a time; false where it hangs from none.
func (c *CameraTrack) Arm(at units.Seconds) (Arm, bool) {
	m := &c.mounts[c.mountAt(float64(at))]
	if m.boom == nil {
		return Arm{}, false
	}
	return m.boom.arm(float64(at)), true
}

// Rolling says whether it rolls at a time; the last moment of a roll is not in
// it.
func (c *CameraTrack) Rolling(at units.Seconds) bool {
	for _, r := range c.Rolls {
		if at >= r.From && at < r.To {
			return true
		}
	}
	return false
}
