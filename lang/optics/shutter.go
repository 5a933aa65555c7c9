package optics

import (
	"math"

	"longhand/lang/units"
)

// ShutterTime is how long each frame is exposed: angle / (360·fps).
func ShutterTime(angle units.Degrees, rate units.Rate) units.Seconds {
	return units.Seconds(float64(angle) / 360 * float64(rate.Den) / float64(rate.Num))
}

// ShutterAngle is the angle that exposes each frame for a time.
func ShutterAngle(t units.Seconds, rate units.Rate) units.Degrees {
	return units.Degrees(float64(t) * 360 * float64(rate.Num) / float64(rate.Den))
}

// MotionBlur is the length on the sensor of the streak something leaves that
// crosses at a speed, at a distance, while a frame is exposed: v·t·f/D.
func MotionBlur(across units.MetresPerSecond, t units.Seconds, f units.Millimetres, distance units.Metres) units.Millimetres {
	return f * units.Millimetres(float64(across)*float64(t)/float64(distance))
}

// CrossingSpeed is how fast a lens has to pan to hold something that passes at a
// speed, at its nearest: v/d.
func CrossingSpeed(across units.MetresPerSecond, distance units.Metres) units.DegreesPerSecond {
	return units.DegreesPerSecond(units.FromRadians(float64(across) / float64(distance)))
}

// PanSeconds is how long the frame's width takes to go by, at 24 frames a
// second and a half-open shutter, in the slowest pan that does not strobe:
// common practice, published by camera makers and in handbooks' panning tables.
const PanSeconds units.Seconds = 7

// panRate is the frame rate [PanSeconds] is stated for.
const panRate = 24

// PanLimit is the fastest pan that does not strobe: the angle of view in the
// seconds given, at 24 frames a second, and in proportion faster at more.
func PanLimit(across units.Degrees, seconds units.Seconds, rate units.Rate) units.DegreesPerSecond {
	return units.DegreesPerSecond(float64(across) / float64(seconds) * rate.PerSecond() / panRate)
}

// PanTime is the time a pan of an angle needs at the limit.
func PanTime(turn, across units.Degrees, seconds units.Seconds, rate units.Rate) units.Seconds {
	return units.Seconds(math.Abs(float64(turn)) / float64(PanLimit(across, seconds, rate)))
}

// FrameStep is the part of the frame's width by which the picture moves from
// one frame to the next in a pan of a speed.
func FrameStep(pan units.DegreesPerSecond, across units.Degrees, rate units.Rate) float64 {
	return math.Abs(float64(pan)) / float64(across) / rate.PerSecond()
}
