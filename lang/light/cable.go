package light

import (
	"math"

	"longhand/lang/units"
)

// What a run of copper loses (IEC 60364-5-52:2009, annex G): its resistivity in
// service, 1.25 times that at 20 °C, in Ω·mm²/m, and its reactance, in Ω/m.
const (
	CopperInService = 0.0225
	copperReactance = 0.08e-3
)

// DropForLamps is the part of the voltage that lamps on a public supply should lose
// at most between where the installation begins and them; DropOnOwnSupply on a
// supply of one's own, as of a generator (IEC 60364-5-52:2009, table G.52.1).
const (
	DropForLamps    units.Percent = 3
	DropOnOwnSupply units.Percent = 6
)

// VoltageDrop is what a single-phase run of copper cable loses, there and back:
// 2·(ρ·L/S·cos φ + λ·L·sin φ)·I, the power factor being cos φ (IEC 60364-5-52,
// annex G). A power factor of 0 is taken as 1.
func VoltageDrop(run units.Metres, section units.SquareMillimetres, i units.Amperes, powerFactor float64) units.Volts {
	return 2 * conductorDrop(run, section, i, powerFactor, CopperInService)
}

// ThreePhaseDrop is what a balanced three-phase run loses between two phases: √3
// times what one conductor does.
func ThreePhaseDrop(run units.Metres, section units.SquareMillimetres, i units.Amperes, powerFactor float64) units.Volts {
	return units.Volts(math.Sqrt(3)) * conductorDrop(run, section, i, powerFactor, CopperInService)
}

// conductorDrop is what one conductor loses.
func conductorDrop(run units.Metres, section units.SquareMillimetres, i units.Amperes, powerFactor, resistivity float64) units.Volts {
	cos := factor(powerFactor)
	sin := math.Sqrt(math.Max(0, 1-cos*cos))
	return units.Volts((resistivity/float64(section)*cos + copperReactance*sin) * float64(run) * float64(i))
}

// sections are the usual cross-sections of cable, in mm² (IEC 60228).
var sections = [...]units.SquareMillimetres{0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240}

// SectionFrom is the least usual cross-section that is no thinner than one; false
// where cables are not made so thick.
func SectionFrom(least units.SquareMillimetres) (units.SquareMillimetres, bool) {
	for _, s := range sections {
		if s >= least {
			return s, true
		}
	}
	return 0, false
}

// FilamentLight is the part of its full light that a filament gives at a voltage, in
// per cent of its full one.
func FilamentLight(voltage units.Percent) units.Percent {
	return units.Percent(100 * Tungsten.Light(voltage))
}
