package clock_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

func TestDeadlines(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil, 3)
	s.beat("two", nil)
	late := s.walk(mina, "M1", in(9.5), by(plus(9)))
	s.walk(otto, "M2", in(9), by(plus(9)))
	clockLate := s.say(otto, "one two", by(onClock(12.75)))
	event := s.say(otto, "one two", by(when(s.reaches(mina, "M1"), 0.25)))
	c := solve(s, lengths{})
	require.Len(t, c.Lates, 3)
	for i, want := range []struct {
		a               *plan.Action
		measured, limit float64
	}{{late, 12.5, 12}, {clockLate, 13, 12.75}, {event, 14, 12.75}} {
		got := c.Lates[i]
		assert.Same(t, want.a, got.Action)
		assert.Same(t, want.a.Timing.By, got.Moment)
		assert.Equal(t, clock.LateBy, got.Kind)
		assert.InDelta(t, want.measured, float64(got.Measured), 1e-9)
		assert.InDelta(t, want.limit, float64(got.Limit), 1e-9)
		assert.InDelta(t, want.measured-want.limit, float64(got.By()), 1e-9)
	}
}

func TestUntilThatComesTooSoon(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	s.walk(mina, "M1", in(5))
	wait := s.line(mina, "waits", &plan.Stand{}, until(plus(3)))
	both := s.walk(otto, "M2", in(6), until(onClock(5)))
	c := solve(s, lengths{})
	check(t, c, expect{wait, 5, 5, ""}, expect{both, 0, 6, ""})
	require.Len(t, c.Lates, 2)
	assert.Equal(t, clock.Late{Kind: clock.LateUntil, Action: wait, Beat: wait.Beat, Moment: wait.Timing.Until, Measured: 5, Limit: 3}, c.Lates[0])
	assert.Equal(t, clock.Late{Kind: clock.LateUntil, Action: both, Beat: both.Beat, Moment: both.Timing.Until, Measured: 6, Limit: 5}, c.Lates[1])
}

func TestNothingBeginsBeforeTheTake(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	s.walk(mina, "M1 M2", in(4))
	early := s.walk(otto, "M3", starting(when(s.reaches(mina, "M1"), -3)))
	two := s.beat("two", when(s.reaches(mina, "M1"), -2.5))
	c := solve(s, lengths{})
	check(t, c, expect{early, 0, 4, ""})
	assert.EqualValues(t, 0, c.Beats[two.Index].Start)
	require.Len(t, c.Lates, 2)
	assert.Equal(t, clock.LateBefore, c.Lates[0].Kind)
	assert.Same(t, early, c.Lates[0].Action)
	assert.EqualValues(t, 1, c.Lates[0].By())
	assert.Nil(t, c.Lates[1].Action)
	assert.Same(t, two, c.Lates[1].Beat)
	assert.EqualValues(t, 0.5, c.Lates[1].By())
}

func TestBeatsAndTheirLengths(t *testing.T) {
	s := newScript()
	mina := person("mina")
	one := s.beat("one", nil, 10)
	s.walk(mina, "M1", in(4))
	two := s.beat("two", nil, 3)
	s.say(mina, "one", in(1))
	last := s.walk(mina, "M2", in(4.5))
	three := s.beat("three", plus(4))
	s.walk(mina, "M3", in(2))
	c := solve(s, lengths{})
	want := []struct{ start, end float64 }{{0, 10}, {10, 15.5}, {14, 17.5}}
	for i, b := range []*plan.Beat{one, two, three} {
		assert.InDelta(t, want[i].start, float64(c.Beats[b.Index].Start), 1e-9, b.Title)
		assert.InDelta(t, want[i].end, float64(c.Beats[b.Index].End), 1e-9, b.Title)
	}
	require.Len(t, c.Overruns, 1)
	o := c.Overruns[0]
	assert.Same(t, two, o.Beat)
	assert.Same(t, last, o.Last)
	assert.InDelta(t, 5.5, float64(o.Measured), 1e-9)
	assert.EqualValues(t, 3, o.Limit)
	assert.InDelta(t, 2.5, float64(o.By()), 1e-9)
	assert.InDelta(t, 17.5, float64(c.Length), 1e-9)
	assert.Equal(t, []clock.Span{{one, 0, 10}, {two, 10, 14}, {three, 14, 17.5}}, c.Spans())
	for _, row := range []struct {
		t    units.Seconds
		beat *plan.Beat
	}{{-1, one}, {0, one}, {9.99, one}, {10, two}, {13.99, two}, {14, three}, {99, three}} {
		assert.Same(t, row.beat, c.BeatAt(row.t), "at %v", row.t)
	}
	assert.Equal(t, []string{"as the take begins", `when "one" ends`, "4 s into the beat"},
		[]string{c.BeatWords(one), c.BeatWords(two), c.BeatWords(three)})
}

func TestBeatsOutOfOrderInTime(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	one := s.beat("one", nil)
	s.walk(mina, "M1", in(20))
	two := s.beat("two", onClock(15))
	s.walk(otto, "M2", in(1))
	three := s.beat("three", onClock(5))
	s.walk(otto, "M3", in(1), starting(plus(0)))
	c := solve(s, lengths{})
	assert.Equal(t, []clock.Span{{one, 0, 5}, {three, 5, 15}, {two, 15, 20}}, c.Spans())
	assert.Same(t, three, c.BeatAt(10))
	assert.Empty(t, c.Overlaps)
}

func TestTwoThingsAtOnce(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one", nil)
	first := s.walk(mina, "M1", in(10))
	second := s.walk(mina, "M2", in(5), starting(plus(8)))
	s.say(mina, "one", starting(plus(1)))
	inside := s.line(mina, "stands", &plan.Stand{At: s.place("M9")}, starting(plus(9)))
	c := solve(s, lengths{})
	require.Len(t, c.Overlaps, 2)
	assert.Equal(t, clock.Overlap{First: first, Second: second, Faculty: clock.Feet, FirstEnds: 10, SecondStarts: 8}, c.Overlaps[0])
	assert.EqualValues(t, 2, c.Overlaps[0].By())
	assert.Equal(t, clock.Overlap{First: second, Second: inside, Faculty: clock.Feet, FirstEnds: 13, SecondStarts: 9}, c.Overlaps[1])
}

func TestACameraItsRigAndItsOperatorAreOneLane(t *testing.T) {
	build := func(class string) (*script, *plan.Camera, *plan.Rig, *plan.Person, *plan.Person) {
		s := newScript()
		a, r, ida, mina := s.camera("A"), rig("r", class), crew("ida"), person("mina")
		s.beat("one", nil)
		s.line(a, "on", &plan.Mount{Rig: r, With: ida})
		s.walk(mina, "M1", in(30))
		return s, a, r, ida, mina
	}
	target := func(p *plan.Person) plan.Target { return plan.Target{Thing: p} }

	s, a, _, ida, mina := build("body-rig")
	walk := s.walk(ida, "M2", in(6))
	circle := s.line(a, "circles", &plan.Circle{Target: target(mina)}, in(5), starting(plus(4)))
	c := solve(s, lengths{})
	require.Len(t, c.Overlaps, 1)
	assert.Equal(t, clock.Overlap{First: walk, Second: circle, Faculty: clock.Feet, FirstEnds: 6, SecondStarts: 4}, c.Overlaps[0])

	// What only holds gives way to what comes later.
	var r *plan.Rig
	s, a, r, _, mina = build("cart")
	keep := s.line(a, "leads", &plan.Keep{Target: target(mina), Lead: true, By: 2})
	drive := s.walk(r, "M2", starting(plus(7)), in(5))
	c = solve(s, lengths{})
	assert.Empty(t, c.Overlaps)
	check(t, c, expect{keep, 0, 7, ""}, expect{drive, 7, 12, ""})

	// Not when both begin at once.
	s, a, r, _, mina = build("cart")
	keep = s.line(a, "leads", &plan.Keep{Target: target(mina), Lead: true, By: 2})
	drive = s.walk(r, "M2", in(5))
	c = solve(s, lengths{})
	require.Len(t, c.Overlaps, 1)
	assert.Equal(t, clock.Overlap{First: keep, Second: drive, Faculty: clock.Feet, FirstEnds: 5, SecondStarts: 0}, c.Overlaps[0])

	// After a handoff the cart is free to go.
	s, a, r, ida, mina = build("cart")
	vest := rig("vest", "body-rig")
	hand := s.line(nil, "handoff", &plan.Handoff{Camera: a, From: r, To: vest}, starting(plus(2)), in(3))
	keep = s.line(a, "follows", &plan.Keep{Target: target(mina), By: 2})
	drive = s.walk(r, "M5", starting(when(s.reaches(mina, "M1"), -10)), in(4))
	c = solve(s, lengths{})
	assert.Empty(t, c.Overlaps)
	check(t, c, expect{hand, 2, 5, ""}, expect{keep, 5, 30, ""}, expect{drive, 20, 24, ""})
	// Its operator is not: the vest is on her.
	ides := s.walk(ida, "M6", starting(plus(12)), in(2))
	c = solve(s, lengths{})
	assert.Empty(t, c.Overlaps)
	check(t, c, expect{keep, 5, 12, ""}, expect{ides, 12, 14, ""})
}

func TestLengthsThatAreNoLengths(t *testing.T) {
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -3} {
		s := newScript()
		mina := person("mina")
		s.beat("one", nil)
		a := s.walk(mina, "M1")
		b := s.walk(mina, "M2", in(bad))
		e := s.walk(mina, "M3", in(2))
		late := s.say(mina, "one", starting(plus(bad)))
		c := solve(s, lengths{a: bad})
		check(t, c, expect{a, 0, 0, ""}, expect{b, 0, 0, ""}, expect{e, 0, 2, ""})
		assert.GreaterOrEqual(t, c.Of(late).Start, units.Seconds(0))
	}
	c := clock.Solve(&plan.Plan{}, lengths{})
	assert.Zero(t, c.Length)
	assert.Nil(t, c.BeatAt(0))
	stray := &plan.Action{Deed: &plan.Stand{}}
	c = clock.Solve(&plan.Plan{Actions: []*plan.Action{stray}}, lengths{})
	assert.False(t, c.Of(stray).Placed, "a line of no beat")
}

func TestRecordRunsOut(t *testing.T) {
	build := func(record float64) (*script, *plan.Camera, *plan.Camera) {
		s := newScript()
		s.p.Take.Record = &plan.Record{Duration: units.Seconds(record)}
		a, b := s.camera("A"), s.camera("B")
		s.camera("unused")
		mina := person("mina")
		s.beat("one", nil)
		s.line(a, "on", &plan.Mount{Rig: rig("vest", "body-rig")})
		s.walk(mina, "M1", in(30))
		s.line(b, "hides", &plan.Hide{})
		s.line(b, "rolls", &plan.Roll{On: true}, starting(plus(12)))
		s.line(b, "rests", &plan.Roll{}, starting(plus(25)))
		return s, a, b
	}
	s, _, _ := build(30)
	assert.Empty(t, solve(s, lengths{}).RollOuts)
	s, a, b := build(12.5)
	c := solve(s, lengths{})
	require.Len(t, c.RollOuts, 2)
	assert.Equal(t, clock.RollOut{Camera: a, From: 0, To: 30, Limit: 12.5}, c.RollOuts[0])
	assert.Equal(t, clock.RollOut{Camera: b, From: 12, To: 25, Limit: 12.5}, c.RollOuts[1])
	assert.InDelta(t, 0.5, float64(c.RollOuts[1].By()), 1e-9)
}
