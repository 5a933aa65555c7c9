package optics

import (
	"fmt"
	"math"

	"longhand/lang/units"
)

// AngleOfView is the angle a side d of the frame spans through a lens of focal
// length f focused at infinity: 2·atan(d / 2f). Pass an image distance (see
// [ImageDistance]) for f where the lens is focused nearer.
func AngleOfView(d, f units.Millimetres) units.Degrees {
	return units.FromRadians(2 * math.Atan2(float64(d), 2*float64(f)))
}

// AngleOfViewAt is the angle of view of a lens focused at a distance from it:
// the nearer the focus, the narrower the angle.
func AngleOfViewAt(d, f units.Millimetres, focus units.Metres) units.Degrees {
	return AngleOfView(d, ImageDistance(f, focus))
}

// ImageDistance is how far behind the lens something at a distance is sharp:
// 1/(1/f - 1/s), the thin lens equation. It is f for a distance of 0 (not
// given), infinite or not beyond the focal length.
func ImageDistance(f units.Millimetres, focus units.Metres) units.Millimetres {
	s := focus.Millimetres()
	if s <= f || math.IsInf(float64(s), 0) || math.IsNaN(float64(s)) {
		return f
	}
	return f * s / (s - f)
}

// Magnification is the size on the sensor over the size of what is at the focus
// distance: f/(s-f).
func Magnification(f units.Millimetres, focus units.Metres) float64 {
	s := focus.Millimetres()
	if s <= f {
		return math.Inf(1)
	}
	return float64(f / (s - f))
}

// FocalLength is the focal length whose angle of view over a side d is the one
// given. No lens that draws straight lines straight sees 180° or more.
func FocalLength(d units.Millimetres, angle units.Degrees) (units.Millimetres, error) {
	if !(angle > 0) || angle >= 180 {
		return 0, fmt.Errorf("no lens has an angle of view of %s: it must be above 0° and below 180°", angle)
	}
	return units.Millimetres(float64(d) / (2 * math.Tan(angle.Radians()/2))), nil
}

// Angles are the frame's angles of view across, up and corner to corner.
func (f Frame) Angles(focal units.Millimetres) (across, up, corner units.Degrees) {
	return AngleOfView(f.Width, focal), AngleOfView(f.Height, focal), AngleOfView(f.Diagonal(), focal)
}

// Spherical is the focal length of the spherical lens that sees as wide, on the
// same gate, as one of focal length f that squeezes.
func Spherical(f units.Millimetres, squeeze float64) units.Millimetres {
	return f / units.Millimetres(squeeze)
}
