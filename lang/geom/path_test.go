package geom

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// KIN-1: length, chord and sagitta of a quarter circle of 3 m (closed forms).
func TestArc(t *testing.T) {
	p := NewArc(Vec{1, 2}, 3, 0, math.Pi/2)
	assert.InDelta(t, 4.712389, p.Length(), 1e-6)
	chord := p.End().Sub(p.Start())
	assert.InDelta(t, 4.242641, chord.Len(), 1e-6)
	middle := p.At(p.Length() / 2).Sub(p.Start())
	assert.InDelta(t, 0.878680, math.Abs(middle.Cross(chord.Unit())), 1e-6)
	assert.InDelta(t, 1.0/3, p.Curvature(1), 1e-12)
	assert.InDelta(t, math.Pi/2, p.Heading(0), 1e-12)
	assert.InDelta(t, math.Pi, p.Heading(p.Length()), 1e-12)
}

func TestEightGoesOnceRoundEach(t *testing.T) {
	a, b := Vec{0, 0}, Vec{4, 0}
	for _, start := range []Vec{{-1, 0}, {2, 0}, {5, 0}, {0.5, 0.2}, {1, 3}, {-1, -3}, {4, 1}, {2, 0.5}} {
		p, err := NewEight(start, a, b, 1)
		require.NoError(t, err)
		assert.Equal(t, start, p.Start())
		assert.Equal(t, start, p.End())
		assert.Empty(t, p.Corners())
		assert.Equal(t, []float64{0, p.Length()}, p.Stops())
		assert.True(t, goesRound(p, a, 1) && goesRound(p, b, -1) || goesRound(p, a, -1) && goesRound(p, b, 1))
	}
	_, err := NewEight(Vec{1, 1}, a, a, 1)
	assert.ErrorContains(t, err, "same place")
	_, err = NewEight(a, a, b, 1)
	assert.ErrorContains(t, err, "beside")
}
