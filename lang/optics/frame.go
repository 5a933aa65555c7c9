package optics

import (
	"fmt"
	"math"

	"longhand/lang/units"
)

// Frame is the part of a sensor that is the picture, after squeeze.
type Frame struct {
	Width, Height units.Millimetres
	Squeeze       float64 // 1 for a spherical lens
}

// NewFrame is the largest rectangle of an aspect inside a sensor, whose width
// counts squeeze times. Aspect 0 takes the whole sensor, squeeze 0 is 1.
func NewFrame(width, height units.Millimetres, squeeze, aspect float64) (Frame, error) {
	if squeeze == 0 {
		squeeze = 1
	}
	switch {
	case !positive(float64(width)) || !positive(float64(height)):
		return Frame{}, fmt.Errorf("a sensor of %s x %s has no area", width, height)
	case !positive(squeeze):
		return Frame{}, fmt.Errorf("a squeeze of %s is not possible", units.Number(squeeze, 2))
	case aspect != 0 && !positive(aspect):
		return Frame{}, fmt.Errorf("an aspect of %s is not possible", units.Number(aspect, 2))
	}
	f := Frame{Width: width * units.Millimetres(squeeze), Height: height, Squeeze: squeeze}
	switch a := units.Millimetres(aspect); {
	case aspect == 0:
	case f.Width > a*f.Height:
		f.Width = a * f.Height
	default:
		f.Height = f.Width / a
	}
	return f, nil
}

func positive(v float64) bool { return v > 0 && !math.IsInf(v, 0) }

// Aspect is the frame's width over its height.
func (f Frame) Aspect() float64 { return float64(f.Width / f.Height) }

// Gate is the frame's size on the sensor itself, before squeeze.
func (f Frame) Gate() (width, height units.Millimetres) {
	if f.Squeeze == 0 {
		return f.Width, f.Height
	}
	return f.Width / units.Millimetres(f.Squeeze), f.Height
}

// Diagonal is the frame's diagonal after squeeze.
func (f Frame) Diagonal() units.Millimetres {
	return units.Millimetres(math.Hypot(float64(f.Width), float64(f.Height)))
}

// CircleParts is how many circles of confusion lie along the frame's diagonal:
// common practice, no source.
const CircleParts = 1500

// Circle is the circle of confusion taken for the frame: its diagonal / 1500. What
// is cut off the sensor does not count, as the picture is looked at without it; and
// blur is measured across the squeeze, where it is widest, in a picture that is
// looked at after it.
func (f Frame) Circle() units.Millimetres { return f.Diagonal() / CircleParts }
