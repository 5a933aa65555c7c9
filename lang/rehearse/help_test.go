package rehearse_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat/distuv"

	"longhand/lang/clock"
	"longhand/lang/rehearse"
	"longhand/lang/units"
)

func help(s *script, o rehearse.Options, n int) []rehearse.Change {
	play := rehearse.ByClock(s.p, s)
	return rehearse.Help(context.Background(), play, o, rehearse.Run(context.Background(), play, o), n)
}

// One walk of N(10, 1) against 10.5 s. What each change does to it is known: half
// the spread gives Φ(1), a tenth quicker N(9, 0.9), and so on.
func TestHelpFindsWhatHelps(t *testing.T) {
	s := newScript()
	s.beat("one")
	mina := person("mina")
	s.walk(mina, "M1", 10).Timing.By = since(10.5)
	o := rehearse.Options{Runs: manyRuns, Seed: 5, Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 10})}
	got := help(s, o, 9)
	require.Len(t, got, 3)
	n := distuv.Normal{Mu: 10, Sigma: 1}
	// In 95 of 100 runs that fail, no more is missing than this.
	tail := n.Quantile(1-0.05*(1-n.CDF(10.5))) - 10.5
	more := math.Ceil(tail*10) / 10
	want := map[string]float64{
		"1 s quicker: mina walks to M1":                               distuv.Normal{Mu: 9, Sigma: 0.9}.CDF(10.5),
		"rehearse mina until the timing varies half as much":          distuv.Normal{Mu: 10, Sigma: 0.5}.CDF(10.5),
		"allow 1.7 s more where mina walks to M1 is late: by +10.5 s": n.CDF(10.5 + 1.7),
	}
	assert.InDelta(t, 1.7, more, 1e-9)
	for i, c := range got {
		p, ok := want[c.What]
		require.True(t, ok, c.What)
		assert.InDelta(t, p, c.Odds.Chance, near(p)+0.005, c.What)
		assert.InDelta(t, p-n.CDF(10.5), c.Gain, 0.02, c.What)
		if i > 0 {
			assert.LessOrEqual(t, c.Gain, got[i-1].Gain)
		}
	}
	assert.Len(t, help(s, o, 1), 1)
}

func TestHelpCuesSooner(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one")
	s.walk(mina, "M1", 8)
	late := s.walk(otto, "M2", 4)
	late.Timing.Start = reached(mina, "M1")
	late.Timing.By = since(12)
	o := rehearse.Options{Runs: 2000, Seed: 5, Shape: rehearse.Normal}
	got := help(s, o, 3)
	require.Len(t, got, 3)
	var sooner *rehearse.Change
	for i := range got {
		if got[i].Action == late && got[i].What != "0.4 s quicker: otto walks to M2" {
			sooner = &got[i]
		}
	}
	require.NotNil(t, sooner)
	assert.Regexp(t, `^cue \d(\.\d)? s sooner: otto walks to M2$`, sooner.What)
	// Its cue is called so much sooner that 95 of 100 runs have time.
	assert.InDelta(t, 0.95, sooner.Odds.Chance, 0.03)
	assert.Greater(t, sooner.By, units.Seconds(0))
}

func TestHelpWhereNothingBreaks(t *testing.T) {
	s := newScript()
	s.beat("one")
	s.walk(person("mina"), "M1", 10)
	assert.Empty(t, help(s, rehearse.Options{Runs: 50}, 3))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	s.p.Actions[0].Timing.By = since(10)
	o := rehearse.Options{Runs: 50}
	r := rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), o)
	for _, c := range rehearse.Help(ctx, rehearse.ByClock(s.p, s), o, r, 3) {
		assert.Contains(t, c.What, "allow", "what needs no playing is known at once")
	}
	r = rehearse.Run(ctx, rehearse.ByClock(s.p, s), o)
	assert.Empty(t, rehearse.Help(ctx, rehearse.ByClock(s.p, s), o, r, 3))
}

// A player of one's own sees each run's clock and adds what it finds; what is
// wrong without any spread is told apart.
func TestAPlayerOfOnesOwn(t *testing.T) {
	s := newScript()
	s.beat("one")
	a := s.walk(person("mina"), "M1", 10)
	a.Timing.By = since(9)
	g := clock.Prepare(s.p)
	play := func(_ context.Context, v *clock.Vary) (*clock.Clock, []rehearse.Broken) {
		c := g.Solve(s, v)
		if c.Of(a).End >= 10 {
			return c, []rehearse.Broken{{At: 10, What: "mina blocks the lens"}}
		}
		return c, nil
	}
	r := rehearse.Run(context.Background(), play, rehearse.Options{Runs: 1000, Seed: 2, Shape: rehearse.Normal})
	require.Len(t, r.AsPlanned, 2)
	assert.Equal(t, "mina walks to M1 is late: by +9 s", r.AsPlanned[0].What)
	assert.Equal(t, "mina blocks the lens", r.AsPlanned[1].What)
	require.Len(t, r.Causes, 2)
	assert.InDelta(t, 0.5, float64(r.Causes[1].Runs)/1000, 0.06)
}
