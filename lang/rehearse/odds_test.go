package rehearse

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Rows of R. G. Newcombe, "Two-sided confidence intervals for the single
// proportion", Statistics in Medicine 17 (1998), table I, method 3 (from memory).
func TestOddsAgainstPublishedIntervals(t *testing.T) {
	for _, row := range []struct {
		held, of  int
		low, high float64
	}{
		{81, 263, 0.2553, 0.3662},
		{15, 148, 0.0624, 0.1605},
		{0, 20, 0, 0.1611},
		{1, 29, 0.0061, 0.1718},
	} {
		o := NewOdds(row.held, row.of)
		assert.InDelta(t, row.low, o.Low, 5e-5, "%d of %d", row.held, row.of)
		assert.InDelta(t, row.high, o.High, 5e-5, "%d of %d", row.held, row.of)
		mirrored := NewOdds(row.of-row.held, row.of)
		assert.InDelta(t, 1-row.low, mirrored.High, 5e-5)
	}
	assert.Equal(t, Odds{Low: 0, High: 1}, NewOdds(0, 0))
}

func TestOnceAndTriesFor(t *testing.T) {
	half := NewOdds(500, 1000)
	assert.InDelta(t, 0.875, half.Once(3).Chance, 1e-12)
	assert.Zero(t, half.Once(0).Chance)
	assert.Zero(t, half.Once(-1).Chance)
	assert.Less(t, half.Once(3).Low, 0.875)
	assert.Greater(t, half.Once(3).High, 0.875)
	for _, row := range []struct {
		chance, wanted float64
		tries          int
		ok             bool
	}{{0.5, 0.875, 3, true}, {0.5, 0.876, 4, true}, {0.9, 0.9, 1, true}, {1, 1, 1, true}, {0, 0.5, 0, false}, {0.5, 1, 0, false}, {0.2, 0, 0, true}} {
		n, ok := Odds{Chance: row.chance}.TriesFor(row.wanted)
		assert.Equal(t, row.tries, n, "%v", row)
		assert.Equal(t, row.ok, ok, "%v", row)
	}
}

// The quantiles of 1 to 10 as statistics programs give them by default (type 7).
func TestQuantiles(t *testing.T) {
	q := quantilesOf([]float64{10, 1, 9, 2, 8, 3, 7, 4, 6, 5})
	assert.InDelta(t, 1.45, float64(q.P5), 1e-12)
	assert.InDelta(t, 5.5, float64(q.P50), 1e-12)
	assert.InDelta(t, 9.55, float64(q.P95), 1e-12)
	assert.Equal(t, Quantiles{}, quantilesOf(nil))
	assert.Equal(t, Quantiles{3, 3, 3}, quantilesOf([]float64{3}))
	q = quantilesOf([]float64{1, math.Inf(1), math.Inf(1)})
	assert.EqualValues(t, math.Inf(1), q.P50)
	assert.EqualValues(t, math.Inf(1), q.P95)
	assert.False(t, math.IsNaN(float64(q.P5)))
}

func TestOddsAreInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		of := rapid.IntRange(1, 5000).Draw(t, "of")
		held := rapid.IntRange(0, of).Draw(t, "held")
		o := NewOdds(held, of)
		if !(0 <= o.Low && o.Low <= o.Chance && o.Chance <= o.High && o.High <= 1) {
			t.Fatalf("%+v", o)
		}
		n := rapid.IntRange(0, 40).Draw(t, "tries")
		one, more := o.Once(n), o.Once(n+1)
		if one.Chance > more.Chance || one.Low > one.Chance || one.Chance > one.High {
			t.Fatalf("%+v, then %+v", one, more)
		}
	})
}
