package light

import (
	"math"

	"longhand/lang/units"
)

// LampsFor is how many lamps hang to give a number of colours in a number of
// places: one a place where the lamp changes colour, otherwise one a place and
// colour. No colour named counts as one.
func LampsFor(places, colours int, changes bool) int {
	if changes {
		return max(places, 0)
	}
	return max(places, 0) * max(colours, 1)
}

// Spacing is how far apart lamps hang when spread evenly over an area in m².
func Spacing(area float64, lamps int) units.Metres {
	if lamps <= 0 || !(area > 0) {
		return units.Metres(math.Inf(1))
	}
	return units.Metres(math.Sqrt(area / float64(lamps)))
}
