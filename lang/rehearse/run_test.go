package rehearse_test

import (
	"context"
	"fmt"
	"reflect"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/rehearse"
	"longhand/lang/units"
)

// scene is two beats with cues, a spoken line, a light cue, a camera and a few
// deadlines.
func scene() *script {
	s := newScript()
	mina, otto, ida := person("mina"), person("otto"), person("ida")
	cam := &plan.Camera{Ident: plan.Ident{Name: "A"}}
	vest := &plan.Rig{Ident: plan.Ident{Name: "vest"}, Class: "body-rig"}
	s.p.Kit.Cameras = []*plan.Camera{cam}
	s.p.Take.Record = &plan.Record{Duration: 60}
	s.beat("one").For = 12
	s.line(cam, "on", &plan.Mount{Rig: vest, With: ida}, 0)
	s.walk(mina, "M1", 6)
	s.line(mina, "says", words(6), 3).Timing.By = since(10)
	w := s.walk(otto, "M2", 4)
	w.Timing.Start = reached(mina, "M1")
	s.p.Beats[0].Actions[3].Timing.By = since(11)
	two := s.beat("two")
	s.line(cam, "circles", &plan.Circle{Target: plan.Target{Thing: otto}}, 5)
	over := s.line(nil, "cue", &plan.Cue{Name: "dusk", Over: 4}, 0)
	over.Timing.By = since(4.5)
	s.walk(otto, "M3", 7).Timing.By = since(7.8)
	two.For = 9
	return s
}

// With no spread at all every run is the plan's own clock, to the last bit.
func TestNoSpreadIsThePlainClock(t *testing.T) {
	s := scene()
	plain := clock.Solve(s.p, s)
	r := play(s, rehearse.Options{Runs: 40, Spread: fixed(rehearse.Still),
		Evaluate: func(run int, c *clock.Clock) []rehearse.Broken {
			if !reflect.DeepEqual(plain.Actions, c.Actions) || !reflect.DeepEqual(plain.Beats, c.Beats) || plain.Length != c.Length {
				return []rehearse.Broken{{What: fmt.Sprint("differs in run ", run)}}
			}
			return nil
		}})
	assert.Equal(t, 40, r.Odds.Held)
	assert.Empty(t, r.Causes)
	assert.Equal(t, rehearse.Quantiles{P5: plain.Length, P50: plain.Length, P95: plain.Length}, r.Length)
	for _, m := range r.Margins {
		assert.Equal(t, rehearse.Quantiles{P5: m.Planned, P50: m.Planned, P95: m.Planned}, m.Slack)
	}
}

func TestAStatedSpreadOfNoneIsNone(t *testing.T) {
	s := scene()
	for _, a := range s.p.Actions {
		if p, ok := a.Subject.(*plan.Person); ok {
			p.Spread = 0
		}
	}
	s.p.Beats[0].Actions[0].Deed.(*plan.Mount).With.Spread = 0
	s.p.Actions[5].Timing.By = nil // the light desk still has hands
	plain := clock.Solve(s.p, s)
	r := play(s, rehearse.Options{Runs: 200})
	assert.Equal(t, 200, r.Odds.Held)
	assert.Equal(t, plain.Length, r.Length.P95)
}

func TestTheSameSeedGivesTheSameReport(t *testing.T) {
	s := scene()
	one := rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), rehearse.Options{Runs: 500, Seed: 7, Workers: 1})
	four := rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), rehearse.Options{Runs: 500, Seed: 7, Workers: 4})
	other := rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), rehearse.Options{Runs: 500, Seed: 8})
	assert.Equal(t, one, four)
	assert.NotEqual(t, one.Margins, other.Margins)
	assert.NotZero(t, one.Odds.Held)
	assert.NotZero(t, len(one.Causes))
	first := 0
	for i, c := range one.Causes {
		first += c.First
		assert.LessOrEqual(t, c.First, c.Runs)
		if i > 0 {
			assert.LessOrEqual(t, c.First, one.Causes[i-1].First)
		}
	}
	assert.Equal(t, one.Runs-one.Odds.Held, first, "every run that fails fails first at one thing")
}

func TestWhatBreaksFirst(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one")
	s.walk(mina, "M1", 10).Timing.By = since(10.4)
	s.walk(mina, "M2", 5).Timing.By = since(15.2)
	r := play(s, rehearse.Options{Runs: 4000, Shape: rehearse.Normal})
	require.Len(t, r.Causes, 2)
	early, late := r.Causes[1], r.Causes[0]
	if early.What != "mina walks to M1 is late: by +10.4 s" {
		early, late = late, early
	}
	assert.Equal(t, "mina walks to M1 is late: by +10.4 s", early.What)
	assert.Equal(t, "mina walks to M2 is late: by +15.2 s", late.What)
	assert.Equal(t, early.Runs, early.First, "nothing breaks before it")
	assert.Greater(t, late.Runs, late.First)
	assert.Greater(t, late.By, units.Seconds(0))
	tight := r.Tightest(1)
	require.Len(t, tight, 1)
	assert.LessOrEqual(t, tight[0].Slack.P5, r.Margins[0].Slack.P5)
	assert.Len(t, r.Tightest(99), len(r.Margins))
	assert.InDelta(t, 100, float64(r.Share(r.Runs)), 1e-9)
}

func TestEveryKindOfBreakageHasAName(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	cam := &plan.Camera{Ident: plan.Ident{Name: "A"}}
	s.p.Kit.Cameras = []*plan.Camera{cam}
	s.p.Take.Record = &plan.Record{Duration: 8}
	s.beat("one").For = 2
	s.line(cam, "rolls", &plan.Roll{On: true}, 0)
	s.walk(mina, "M1", 5)
	again := s.walk(mina, "M2", 5)
	again.Timing.Start = since(4)
	wait := s.line(mina, "waits", &plan.Stand{}, 0)
	wait.Timing.Until = since(1)
	early := s.walk(otto, "M3", 1)
	early.Timing.Start = reached(mina, "M1")
	early.Timing.Start.Offset = -6
	early.Timing.Start.Text += " minus 6 s"
	b := s.beat("two")
	b.Start = reached(mina, "M1")
	b.Start.Offset = -7
	b.Start.Text = ""
	r := play(s, rehearse.Options{Runs: 1, Spread: fixed(rehearse.Still)})
	var got []string
	for _, c := range r.Causes {
		got = append(got, c.What)
		assert.Greater(t, c.By, units.Seconds(0), c.What)
	}
	assert.ElementsMatch(t, []string{
		"mina waits has no time left: until +1 s",
		"otto walks to M3 would begin before the take: at mina reaches M1 minus 6 s",
		`beat "two" would begin before the take`,
		"mina walks to M1 is not over when mina walks to M2",
		`beat "one" is longer than its 2 s`,
		"camera A rolls out",
	}, got)
	assert.Contains(t, r.Causes[0].What, "before the take", "the earliest comes first")
}

func TestFindingsOfTheCallerCount(t *testing.T) {
	s := scene()
	r := play(s, rehearse.Options{Runs: 100, Spread: fixed(rehearse.Still),
		Evaluate: func(run int, c *clock.Clock) []rehearse.Broken {
			if run%4 != 0 {
				return nil
			}
			return []rehearse.Broken{{At: 3, What: "ida is in A's frame"}, {At: 1, What: "mina is lost"}, {At: 5, What: "mina is lost"}}
		}})
	assert.Equal(t, 75, r.Odds.Held)
	always := func(s units.Seconds) rehearse.Quantiles { return rehearse.Quantiles{P5: s, P50: s, P95: s} }
	assert.Equal(t, []rehearse.Cause{
		{What: "mina is lost", First: 25, Runs: 25, At: always(1)}, {What: "ida is in A's frame", Runs: 25, At: always(3)},
	}, r.Causes)
}

func TestInterrupted(t *testing.T) {
	s := scene()
	ctx, cancel := context.WithCancel(context.Background())
	var mu sync.Mutex
	last := 0
	r := rehearse.Run(ctx, rehearse.ByClock(s.p, s), rehearse.Options{Runs: 100000, Seed: 7, Workers: 2, Progress: func(done int) {
		mu.Lock()
		last = max(last, done)
		mu.Unlock()
		cancel()
	}})
	assert.Equal(t, 100000, r.Asked)
	assert.Greater(t, r.Runs, 0)
	assert.Less(t, r.Runs, 100000)
	assert.Greater(t, last, 0)
	whole := rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), rehearse.Options{Runs: r.Runs, Seed: 7})
	whole.Asked = r.Asked
	assert.Equal(t, whole, r, "what there is of it is what a shorter rehearsal would say")
	none := rehearse.Run(ctx, rehearse.ByClock(s.p, s), rehearse.Options{Runs: 10})
	assert.Zero(t, none.Runs)
	assert.Equal(t, rehearse.Odds{Low: 0, High: 1}, none.Odds)
	assert.Zero(t, none.Share(0))
}

func TestAPickupIsRehearsedOnItsOwn(t *testing.T) {
	s := scene()
	pick := &plan.Pickup{Title: "close"}
	s.p.Pickups = []*plan.Pickup{pick}
	a := &plan.Action{Pickup: pick, Subject: person("mina"), Verb: "walks", Deed: &plan.Move{Path: plan.Path{To: place("M1")}}}
	a.Timing.By = since(5)
	pick.Actions = []*plan.Action{a}
	s.takes[a] = 5
	r := rehearse.Run(context.Background(), rehearse.PickupByClock(s.p, pick, s), rehearse.Options{Runs: 2000, Seed: 3, Shape: rehearse.Normal})
	assert.InDelta(t, 0.5, r.Odds.Chance, 0.05)
	assert.Nil(t, r.Beats[0].Beat)
}

func TestWhoseTimingALineHas(t *testing.T) {
	s := newScript()
	mina, ida, jon := person("mina"), person("ida"), person("jon")
	mina.Spread, ida.Spread = 10, 2.5
	cam := &plan.Camera{Ident: plan.Ident{Name: "A"}}
	rig := func(name, class string) *plan.Rig { return &plan.Rig{Ident: plan.Ident{Name: name}, Class: class} }
	vest, cart, wire := rig("vest", "body-rig"), rig("cart", "cart"), rig("wire", "cable")
	door := &plan.Door{Ident: plan.Ident{Name: "dock"}}
	s.beat("one")
	walk := s.walk(mina, "M1", 5)
	plainWalk := s.walk(jon, "M1", 5)
	s.line(cam, "on", &plan.Mount{Rig: vest, With: ida}, 0)
	circle := s.line(cam, "circles", &plan.Circle{}, 5)
	worn := s.walk(vest, "M2", 5)
	drive := s.walk(cart, "M3", 5)
	hand := s.line(nil, "handoff", &plan.Handoff{Camera: cam, From: vest, To: wire, With: jon}, 5)
	push := s.line(cam, "pushes", &plan.Travel{}, 5)
	s.line(cam, "on", &plan.Mount{Rig: wire}, 0)
	fly := s.line(cam, "pushes", &plan.Travel{}, 5)
	van := s.walk(&plan.Vehicle{Ident: plan.Ident{Name: "van"}}, "D1", 5)
	opens := s.line(door, "opens", &plan.Operate{Door: door}, 5)
	fade := s.line(nil, "cue", &plan.Cue{Name: "dusk", Over: 4}, 5)
	got := map[*plan.Action]rehearse.Spread{}
	play(s, rehearse.Options{Runs: 1, Spread: func(a *plan.Action, sp rehearse.Spread) rehearse.Spread {
		got[a] = sp
		return sp
	}})
	usual := body.Anybody().Spread
	for a, want := range map[*plan.Action]units.Percent{
		walk: 10, plainWalk: usual, circle: 2.5, worn: 2.5, drive: 5, hand: usual, push: usual, fly: 2, van: 5, opens: 10, fade: 0,
	} {
		assert.EqualValues(t, want, got[a].Length, clock.Describe(a))
		assert.Greater(t, got[a].React, units.Seconds(0), clock.Describe(a))
	}
	assert.InDelta(t, 2*float64(got[plainWalk].React), float64(got[walk].React), 1e-12)
	for _, d := range rehearse.Defaults() {
		assert.NotEmpty(t, d.Source)
	}
	assert.Equal(t, "5 % of each length, 0.3 s ± 0.12 s after a cue", rehearse.Defaults()[0].Value)
}

// Nobody reacts to themselves, nor to the word that starts the take.
func TestWhoReacts(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one")
	s.walk(mina, "M1", 5)
	own := s.line(mina, "says", words(4), 2)
	own.Timing.Start = reached(mina, "M1")
	other := s.line(otto, "says", words(4), 2)
	other.Timing.Start = reached(mina, "M1")
	stop := s.line(otto, "waits", &plan.Stand{}, 0)
	stop.Timing.Until = reached(mina, "M2")
	s.walk(mina, "M2", 5)
	s.beat("two")
	next := s.walk(person("ida"), "M3", 2)
	play(s, rehearse.Options{Runs: 20, Spread: fixed(rehearse.Spread{React: 1}), Evaluate: func(_ int, c *clock.Clock) []rehearse.Broken {
		for a, want := range map[*plan.Action]units.Seconds{own: 5, other: 6, next: 14} {
			assert.EqualValues(t, want, c.Of(a).Start, clock.Describe(a))
		}
		assert.EqualValues(t, 13, c.Of(stop).End, "the end of a wait is a reaction, too")
		return nil
	}})
}

// Where something breaks is told on the plan's clock, however late a run is by
// then.
func TestWhereItBreaksIsAPlaceInThePlan(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one")
	s.walk(mina, "M1", 10)
	s.beat("two")
	s.walk(mina, "M2", 10)
	g := clock.Prepare(s.p)
	play := func(_ context.Context, v *clock.Vary) (*clock.Clock, []rehearse.Broken) {
		c := g.Solve(s, v)
		half := (c.Beats[1].Start + c.Length) / 2
		return c, []rehearse.Broken{{At: half, What: "half way"}, {At: c.Length, What: "at the end"}}
	}
	r := rehearse.Run(context.Background(), play, rehearse.Options{Runs: 300, Seed: 2})
	require.Len(t, r.Causes, 2)
	assert.Equal(t, "half way", r.Causes[0].What)
	for _, q := range []units.Seconds{r.Causes[0].At.P5, r.Causes[0].At.P50, r.Causes[0].At.P95} {
		assert.InDelta(t, 15, float64(q), 1e-9)
	}
	assert.Zero(t, r.Causes[1].First)
	assert.InDelta(t, 20, float64(r.Causes[1].At.P50), 1e-9, "it is told even of what never breaks first")
	assert.Greater(t, float64(r.Length.P95-r.Length.P5), 1.0, "runs do differ")
}

func TestProgressIsTold(t *testing.T) {
	s := newScript()
	s.beat("one")
	s.walk(person("mina"), "M1", 10).Timing.By = since(10)
	done, all, tried := 0, 0, 0
	o := rehearse.Options{
		Runs: 40, Progress: func(n int) { assert.Equal(t, done+1, n); done = n },
		Trying: func(n, of int) { assert.Equal(t, tried+1, n); tried, all = n, of },
	}
	r := rehearse.Run(context.Background(), rehearse.ByClock(s.p, s), o)
	assert.Equal(t, 40, done)
	rehearse.Help(context.Background(), rehearse.ByClock(s.p, s), o, r, 3)
	assert.Equal(t, all, tried)
	assert.Zero(t, all%40)
	assert.Positive(t, all)
}
