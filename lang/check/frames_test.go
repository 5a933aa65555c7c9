package check

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/diag"
	"longhand/lang/units"
)

func drawRuns(t *rapid.T, name string) []diag.Frames {
	var out []diag.Frames
	for range rapid.IntRange(0, 6).Draw(t, name) {
		from := units.Frame(rapid.IntRange(0, 60).Draw(t, "from"))
		out = append(out, diag.Frames{From: from, To: from + units.Frame(rapid.IntRange(0, 12).Draw(t, "long"))})
	}
	return out
}

func in(runs []diag.Frames, f units.Frame) bool {
	for _, r := range runs {
		if r.From <= f && f <= r.To {
			return true
		}
	}
	return false
}

// Runs are sets of frames: what is done to them is what is done to the sets.
func TestRunsAreSetsOfFrames(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawRuns(t, "a"), drawRuns(t, "b")
		ta, tb := tidy(a), tidy(b)
		both, only := meet(ta, tb), minus(ta, tb)
		n := 0
		for f := units.Frame(0); f < 80; f++ {
			assert.Equal(t, in(a, f), in(ta, f))
			assert.Equal(t, in(a, f), holds(ta, f))
			assert.Equal(t, in(a, f) && in(b, f), in(both, f))
			assert.Equal(t, in(a, f) && !in(b, f), in(only, f))
			if in(a, f) {
				n++
			}
		}
		assert.Equal(t, n, count(ta))
		for i := 1; i < len(ta); i++ {
			assert.Greater(t, ta[i].From, ta[i-1].To+1)
		}
		gap := units.Frame(rapid.IntRange(0, 12).Draw(t, "gap"))
		wide := joined(a, gap)
		for i := 1; i < len(wide); i++ {
			assert.Greater(t, wide[i].From, wide[i-1].To+1+gap)
		}
		if len(ta) > 0 {
			assert.Equal(t, bounds(ta), bounds(wide))
		}
	})
}
