package light

import (
	"fmt"

	"longhand/lang/units"
)

// How fast light may change.
const (
	// StopFade is how long a change of light by a stop takes that nobody notices;
	// StopFadeHard the least.
	StopFade     units.Seconds = 4
	StopFadeHard units.Seconds = 1.5

	// GlowDown is how long a large tungsten lamp takes to go dark.
	GlowDown units.Seconds = 1

	// ShortestFade is below which a crossfade is seen as a bump.
	ShortestFade units.Seconds = 0.5
)

// Defaults lists what the package takes for granted.
func Defaults() []units.Default {
	one := func(name, source, format string, args ...any) units.Default {
		return units.Default{Name: name, Value: fmt.Sprintf(format, args...), Source: source}
	}
	const handbook = "Standard Handbook for Electrical Engineers, 11th ed., approximate"
	return []units.Default{
		one("lasting load on a circuit", "US National Electrical Code 210.20(A), as quoted", "%s of its rating", units.Percent(100*ContinuousShare)),
		one("copper in a cable, resistivity", "IEC 60364-5-52:2009, annex G", "%s Ω·mm²/m", units.Number(CopperInService, 4)),
		one("voltage lost on the way to lamps", "IEC 60364-5-52:2009, table G.52.1", "at most %s, on a supply of one's own %s", DropForLamps, DropOnOwnSupply),
		one("tungsten lamp, power", handbook, "level to the power of %s", units.Number(float64(Tungsten), 1)),
		one("tungsten lamp, light", handbook, "level to the power of %s", units.Number(filamentLight, 1)),
		one("tungsten lamp, colour temperature", handbook, "level to the power of %s", units.Number(filamentKelvin, 2)),
		one("tungsten lamp, going dark", units.Practice, "%s", GlowDown),
		one("change of light nobody notices", units.Practice, "%s a stop, least %s", StopFade, StopFadeHard),
		one("shortest crossfade", units.Practice, "%s", ShortestFade),
		one("slots on a lighting control line", "ANSI E1.11", "%d", UniverseSize),
	}
}
