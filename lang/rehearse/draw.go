package rehearse

import (
	"math"
	"math/rand/v2"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Shape is how times spread around their mean.
type Shape int

const (
	// LogNormal leans to the late side and is never below zero, as the times
	// people take are (R. D. Luce, Response Times, 1986; D. Trietsch et al.,
	// "Modeling activity times by the Parkinson distribution with a lognormal
	// core", Eur. J. Oper. Res. 216, 2012).
	LogNormal Shape = iota
	// Normal is even on both sides and cut off at zero.
	Normal
)

// role is one line's part in the drawing of a run.
type role struct {
	length, react drawn
	sooner        float64       // its cue is called so much sooner
	planned       units.Seconds // its length on the plan's clock
	cued, halted  bool          // it begins on a cue; its end is one
}

// drawn is a time by mean and standard deviation.
type drawn struct{ mean, sd float64 }

// draw makes a value out of one of the standard normal distribution.
func (d drawn) draw(shape Shape, z float64) float64 {
	switch {
	case !(d.mean > 0):
		return 0
	case !(d.sd > 0):
		return d.mean
	case shape == Normal:
		return max(d.mean+d.sd*z, 0)
	}
	// A lognormal time of that mean and standard deviation.
	v := math.Log1p(d.sd * d.sd / (d.mean * d.mean))
	return d.mean * math.Exp(math.Sqrt(v)*z-v/2)
}

// rolesOf works out what varies: lengths of lines that take time, and the start
// of what begins on a cue. A subject does not react to itself, and in the first
// beat everybody goes on the word.
func rolesOf(base *clock.Clock, o *Options) []role {
	actions := base.Lines()
	who := newCast(actions)
	roles := make([]role, len(actions))
	for i, a := range actions {
		s := who.spreadOf(a)
		if o.Spread != nil {
			s = o.Spread(a, s)
		}
		r := &roles[i]
		r.planned = base.Actions[i].Length()
		r.length = drawn{1, float64(s.Length) / 100}
		r.react = drawn{float64(s.React), float64(s.ReactSD)}
		r.cued = reacts(a, base.Actions[i].Cause)
		r.halted = a.Timing.Until != nil && a.Timing.In == nil && a.Timing.Until.Kind == plan.OnEvent && !ofItself(a, a.Timing.Until.Event)
		if clock.Instant(a) {
			r.length = drawn{1, 0}
		}
		if o.Times != nil {
			o.Times.apply(a, r)
		}
	}
	return roles
}

func reacts(a *plan.Action, c clock.Cause) bool {
	switch c.Kind {
	case clock.OnEvent:
		return !ofItself(a, c.Event)
	case clock.OnTheClock:
		return c.Offset > 0
	case clock.BeatBegins:
		return c.Offset > 0 || c.Beat != nil && c.Beat.Index > 0
	}
	return false
}

func ofItself(a *plan.Action, e *plan.Event) bool {
	return e != nil && e.Subject != nil && e.Subject == clock.SubjectOf(a)
}

func newVary(actions int) *clock.Vary {
	return &clock.Vary{
		Length: make([]float64, actions),
		Start:  make([]units.Seconds, actions),
		End:    make([]units.Seconds, actions),
	}
}

// vary draws one run. Every line takes three numbers, wanted or not, so that a
// changed plan is tried with the same luck.
func vary(roles []role, o *Options, run int, v *clock.Vary) {
	r := rand.New(rand.NewPCG(o.Seed, mixed(uint64(run))))
	for i := range roles {
		length, start, end := r.NormFloat64(), r.NormFloat64(), r.NormFloat64()
		v.Length[i] = roles[i].length.draw(o.Shape, length)
		v.Start[i], v.End[i] = units.Seconds(-roles[i].sooner), 0
		if roles[i].cued {
			v.Start[i] += units.Seconds(roles[i].react.draw(o.Shape, start))
		}
		if roles[i].halted {
			v.End[i] = units.Seconds(roles[i].react.draw(o.Shape, end))
		}
	}
}

// mixed spreads run numbers over all the seeds there are (the finaliser of G. L.
// Steele, D. Lea and C. H. Flood, "Fast splittable pseudorandom number
// generators", 2014), as neighbouring seeds begin alike.
func mixed(n uint64) uint64 {
	n += 0x9e3779b97f4a7c15
	n = (n ^ n>>30) * 0xbf58476d1ce4e5b9
	n = (n ^ n>>27) * 0x94d049bb133111eb
	return n ^ n>>31
}
