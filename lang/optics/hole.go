package optics

import (
	"math"

	"longhand/lang/units"
)

// Pupil is the diameter of a lens's entrance pupil: f/N.
func Pupil(focal units.Millimetres, stop units.Stop) units.Millimetres {
	return focal / units.Millimetres(stop)
}

// HoleFor is the size of the smallest opening in a wall that cuts nothing off,
// where the wall lies a distance in front of the entrance pupil: the pupil, plus
// what the frame spreads to on the way (similar triangles), across, up, and as
// the diameter of a round hole.
func HoleFor(f Frame, focal units.Millimetres, stop units.Stop, toWall units.Millimetres) (width, height, round units.Millimetres) {
	p := Pupil(focal, stop)
	return p + toWall*f.Width/focal, p + toWall*f.Height/focal, p + toWall*f.Diagonal()/focal
}

// Through is the part of a lens's light, 0 to 1, that gets through a round hole
// a distance in front of its entrance pupil, for the image point at an offset
// from the middle of the frame: the overlap of the pupil, carried along the ray,
// with the hole.
func Through(hole, focal units.Millimetres, stop units.Stop, toWall, offset units.Millimetres) float64 {
	pupil := float64(Pupil(focal, stop)) / 2
	shift := math.Abs(float64(toWall * offset / focal))
	return overlap(pupil, float64(hole)/2, shift) / (math.Pi * pupil * pupil)
}

// CornerLoss is how many stops darker the frame's corner is than an open lens's,
// behind a round hole; infinite where the corner is black.
func CornerLoss(f Frame, hole, focal units.Millimetres, stop units.Stop, toWall units.Millimetres) float64 {
	return -math.Log2(Through(hole, focal, stop, toWall, f.Diagonal()/2))
}

// overlap is the area two discs of radii a and b share, their middles d apart.
func overlap(a, b, d float64) float64 {
	if d >= a+b {
		return 0
	}
	if small := math.Min(a, b); d <= math.Abs(a-b) {
		return math.Pi * small * small
	}
	// The two circular segments on either side of the common chord.
	segment := func(r, o float64) float64 {
		c := (d*d + r*r - o*o) / (2 * d) // from r's middle to the chord
		k := math.Max(-1, math.Min(1, c/r))
		return r*r*math.Acos(k) - c*math.Sqrt(math.Max(0, r*r-c*c))
	}
	return segment(a, b) + segment(b, a)
}
