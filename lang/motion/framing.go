package motion

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

// headMiddle is how far below the top of the head its middle is, of stature:
// half way to the chin.
const headMiddle = (1 - body.ChinFraction) / 2

// thirdsOver is where heads are put: a third of the frame's height below its
// top is a sixth above its middle.
const thirdsOver = 1.0/2 - 1.0/3

// at aims from a place through a lens: the pan to the middle of the targets'
// bearing extremes, the tilt that puts heads a third of the frame's height
// below its top (for sizes tighter than chest, the eyes). Where a whole person
// is asked for, the tilt goes no higher than keeps the feet in, as far as the
// head allows. What has no head is put in the middle. False where nothing is to
// be seen.
func (a *aim) at(t float64, from geom.Vec3, focal, height float64) (pan, tilt float64, ok bool) {
	var ref float64
	low, high := math.Inf(1), math.Inf(-1)
	heads, things := newExtent(), newExtent()
	top, feet := math.Inf(-1), math.Inf(1)
	for _, g := range a.targets {
		p, radius := g.point(t), g.radius()
		d := p.Sub(from.Floor())
		dist := d.Len()
		if dist < 1e-6 {
			continue
		}
		bearing := d.Angle()
		if !ok {
			ref, ok = bearing, true
		}
		off := geom.AngleDiff(ref, bearing)
		half := math.Asin(min(1, radius/dist))
		low, high = min(low, off-half), max(high, off+half)
		z, isHead := g.eyeline(t, a.size)
		e := math.Atan2(z-from.Z, dist)
		if !isHead {
			things.add(e)
			continue
		}
		heads.add(e)
		floor := g.track.point(t).Z
		top = max(top, math.Atan2(floor+float64(g.track.height(t))-from.Z, dist))
		feet = min(feet, math.Atan2(floor-from.Z, dist))
	}
	if !ok {
		return 0, 0, false
	}
	pan = ref + (low+high)/2
	if heads.empty() {
		return pan, things.middle(), true
	}
	tilt = heads.middle()
	if focal <= 0 || height <= 0 {
		return pan, tilt, true
	}
	angle := func(part float64) float64 { return math.Atan(part * height / focal) }
	tilt -= angle(thirdsOver)
	if a.size == body.Full || a.size == body.Wide {
		tilt = min(tilt, feet+angle(0.5-body.Full.Cut().FootRoom))
		tilt = max(tilt, top-angle(0.5-body.HeadroomTolerance))
	}
	return pan, tilt, true
}

// extent is the least and the most of some angles.
type extent struct{ low, high float64 }

func newExtent() extent { return extent{math.Inf(1), math.Inf(-1)} }

func (x *extent) add(v float64)  { x.low, x.high = min(x.low, v), max(x.high, v) }
func (x extent) empty() bool     { return x.low > x.high }
func (x extent) middle() float64 { return (x.low + x.high) / 2 }

// radius of what is aimed at, as seen from the side.
func (g target) radius() float64 {
	if g.track == nil {
		return 0
	}
	if g.track.Radius > 0 {
		return float64(g.track.Radius)
	}
	return float64(g.track.Width) / 2
}

// eyeline is the height in space that a lens is aimed at, and whether that is a
// head.
func (g target) eyeline(t float64, size body.Size) (float64, bool) {
	switch {
	case g.cam != nil:
		return g.cam.pupil(t).Z, false
	case g.track == nil:
		return g.fixed.Z, false
	}
	floor := g.track.point(t).Z
	if _, person := g.track.Thing.(*plan.Person); !person {
		return floor + aimFraction*float64(g.track.height(t)), false
	}
	below := headMiddle
	if size.TighterThan(body.Chest) {
		below = 1 - body.EyeFraction
	}
	return floor + float64(g.track.height(t)) - below*float64(g.track.Stature), true
}
