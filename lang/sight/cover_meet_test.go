package sight

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestMeetings: which of two footprints a column enters first changes only in the
// columns where their edges meet, and never if they are apart.
func TestMeetings(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 31))
	var e eye
	e.set(&Camera{Width: 36, Height: 24}, View{Z: 1.5, Focal: 24})
	around := func() (q, l float64) { return 3 + r.Float64(), r.Float64() - 0.5 }
	cylinder := func() *item {
		var t item
		q, l := around()
		e.roundItem(&t, q, l, 0.1+0.4*r.Float64(), -1.5, 0.3)
		return &t
	}
	box := func() *item {
		var t item
		q, l := around()
		long, wide, turn := 0.1+0.6*r.Float64(), 0.1+0.6*r.Float64(), r.Float64()*math.Pi
		s, c := math.Sincos(turn)
		var pts [][2]float64
		for _, k := range [][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
			x, y := k[0]*long, k[1]*wide
			pts = append(pts, [2]float64{q + x*c - y*s, l + x*s + y*c})
		}
		e.prismItem(&t, pts, -1.5, 0.3)
		return &t
	}
	met, parted := 0, 0
	for n := range 4000 {
		o, other := cylinder(), cylinder()
		if n%2 == 0 {
			other = box()
		}
		from, to := max(o.p0, other.p0), min(o.p1, other.p1)
		if from >= to {
			continue
		}
		var columns []float64
		if apart(o, other) {
			parted++
		} else {
			columns = appendMeetings(nil, o, other, from, to)
		}
		ahead := func(p float64) float64 { return o.enter(1, p) - other.enter(1, p) }
		const steps = 400
		for i := range steps - 1 {
			a := from + (to-from)*(float64(i)+0.5)/steps
			b := from + (to-from)*(float64(i)+1.5)/steps
			if da, db := ahead(a), ahead(b); !(da < -thin && db > thin) && !(da > thin && db < -thin) {
				continue
			}
			met++
			found := false
			for _, p := range columns {
				found = found || a <= p && p <= b
			}
			assert.True(t, found, "pair %d: the order changes between the columns %v and %v, their edges meet in %v", n, a, b, columns)
		}
	}
	assert.Greater(t, met, 300)
	assert.Greater(t, parted, 300)
}
