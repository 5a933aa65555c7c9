package rehearse_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/rehearse"
	"longhand/lang/units"
)

const manyRuns = 20000

// near is four standard errors of a chance seen in many runs: a sound sampler
// fails this once in 15,000 seeds, and the seed is fixed.
func near(p float64) float64 { return 4 * math.Sqrt(p*(1-p)/manyRuns) }

func play(s *script, o rehearse.Options) *rehearse.Report {
	if o.Runs == 0 {
		o.Runs = manyRuns
	}
	o.Seed = 1931
	return rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), o)
}

func fixed(s rehearse.Spread) func(*plan.Action, rehearse.Spread) rehearse.Spread {
	return func(*plan.Action, rehearse.Spread) rehearse.Spread { return s }
}

// Two normal lengths one after the other, N(10, 1) and N(6, 0.6), are together
// N(16, sqrt(1.36)): the chance to make a deadline, and the quantiles of what is
// left before it, follow.
func TestAChainOfTwoNormalLengthsAgainstADeadline(t *testing.T) {
	for _, deadline := range []float64{15, 16, 17.5, 19} {
		s := newScript()
		mina := person("mina")
		s.beat("one")
		first := s.walk(mina, "M1", 10)
		last := s.walk(mina, "M2", 6)
		last.Timing.By = since(deadline)
		r := play(s, rehearse.Options{Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 10})})
		n := distuv.Normal{Mu: 16, Sigma: math.Sqrt(1 + 0.36)}
		want := n.CDF(deadline)
		assert.InDelta(t, want, r.Odds.Chance, near(want), "by %v s", deadline)
		assert.LessOrEqual(t, r.Odds.Low, r.Odds.Chance)
		require.Len(t, r.Margins, 2)
		for i, a := range []*plan.Action{first, last} {
			m := r.Margins[i]
			assert.Same(t, a, m.Action)
			assert.InDelta(t, deadline-16, float64(m.Planned), 1e-9)
			assert.InDelta(t, deadline-n.Quantile(0.95), float64(m.Slack.P5), 0.06)
			assert.InDelta(t, deadline-n.Quantile(0.5), float64(m.Slack.P50), 0.05)
			assert.InDelta(t, deadline-n.Quantile(0.05), float64(m.Slack.P95), 0.06)
			assert.Equal(t, r.Runs-r.Odds.Held, m.Broken)
		}
		assert.InDelta(t, n.Quantile(0.95), float64(r.Length.P95), 0.06)
	}
}

// A reaction N(1, 0.2) and a length N(4, 0.4) after somebody else's N(5, 0.5).
func TestALengthAReactionAndALength(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one")
	s.walk(mina, "M1", 5)
	second := s.walk(otto, "M2", 4)
	second.Timing.Start = reached(mina, "M1")
	second.Timing.By = since(10.5)
	r := play(s, rehearse.Options{Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 10, React: 1, ReactSD: 0.2})})
	want := distuv.Normal{Mu: 10, Sigma: math.Sqrt(0.25 + 0.04 + 0.16)}.CDF(10.5)
	assert.InDelta(t, want, r.Odds.Chance, near(want))
	require.Len(t, r.Margins, 2)
	assert.Equal(t, "when mina reaches M1", r.Margins[1].Cue)
	assert.InDelta(t, 6, float64(r.Margins[1].Start.P50), 0.02)
}

// A lognormal length of mean m and variation c has ln L ~ N(ln m - v/2, v) with
// v = ln(1 + c²).
func TestALognormalLengthAgainstADeadline(t *testing.T) {
	s := newScript()
	s.beat("one")
	walk := s.walk(person("mina"), "M1", 8)
	walk.Timing.By = since(9)
	r := play(s, rehearse.Options{Spread: fixed(rehearse.Spread{Length: 20})})
	v := math.Log1p(0.04)
	l := distuv.LogNormal{Mu: math.Log(8) - v/2, Sigma: math.Sqrt(v)}
	assert.InDelta(t, 8, l.Mean(), 1e-9)
	want := l.CDF(9)
	assert.InDelta(t, want, r.Odds.Chance, near(want))
	assert.InDelta(t, l.Quantile(0.05), float64(r.Length.P5), 0.06)
	assert.InDelta(t, l.Quantile(0.95), float64(r.Length.P95), 0.1)
}

// A beat of six people that set off at once is over with the last of them: the
// greatest of six, whose distribution is the sixth power (order statistics).
func TestTheLastOfSixToArrive(t *testing.T) {
	s := newScript()
	b := s.beat("one")
	b.For = 11.2
	for _, name := range []string{"a", "b", "c", "d", "e", "f"} {
		s.walk(person(name), "M"+name, 10)
	}
	s.beat("two")
	s.walk(person("g"), "M9", 3)
	r := play(s, rehearse.Options{Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 10})})
	n := distuv.Normal{Mu: 10, Sigma: 1}
	want := math.Pow(n.CDF(11.2), 6)
	assert.InDelta(t, want, r.Odds.Chance, near(want))
	// The next beat begins then, but not before the stated length.
	assert.EqualValues(t, units.Seconds(11.2), r.Beats[1].Start.P5)
	assert.InDelta(t, n.Quantile(math.Pow(0.95, 1./6)), float64(r.Beats[1].Start.P95), 0.06)
	assert.EqualValues(t, units.Seconds(11.2), r.Beats[1].Planned)
	require.Len(t, r.Causes, 1)
	assert.Equal(t, `beat "one" is longer than its 11.2 s`, r.Causes[0].What)
	assert.Equal(t, r.Runs-r.Odds.Held, r.Causes[0].First)
}

// Tries that know nothing of each other: the odds that one of n works are
// counted in groups of n runs and held against 1-(1-p)^n.
func TestOneOfSeveralTries(t *testing.T) {
	s := newScript()
	s.beat("one")
	s.walk(person("mina"), "M1", 10).Timing.By = since(9.5)
	held := make([]bool, manyRuns)
	r := play(s, rehearse.Options{Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 10}), Workers: 2,
		Evaluate: func(run int, c *clock.Clock) []rehearse.Broken {
			held[run] = len(c.Lates) == 0
			return nil
		}})
	p := distuv.Normal{Mu: 10, Sigma: 1}.CDF(9.5)
	for _, n := range []int{1, 2, 5} {
		worked := 0
		for i := 0; i+n <= len(held); i += n {
			for _, h := range held[i : i+n] {
				if h {
					worked++
					break
				}
			}
		}
		want := 1 - math.Pow(1-p, float64(n))
		groups := float64(manyRuns / n)
		assert.InDelta(t, want, float64(worked)/groups, 4*math.Sqrt(want*(1-want)/groups), "one of %d", n)
		assert.InDelta(t, want, r.Odds.Once(n).Chance, 0.02, "one of %d", n)
	}
	tries, ok := r.Odds.TriesFor(0.95)
	assert.True(t, ok)
	assert.Equal(t, int(math.Ceil(math.Log(0.05)/math.Log(1-p))), tries)
}
