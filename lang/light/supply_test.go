package light

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// Rows left out: DMX-2 to DMX-4 and DMX-6, the timing of a line no plan speaks
// on; the shortest step is below a frame.

func TestSupply(t *testing.T) {
	// ELE-1 to ELE-3: pages quoting the US National Electrical Code, 210.20(A).
	assert.InDelta(t, 16, float64(ContinuousLimit(20)), 1e-12, "ELE-1")
	assert.InDelta(t, 1920, 120*float64(ContinuousLimit(20)), 1e-9, "ELE-1")
	assert.InDelta(t, 12, float64(ContinuousLimit(15)), 1e-12, "ELE-2")
	assert.InDelta(t, 1440, 120*float64(ContinuousLimit(15)), 1e-9, "ELE-2")
	assert.InDelta(t, 20, float64(RatingFor(16)), 1e-12, "ELE-3")
	assert.Greater(t, float64(RatingFor(16.1)), 20.0, "ELE-3")
	assert.InDelta(t, 66.617, float64(ThreePhaseCurrent(24000, 208, 1)), 0.001, "ELE-4")
	assert.InDelta(t, 34.641, float64(ThreePhaseCurrent(24000, 400, 0)), 0.001, "ELE-4")
	assert.InDelta(t, 43648, float64(ThreePhasePower(400, 63)), 1, "ELE-5")
	assert.InDelta(t, 36027, float64(ThreePhasePower(208, 100)), 1, "ELE-5")
	assert.InDelta(t, 43.478, float64(Current(10000, 230, 0)), 0.001, "ELE-6")
	// With copper of 0.0175 Ω·mm²/m, as cold as a bench.
	drop := 2 * conductorDrop(30, 2.5, 16, 1, 0.0175)
	assert.InDelta(t, 6.72, float64(drop), 0.01, "ELE-7")
	assert.InDelta(t, 2.92, 100*float64(drop)/230, 0.01, "ELE-7")
	// DMX-1, DMX-5: ANSI E1.11.
	for slots, want := range map[int]int{512: 1, 513: 2, 1025: 3, 0: 0} {
		assert.Equal(t, want, Universes(slots), "DMX-5")
	}
}

func TestSpread(t *testing.T) {
	circuit, n, err := Spread([]units.Amperes{4, 8, 4, 8, 8}, 16)
	require.NoError(t, err)
	assert.Equal(t, 2, n)
	assert.Equal(t, []int{1, 0, 1, 0, 1}, circuit)
	_, _, err = Spread([]units.Amperes{17}, 16)
	assert.ErrorContains(t, err, "17 A")
	rapid.Check(t, func(t *rapid.T) {
		lamps := rapid.SliceOfN(rapid.Map(rapid.Float64Range(0.1, 16), func(v float64) units.Amperes { return units.Amperes(v) }), 0, 40).Draw(t, "lamps")
		circuit, n, err := Spread(lamps, 16)
		if err != nil {
			t.Fatal(err)
		}
		used := make([]units.Amperes, n)
		for i, c := range circuit {
			used[c] += lamps[i]
		}
		half := 0
		for _, u := range used {
			if u > 16+1e-6 {
				t.Fatalf("a circuit carries %v", u)
			}
			if u <= 8 {
				half++
			}
		}
		// First fit never leaves two circuits half empty.
		if half > 1 {
			t.Fatalf("%d circuits are at most half full", half)
		}
	})
}

func TestHanging(t *testing.T) {
	// Counting: what cannot change colour hangs once for each.
	assert.Equal(t, 24, LampsFor(12, 2, false))
	assert.Equal(t, 12, LampsFor(12, 2, true))
	assert.Equal(t, 12, LampsFor(12, 0, false))
	assert.Equal(t, 0, LampsFor(-1, 2, false))
	assert.InDelta(t, 2, float64(Spacing(48, 12)), 1e-12)
	assert.True(t, math.IsInf(float64(Spacing(48, 0)), 1))
}

func TestThrow(t *testing.T) {
	// EXP-19: the inverse square and cosine laws, 1000 cd at 2 m, 60°: 125 lx.
	lamp := geom.Vec3{Z: 2}
	facing := geom.Vec3{X: math.Sin(math.Pi / 3), Z: math.Cos(math.Pi / 3)}
	assert.InDelta(t, 125, float64(Throw(lamp, 1000, geom.Vec3{}, facing)), 1e-9, "EXP-19")
	assert.InDelta(t, 250, float64(Throw(lamp, 1000, geom.Vec3{}, geom.Vec3{})), 1e-9)
	assert.Zero(t, Throw(lamp, 1000, geom.Vec3{}, geom.Vec3{Z: -1}))
	assert.True(t, math.IsInf(float64(Throw(lamp, 1000, lamp, facing)), 1))
	assert.InDelta(t, 3, Swing([]units.Lux{800, 3200, 400}), 1e-12, "EXP-15")
	assert.Zero(t, Swing(nil))
	assert.Zero(t, Swing([]units.Lux{0, 0}))
	assert.True(t, math.IsInf(Swing([]units.Lux{0, 1}), 1))
}

func TestBalance(t *testing.T) {
	phase, carries := Balance([]units.Amperes{6, 10, 8, 8, 4, 2})
	assert.Equal(t, []int{1, 0, 1, 2, 2, 0}, phase)
	assert.Equal(t, [3]units.Amperes{12, 14, 12}, carries)
	rapid.Check(t, func(t *rapid.T) {
		circuits := rapid.SliceOf(rapid.Map(rapid.Float64Range(0, 16), func(v float64) units.Amperes { return units.Amperes(v) })).Draw(t, "circuits")
		phase, carries := Balance(circuits)
		var sums [3]units.Amperes
		for i, p := range phase {
			sums[p] += circuits[i]
		}
		least, most := min(carries[0], carries[1], carries[2]), max(carries[0], carries[1], carries[2])
		for p := range sums {
			if math.Abs(float64(sums[p]-carries[p])) > 1e-6 {
				t.Fatalf("phase %d carries %v, not %v", p, sums[p], carries[p])
			}
		}
		// No phase is ahead of another by more than one circuit.
		if most-least > 16 {
			t.Fatalf("%v to %v", least, most)
		}
	})
}
