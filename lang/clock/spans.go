package clock

import (
	"slices"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// Span is what a beat occupies of the take for lists and drawings: from its
// start, included, to the start of the beat next in time, not included.
type Span struct {
	Beat     *plan.Beat // nil in a pickup
	From, To units.Seconds
}

// Spans are the beats in order of time, without gaps; the last goes to the end
// of the take. Beats that start at once stay in the order of the text, and all
// but the last of them are empty.
func (c *Clock) Spans() []Span {
	out := make([]Span, len(c.Beats))
	for s := range c.Beats {
		out[s] = Span{Beat: c.g.scopes[s].beat, From: c.Beats[s].Start}
	}
	slices.SortStableFunc(out, func(a, b Span) int {
		switch {
		case a.From < b.From:
			return -1
		case a.From > b.From:
			return 1
		}
		return 0
	})
	for i := range out {
		out[i].To = max(c.Length, out[i].From)
		if i+1 < len(out) {
			out[i].To = out[i+1].From
		}
	}
	return out
}

// BeatAt is the beat a time belongs to: the last one to have started, or the
// first one before any has. Nil in a pickup or a plan without beats.
func (c *Clock) BeatAt(t units.Seconds) *plan.Beat {
	spans := c.Spans()
	if len(spans) == 0 {
		return nil
	}
	at := spans[0].Beat
	for _, s := range spans {
		if s.From <= t {
			at = s.Beat
		}
	}
	return at
}
