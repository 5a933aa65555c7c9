package check

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Least and most that a line is offered to wait, and by how much the wait grows
// from try to try, s.
const (
	waitStep = 0.2
	waitMost = 6.0
	waitRoom = 0.2 // on top of what just does
)

// waits offers to let one of two who meet set out later: by the least time
// that keeps them apart, if all that it does meanwhile is move by this line.
func (p *Pass) waits(d *diag.Diagnostic, m *movers, who, other *mover, a *plan.Action, c contact) {
	if a == nil || a.Beat == nil || a.With || a.Timing.Until != nil || a.Timing.By != nil {
		return
	}
	if _, ok := a.Deed.(*plan.Move); !ok {
		return
	}
	i := p.Clock.Of(a)
	first, last := int(m.rate.From(i.Start)), min(int(m.rate.At(i.End)), m.frames-1)
	if c.to >= last || c.from <= first || first >= m.frames {
		return // they meet where it begins or ends: waiting doesn't part them
	}
	for wait := waitStep; wait <= waitMost; wait += waitStep {
		delay := int(math.Ceil((wait) * m.rate.PerSecond()))
		if p.clear(m, who, other, first, last, delay) {
			p.offerWait(d, a, units.Seconds(wait+waitRoom))
			return
		}
	}
}

// clear says that two stay apart where one of them does its move, from a first
// frame to a last, so many frames later.
func (p *Pass) clear(m *movers, who, other *mover, first, last, delay int) bool {
	for f := first; f <= last+delay; f++ { // past its end the take goes on with all at rest
		mine := min(max(first, f-delay), last)
		if _, ok := touch(who, other, m.at(who, mine), m.at(other, min(f, m.frames-1))); ok {
			return false
		}
	}
	return true
}

// offerWait writes a later start into a line.
func (p *Pass) offerWait(d *diag.Diagnostic, a *plan.Action, wait units.Seconds) {
	title := "start " + atLeast(float64(wait)) + " later"
	s := a.Timing.Start
	i, beat := p.Clock.Of(a), p.Clock.Beats
	switch {
	case s == nil:
		if a.Beat.Index >= len(beat) {
			return
		}
		since := i.Start - beat[a.Beat.Index].Start + wait
		d.Fix(title, replaced(endOf(a.Span), " starting +"+atLeast(float64(since))))
	case s.Kind == plan.SinceBeat && s.Span.Valid() && strings.HasPrefix(s.Span.Text(), "+"):
		d.Fix(title, replaced(s.Span, fmt.Sprintf("+%s", atLeast(float64(s.Offset+wait)))))
	case s.Kind == plan.OnEvent && s.Offset == 0 && s.Event != nil && s.Event.Span.Valid():
		end := s.Event.Span
		end.Start = end.End
		d.Fix(title, replaced(end, " plus "+atLeast(float64(wait))))
	}
}
