package optics

import (
	"fmt"

	"longhand/lang/units"
)

// What a lens is asked for in a take.
const (
	// PullSpeed is how fast, along the axis, a subject may come or go that a hand
	// still holds sharp; PullSpeedHard is the most.
	PullSpeed     units.MetresPerSecond = 0.5
	PullSpeedHard units.MetresPerSecond = 2

	// SwingStops is how far the light on the subject may change with the stop left
	// alone; SwingStopsHard is the most.
	SwingStops     = 1.0
	SwingStopsHard = 2.5
	// FaceUnder is how far below the stop of the lens a face may be lit.
	FaceUnder = 3.0

	// StopPull is how long a stop's pull of the iris takes unseen; StopPullHard the
	// least.
	StopPull     units.Seconds = 3
	StopPullHard units.Seconds = 0.5

	// HalfOpen is the shutter taken where the plan gives none.
	HalfOpen units.Degrees = 180

	// HoleMargin is what a lens hole must be wider than the least, on its diameter.
	HoleMargin units.Millimetres = 5

	// ZoomTime is how long a lens takes to zoom to a new focal length where no line
	// says.
	ZoomTime units.Seconds = 1

	// WhipTime is the longest a pan through the frame's width may take to count as
	// a whip, which does not strobe.
	WhipTime units.Seconds = 0.35
)

// Defaults lists what the package takes for granted, lengths and speeds in the
// system given.
func Defaults(s units.System) []units.Default {
	one := func(name, source, format string, args ...any) units.Default {
		return units.Default{Name: name, Value: fmt.Sprintf(format, args...), Source: source}
	}
	return []units.Default{
		one("circle of confusion", units.Practice, "frame's diagonal on the sensor, after squeeze, / %d", CircleParts),
		one("meter constant for falling light", "ISO 2720:1974, which allows 240 to 400; the trade's 25 fc rule is 269", "%d lx·s", IncidentC),
		one("shutter", units.Practice, "%s", HalfOpen),
		one("slowest crossing of the frame in a pan", "panning tables of camera makers and handbooks, the 7 second rule", "%s at 24 fps, in proportion faster at more", PanSeconds),
		one("whip pan", units.Practice, "through the frame in less than %s s", units.Number(float64(WhipTime), 2)),
		one("focus pull by hand", units.Practice, "subject at %s along the axis, limit %s", PullSpeed.Text(s), PullSpeedHard.Text(s)),
		one("light on the subject without an iris pull", units.Practice, "within %s stop, limit %s", units.Number(SwingStops, 1), units.Number(SwingStopsHard, 1)),
		one("iris pull", units.Practice, "%s a stop, least %s", StopPull, StopPullHard),
		one("zoom", units.Practice, "in %s where the line says nothing", ZoomTime),
		one("lens hole", units.Practice, "%s wider than the least", HoleMargin),
	}
}
