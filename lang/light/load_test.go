package light

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

func crossfade(law Law) []Load {
	down, _ := NewCurve(100, []Fade{{Start: 0, Over: 10, To: 0}})
	up, _ := NewCurve(0, []Fade{{Start: 0, Over: 10, To: 100}})
	return []Load{{6000, law, down}, {8000, law, up}}
}

func TestCrossfade(t *testing.T) {
	// Worked out by hand: power in proportion to level.
	assert.InDelta(t, 6600, float64(Power(crossfade(Linear), 3)), 1e-9, "ELE-8")
	peak, when := Peak(crossfade(Linear), 0, 20)
	assert.InDelta(t, 8000, float64(peak), 1e-9, "ELE-8")
	assert.InDelta(t, 10, float64(when), 1e-9)
	assert.InDelta(t, 4618, float64(Power(crossfade(Tungsten), 5)), 1, "ELE-9")
	peak, _ = Peak(nil, 0, 5)
	assert.Zero(t, peak)
}

func TestPeakAtAStep(t *testing.T) {
	// A full lamp is cut as another comes on: the peak is just before.
	cut, _ := NewCurve(0, []Fade{{Start: 0, Over: 4, To: 100}, {Start: 4, Over: 0, To: 0}})
	peak, when := Peak([]Load{{1000, Linear, cut}}, 0, 10)
	assert.InDelta(t, 1000, float64(peak), 1e-9)
	assert.InDelta(t, 4, float64(when), 1e-9)
	peak, _ = Peak([]Load{{1000, Linear, cut}}, 4, 10)
	assert.InDelta(t, 0, float64(peak), 1e-9, "a stretch that begins at the cut does not see what was before")
}

func TestPeakIsThePeak(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loads := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Load {
			var fades []Fade
			at := units.Seconds(0)
			for range rapid.IntRange(0, 4).Draw(t, "n") {
				at += units.Seconds(rapid.Float64Range(0, 8).Draw(t, "gap"))
				fades = append(fades, Fade{at, units.Seconds(rapid.Float64Range(0, 6).Draw(t, "over")), units.Percent(rapid.Float64Range(0, 100).Draw(t, "to"))})
			}
			c, _ := NewCurve(units.Percent(rapid.Float64Range(0, 100).Draw(t, "level")), fades)
			return Load{units.Watts(rapid.Float64Range(100, 5000).Draw(t, "watts")), rapid.SampledFrom([]Law{Linear, Tungsten}).Draw(t, "law"), c}
		}), 1, 4).Draw(t, "loads")
		peak, when := Peak(loads, 0, 40)
		for s := units.Seconds(0); s <= 40; s += 0.1 {
			if p := Power(loads, s); p > peak+1e-6 {
				t.Fatalf("%v at %v is above the peak %v at %v", p, s, peak, when)
			}
		}
	})
}

func TestDimming(t *testing.T) {
	// ELE-10: an encyclopedia citing the Standard Handbook for Electrical
	// Engineers, 11th ed., at 90 % of the voltage; an approximate law, 5 %.
	assert.InEpsilon(t, 0.699, Tungsten.Light(90), 0.05, "ELE-10")
	assert.InEpsilon(t, 0.845, float64(Tungsten.Power(1, 90)), 0.05, "ELE-10")
	assert.InEpsilon(t, 0.957, float64(Tungsten.Kelvin(1, 90)), 0.05, "ELE-10")
	assert.InEpsilon(t, 0.944, FilamentCurrent(90), 0.05, "ELE-10")
	assert.InEpsilon(t, 3.5, FilamentLife(90), 0.05, "ELE-10")
	assert.InDelta(t, 0.468, Tungsten.Light(80), 0.001, "ELE-11")
	assert.InDelta(t, 0.095, Tungsten.Light(50), 0.001, "ELE-11")
	assert.InDelta(t, 2914, float64(Tungsten.Kelvin(3200, 80)), 10, "ELE-11")
	assert.InDelta(t, 2392, float64(Tungsten.Kelvin(3200, 50)), 10, "ELE-11")
	assert.InDelta(t, 3200, float64(Linear.Kelvin(3200, 50)), 0)
	assert.InDelta(t, 0.5, Linear.Light(50), 1e-12)
	assert.InDelta(t, 312.5, Mired(3200), 1e-9, "ELE-12")
	assert.InDelta(t, 178.571, Mired(5600), 0.001, "ELE-12")
	assert.InDelta(t, -133.929, MiredShift(3200, 5600), 0.001, "ELE-12")
}
