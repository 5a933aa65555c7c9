package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// lag is a stretch in which a lens can't follow its aim: what it sees passes so
// near, or right through it, or to its other side, that it would have to be
// flung round. It turns as fast as the rig's limit allows and catches up.
type lag struct {
	from, to  float64
	pan, tilt sway
}

const (
	lagReach  = 0.8     // metres within which a target passes near
	lagWide   = 2.5     // metres beyond which one target can't pass too fast
	lagLook   = 1.0 / 8 // seconds between looks for one
	lagFlip   = 1.2     // radians from look to look that are a change of sides
	lagApart  = 4       // looks between two at far targets
	lagBefore = 0.8     // seconds before it that the following begins
	lagAfter  = 6.0     // seconds after it in which the lens catches up
)

// follow finds, for the last aim so far, where the lens lags until a time.
func (c *CameraTrack) follow(until float64) {
	if len(c.aims) == 0 {
		return
	}
	a := &c.aims[len(c.aims)-1]
	if len(a.targets) == 0 {
		return
	}
	n, step := looks(until-a.start, lagLook)
	was, at := 0.0, math.Inf(-1) // the pan when it was last asked for, and when
	near := math.Inf(-1)         // the last time something was near
	first := 0.0
	for i := 0; i <= n; i++ {
		t := a.start + step*float64(i)
		dist := c.nearestTarget(a, t)
		late := dist < lagReach
		// The middle of several targets may go to the other side at any distance.
		if dist < lagWide || len(a.targets) > 1 && i%lagApart == 0 {
			pan, _ := c.wanted(t, len(c.aims))
			limit := min(panLimit(c.Holds[c.mountAt(t)].Limits)*(t-at), lagFlip)
			late = late || t-at < (lagApart+0.5)*step && math.Abs(geom.AngleDiff(was, pan)) > limit
			was, at = pan, t
		}
		if late {
			if t > near+lagBefore+lagAfter {
				c.addLag(a, first, near, until)
				first = t
			}
			near = t
		}
	}
	c.addLag(a, first, near, until)
}

// nearestTarget is how near what it sees comes.
func (c *CameraTrack) nearestTarget(a *aim, t float64) float64 {
	p := c.pupil(t).Floor()
	near := math.Inf(1)
	for _, g := range a.targets {
		near = min(near, g.point(t).Dist(p))
	}
	return near
}

// panLimit is how fast a lens can be turned, radians a second.
func panLimit(lim Limits) float64 {
	rate := lim.Pan.Hard
	if rate <= 0 {
		rate = 90
	}
	return units.Degrees(rate).Radians()
}

// addLag follows from before the first until after the last time something was
// near; to the end of the aim where that isn't enough to catch up.
func (c *CameraTrack) addLag(a *aim, first, last, until float64) {
	if math.IsInf(last, -1) {
		return
	}
	from, to := max(a.start, first-lagBefore), min(until, last+lagAfter)
	rate := panLimit(c.Holds[c.mountAt(first)].Limits)
	i := len(c.aims)
	pan := func(t float64) float64 { p, _ := c.wanted(t, i); return p }
	tilt := func(t float64) float64 { _, q := c.wanted(t, i); return q }
	make := func(to float64) lag {
		return lag{from, to, newSway(pan, rate, 4*rate, from, to), newSway(tilt, rate, 4*rate, from, to)}
	}
	l := make(to)
	if p, q := c.wanted(to, i); math.Abs(wrap(l.pan.at(to)-p))+math.Abs(l.tilt.at(to)-q) > 1e-3 && to < until {
		l = make(until)
	}
	a.lags = append(a.lags, l)
}

// wanted is the aim by the first n aims as it would be if a lens could be flung
// round.
func (c *CameraTrack) wanted(t float64, n int) (pan, tilt float64) {
	return c.wantedBy(t, c.pupil(t), c.focalAt(t), n)
}
