package sky

import "longhand/lang/units"

// Reset is how long it takes to get back to first positions where the plan
// gives no time, ResetHard the least: common practice, no source, from memory.
// With vehicles or many extras it takes more than twice as long.
const (
	Reset     units.Seconds = 20 * 60
	ResetHard units.Seconds = 10 * 60
)

// Defaults lists what the package takes for granted.
func Defaults() []units.Default {
	out := []units.Default{
		{Name: "sun, method", Value: "NOAA solar calculator; level horizon, clear air", Source: "J. Meeus, Astronomical Algorithms, low precision"},
		{Name: "sunrise and sunset", Value: "upper edge of the disc on the horizon, its middle 50' down", Source: "Almanac for Computers, US Naval Observatory"},
		{Name: "twilight", Value: "civil 6°, nautical 12°, astronomical 18° down", Source: "AMS Glossary of Meteorology"},
		{Name: "light of a clear sky", Value: "by the sun's elevation", Source: BrightSource},
		{Name: "reset between tries", Value: units.Number(float64(Reset)/60, 0) + " min, least " + units.Number(float64(ResetHard)/60, 0) + " min", Source: units.Practice},
	}
	for _, name := range WindowNames() {
		source := "by definition of the twilights"
		if bands[name].high == Golden || name == "night" {
			source = units.Practice
		}
		out = append(out, units.Default{Name: "window " + name, Value: WindowSays(name), Source: source})
	}
	return out
}
