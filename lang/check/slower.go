package check

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// slower offers to mend a pace: by the pace or the time that the line states, or
// by the pace of the one whom it follows.
func (p *Pass) slower(f *diag.Diagnostic, d motion.Demand) {
	a := d.Action
	ratio := d.Limit / d.Peak
	if d.Quantity == motion.Lateral || d.Quantity == motion.Accel {
		ratio = math.Sqrt(ratio) // both go with the square of the pace
	}
	took := d.To - d.From
	switch {
	case a.Timing.At != nil && d.Quantity != motion.Accel:
		v := float64(*a.Timing.At) * ratio
		if v < 0.05 {
			return
		}
		f.Fix(fmt.Sprintf("go at %s", p.atMost(v)), replaced(a.Timing.AtSpan, p.atMost(v)))
	case a.Timing.In != nil:
		t := float64(*a.Timing.In) / ratio
		if least, ok := p.leastTime(d); ok {
			t = math.Min(t, least)
		}
		f.Note("it takes %s at the limit, %s longer", units.Seconds(t), units.Seconds(t)-*a.Timing.In)
		f.Fix(fmt.Sprintf("take %s", atLeast(t)), replaced(a.Timing.InSpan, atLeast(t)))
	case d.Quantity == motion.Speed || d.Quantity == motion.BackSpeed:
		p.slowTheLeader(f, d, ratio)
		if f.Fixes == nil && a.Timing.Until != nil {
			f.Note("it has %s and takes %s at the limit", took, units.Seconds(float64(took)/ratio))
		}
	}
}

// slowTheLeader offers a slower pace for the one whom a camera keeps with.
func (p *Pass) slowTheLeader(f *diag.Diagnostic, d motion.Demand, ratio float64) {
	var target plan.Target
	switch deed := d.Action.Deed.(type) {
	case *plan.Keep:
		target = deed.Target
	case *plan.Beside:
		target = deed.Target
	default:
		return
	}
	if target.Thing == nil {
		return
	}
	t := p.Tracks.Body(target.Thing)
	if t == nil {
		return
	}
	s := t.Segment(d.At)
	if s.Action == nil || s.Action.Timing.At == nil || s.Kind != motion.Moving {
		return
	}
	const alike = 0.05 // of the pace: what it follows is what sets it
	speed := float64(t.Speed(d.At))
	if math.Abs(speed-d.Peak) > alike*d.Peak {
		return
	}
	v := float64(*s.Action.Timing.At) * ratio
	f.Relate(s.Action.Span, "%s goes at %s", nameOf(target.Thing), p.Speed(units.MetresPerSecond(speed)))
	f.Fix(fmt.Sprintf("let %s go at %s", nameOf(target.Thing), p.atMost(v)), replaced(s.Action.Timing.AtSpan, p.atMost(v)))
}

// leastTime is how long a move takes at its limit: L/v + v/a, or 2·√(L/a) where
// the way is too short to reach it; false for all but moves.
func (p *Pass) leastTime(d motion.Demand) (float64, bool) {
	t := p.Tracks.Body(d.Subject)
	if t == nil || d.Quantity != motion.Speed && d.Quantity != motion.BackSpeed {
		return 0, false
	}
	s := t.Segment((d.From + d.To) / 2)
	if s.Kind != motion.Moving || s.Action != d.Action {
		return 0, false
	}
	l, v, a := s.Path.Length(), d.Limit, float64(s.Limits.Accel.Typical)
	if v*v/a > l {
		return 2 * math.Sqrt(l/a), true
	}
	return l/v + v/a, true
}
