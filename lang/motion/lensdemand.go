package motion

import (
	"math"
	"slices"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/lanes"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// focusLimit is how fast a focus puller follows, m/s along the axis.
var focusLimit = speedLimit{Typical: 0.5, Hard: 2}

// LensDemands is what the lines ask of the heads, arms and rings of the cameras
// that roll: pans, tilts, rises, lens heights and focus, one demand a line and
// quantity, in the order of time. It looks at every frame, so it is worked out
// when asked for and not before, all cameras at once.
func (t *Tracks) LensDemands() []Demand {
	each := make([][]Demand, len(t.Cameras))
	lanes.Do(len(each), len(each), func(i int) {
		c := t.Cameras[i]
		each[i] = append(c.aimDemands(t.Rate, t.Views(c)), c.heightDemands()...)
	})
	f := Facts{Demands: slices.Concat(each...)}
	for i := range f.Demands {
		f.Demands[i].Fixed = isFixed(f.Demands[i].Action)
	}
	f.sort()
	return f.Demands
}

type demandKey struct {
	action   *plan.Action
	quantity Quantity
}

// aimDemands looks at pan, tilt and focus from frame to frame.
func (c *CameraTrack) aimDemands(rate units.Rate, views []View) []Demand {
	found := make(map[demandKey]*Demand)
	var order []*Demand
	put := func(a *plan.Action, q Quantity, at units.Seconds, v float64, lim body.Limit[units.DegreesPerSecond], source string) {
		if a == nil || v < 1e-3 {
			return
		}
		d := found[demandKey{a, q}]
		if d == nil {
			d = &Demand{Subject: c.Camera, Action: a, Quantity: q, From: at, Typical: float64(lim.Typical), Limit: float64(lim.Hard), Source: source}
			found[demandKey{a, q}] = d
			order = append(order, d)
		}
		d.To = at
		if v > d.Peak {
			d.Peak, d.At = v, at
		}
	}
	var was View // with the pan and tilt that the aim wants
	step := float64(rate.Duration(1))
	for k := range views {
		at := rate.Time(units.Frame(k))
		now := c.asked(float64(at), &views[k])
		if k > 0 && c.Rolling(at) {
			mid := at - units.Seconds(step/2)
			lim := c.Hold(mid).Limits
			a := c.cause(mid)
			put(a, PanRate, mid, math.Abs(geom.AngleDiff(was.Pan, now.Pan))/step*180/math.Pi, lim.Pan, lim.Source)
			put(a, TiltRate, mid, math.Abs(now.Tilt-was.Tilt)/step*180/math.Pi, lim.Pan, lim.Source)
			if v := math.Abs(now.Focus-was.Focus) / step; !math.IsInf(v, 0) && !math.IsNaN(v) {
				put(c.focusCause(mid), FocusRate, mid, v,
					body.Limit[units.DegreesPerSecond]{Typical: units.DegreesPerSecond(focusLimit.Typical), Hard: units.DegreesPerSecond(focusLimit.Hard)},
					"a focus pulled by hand, "+body.Practice)
			}
		}
		was = now
	}
	out := make([]Demand, len(order))
	for i, d := range order {
		out[i] = *d
	}
	return out
}

// asked is the lens at a time with the pan and the tilt that the aim wants, as if
// it could be flung round; view is where it is.
func (c *CameraTrack) asked(at float64, view *View) View {
	out := *view
	if at < 0 || at > c.end || c.lagAt(at, len(c.aims)) != nil {
		out.Pan, out.Tilt = c.wanted(at, len(c.aims))
	}
	return out
}

// cause is the line that turns the lens at a time: a pan or a tilt that goes on,
// else the aim.
func (c *CameraTrack) cause(at units.Seconds) *plan.Action {
	for i := range c.swings {
		if s := &c.swings[i]; float64(at) > s.start && float64(at) < s.end {
			return s.action
		}
	}
	if a := c.Aim(at); a != nil {
		return a.Action
	}
	return nil
}

// focusCause is the line that the focus is by at a time.
func (c *CameraTrack) focusCause(at units.Seconds) *plan.Action {
	i := len(c.focus) - 1
	for i > 0 && c.focus[i].start > float64(at) {
		i--
	}
	if i < 0 {
		return nil
	}
	return c.focus[i].action
}

// heightDemands is how fast and how far lenses rise and fall.
func (c *CameraTrack) heightDemands() []Demand {
	var out []Demand
	for i := range c.mounts {
		m := &c.mounts[i]
		if m.lift == nil {
			continue
		}
		lim := c.Holds[i].Limits
		subject := plan.Thing(m.h.rig)
		for k, r := range m.lift.steps {
			action := r.action
			if k == 0 {
				action = m.h.action
			}
			base := Demand{Subject: subject, Action: action, From: units.Seconds(r.start), To: units.Seconds(r.end), At: units.Seconds(r.end), Source: lim.Source}
			if r.end > r.start && math.Abs(r.to-r.from) > 1e-6 {
				d := base
				d.Quantity, d.Typical, d.Limit = RiseRate, float64(lim.Rise.Typical), float64(lim.Rise.Hard)
				d.Peak, d.At = math.Abs(r.to-r.from)/(r.end-r.start)*turnEase.PeakSpeed(), units.Seconds((r.start+r.end)/2)
				out = append(out, d)
			}
			d := base
			d.Quantity, d.Peak, d.Typical, d.Limit = LensLow, r.to, float64(lim.Low), float64(lim.Low)
			out = append(out, d)
			d.Quantity, d.Typical, d.Limit = LensHigh, float64(lim.High), float64(lim.High)
			out = append(out, d)
		}
	}
	return out
}
