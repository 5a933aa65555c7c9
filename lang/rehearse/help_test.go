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

// What a player finds has no time to spare; the lines that it came of are tried
// both ways. Mina's N(10, 1) and Otto's N(4, 0.4) together are N(14, sqrt(1.16)),
// and the lens finds Otto where they end after 14.5 s.
func TestHelpTriesTheLinesOfAFinding(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one")
	s.walk(mina, "M1", 10)
	late := s.walk(otto, "M2", 4)
	late.Timing.Start = reached(mina, "M1")
	g := clock.Prepare(s.p)
	play := func(_ context.Context, v *clock.Vary) (*clock.Clock, []rehearse.Broken) {
		c := g.Solve(s, v)
		if c.Of(late).End <= 14.5 {
			return c, nil
		}
		return c, []rehearse.Broken{{At: 14.5, What: "crew-in-shot otto in A", Lines: []*plan.Action{late}}}
	}
	played := 0
	o := rehearse.Options{Runs: manyRuns, Seed: 7, Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 10}),
		Trying: func(done, all int) { played++; assert.Equal(t, played, done); assert.LessOrEqual(t, done, all) }}
	got := rehearse.Help(context.Background(), play, o, rehearse.Run(context.Background(), play, o), 2)
	assert.Less(t, played, 5*manyRuns, "only what promises most is played throughout")
	require.Len(t, got, 2)
	n := func(mean, sd float64) float64 { return distuv.Normal{Mu: mean, Sigma: sd}.CDF(14.5) }
	for i, want := range []struct {
		what string
		p    float64
	}{
		{"cue 1 s sooner: otto walks to M2", n(13, math.Sqrt(1.16))},
		{"0.4 s quicker: otto walks to M2", n(13.6, math.Hypot(1, 0.36))},
	} {
		if i == 1 && got[i].What == "cue 0.4 s sooner: otto walks to M2" {
			want.p = n(13.6, math.Sqrt(1.16)) // as good, to a hair
			want.what = got[i].What
		}
		assert.Equal(t, want.what, got[i].What)
		assert.InDelta(t, want.p, got[i].Odds.Chance, near(want.p)+0.005, want.what)
		assert.Same(t, late, got[i].Action)
	}
}

// What follows on its own cannot be called sooner, but it can be waited before;
// what the take begins with stays where it is.
func TestHelpWaitsBeforeWhatComesTooSoon(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one")
	first := s.walk(mina, "M1", 10)
	second := s.walk(mina, "M2", 5)
	g := clock.Prepare(s.p)
	play := func(_ context.Context, v *clock.Vary) (*clock.Clock, []rehearse.Broken) {
		c := g.Solve(s, v)
		if c.Of(second).Start >= 10 {
			return c, nil
		}
		return c, []rehearse.Broken{{At: 9, What: "gear-in-shot cart in A", Lines: []*plan.Action{first, second}}}
	}
	o := rehearse.Options{Runs: 300, Seed: 7, Shape: rehearse.Normal, Spread: fixed(rehearse.Spread{Length: 3})}
	var what []string
	for _, c := range rehearse.Help(context.Background(), play, o, rehearse.Run(context.Background(), play, o), 3) {
		what = append(what, c.What)
	}
	assert.ElementsMatch(t, []string{"wait 1 s first: mina walks to M2", "1 s slower: mina walks to M1", "wait 0.4 s first: mina walks to M2"}, what)
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
