package units

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestPrinted(t *testing.T) {
	for want, got := range map[string]string{
		"2.4 m":      Metres(2.4).Text(Metric),
		"35 mm":      Metres(0.035).Text(Metric),
		"0 m":        Metres(-0.0001 + 0.0001).Text(Metric),
		`8'6"`:       Metres(2.5908).Text(Feet),
		`0'3½"`:      Metres(0.0889).Text(Feet),
		`8'`:         (8 * Foot).Text(Feet),
		`-1'6"`:      (-1.5 * Foot).Text(Feet),
		"6.4 s":      Seconds(6.43).String(),
		"1:04.5":     Seconds(64.5).Clock(),
		"-0:01.0":    Seconds(-1).Clock(),
		"45°":        Degrees(45.2).String(),
		"2.5°":       Degrees(2.5).String(),
		"1.2 m/s":    MetresPerSecond(1.2).String(),
		"3.9 ft/s":   MetresPerSecond(1.2).Text(Feet),
		"1.5 m/s²":   MetresPerSecond2(1.5).Text(Metric),
		"4.9 ft/s²":  MetresPerSecond2(1.5).Text(Feet),
		"240 lx":     Lux(240.2).String(),
		"3.4 lx":     Lux(3.41).String(),
		"0.008 lx":   Lux(0.00806).String(),
		"22 fc":      Lux(240).Footcandles(),
		"0.3 fc":     Lux(3.4).Footcandles(),
		"20000 cd":   Candela(20000).String(),
		"4096 cd/m²": Nits(4096).String(),
		"T2.8":       Stop(2.8).String(),
		"80 %":       Percent(80).String(),
		"∞":          Number(math.Inf(1), 2),
		"?":          Number(math.NaN(), 2),
		"0":          Number(-0.001, 2),
	} {
		assert.Equal(t, want, got)
	}
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-1, 1).Draw(t, "v")
		for _, s := range []string{Number(v, 2), Seconds(v).String(), Degrees(v).String(), Metres(v).Text(Metric)} {
			if len(s) > 1 && s[:2] == "-0" && (len(s) == 2 || s[2] != '.') {
				t.Fatalf("%v prints as %s", v, s)
			}
		}
	})
}

func TestRates(t *testing.T) {
	// SMPTE ST 12-1: the broadcast rates are N·1000/1001.
	for per, want := range map[float64]Rate{23.976: {24000, 1001}, 23.98: {24000, 1001}, 29.97: {30000, 1001}, 59.94: {60000, 1001}, 24: {24, 1}, 25: {25, 1}, 12.5: {12500, 1000}} {
		got, ok := ParseRate(per)
		assert.True(t, ok)
		assert.Equal(t, want, got, "%v", per)
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1), 0.5, 1e6} {
		_, ok := ParseRate(bad)
		assert.False(t, ok, "%v", bad)
	}
	rapid.Check(t, func(t *rapid.T) {
		r, _ := ParseRate(rapid.SampledFrom([]float64{23.976, 24, 25, 29.97, 48, 59.94}).Draw(t, "rate"))
		f := Frame(rapid.IntRange(0, 1_000_000).Draw(t, "frame"))
		if r.At(r.Time(f)) != f || r.From(r.Time(f)) != f {
			t.Fatalf("frame %d at %v came back as %d and %d", f, r, r.At(r.Time(f)), r.From(r.Time(f)))
		}
	})
}

func TestAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Degrees(rapid.Float64Range(-2000, 2000).Draw(t, "d"))
		n := d.Normalised()
		turns := float64(d-n) / 360
		if n <= -180 || n > 180 || math.Abs(turns-math.Round(turns)) > 1e-9 {
			t.Fatalf("%v is not %v", d, n)
		}
	})
	assert.InDelta(t, math.Pi, Degrees(180).Radians(), 1e-12)
	assert.InDelta(t, 180, float64(FromRadians(math.Pi)), 1e-12)
	assert.InDelta(t, 50, float64(Metres(0.05).Millimetres()), 1e-12)
	assert.InDelta(t, 0.05, float64(Millimetres(50).Metres()), 1e-12)
}
