package motion

import (
	"math"

	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Fit is a lens on a camera, from a time on. What is fitted first is fitted from
// the first frame.
type Fit struct {
	At     units.Seconds
	Lens   *plan.Lens
	Focal  units.Millimetres
	Stop   units.Stop // 0 where neither the text nor the lens says
	Action *plan.Action

	from   units.Millimetres // it zooms from here; equal to Focal where it doesn't
	opened units.Stop        // it is pulled from here; equal to Stop where it isn't
	took   units.Seconds     // to zoom
	pulled units.Seconds     // to pull the stop; 0 at once
}

func (b *builder) fits(camera *plan.Camera) []Fit {
	var out []Fit
	for _, a := range b.inTime {
		d, ok := a.Deed.(*plan.Fit)
		if !ok || d.Lens == nil || !mine(a, camera) {
			continue
		}
		iv := b.c.Of(a)
		f := Fit{At: iv.Start, Lens: d.Lens, Focal: d.Focal, Stop: d.Stop, Action: a, took: optics.ZoomTime}
		if a.Timing.In != nil {
			f.took, f.pulled = iv.End-iv.Start, iv.End-iv.Start
		}
		var last *Fit
		if len(out) > 0 {
			last = &out[len(out)-1]
		}
		same := last != nil && last.Lens == d.Lens
		if f.Focal <= 0 {
			f.Focal = d.Lens.Short
			if same {
				f.Focal = last.Focal
			}
		}
		if f.Stop <= 0 {
			f.Stop = d.Lens.Widest
			if same {
				f.Stop = last.Stop
			}
		}
		f.from, f.opened = f.Focal, f.Stop
		if same {
			// Where the one before is not over, from where that is.
			f.from, f.opened = units.Millimetres(last.focal(f.At)), last.stop(f.At)
		}
		if last == nil {
			f.At = 0
		}
		out = append(out, f)
	}
	return out
}

// Fit is the lens at a time; nil where none is fitted.
func (c *CameraTrack) Fit(at units.Seconds) *Fit {
	for i := len(c.Fits) - 1; i >= 0; i-- {
		if c.Fits[i].At <= at || i == 0 {
			return &c.Fits[i]
		}
	}
	return nil
}

// Lens is what is fitted at a time; nil where nothing is.
func (c *CameraTrack) Lens(at units.Seconds) *plan.Lens {
	if f := c.Fit(at); f != nil {
		return f.Lens
	}
	return nil
}

// Stop is the lens's opening at a time; 0 where nothing says.
func (c *CameraTrack) Stop(at units.Seconds) units.Stop {
	if f := c.Fit(at); f != nil {
		return f.stop(at)
	}
	return 0
}

// stop is the opening at a time: pulled, it goes by equal parts of a stop.
func (f *Fit) stop(at units.Seconds) units.Stop {
	if f.opened == f.Stop || f.opened <= 0 || at >= f.At+f.pulled {
		return f.Stop
	}
	k := easedBy(aimEase, float64(at), float64(f.At), float64(f.At+f.pulled))
	return f.opened * units.Stop(math.Pow(float64(f.Stop/f.opened), k))
}

// Zooming says whether the focal length changes at a time.
func (c *CameraTrack) Zooming(at units.Seconds) bool {
	f := c.Fit(at)
	return f != nil && f.from != f.Focal && at > f.At && at < f.At+f.took
}

// focalAt is the focal length in millimetres.
func (c *CameraTrack) focalAt(t float64) float64 {
	if f := c.Fit(units.Seconds(t)); f != nil {
		return f.focal(units.Seconds(t))
	}
	return 0
}

// focal is the focal length at a time, in millimetres: a zoom goes by equal parts
// of itself, as the eye sees it.
func (f *Fit) focal(at units.Seconds) float64 {
	if f.from == f.Focal || f.from <= 0 {
		return float64(f.Focal)
	}
	k := easedBy(aimEase, float64(at), float64(f.At), float64(f.At+f.took))
	return float64(f.from) * math.Pow(float64(f.Focal/f.from), k)
}
