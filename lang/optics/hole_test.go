package optics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestHole(t *testing.T) {
	f := Frame{Width: 24.89, Height: 18.66, Squeeze: 1}
	// HOL-1: pupil f/N + 2z·w/(2f), worked out separately.
	w, h, round := HoleFor(f, 35, 2.8, 30)
	assert.InDelta(t, 33.834, float64(w), 0.01, "HOL-1")
	assert.InDelta(t, 28.494, float64(h), 0.01, "HOL-1")
	assert.InDelta(t, 39.164, float64(round), 0.01, "HOL-1")
	// A hole of that size takes nothing; a smaller one does, most in the corner.
	assert.InDelta(t, 0, CornerLoss(f, round+1e-6, 35, 2.8, 30), 1e-9)
	assert.Positive(t, CornerLoss(f, round-2, 35, 2.8, 30))
	assert.InDelta(t, 1, Through(20, 35, 2.8, 30, 0), 1e-12, "the middle sees the whole pupil")
	assert.True(t, math.IsInf(CornerLoss(f, 5, 35, 2.8, 60), 1), "the corner is black")
	// Two equal discs a radius apart share 2π/3 - √3/2 of r² (elementary geometry).
	assert.InDelta(t, 2*math.Pi/3-math.Sqrt(3)/2, overlap(1, 1, 1), 1e-12)
	// A hole smaller than the pupil takes light from the middle: by area.
	assert.InDelta(t, 0.25, Through(6.25, 35, 2.8, 30, 0), 1e-12)
}

func TestOverlapAgainstCounting(t *testing.T) {
	const n = 400
	for _, r := range [][3]float64{{1, 0.7, 0.5}, {1, 1.4, 1}, {0.6, 0.5, 0.9}, {1, 0.4, 1.2}} {
		a, b, d := r[0], r[1], r[2]
		count := 0
		for i := range n {
			for j := range n {
				x, y := -a+2*a*(float64(i)+0.5)/n, -a+2*a*(float64(j)+0.5)/n
				if x*x+y*y <= a*a && (x-d)*(x-d)+y*y <= b*b {
					count++
				}
			}
		}
		assert.InDelta(t, float64(count)*4*a*a/n/n, overlap(a, b, d), 0.01)
	}
}
