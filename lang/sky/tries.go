package sky

import (
	"math"
	"time"

	"longhand/lang/units"
)

// Tries is what a window holds of a take.
type Tries struct {
	Starts []time.Time   // of each try, as early as can be
	Last   time.Time     // after this no try ends inside the window; zero where none fits
	Spare  units.Seconds // between the end of the last try and the window's end; negative by as much as one try is too long
}

// Count is how many tries fit.
func (t Tries) Count() int { return len(t.Starts) }

// tryCap keeps a take of no length from filling memory.
const tryCap = 10000

// TriesIn is how many takes of a length, with a reset between each and the next,
// begin and end inside a window.
func TriesIn(w Window, length, reset units.Seconds) Tries {
	if w.State == Never || !(length >= 0) || !(reset >= 0) || math.IsInf(float64(length), 1) {
		return Tries{}
	}
	room := w.Length()
	t := Tries{Spare: room - length}
	if t.Spare < 0 {
		return t
	}
	n := tryCap
	if period := length + reset; period > 0 {
		// A thousandth of a second forgives the rounding of sums that meet exactly.
		n = min(tryCap, 1+int(math.Floor(float64((room-length+1e-3)/period))))
	}
	for i := range n {
		t.Starts = append(t.Starts, w.Start.Add(seconds(units.Seconds(i)*(length+reset))))
	}
	t.Last = w.End.Add(-seconds(length))
	t.Spare = units.Seconds(math.Max(0, t.Last.Sub(t.Starts[n-1]).Seconds()))
	return t
}

// OnTheMinute is the starts put off to full minutes, each no sooner than a period,
// of take and reset, after the one before; false where the last is then too late.
func (t Tries) OnTheMinute(period units.Seconds) ([]time.Time, bool) {
	var out []time.Time
	for i, start := range t.Starts {
		if i > 0 {
			if after := out[i-1].Add(seconds(period)); after.After(start) {
				start = after
			}
		}
		// A thousandth of a second, as in TriesIn.
		start = start.Add(time.Minute - time.Millisecond).Truncate(time.Minute)
		if start.After(t.Last) {
			return t.Starts, false
		}
		out = append(out, start)
	}
	return out, true
}
