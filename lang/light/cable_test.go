package light

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

// TestVoltageDropTables: millivolts an ampere and metre of copper cable with
// thermoplastic insulation at 70 °C (BS 7671, appendix 4, the resistive rows of the
// tables for multicore cable; from memory), which the formula of IEC 60364-5-52,
// annex G, keeps to within 5 %.
func TestVoltageDropTables(t *testing.T) {
	for section, want := range map[units.SquareMillimetres][2]float64{
		1.5: {29, 25}, 2.5: {18, 15}, 4: {11, 9.5}, 6: {7.3, 6.4}, 10: {4.4, 3.8}, 16: {2.8, 2.4}, 25: {1.75, 1.5}, 35: {1.25, 1.1},
	} {
		assert.InEpsilon(t, want[0], 1000*float64(VoltageDrop(1, section, 1, 1)), 0.05, "single-phase, %s", section)
		assert.InEpsilon(t, want[1], 1000*float64(ThreePhaseDrop(1, section, 1, 1)), 0.05, "three-phase, %s", section)
	}
}

// TestVoltageDropExamples: worked examples of a public guide to installations by
// IEC 60364 (from memory), which rounds its table to 1 and 18 V an ampere and
// kilometre: a motor that takes 100 A at cos φ 0.8 through 50 m of three-phase 35 mm²
// loses 5 V; lighting of 20 A through 20 m of single-phase 2.5 mm² loses 7.2 V.
func TestVoltageDropExamples(t *testing.T) {
	assert.InDelta(t, 5, float64(ThreePhaseDrop(50, 35, 100, 0.8)), 0.15)
	assert.InDelta(t, 7.2, float64(VoltageDrop(20, 2.5, 20, 1)), 1e-9)
	assert.InDelta(t, 7.2, float64(VoltageDrop(20, 2.5, 20, 0)), 1e-9, "power factor 1 where none is given")
}

// TestDropGrows: with the run and the current, and as the wire gets thinner.
func TestDropGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		run := units.Metres(rapid.Float64Range(1, 500).Draw(t, "run"))
		s := units.SquareMillimetres(rapid.Float64Range(0.5, 240).Draw(t, "section"))
		i := units.Amperes(rapid.Float64Range(0.1, 400).Draw(t, "current"))
		pf := rapid.Float64Range(0.1, 1).Draw(t, "power factor")
		drop := VoltageDrop(run, s, i, pf)
		assert.InEpsilon(t, 2*float64(drop), float64(VoltageDrop(2*run, s, i, pf)), 1e-9)
		assert.InEpsilon(t, 2*float64(drop), float64(VoltageDrop(run, s, 2*i, pf)), 1e-9)
		assert.Less(t, float64(VoltageDrop(run, 2*s, i, pf)), float64(drop))
		assert.InEpsilon(t, 1.1547005, float64(drop/ThreePhaseDrop(run, s, i, pf)), 1e-6) // 2/√3
	})
}
