package bind

import (
	"longhand/lang/body"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// What is assumed where the text says nothing, besides package body's.
const (
	defaultShutter units.Degrees = 180
	defaultPace                  = 150 // words a minute
	countsABar                   = 4
	wallHigh       units.Metres  = 5
	doorHigh       units.Metres  = 2.1
	sillHigh       units.Metres  = 0.9
	drawnPlatform  units.Metres  = 0.2 // of a drawing's layer that says no height
)

var defaultRate = units.Rate{Num: 24, Den: 1}

// Defaults lists what Bind fills in where the text says nothing, in a fixed
// order; lengths are printed in the system given.
func Defaults(s units.System) []units.Default {
	l := func(m units.Metres) string { return m.Text(s) }
	return []units.Default{
		{Name: "take, rate", Value: defaultRate.String() + " fps", Source: body.Practice},
		{Name: "take, shutter", Value: "180 deg", Source: body.Practice},
		{Name: "take, frame", Value: "the sensor's own shape", Source: body.Practice},
		{Name: "take, pace of spoken lines", Value: "150 words/min", Source: "conversational speech, CNT-6: National Center for Voice and Speech, as widely quoted"},
		{Name: "take, counts a bar", Value: "4", Source: body.Practice},
		{Name: "wall, pillar, block, height", Value: "from the floor to " + l(wallHigh), Source: body.Practice},
		{Name: "wall, thickness", Value: l(solid.WallThick), Source: body.Practice},
		{Name: "wall with a lens hole in it, thickness", Value: l(solid.SkinThick), Source: body.Practice},
		{Name: "platform in a drawing, height", Value: l(drawnPlatform), Source: body.Practice},
		{Name: "door, mirror, height", Value: "from the floor to " + l(doorHigh), Source: body.Practice},
		{Name: "door, at the first frame", Value: "shut", Source: body.Practice},
		{Name: "window, glow, height", Value: "from " + l(sillHigh) + " to " + l(doorHigh), Source: body.Practice},
		{Name: "grid, height", Value: l(wallHigh), Source: body.Practice},
		{Name: "stairs, foot", Value: "on the floor", Source: body.Practice},
		{Name: "supply, circuits", Value: "1", Source: body.Practice},
		{Name: "wash, lamps", Value: "1", Source: body.Practice},
		{Name: "cue, length", Value: "at once", Source: body.Practice},
		{Name: "camera, squeeze", Value: "1", Source: body.Practice},
	}
}
