package light

import (
	"math"

	"longhand/lang/units"
)

// Law is how a lamp's power follows its level: power = full · level^Law. Never
// below 1.
type Law float64

const (
	// Linear is a lamp whose driver takes power as it gives light.
	Linear Law = 1
	// Tungsten is a filament whose level is its voltage (approximate law, Standard
	// Handbook for Electrical Engineers, 11th ed.).
	Tungsten Law = 1.6
)

// Exponents of a filament's properties over its share of the full voltage, from
// the same handbook. Good to about 5 %.
const (
	filamentLight   = 3.4
	filamentKelvin  = 0.42
	filamentCurrent = 0.55
	filamentLife    = -12
)

// Power is what a lamp of a full power draws at a level.
func (l Law) Power(full units.Watts, level units.Percent) units.Watts {
	return full * units.Watts(math.Pow(float64(hold(level))/100, math.Max(1, float64(l))))
}

// Light is the part of its full light, 0 to 1, a lamp gives at a level.
func (l Law) Light(level units.Percent) float64 {
	v := float64(hold(level)) / 100
	if l == Tungsten {
		return math.Pow(v, filamentLight)
	}
	return v
}

// Kelvin is the colour temperature at a level of a lamp that has one in full:
// a filament reddens, others do not.
func (l Law) Kelvin(full units.Kelvin, level units.Percent) units.Kelvin {
	if l != Tungsten {
		return full
	}
	return full * units.Kelvin(math.Pow(float64(hold(level))/100, filamentKelvin))
}

// FilamentCurrent and FilamentLife are a filament's current and life at a level,
// as parts of those in full.
func FilamentCurrent(level units.Percent) float64 {
	return math.Pow(float64(hold(level))/100, filamentCurrent)
}

// FilamentLife is the life a filament has at a level, in lives in full.
func FilamentLife(level units.Percent) float64 {
	return math.Pow(float64(hold(level))/100, filamentLife)
}

// Mired is the colour temperature on the scale on which filters add: 10⁶/T.
func Mired(k units.Kelvin) float64 { return 1e6 / float64(k) }

// MiredShift is the filter that turns one colour temperature into another:
// negative is bluer.
func MiredShift(from, to units.Kelvin) float64 { return Mired(to) - Mired(from) }
