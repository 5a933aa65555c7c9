package clock_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

var inf = units.Seconds(math.Inf(1))

func slackOf(t *testing.T, c *clock.Clock, a *plan.Action, want float64) {
	t.Helper()
	if math.IsInf(want, 1) {
		assert.Equal(t, inf, c.Of(a).Slack, clock.Describe(a))
		assert.True(t, c.Of(a).Slackless())
		return
	}
	assert.InDelta(t, want, float64(c.Of(a).Slack), 1e-9, clock.Describe(a))
}

func TestSlack(t *testing.T) {
	s := newScript()
	mina, otto, ida := person("mina"), person("otto"), person("ida")
	s.beat("one", nil, 12)
	a := s.walk(mina, "M1", in(4))
	b := s.walk(mina, "M2", in(3), by(plus(9)))
	c := s.walk(otto, "M3", in(2), starting(when(s.reaches(mina, "M1"), 1)))
	d := s.walk(ida, "M4", in(11))
	s.beat("two", nil)
	e := s.walk(ida, "M5", in(5))
	f := s.walk(mina, "M6", in(1), starting(onClock(20)))
	k := solve(s, lengths{})
	slackOf(t, k, a, 2) // mina's `by`
	slackOf(t, k, b, 2)
	slackOf(t, k, c, 5) // ends at 7 of a beat of 12 s
	slackOf(t, k, d, 1)
	slackOf(t, k, e, math.Inf(1))
	slackOf(t, k, f, math.Inf(1))
	// The `by` and the beat's length count from its start and move with it: only
	// mina's start on the clock does not, and she would have 13 s to get there.
	assert.EqualValues(t, 13, k.Beats[0].Slack)
	assert.Equal(t, inf, k.Beats[1].Slack)
}

func TestSlackBelowZeroIsWhatIsMissing(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("zero", nil)
	z := s.walk(mina, "M0", in(3))
	s.beat("one", nil)
	a := s.walk(mina, "M1", in(6))
	b := s.walk(mina, "M2", in(5), by(plus(9)))
	c := s.walk(otto, "M3", in(4))
	k := solve(s, lengths{})
	slackOf(t, k, a, -2)
	slackOf(t, k, b, -2)
	slackOf(t, k, c, math.Inf(1))
	slackOf(t, k, z, math.Inf(1)) // later or sooner, it would be as late within its beat
}

func TestSlackOfTheRecord(t *testing.T) {
	s := newScript()
	s.p.Take.Record = &plan.Record{Duration: 60}
	a := s.camera("A")
	mina := person("mina")
	s.beat("one", nil)
	s.line(a, "on", &plan.Mount{Rig: rig("vest", "body-rig")})
	walk := s.walk(mina, "M1", in(30))
	last := s.walk(mina, "M2", in(25))
	side := s.walk(person("otto"), "M3", in(10))
	k := solve(s, lengths{})
	slackOf(t, k, walk, 5)
	slackOf(t, k, last, 5)
	slackOf(t, k, side, 50)
}

// A limit breaks exactly if a line is later than its slack: every line is
// delayed by a little less and a little more, and all is solved again.
func TestSlackAgainstSolvingAgain(t *testing.T) {
	tried, finite := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		s := anyPlan(t, false)
		l := anyLengths(t, s, 1)
		addLimits(t, s, l)
		g := clock.Prepare(s.p)
		c := g.Solve(l, nil)
		if broken(c) {
			t.Skip("not a plan that holds")
		}
		const eps = 1e-3
		for i, a := range s.p.Actions {
			if !c.Actions[i].Placed {
				continue
			}
			tried++
			delayed := func(by float64) *clock.Clock {
				v := clock.Vary{Start: make([]units.Seconds, len(s.p.Actions)), End: make([]units.Seconds, len(s.p.Actions))}
				v.Start[i] = units.Seconds(by)
				if a.Timing.Until != nil && g.Solve(l, &v).Of(a).End == c.Of(a).End {
					v.End[i] = units.Seconds(by) // its end isn't moved by its own start
				}
				return g.Solve(l, &v)
			}
			slack := float64(c.Actions[i].Slack)
			if math.IsInf(slack, 1) {
				if k := delayed(1000); limits(k) {
					t.Fatalf("%s: nothing waits, but 1000 s later breaks %s", clock.Describe(a), all(k))
				}
				continue
			}
			finite++
			if slack < -eps {
				t.Fatalf("%s: slack %v where nothing is broken", clock.Describe(a), slack)
			}
			if k := delayed(slack - eps); slack > eps && broken(k) {
				t.Fatalf("%s: slack %v, but a little less breaks %s", clock.Describe(a), slack, all(k))
			}
			if k := delayed(slack + eps); !broken(k) {
				t.Fatalf("%s: slack %v, but a little more breaks nothing", clock.Describe(a), slack)
			}
		}
		for i, b := range s.p.Beats {
			if b.Start == nil || !c.Beats[i].Placed || b.Start.Kind == plan.SinceBeat && i == 0 {
				continue
			}
			offset := b.Start.Offset
			delayed := func(by float64) *clock.Clock {
				b.Start.Offset = offset + units.Seconds(by)
				defer func() { b.Start.Offset = offset }()
				return clock.Solve(s.p, l)
			}
			slack := float64(c.Beats[i].Slack)
			if math.IsInf(slack, 1) {
				continue
			}
			if k := delayed(slack - eps); slack > eps && broken(k) {
				t.Fatalf("beat %d: slack %v, but a little less breaks %s", i, slack, all(k))
			}
			if k := delayed(slack + eps); !broken(k) {
				t.Fatalf("beat %d: slack %v, but a little more breaks nothing", i, slack)
			}
		}
	})
	t.Logf("%d lines delayed, %d with something that waits", tried, finite)
}

// addLimits states times that hold, some with little to spare.
func addLimits(t *rapid.T, s *script, l lengths) {
	c := solve(s, l)
	spare := func() units.Seconds { return units.Seconds(rapid.IntRange(0, 24).Draw(t, "spare")) / 4 }
	for i, a := range s.p.Actions {
		switch rapid.IntRange(0, 5).Draw(t, "by") {
		case 0:
			a.Timing.By = onClock(float64(c.Actions[i].End + spare()))
			if c.Actions[i].Open {
				a.Timing.By.Offset = c.Actions[i].Start + spare()
			}
		case 1:
			end := c.Actions[i].End
			if c.Actions[i].Open {
				end = c.Actions[i].Start
			}
			a.Timing.By = plus(float64(end - c.Beats[a.Beat.Index].Start + spare()))
		}
	}
	if last := len(s.p.Beats) - 1; rapid.Bool().Draw(t, "for") {
		s.p.Beats[last].For = c.Beats[last].End - c.Beats[last].Start + spare()
	}
	if rapid.Bool().Draw(t, "record") {
		s.p.Take.Record = &plan.Record{Duration: c.Length + 6 + spare()}
		s.p.Kit.Cameras = append(s.p.Kit.Cameras, s.p.Kit.Cameras[0])
	}
}

func broken(c *clock.Clock) bool {
	return len(c.Lates)+len(c.Overlaps)+len(c.Overruns)+len(c.RollOuts) > 0
}

// limits leaves out overlaps: 1000 s later, a line may well be in the middle of
// one that was long over, which no slack speaks of.
func limits(c *clock.Clock) bool { return len(c.Lates)+len(c.Overruns)+len(c.RollOuts) > 0 }

func all(c *clock.Clock) string {
	return fmt.Sprint(c.Lates, c.Overlaps, c.Overruns, c.RollOuts)
}

func TestFree(t *testing.T) {
	s := newScript()
	mina, otto, ida := person("mina"), person("otto"), person("ida")
	s.beat("one", nil)
	a := s.walk(mina, "M1", in(4))
	b := s.walk(otto, "M2", in(3))
	c := s.walk(ida, "M3 M4", in(6))
	e := s.walk(otto, "M5", in(1), starting(when(s.reaches(ida, "M3"), 1)))
	s.beat("two", nil)
	f := s.walk(mina, "M6", in(2), by(plus(3)))
	g := s.walk(ida, "M7", in(9))
	k := solve(s, lengths{})
	for _, row := range []struct {
		a    *plan.Action
		want units.Seconds
	}{{a, 2}, {b, 1}, {c, 0}, {e, 1}, {f, 1}, {g, 0}} {
		assert.InDelta(t, float64(row.want), float64(k.Of(row.a).Free), 1e-9, clock.Describe(row.a))
	}
}

// A line a little less late than it is free moves nothing else, a little more
// late moves something or breaks it.
func TestFreeAgainstSolvingAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyPlan(t, false)
		l := anyLengths(t, s, 1)
		addLimits(t, s, l)
		g := clock.Prepare(s.p)
		c := g.Solve(l, nil)
		if broken(c) {
			t.Skip("not a plan that holds")
		}
		const eps = 1e-3
		for i, a := range s.p.Actions {
			if !c.Actions[i].Placed || a.Timing.Until != nil {
				continue
			}
			delayed := func(by float64) *clock.Clock {
				v := clock.Vary{Start: make([]units.Seconds, len(s.p.Actions))}
				v.Start[i] = units.Seconds(by)
				return g.Solve(l, &v)
			}
			free := float64(c.Actions[i].Free)
			if math.IsInf(free, 1) {
				if k := delayed(1000); moved(c, k, i) {
					t.Fatalf("%s: nothing waits, but 1000 s later moves something", clock.Describe(a))
				}
				continue
			}
			if k := delayed(free - eps); free > eps && (moved(c, k, i) || broken(k)) {
				t.Fatalf("%s: free by %v, but a little less moves something", clock.Describe(a), free)
			}
			if k := delayed(free + eps); !moved(c, k, i) && !broken(k) {
				t.Fatalf("%s: free by %v, but a little more moves nothing", clock.Describe(a), free)
			}
		}
	})
}

func moved(c, k *clock.Clock, but int) bool {
	const hair = 1e-9
	far := func(a, b units.Seconds) bool { return math.Abs(float64(a-b)) > hair }
	for i := range c.Actions {
		if i != but && (far(c.Actions[i].Start, k.Actions[i].Start) || !c.Actions[i].Open && far(c.Actions[i].End, k.Actions[i].End)) {
			return true
		}
	}
	for b := range c.Beats {
		if far(c.Beats[b].Start, k.Beats[b].Start) {
			return true
		}
	}
	return far(c.Length, k.Length)
}
