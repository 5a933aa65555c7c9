package optics

import (
	"math"

	"longhand/lang/units"
)

// Field is how much of a plane at a distance a side d of the frame covers:
// d·D/f (similar triangles).
func Field(d, f units.Millimetres, distance units.Metres) units.Metres {
	return units.Metres(float64(d/f)) * distance
}

// FieldSize is the width and height of the plane the frame covers at a distance.
func (f Frame) FieldSize(focal units.Millimetres, distance units.Metres) (width, height units.Metres) {
	return Field(f.Width, focal, distance), Field(f.Height, focal, distance)
}

// ImageSize is the size on the sensor of something at a distance: f·size/D.
func ImageSize(size units.Metres, f units.Millimetres, distance units.Metres) units.Millimetres {
	return f * units.Millimetres(float64(size/distance))
}

// DistanceFor is the distance at which something of a size fills a side d.
func DistanceFor(size units.Metres, d, f units.Millimetres) units.Metres {
	return size * units.Metres(float64(f/d))
}

// DiscHalfAngle is half the angle a round body of a radius spans, seen from a
// distance to its middle: asin(r/d), the tangent from the eye. It is 180° from
// inside the body.
func DiscHalfAngle(radius, distance units.Metres) units.Degrees {
	if distance <= radius {
		return 180
	}
	return units.FromRadians(math.Asin(float64(radius / distance)))
}
