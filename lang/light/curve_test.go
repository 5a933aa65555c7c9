package light

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/units"
)

func TestCurve(t *testing.T) {
	// By definition: straight lines.
	c, overlaps := NewCurve(20, []Fade{{Start: 10, Over: 10, To: 100}, {Start: 30, Over: 0, To: 50}})
	assert.Empty(t, overlaps)
	for at, want := range map[units.Seconds]float64{-5: 20, 0: 20, 10: 20, 15: 60, 20: 100, 29.999: 100, 30: 50, 500: 50} {
		assert.InDelta(t, want, float64(c.At(at)), 1e-9, "at %v", at)
	}
	assert.Equal(t, []units.Seconds{10, 20, 30}, c.Knots())
	assert.True(t, math.IsInf(c.Steepest(), 1))

	// A fade takes over from the one it interrupts, from where that had got to.
	c, overlaps = NewCurve(0, []Fade{{Start: 4, Over: 2, To: 0}, {Start: 0, Over: 10, To: 100}})
	require.Len(t, overlaps, 1)
	assert.Equal(t, Overlap{Earlier: 1, Later: 0, From: 4, To: 6}, overlaps[0])
	assert.InDelta(t, 40, float64(c.At(4)), 1e-9)
	assert.InDelta(t, 20, float64(c.At(5)), 1e-9)
	assert.InDelta(t, 0, float64(c.At(9)), 1e-9)
	assert.InDelta(t, 20, c.Steepest(), 1e-9)

	// Two at once are an overlap even when they take no time.
	_, overlaps = NewCurve(0, []Fade{{Start: 1, To: 10}, {Start: 1, To: 20}})
	assert.Len(t, overlaps, 1)

	flat, _ := NewCurve(130, nil)
	assert.InDelta(t, 100, float64(flat.At(3)), 1e-9)
	assert.Empty(t, flat.Knots())
	assert.Zero(t, Curve{}.At(3))
	assert.Zero(t, flat.Steepest())
}

func TestCurveIsUnbroken(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fades := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) Fade {
			return Fade{
				Start: units.Seconds(rapid.Float64Range(0, 50).Draw(t, "start")),
				Over:  units.Seconds(rapid.Float64Range(0.5, 20).Draw(t, "over")),
				To:    units.Percent(rapid.Float64Range(0, 100).Draw(t, "to")),
			}
		}), 0, 6).Draw(t, "fades")
		c, _ := NewCurve(50, fades)
		steepest := c.Steepest()
		last := c.At(-1)
		for s := units.Seconds(-1); s < 80; s += 0.05 {
			level := c.At(s)
			if level < 0 || level > 100 {
				t.Fatalf("%v at %v", level, s)
			}
			if d := math.Abs(float64(level - last)); d > steepest*0.05+1e-9 {
				t.Fatalf("the level jumps by %v at %v", d, s)
			}
			last = level
		}
	})
}
