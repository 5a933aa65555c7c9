package body

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

// Rows of the tables of body sizes that do not apply: ANT-8 and ANT-10 (depth and
// reach: a body is a circle), ANT-12 (a second population's eyes; ANT-4 is the
// check), ANT-14 (hips: the shoulders are wider), ANT-15 (hats and shoes: nobody's
// height is corrected).
// Walking rows not used: SPD-3 to SPD-6 are traffic signals, SPD-9 and SPD-10 give
// no limit, SPD-11 belongs to the safety package.

func TestProportions(t *testing.T) {
	// DIN 33402-2:2005-12, 5th, 50th, 95th percentile, mm.
	rows := []struct {
		id               string
		stature, other   [3]float64
		ratio, tolerance float64
	}{
		{"ANT-1/3 eye, men", [3]float64{1650, 1750, 1855}, [3]float64{1530, 1630, 1735}, EyeFraction, 0.005},
		{"ANT-2/4 eye, women", [3]float64{1535, 1625, 1720}, [3]float64{1435, 1515, 1605}, EyeFraction, 0.005},
		{"ANT-1/5 shoulder, men", [3]float64{1650, 1750, 1855}, [3]float64{1345, 1450, 1550}, ShoulderFraction, 0.015},
		{"ANT-2/5 shoulder, women", [3]float64{1535, 1625, 1720}, [3]float64{1260, 1345, 1425}, ShoulderFraction, 0.01},
		{"ANT-1/6 elbow, men", [3]float64{1650, 1750, 1855}, [3]float64{1025, 1100, 1175}, ElbowFraction, 0.01},
		{"ANT-1/7 grip, men", [3]float64{1650, 1750, 1855}, [3]float64{730, 765, 825}, GripFraction, 0.01},
	}
	for _, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			for i := range r.stature {
				assert.InDelta(t, r.other[i]/r.stature[i], r.ratio, r.tolerance)
			}
		})
	}
	t.Run("ANT-17", func(t *testing.T) { assert.True(t, EyeFraction >= 0.927 && EyeFraction <= 0.935) })
	t.Run("ANT-9 sitting eye above seat", func(t *testing.T) {
		assert.InDelta(t, 0.795, float64(EyeHeight(1.75, Sitting)-SeatFraction*1.75), 0.02)
		assert.InDelta(t, 0.755, float64(EyeHeight(1.625, Sitting)-SeatFraction*1.625), 0.02)
	})
	t.Run("ANT-11, ANT-16 the default lies between the medians", func(t *testing.T) {
		s := Anybody().Stature
		assert.True(t, s > 1.61 && s < 1.74, "S. Pheasant, Bodyspace: 1610 and 1740 mm")
		assert.InDelta(t, 1911, 1755.8+2.326*66.8, 1)
	})
	t.Run("ANT-13 the circle holds the shoulders (S. Pheasant, Bodyspace)", func(t *testing.T) {
		d := Anybody().Diameter
		assert.True(t, d > 0.43 && d < 0.50, "between the bony points of a broad man and the whole breadth of a median one, 0.465 m (from memory)")
	})
	t.Run("not the US row of the copied table (eye 1710 of 1755 mm)", func(t *testing.T) {
		assert.Greater(t, math.Abs(1710.0/1755-EyeFraction), 0.03)
	})
}

func TestSpeeds(t *testing.T) {
	p := Anybody()
	// SPD-1, SPD-2: R. W. Bohannon, Age and Ageing 26 (1997).
	assert.True(t, p.Walk.Typical >= 1.272 && p.Walk.Typical <= 1.462)
	assert.True(t, p.Walk.Hard >= 1.749 && p.Walk.Hard <= 2.533)
	// SPD-7: walk to run about 2.0 m/s.
	assert.InDelta(t, 2.0, float64(p.Walk.Hard), 0.1)
	// SPD-8: A. Hreljac et al., J. Sports Sci. Med. 4 (2005): 1.63 m/s unloaded.
	assert.InDelta(t, 1.63, float64(p.Back.Hard), 0.11)
	for _, c := range Classes() {
		if r := RigOf(c); r.Crewing == Worn {
			assert.Less(t, float64(r.Back.Hard), 1.63, "%s: loaded is slower than unloaded", c)
		}
	}
}

func TestFrameHeights(t *testing.T) {
	// Common practice, no source, from memory: frame heights for 1.75 m.
	for size, want := range map[Size]float64{Wide: 5.25, Full: 2.08, Knee: 1.33, Thigh: 1.14, Waist: 0.76, Chest: 0.52, Shoulders: 0.33, Face: 0.22} {
		assert.InEpsilon(t, want, float64(size.FrameHeight(1.75)), 0.012, size.String())
	}
	assert.Zero(t, NoSize.FrameHeight(1.75))
	assert.Zero(t, Size(99).FrameHeight(1.75))
}

func TestSizeOf(t *testing.T) {
	for _, s := range Sizes() {
		h := s.FrameHeight(1.7)
		assert.Equal(t, s, SizeOf(h, 1.7), s.String())
		assert.Zero(t, s.Fit(h, 1.7))
		back, err := ParseSize(s.String())
		require.NoError(t, err)
		assert.Equal(t, s, back)
	}
	assert.Equal(t, NoSize, SizeOf(40, 1.7), "smaller than a twentieth of the frame")
	assert.Equal(t, NoSize, SizeOf(units.Metres(math.NaN()), 1.7))
	assert.Equal(t, NoSize, SizeOf(2, 0))
	assert.Positive(t, Waist.Fit(2, 1.7), "full is looser than waist")
	assert.Negative(t, Waist.Fit(0.3, 1.7), "shoulders is tighter than waist")
	assert.True(t, Face.TighterThan(Waist))
	assert.False(t, Face.TighterThan(NoSize))
	assert.Equal(t, Cut{}, NoSize.Cut())
	assert.Zero(t, NoSize.Fit(2, 1.7), "nothing asked for, nothing off")
	assert.Zero(t, Wide.Fit(33, 1.7))
	assert.Positive(t, Wide.Fit(40, 1.7), "a person lost in the frame is too loose even for wide")
	assert.Zero(t, Eyes.Fit(0.02, 1.7))
	// On the border the tolerance holds both sizes, past it one.
	border := units.Metres(math.Sqrt(float64(Waist.FrameHeight(1.7) * Chest.FrameHeight(1.7))))
	assert.Zero(t, Waist.Fit(border*0.96, 1.7))
	assert.Zero(t, Chest.Fit(border*1.04, 1.7))
	assert.Negative(t, Waist.Fit(border*0.94, 1.7))
	assert.Positive(t, Chest.Fit(border*1.06, 1.7))
	_, err := ParseSize("medium")
	assert.ErrorContains(t, err, "waist")
}

func TestSizeOfIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stature := units.Metres(rapid.Float64Range(1, 2.2).Draw(t, "stature"))
		a := units.Metres(rapid.Float64Range(0.02, 15).Draw(t, "a"))
		b := units.Metres(rapid.Float64Range(0.02, 15).Draw(t, "b"))
		sa, sb := SizeOf(a, stature), SizeOf(b, stature)
		if a < b && sa.TighterThan(NoSize) && sb.TighterThan(sa) {
			t.Fatalf("%v is %v but the looser %v is %v", a, sa, b, sb)
		}
		if a < b && sa != NoSize && sb > sa {
			t.Fatalf("%v is %v but the looser %v is %v", a, sa, b, sb)
		}
		if sa != NoSize && sa.Fit(a, stature) != 0 {
			t.Fatalf("%v is %v and does not fit it", a, sa)
		}
	})
}

func TestBadCut(t *testing.T) {
	for _, s := range Sizes() {
		_, bad := BadCut(s.Cut().Lower)
		assert.False(t, bad, s.String())
	}
	joint, bad := BadCut(0.275)
	assert.True(t, bad)
	assert.Equal(t, "knee", joint)
	joint, bad = BadCut(0.47)
	assert.True(t, bad)
	assert.Equal(t, "crotch", joint)
	_, bad = BadCut(0.6)
	assert.False(t, bad)
}

func TestPostures(t *testing.T) {
	for _, p := range Postures() {
		assert.Less(t, float64(EyeHeight(1.7, p)), float64(Height(1.7, p)))
		assert.Zero(t, Change(p, p))
	}
	assert.InDelta(t, 1.5, float64(Change(Standing, Sitting)), 1e-9)
	assert.InDelta(t, 1.5, float64(Change(Sitting, Standing)), 1e-9)
	assert.Equal(t, "standing", Posture(77).String())
}

func TestRigs(t *testing.T) {
	for _, c := range Classes() {
		r := RigOf(c)
		assert.Equal(t, c, r.Class)
		assert.LessOrEqual(t, r.Forward.Typical, r.Forward.Hard, c.String())
		assert.LessOrEqual(t, r.Back.Hard, r.Forward.Hard, c.String())
		assert.LessOrEqual(t, r.Pan.Typical, r.Pan.Hard, c.String())
		assert.LessOrEqual(t, r.Payload.Min, r.Payload.Typical, c.String())
		assert.LessOrEqual(t, r.Payload.Typical, r.Payload.Max, c.String())
		assert.True(t, r.LensLow < r.Lens && r.Lens < r.LensUp, c.String())
		assert.True(t, r.Length > 0 && r.Width > 0 && r.Height > 0, c.String())
		if r.Travels() {
			assert.Positive(t, float64(r.Accel.Typical), c.String())
			assert.LessOrEqual(t, r.ClearHard, r.Clear, c.String())
			assert.GreaterOrEqual(t, r.ClearHard, r.Width, "%s: a way must hold the rig", c)
		}
		back, err := ParseClass(c.String())
		require.NoError(t, err)
		assert.Equal(t, c, back)
		for _, to := range Classes() {
			h := HandoffBetween(c, to)
			assert.True(t, 0 < h.Minimum && h.Minimum < h.Typical, "%s to %s", c, to)
			assert.Equal(t, h.Weight, (c == Crane && to == BodyRig) || (c == BodyRig && to == Crane))
		}
	}
	assert.Equal(t, Rig{}, RigOf(NoClass))
	assert.Equal(t, Rig{}, RigOf(Class(-3)))
	_, err := ParseClass("tripod")
	assert.ErrorContains(t, err, "sticks")
	rider := RigOf(Crane).WithRider()
	assert.InDelta(t, 0.5, float64(rider.Forward.Hard), 1e-9)
	assert.Equal(t, 1, rider.Seats)
	assert.Equal(t, RigOf(Dolly), RigOf(Dolly).WithRider())
}

func TestDefaultsAreAllSaid(t *testing.T) {
	seen := map[string]bool{}
	for _, system := range []units.System{units.Metric, units.Feet} {
		for _, d := range Defaults(system) {
			assert.NotEmpty(t, d.Value, d.Name)
			assert.NotEmpty(t, d.Source, d.Name)
			assert.NotContains(t, d.Value, "%!", d.Name)
			if system == units.Metric {
				assert.False(t, seen[d.Name], "%s is listed twice", d.Name)
				seen[d.Name] = true
			} else {
				assert.False(t, strings.HasSuffix(d.Value, " m") || strings.Contains(d.Value, "m/s"), "%s: %s", d.Name, d.Value)
			}
		}
	}
	assert.Equal(t, Defaults(units.Metric), Defaults(units.Metric))
}
