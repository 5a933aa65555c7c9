package clock_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// expect is when a line should be.
type expect struct {
	a          *plan.Action
	start, end float64
	cue        string
}

func check(t *testing.T, c *clock.Clock, want ...expect) {
	t.Helper()
	for _, w := range want {
		got := c.Of(w.a)
		label := clock.Describe(w.a)
		assert.InDelta(t, w.start, float64(got.Start), 1e-9, "start of %s", label)
		assert.InDelta(t, w.end, float64(got.End), 1e-9, "end of %s", label)
		if w.cue != "" {
			assert.Equal(t, w.cue, c.Words(w.a), "cue of %s", label)
		}
	}
}

func solve(s *script, l lengths) *clock.Clock { return clock.Solve(s.p, l) }

func TestLinesOfOneSubjectFollowEachOtherAndSubjectsRunSideBySide(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	a := s.walk(mina, "M1")
	b := s.say(otto, "one two")
	c := s.walk(mina, "M2")
	d := s.walk(otto, "M3", in(2))
	check(t, solve(s, lengths{a: 3, c: 5}),
		expect{a, 0, 3, "as the beat begins"},
		expect{b, 0, 1, "as the beat begins"},
		expect{c, 3, 8, "after mina walks to M1"},
		expect{d, 1, 3, `after otto says "one two"`})
}

func TestWithStartsTogetherAndTheNextWaitsForItsOwnFaculty(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one", nil)
	walk := s.walk(mina, "M1")
	say := s.say(mina, "one two", with)
	again := s.say(mina, "three four")
	turn := s.walk(mina, "M2")
	check(t, solve(s, lengths{walk: 6}),
		expect{walk, 0, 6, "as the beat begins"},
		expect{say, 0, 1, "as mina walks to M1"},
		expect{again, 1, 2, `after mina says "one two"`},
		expect{turn, 6, 10, "after mina walks to M1"}) // feet are busy until 6
}

func TestFirstLineOfABeatWaitsForTheSameFaculty(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	walk := s.walk(mina, "M1 M2")
	s.walk(otto, "M4")
	two := s.beat("two", when(s.reaches(mina, "M1")))
	say := s.say(mina, "one two")
	on := s.walk(mina, "M3")
	ottos := s.walk(otto, "M5")
	c := solve(s, lengths{walk: 10})
	assert.EqualValues(t, 5, c.Beats[two.Index].Start)
	assert.Equal(t, "when mina reaches M1", c.BeatWords(two))
	check(t, c,
		expect{say, 5, 6, "as the beat begins"}, // another faculty: at once
		expect{on, 10, 14, "after mina walks to M2"},
		expect{ottos, 5, 9, "as the beat begins"})
	assert.Empty(t, c.Overlaps)
}

func TestInstantLinesTakeNoTimeAndHoldUntilToldOtherwise(t *testing.T) {
	s := newScript()
	mina := person("mina")
	a := s.camera("A")
	vest := rig("vest", "body-rig")
	s.beat("one", nil)
	mount := s.line(a, "on", &plan.Mount{Rig: vest, With: crew("ida")})
	fit := s.line(a, "takes", &plan.Fit{Lens: &plan.Lens{}})
	see := s.line(a, "sees", &plan.See{Targets: []plan.Target{{Thing: mina}}})
	follow := s.line(a, "follows", &plan.Keep{Target: plan.Target{Thing: mina}, By: 2})
	roll := s.line(a, "rolls", &plan.Roll{On: true})
	circle := s.line(a, "circles", &plan.Circle{Target: plan.Target{Thing: mina}}, starting(plus(7)))
	other := s.line(a, "sees", &plan.See{Targets: []plan.Target{{Thing: vest}}})
	s.walk(mina, "M1", in(20))
	c := solve(s, lengths{circle: 6})
	check(t, c,
		expect{mount, 0, 0, "as the beat begins"},
		expect{fit, 0, 20, "as the beat begins"},
		expect{see, 0, 13, "as the beat begins"},
		expect{follow, 0, 7, "as the beat begins"},
		expect{roll, 0, 20, "as the beat begins"},
		expect{circle, 7, 13, "7 s into the beat"},
		expect{other, 13, 20, "after A circles mina"})
	for _, x := range []*plan.Action{mount, fit, see, follow, roll, other} {
		assert.True(t, c.Of(x).Open, clock.Describe(x))
	}
	assert.False(t, c.Of(circle).Open)
	assert.EqualValues(t, 20, c.Length)
	assert.Empty(t, c.Overlaps)
}

func TestInAndUntilCloseWhatWouldBeOpen(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	a := s.camera("A")
	s.beat("one", nil)
	wait := s.line(mina, "waits", &plan.Stand{}, in(3))
	go1 := s.walk(mina, "M1")
	keep := s.line(a, "follows", &plan.Keep{Target: plan.Target{Thing: mina}}, until(when(s.reaches(mina, "M1"), 1)))
	next := s.line(a, "pushes", &plan.Travel{By: 1})
	till := s.line(otto, "waits", &plan.Stand{}, until(onClock(6)))
	go2 := s.walk(otto, "M2", until(plus(9.5)))
	c := solve(s, lengths{go1: 4})
	check(t, c,
		expect{wait, 0, 3, ""}, expect{go1, 3, 7, "after mina waits"},
		expect{keep, 0, 8, ""}, expect{next, 8, 12, "after A follows mina"},
		expect{till, 0, 6, ""}, expect{go2, 6, 9.5, "after otto waits"})
	assert.False(t, c.Of(keep).Open)
	assert.Empty(t, c.Lates)
}

func TestStatedStarts(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil, 5)
	s.beat("two", nil)
	first := s.walk(mina, "M1 M2", starting(plus(2)))
	bar := onClock(8)
	bar.Text = "bar 5.1"
	second := s.walk(otto, "M3", starting(bar))
	third := s.say(otto, "one two", starting(when(s.reaches(mina, "M1"), 1.5)))
	fourth := s.say(otto, "one two", starting(when(s.reaches(mina, "M2"), -0.25)))
	check(t, solve(s, lengths{}),
		expect{first, 7, 11, "2 s into the beat"},
		expect{second, 8, 12, "at bar 5.1 (0:08.0)"},
		expect{third, 10.5, 11.5, "when mina reaches M1, +1.5 s"},
		expect{fourth, 10.75, 11.75, "when mina reaches M2, -0.25 s"})
}

func TestLinesOfNoSubjectStartWithTheirBeat(t *testing.T) {
	s := newScript()
	mina := person("mina")
	a := s.camera("A")
	s.beat("one", nil, 4)
	s.walk(mina, "M1", in(4))
	s.beat("two", nil)
	s.walk(mina, "M2", in(9))
	cut := s.line(nil, "cut", &plan.Cut{Camera: a})
	dusk := s.cue("dusk", 3)
	night := s.cue("night", 2, starting(when(cueFires("dusk"), 1)))
	door := &plan.Door{Ident: plan.Ident{Name: "dock"}}
	shut := s.line(door, "shuts", &plan.Operate{Door: door})
	from, to := rig("cart", "cart"), rig("vest", "body-rig")
	hand := s.line(nil, "handoff", &plan.Handoff{Camera: a, From: from, To: to})
	see := s.line(a, "sees", &plan.See{Targets: []plan.Target{{Thing: mina}}})
	c := solve(s, lengths{hand: 5, shut: 1.5})
	check(t, c,
		expect{cut, 4, 13, "as the beat begins"},
		expect{dusk, 4, 7, "as the beat begins"},
		expect{night, 5, 7, "on cue dusk, +1 s"},
		expect{shut, 4, 5.5, "as the beat begins"},
		expect{hand, 4, 9, "as the beat begins"},
		expect{see, 9, 13, "after handoff A from cart to vest"})
	assert.Empty(t, c.Overlaps, "two light cues at once are for the light plan to judge")
}

func TestACounterLastsAsLongAsTheSpinBesideIt(t *testing.T) {
	s := newScript()
	mina := person("mina")
	a := s.camera("A")
	s.beat("one", nil)
	s.walk(mina, "M1", in(3))
	counter := s.line(a, "counters", &plan.Circle{Target: plan.Target{Thing: mina}, Counter: true, At: 2})
	spin := s.line(mina, "spins", &plan.Spin{Angle: 360}, in(5))
	after := s.line(a, "pushes", &plan.Travel{By: 1})
	lone := s.line(a, "counters", &plan.Circle{Target: plan.Target{Thing: person("otto")}, Counter: true, At: 2})
	check(t, solve(s, lengths{after: 2, lone: 7}),
		expect{spin, 3, 8, ""},
		expect{counter, 3, 8, "as mina spins 360° left"},
		expect{after, 8, 10, "after A counters mina"},
		expect{lone, 10, 17, ""})
}

// A count is 60/bpm seconds by definition: at 120 a minute half a second, so 8
// counts are 4 s (CNT-1); at 96, 5 s (CNT-2); at 72, 6.6667 s (CNT-3). At 140 and 24
// frames a second count 8 is frame 82.286, not 8 times 10: rounding must not add
// up (CNT-4).
func TestCountsAndBars(t *testing.T) {
	for _, row := range []struct {
		id         string
		bpm        float64
		eight      float64
		eightFrame float64
	}{{"CNT-1", 120, 4, 96}, {"CNT-2", 96, 5, 120}, {"CNT-3", 72, 6.6667, 160}, {"CNT-4", 140, 3.42857, 82.286}} {
		t.Run(row.id, func(t *testing.T) {
			s := newScript()
			mina := person("mina")
			count := 60 / row.bpm
			s.beat("one", nil)
			var last *plan.Action
			for range 8 {
				last = s.walk(mina, "M1", in(count))
			}
			bar3 := s.say(mina, "one", starting(onClock(2*4*count))) // bar 3.1 in 4
			c := solve(s, lengths{})
			assert.InDelta(t, row.eight, float64(c.Of(last).End), 1e-4)
			assert.InDelta(t, row.eightFrame, float64(c.Of(last).End)*s.p.Take.Rate.PerSecond(), 1e-3)
			assert.InDelta(t, row.eight, float64(c.Of(bar3).Start), 1e-4)
			assert.InDelta(t, 8*count, float64(c.Of(last).End), 1e-12, "no rounding on the way")
		})
	}
}

func TestSpokenAtAPace(t *testing.T) {
	// 150 words a minute: 5 words in 2 s. One word takes no less than half a second.
	assert.InDelta(t, 2, float64(clock.Spoken(5, 150)), 1e-12)
	assert.InDelta(t, 2, float64(clock.Spoken(5, 0)), 1e-12)
	assert.EqualValues(t, clock.ShortestLine, clock.Spoken(1, 150))
	assert.EqualValues(t, clock.ShortestLine, clock.Spoken(0, 150))
}

func TestVary(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	walk := s.walk(mina, "M1 M2")
	step := s.walk(otto, "M3", starting(when(s.reaches(mina, "M1"))), in(2))
	hold := s.line(mina, "waits", &plan.Stand{}, until(when(s.reaches(otto, "M3"))))
	c := clock.Prepare(s.p).Solve(lengths{walk: 4}, &clock.Vary{
		Length: []float64{1.5, 0.5, 1},
		Start:  []units.Seconds{0, 0.25, 0},
		End:    []units.Seconds{9, 9, 3},
	})
	check(t, c, expect{walk, 0, 6, ""}, expect{step, 3.25, 4.25, ""}, expect{hold, 6, 7.25, ""})
	require.Len(t, c.Lates, 1, "mina begins to wait after otto has arrived")
	assert.Equal(t, clock.LateUntil, c.Lates[0].Kind)
}
