package rehearse

import (
	"math"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// Times are rehearsal times measured with a watch.
type Times struct {
	lengths map[*plan.Action][]float64 // how long a line took
	waits   map[*plan.Action][]float64 // from its cue to its start
}

// What is measured, as the table calls it.
const (
	tookWord   = "took"
	afterWord  = "after cue"
	knownTries = 3 // from here on the spread is the measured one, too
)

// The columns of the table before those of the tries.
var header = []string{"beat", "line", "what", "measured", "planned s"}

// Len is how many times were measured.
func (t *Times) Len() int {
	n := 0
	for _, m := range []map[*plan.Action][]float64{t.lengths, t.waits} {
		for _, list := range m {
			n += len(list)
		}
	}
	return n
}

// Took is the times measured of a line's length, in the order of the tries.
func (t *Times) Took(a *plan.Action) []units.Seconds { return asSeconds(t.lengths[a]) }

// AfterCue is the times measured from a line's cue to its start.
func (t *Times) AfterCue(a *plan.Action) []units.Seconds { return asSeconds(t.waits[a]) }

func asSeconds(list []float64) []units.Seconds {
	out := make([]units.Seconds, len(list))
	for i, v := range list {
		out[i] = units.Seconds(v)
	}
	return out
}

// apply puts what was measured in the place of what was taken for granted: the
// mean always, the spread once there are three tries to tell it from.
func (t *Times) apply(a *plan.Action, r *role) {
	if took := t.lengths[a]; len(took) > 0 && r.planned > 0 {
		mean, sd := meanAndSpread(took)
		part := r.length.sd * mean // a part of the length, as before
		if len(took) >= knownTries {
			part = sd
		}
		r.length = drawn{mean / float64(r.planned), part / float64(r.planned)}
	}
	if after := t.waits[a]; len(after) > 0 {
		mean, sd := meanAndSpread(after)
		if len(after) < knownTries {
			sd = r.react.sd
		}
		r.react = drawn{mean, sd}
	}
}

// meanAndSpread is the mean and the sample standard deviation.
func meanAndSpread(list []float64) (mean, sd float64) {
	for _, v := range list {
		mean += v
	}
	mean /= float64(len(list))
	if len(list) < 2 {
		return mean, 0
	}
	for _, v := range list {
		sd += (v - mean) * (v - mean)
	}
	return mean, math.Sqrt(sd / float64(len(list)-1))
}
