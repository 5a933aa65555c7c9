package safety

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/units"
)

// Rows left out: VEH-17 (a curtain lying flat, height 850 mm: no plan has one),
// VEH-19 (driving under lines without a load: the distance at work is longer),
// PAY-5 is the constant of PAY-6.

const mph units.MetresPerSecond = 0.44704

func TestStoppingPublished(t *testing.T) {
	// VEH-1, VEH-2: the UK Highway Code's table, thinking + braking, m. Its driver
	// reacts in 0.682 s and brakes at 6.56 m/s² (VEH-3).
	for speed, want := range map[float64][3]float64{20: {6, 6, 12}, 30: {9, 14, 23}, 40: {12, 24, 36}, 50: {15, 38, 53}, 60: {18, 55, 73}, 70: {21, 75, 96}} {
		v := units.MetresPerSecond(speed) * mph
		d, _ := Stop(v, 0.682, 6.56)
		assert.InDelta(t, want[2], float64(d), 0.6, "VEH-1, VEH-2, %v mph", speed)
		assert.Greater(t, float64(StoppingDistance(v, Dry)), float64(d)*1.5, "VEH-3: too good to plan by")
	}
	// VEH-4: AASHTO's formula with constants rounded to 1.47 and 1.075, in Texas
	// DOT's manual; VEH-5, VEH-6 by that formula. Tables (from memory) round up.
	for speed, want := range map[float64][2]float64{30: {196.6, 200}, 15: {76.7, 80}, 20: {111.9, 115}, 25: {151.9, 155}, 40: {300.6, 305}, 50: {423.7, 425}, 60: {566.0, 570}, 70: {727.6, 730}} {
		d, _ := Stop(units.MetresPerSecond(speed)*mph, Reaction, units.MetresPerSecond2(11.2*units.Foot))
		assert.InEpsilon(t, want[0], float64(d/units.Foot), 0.0015, "VEH-4 to VEH-6, %v mph", speed)
		assert.LessOrEqual(t, float64(d/units.Foot), want[1])
	}
	// VEH-7: the metric form, km/h and m, its constants rounded to 0.278 and 0.039.
	for speed, want := range map[float64]float64{20: 18.5, 30: 31.2, 50: 63.4} {
		assert.InEpsilon(t, want, float64(StoppingDistance(units.MetresPerSecond(speed/3.6), Dry)), 0.006, "VEH-7, %v km/h", speed)
	}
	dry := StoppingDistance(5, Dry)
	assert.InDelta(t, 2*float64(dry), float64(StoppingDistance(5, Wet)), 1e-9, "VEH-8")
	assert.InDelta(t, 10*float64(dry), float64(StoppingDistance(5, Ice)), 1e-9, "VEH-8")
	d, s := Stop(5, 1, 3)
	assert.InDelta(t, 9.1667, float64(d), 1e-4, "VEH-9")
	assert.InDelta(t, 2.6667, float64(s), 1e-4, "VEH-9")
	assert.InDelta(t, 13.10, float64(SkidDistance(13.41, 0.7)), 0.01, "VEH-10")
}

func TestSeparation(t *testing.T) {
	// Worked examples in makers' manuals, by ISO 13855; mm. Where the answer with
	// a hand's speed is above 500 mm they reckon again with a walking body's.
	for _, r := range []struct {
		id     string
		k      units.MetresPerSecond
		t      units.Seconds
		c      units.Metres
		wantMM float64
	}{
		{"VEH-11", HandApproach, 0.208, 0, 416},
		{"VEH-12", HandApproach, 0.250, CurtainReach(30), 628},
		{"VEH-13", BodyApproach, 0.300, CurtainReach(40), 688},
		{"VEH-14", HandApproach, 0.3312, CurtainReach(30), 790.4},
		{"VEH-14 again", BodyApproach, 0.3312, CurtainReach(30), 657.92},
		{"VEH-15", BodyApproach, 0.3312, 0.750, 1279.92},
		{"VEH-16", HandApproach, 0.32, CurtainReach(14), 640},
		{"VEH-16 again", BodyApproach, 0.32, CurtainReach(14), 512},
	} {
		assert.InDelta(t, r.wantMM, float64(Separation(r.k, r.t, r.c).Millimetres()), 0.01, r.id)
	}
	assert.Zero(t, CurtainReach(5))
	// VEH-18: OSHA 1926.1408, table A.
	for kv, want := range map[float64]float64{0.4: 3.05, 50: 3.05, 51: 4.57, 200: 4.57, 350: 6.10} {
		d, ok := LineClearance(kv)
		assert.True(t, ok)
		assert.InDelta(t, want, float64(d), 0.01, "VEH-18")
	}
	_, ok := LineClearance(500)
	assert.False(t, ok)
}

func TestMoments(t *testing.T) {
	// Statics.
	assert.InDelta(t, 588.40, float64(Moment(20, 3)), 0.01, "PAY-1")
	assert.InDelta(t, 60, float64(Counterweight(20, 3, 0, 0, 1)), 1e-9, "PAY-2")
	assert.InDelta(t, 69.6, float64(Counterweight(20, 3, 12, 0.8, 1)), 1e-9, "PAY-3")
	assert.InDelta(t, 61.78, float64(Moment(18, 0.35)), 0.01, "PAY-4")
	assert.InDelta(t, 80*9.80665*4, float64(ThrowUp(80, 4)), 1e-9)
	// PAY-6: formulas of NIOSH 94-110, as given by CCOHS.
	assert.InDelta(t, 10.128, float64(LiftLimit(Lift{0.45, 0.25, 0.40})), 0.001, "PAY-6")
	assert.InDelta(t, 23, float64(LiftLimit(Lift{0.25, 0.75, 0.25})), 1e-9, "PAY-5: never above the constant")
	assert.InDelta(t, 23, float64(LiftLimit(Lift{0.1, 0.75, 0.1})), 1e-9)
	// PAY-7: ASCE 7's coefficient, from memory.
	assert.InDelta(t, 61.3, WindPressure(10), 0.01, "PAY-7")
	assert.InDelta(t, 245.2, WindPressure(20), 0.01, "PAY-7")
	assert.InDelta(t, 353.1, float64(WindForce(10, 2.4, 2.4)), 0.05, "PAY-7")
	assert.InDelta(t, 1412, float64(WindForce(20, 2.4, 2.4)), 0.5, "PAY-7")
	assert.Equal(t, "588 N·m", Moment(20, 3).String())
	assert.Equal(t, "353 N", WindForce(10, 2.4, 2.4).String())
	assert.False(t, math.IsNaN(float64(LiftLimit(Lift{}))))
}

func TestCautions(t *testing.T) {
	seen := map[string]bool{}
	for _, topic := range Topics() {
		c := topic.Caution()
		assert.NotEmpty(t, topic.String())
		assert.False(t, seen[topic.String()])
		seen[topic.String()] = true
		assert.True(t, strings.HasSuffix(c, Defer), c)
		assert.False(t, strings.HasSuffix(c, "."), c)
		assert.Equal(t, strings.ToLower(c[:1]), c[:1])
	}
	assert.Empty(t, Topic(99).Caution())
	assert.Contains(t, General, "licensed")
}

func TestDefaults(t *testing.T) {
	for _, s := range []units.System{units.Metric, units.Feet} {
		for _, d := range Defaults(s) {
			assert.NotEmpty(t, d.Name)
			assert.NotEmpty(t, d.Value)
			assert.NotEmpty(t, d.Source)
		}
	}
	assert.Contains(t, Defaults(units.Feet)[1].Value, "11.2 ft/s²")
}
