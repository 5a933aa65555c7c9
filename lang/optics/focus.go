package optics

import (
	"math"

	"longhand/lang/units"
)

// Focus is a lens at a stop, and what still counts as sharp.
type Focus struct {
	Focal  units.Millimetres
	Stop   units.Stop // as an f-number; a T-stop is taken for one, which is a little shallow
	Circle units.Millimetres
}

// Hyperfocal is the nearest focus at which infinity is still sharp:
// f²/(N·c) + f. Many tables leave the last f out.
func (l Focus) Hyperfocal() units.Metres {
	f := float64(l.Focal)
	return units.Millimetres(f*f/(float64(l.Stop)*float64(l.Circle)) + f).Metres()
}

// Limits are the nearest and farthest distances that are sharp when the lens is
// focused at s: s(H-f)/(H+s-2f) and s(H-f)/(H-s). The far limit is infinite
// from the hyperfocal distance on. Distances are from the lens; a focus not
// beyond the focal length has no depth.
func (l Focus) Limits(focus units.Metres) (near, far units.Metres) {
	s, f, h := float64(focus), float64(l.Focal.Metres()), float64(l.Hyperfocal())
	if math.IsInf(s, 1) {
		return units.Metres(h - f), units.Metres(s)
	}
	if s <= f {
		return focus, focus
	}
	near = units.Metres(s * (h - f) / (h + s - 2*f))
	if s >= h {
		return near, units.Metres(math.Inf(1))
	}
	return near, units.Metres(s * (h - f) / (h - s))
}

// Blur is the diameter, on the sensor, of the disc a point at a distance makes
// when the lens is focused at s: (f²/N)·|x-s|/(x(s-f)). The distance may be
// infinite.
func (l Focus) Blur(focus, distance units.Metres) units.Millimetres {
	f, s, x := float64(l.Focal), float64(focus.Millimetres()), float64(distance.Millimetres())
	aperture := f / float64(l.Stop) // the entrance pupil
	switch {
	case math.IsInf(s, 1) && math.IsInf(x, 1):
		return 0
	case math.IsInf(s, 1):
		return units.Millimetres(aperture * f / x)
	case s <= f:
		return 0
	case math.IsInf(x, 1):
		return units.Millimetres(aperture * f / (s - f))
	}
	return units.Millimetres(aperture * f * math.Abs(x-s) / (x * (s - f)))
}

// BlurShare is the blur disc as a part of the frame's width. Of a squeezing lens,
// whose discs are ovals, it is the long way of them, up and down.
func (l Focus) BlurShare(f Frame, focus, distance units.Metres) units.Percent {
	return units.Percent(100 * l.Blur(focus, distance) / f.Width)
}

// Depths is how many depths of field a pull from one distance to another goes
// through: 0 holds it, 1 takes it from one limit to the next. In the inverse of
// distance every depth of field of a lens is all but equally wide, 2/(H-f), so
// that this says how hard a pull is wherever it is made.
func (l Focus) Depths(from, to units.Metres) float64 {
	width := 2 / float64(l.Hyperfocal()-l.Focal.Metres())
	return math.Abs(1/float64(from)-1/float64(to)) / width
}
