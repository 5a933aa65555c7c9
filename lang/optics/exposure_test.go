package optics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/units"
)

// Rows left out: EXP-16, one camera's measurement, shows how far bodies differ
// and is no law; EXP-21 to EXP-23 and EXP-25 define film speed and lightness,
// which a plan never computes. EXP-5, EXP-6 are checked as bounds.

func TestMeterConstants(t *testing.T) {
	// EXP-1 to EXP-3: a light meter's EV chart, C = 250.
	for ev, lux := range map[float64]float64{0: 2.5, -1: 1.25, 1: 5, 2: 10, 3: 20, 4: 40} {
		assert.InDelta(t, lux, float64(LightAtEV(ev, IncidentC)), 1e-12, "EXP-1, EXP-2")
	}
	for ev, lux := range map[float64]float64{0.5: 3.50, 1.5: 7.00, 2.5: 14.0, 3.5: 28.0} {
		assert.InEpsilon(t, lux, float64(LightAtEV(ev, IncidentC)), 0.011, "EXP-3: the chart rounds √2 to 1.4")
	}
	assert.InDelta(t, 4096, float64(LuminanceAtEV(15)), 1e-9, "EXP-4")
	assert.InDelta(t, 81920, float64(LightAtEV(15, IncidentC)), 1e-9, "EXP-4")
	// EXP-5, EXP-6: ISO 2720:1974 permits these.
	assert.True(t, ReflectedK >= 10.6 && ReflectedK <= 13.4)
	assert.True(t, IncidentC >= 240 && IncidentC <= 400)
	assert.InDelta(t, 0.1635, StopsBetween(ReflectedK, 14.0), 0.001, "EXP-7: almost exactly a sixth of a stop")
	// EXP-8: f/16 at 1/S seconds, derived from the meter standard.
	assert.InDelta(t, 3200, float64(LuminanceFor(16, 100, 1.0/100)), 1e-9, "EXP-8")
	assert.InDelta(t, 14.644, ExposureValue(16, 1.0/100), 0.001, "EXP-9")
}

func TestExposure(t *testing.T) {
	const shutter = units.Seconds(1.0 / 48)
	fc := func(e units.Lux) float64 { return float64(e) / Footcandle }
	// EXP-10, EXP-11: a cinematography blog's rule fc = 25·T²/(S·t); a trade
	// article: 100 fc at index 100 is f/2.8.
	assert.InDelta(t, 24.0, fc(LightFor(4, 800, shutter, TradeC)), 1e-9, "EXP-10")
	assert.InDelta(t, 269.1, TradeC, 0.01, "EXP-10")
	rule := StopFor(100*Footcandle, 100, shutter, TradeC)
	assert.InDelta(t, 2.887, float64(rule), 0.001, "EXP-11")
	assert.InDelta(t, 0, 2*math.Log2(float64(rule)/(2*math.Sqrt2)), 0.1, "EXP-11")
	assert.InDelta(t, 96.0, fc(LightFor(units.Stop(2*math.Sqrt2), 100, shutter, TradeC)), 1e-9, "EXP-11")
	assert.InDelta(t, 94.1, fc(LightFor(2.8, 100, shutter, TradeC)), 0.05, "EXP-11")
	assert.InDelta(t, 2.995, float64(StopFor(100*Footcandle, 100, shutter, IncidentC)), 0.001, "EXP-12")
	assert.InDelta(t, 240, float64(LightFor(4, 800, shutter, IncidentC)), 1e-9, "EXP-13")
	assert.InDelta(t, 22.297, fc(LightFor(4, 800, shutter, IncidentC)), 0.01, "EXP-13")
	assert.InDelta(t, 8.165, float64(StopFor(1000, 800, shutter, IncidentC)), 0.001, "EXP-14")
	assert.InDelta(t, -3, StopsBetween[units.Lux](3200, 400), 1e-12, "EXP-15")
	// EXP-17: a practical handbook's table: f/5.6 at 24 fps is f/4 at 48, f/8 at 12.
	for rate, want := range map[int]float64{48: 4, 12: 8} {
		e := LightFor(5.6, 100, ShutterTime(180, units.Rate{Num: 24, Den: 1}), IncidentC)
		got := StopFor(e, 100, ShutterTime(180, units.Rate{Num: rate, Den: 1}), IncidentC)
		assert.InDelta(t, 0, 2*math.Log2(float64(got)/want), 0.1, "EXP-17")
	}
	// EXP-18: a blog quoting a lamp maker's formula.
	twenty := 20 * units.Foot
	assert.InDelta(t, 50.0, fc(Illuminance(20000, twenty, 0)), 1e-9, "EXP-18")
	assert.InDelta(t, 538.2, float64(Illuminance(20000, 6.096, 0)), 0.05, "EXP-18")
	assert.InDelta(t, 125.0, float64(Illuminance(1000, 2, 60)), 1e-9, "EXP-19")
	assert.Zero(t, Illuminance(1000, 2, 91))
	for k, want := range []units.Stop{1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22} {
		exact := units.Stop(math.Exp2(float64(k) / 2))
		assert.Equal(t, want, NominalStop(exact), "EXP-20")
		assert.InEpsilon(t, float64(want), float64(exact), 0.03, "EXP-20")
	}
	assert.InDelta(t, 0.707, float64(NominalStop(0.7)), 0.001, "off the scale it is exact")
	assert.Zero(t, NominalStop(0))
	for _, n := range FullStops() {
		assert.Equal(t, n, FullStopUp(n))
		assert.Equal(t, n, FullStopDown(n))
	}
	// EXP-20: between two engraved numbers, and off either end of the scale.
	assert.Equal(t, units.Stop(5.6), FullStopUp(4.1))
	assert.Equal(t, units.Stop(4), FullStopDown(5.5))
	assert.Equal(t, units.Stop(1), FullStopUp(0.7))
	assert.Zero(t, FullStopDown(0.7), "no lens is engraved with less")
	assert.Equal(t, units.Stop(90), FullStopUp(90))
	assert.InDelta(t, 0.997, DensityStops(0.3), 0.001, "EXP-24")
	assert.InDelta(t, 2.990, DensityStops(0.9), 0.001, "EXP-24")
	assert.InDelta(t, 4, float64(OpenBy(8, 2)), 1e-12)
	// The three constants in use lie 0.1 to 0.4 stop apart: none may be taken for
	// another in silence.
	assert.InDelta(t, 0.106, StopsBetween(IncidentC, TradeC), 0.001)
	assert.InDelta(t, 0.40, StopsBetween(IncidentC, 330.0), 0.01)
}
