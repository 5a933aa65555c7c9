package clock_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

func at(t *testing.T, c *clock.Clock, e *plan.Event, from *plan.Action) float64 {
	t.Helper()
	got, ok := c.At(e, from)
	require.True(t, ok, clock.EventWords(e))
	return float64(got)
}

func TestWhichPassingIsMeant(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	walks := map[string]*plan.Action{}
	asks := map[string]*plan.Action{}
	for _, title := range []string{"one", "two", "three"} {
		s.beat(title, nil)
		asks[title] = s.say(otto, "well", starting(plus(0)))
		if title != "two" {
			walks[title] = s.walk(mina, "M1 M9 M1", in(10))
			s.walk(mina, "M1", in(10))
		} else {
			s.walk(mina, "M7", in(10))
		}
	}
	c := solve(s, lengths{})
	e := s.reaches(mina, "M1")
	// Same beat: the first line, its first stop there, a third of the way.
	assert.InDelta(t, 10./3, at(t, c, e, asks["one"]), 1e-9)
	// None in this beat: the last one before.
	assert.InDelta(t, 20, at(t, c, e, asks["two"]), 1e-9)
	assert.InDelta(t, 30+10./3, at(t, c, e, asks["three"]), 1e-9)
	// Asked by nobody: the first of all.
	assert.InDelta(t, 10./3, at(t, c, e, nil), 1e-9)
	// Only in a later beat.
	assert.InDelta(t, 30, at(t, c, s.reaches(mina, "M7"), asks["one"]), 1e-9)
	// A line does not wait for itself.
	assert.InDelta(t, 20, at(t, c, e, walks["one"]), 1e-9)
	_, ok := c.At(s.reaches(mina, "nowhere"), nil)
	assert.False(t, ok)
	_, ok = c.At(nil, nil)
	assert.False(t, ok)
}

func TestABeatsHeaderLooksBackFirst(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one", nil)
	s.walk(mina, "M1", in(4))
	two := s.beat("two", when(s.reaches(mina, "M1"), 1))
	s.walk(mina, "M2 M1", in(6))
	c := solve(s, lengths{})
	assert.EqualValues(t, 5, c.Beats[two.Index].Start)
	assert.Empty(t, c.Loops)
}

func TestLeaving(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	van := vehicle("van")
	s.beat("one", nil)
	drive := s.from(s.walk(van, "D1", starting(plus(2)), in(5)), "D0")
	ride := s.line(mina, "rides", &plan.Ride{Carrier: van})
	stand := s.line(otto, "stands", &plan.Stand{At: s.place("M4")})
	leave := s.line(mina, "leaves", &plan.Leave{Carrier: van, To: s.place("M1")}, starting(when(s.reaches(van, "D1"))))
	off := s.walk(mina, "M2")
	go1 := s.walk(otto, "M5", starting(when(leavesCarrier(mina, van))))
	cue := s.cue("dusk", 1, starting(when(s.leaves(otto, "M4"))))
	second := s.cue("night", 1, starting(when(s.leaves(mina, "M1"))))
	c := solve(s, lengths{leave: 1})
	check(t, c,
		expect{drive, 2, 7, ""}, expect{ride, 0, 7, ""}, expect{leave, 7, 8, "when van reaches D1"},
		expect{go1, 7, 11, "when mina leaves van"}, expect{stand, 0, 7, ""},
		expect{cue, 7, 8, "when otto leaves M4"}, expect{off, 8, 12, ""}, expect{second, 8, 9, "when mina leaves M1"})
	assert.InDelta(t, 2, at(t, c, s.leaves(van, "D0"), nil), 1e-9)
	assert.InDelta(t, 2, at(t, c, s.leaves(mina, "D0"), nil), 1e-9, "she rides the van that leaves it")
	assert.InDelta(t, 7, at(t, c, s.reaches(mina, "D1"), nil), 1e-9, "and that reaches it")
	assert.InDelta(t, 8, at(t, c, s.reaches(mina, "M1"), nil), 1e-9, "the walk of stepping off ends there")
}

func TestACameraReachesWhatItsRigOrOperatorReaches(t *testing.T) {
	s := newScript()
	a, b := s.camera("A"), s.camera("B")
	ida, vest, cart := crew("ida"), rig("vest", "body-rig"), rig("cart", "cart")
	s.beat("one", nil)
	s.line(a, "on", &plan.Mount{Rig: vest, With: ida})
	s.line(b, "on", &plan.Mount{Rig: cart, With: crew("jon")})
	s.walk(ida, "C1 C2", in(6))
	s.walk(cart, "C3", in(9))
	c := solve(s, lengths{})
	assert.InDelta(t, 3, at(t, c, s.reaches(a, "C1"), nil), 1e-9)
	assert.InDelta(t, 3, at(t, c, s.reaches(vest, "C1"), nil), 1e-9)
	assert.InDelta(t, 9, at(t, c, s.reaches(b, "C3"), nil), 1e-9)
	_, ok := c.At(s.reaches(cart, "C1"), nil)
	assert.False(t, ok, "a cart is not where its operator walks")
}

func TestPlacesAreTheSame(t *testing.T) {
	s := newScript()
	mina := person("mina")
	s.beat("one", nil)
	a := s.walk(mina, "M1", in(4))
	to := a.Deed.(*plan.Move).Path.To
	c := solve(s, lengths{})
	reach := func(p plan.Place) bool {
		_, ok := c.At(&plan.Event{Kind: plan.Reaches, Subject: mina, Place: &p}, nil)
		return ok
	}
	assert.True(t, reach(plan.Place{Text: "M1", Mark: to.Mark, Point: to.Point}))
	assert.True(t, reach(plan.Place{Text: "(0, 1)", Point: to.Point}), "the same point in other words")
	assert.False(t, reach(plan.Place{Text: "1 m before M1", Mark: to.Mark, Point: to.Point, Before: 1}))
	assert.False(t, reach(plan.Place{Text: "M2", Mark: &plan.Mark{Ident: plan.Ident{Name: "M2"}}, Point: to.Point}), "marks are told apart by name")
	to.Text, to.Point = "2 m left of M1", geom.Vec{X: -2, Y: 1}
	assert.True(t, reach(plan.Place{Text: "2 m left of M1", Mark: to.Mark, Point: to.Point}))
}

func TestTheMomentAPartHasBeenSpoken(t *testing.T) {
	line := "Last collection was at six, – wasn't it?" // 7 words; a dash is none
	for _, row := range []struct {
		part string
		want float64 // words through its end; 0: not in it
	}{
		{"Last", 1}, {"collection", 2}, {"last collection", 2}, {"SIX", 5}, {"six, wasn't", 6},
		{"it?", 7}, {"", 7}, {line, 7}, {"wasnt", 6}, {"was", 3}, {"collect", 2}, {"tion was a", 4},
		{"collection six", 0}, {"never", 0}, {"it it", 0},
	} {
		t.Run(row.part, func(t *testing.T) {
			s := newScript()
			mina := person("mina")
			s.beat("one", nil)
			s.say(mina, "Nothing to find here.", in(3))
			s.say(mina, line, in(14))
			c := solve(s, lengths{})
			got, ok := c.At(says(mina, row.part), nil)
			switch {
			case row.part == "":
				assert.EqualValues(t, 3, got, "any line will do")
			case row.want == 0:
				assert.False(t, ok)
			default:
				require.True(t, ok)
				assert.InDelta(t, 3+2*row.want, float64(got), 1e-9)
			}
		})
	}
}

func TestBeatEvents(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	one := s.beat("one", nil, 6)
	s.walk(mina, "M1", in(4))
	two := s.beat("two", onClock(3))
	a := s.say(otto, "one two", starting(when(beatEnds(one), 0.5)))
	b := s.cue("dusk", 2, starting(when(beatStarts(two), 1)))
	check(t, solve(s, lengths{}),
		expect{a, 6.5, 7.5, `when "one" ends, +0.5 s`},
		expect{b, 4, 6, `when "two" starts, +1 s`})
}

func TestWhatNothingBringsAbout(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	s.from(s.walk(mina, "M1 M2"), "M0")
	s.say(mina, "Good evening to you.")
	s.cue("dusk", 1)
	lost := []*plan.Action{
		s.say(otto, "one", starting(when(s.reaches(mina, "M9")))),
		s.say(otto, "one", starting(when(s.leaves(mina, "M2")))),
		s.say(otto, "one", starting(when(says(mina, "Goodbye")))),
		s.say(otto, "one", starting(when(cueFires("dust")))),
		s.say(otto, "one", starting(when(s.reaches(otto, "M1")))),
		s.line(otto, "waits", &plan.Stand{}, until(when(says(otto, "stop")))),
	}
	quiet := s.say(otto, "one", starting(when(nil)))
	deaf := s.say(otto, "one", starting(when(&plan.Event{Kind: plan.Reaches})))
	two := s.beat("two", when(s.reaches(mina, "M8")))
	c := solve(s, lengths{})
	var got []string
	for _, u := range c.Unmatched {
		got = append(got, u.String())
	}
	assert.Equal(t, []string{
		"no line takes mina to M9; mina reaches M1, M2",
		"no line takes mina away from M2; mina leaves M0",
		`no line of mina has the words "Goodbye"; mina says "Good evening to you."`,
		"no line is cue dust; there is dusk",
		"no line takes otto to M1; otto never moves to a place",
		`no line of otto has the words "stop"; otto says "one"`,
		"no line takes mina to M8; mina reaches M1, M2",
	}, got)
	for i, a := range lost {
		assert.False(t, c.Of(a).Placed)
		assert.Same(t, a, c.Unmatched[i].Action)
	}
	assert.False(t, c.Of(quiet).Placed)
	assert.False(t, c.Of(deaf).Placed)
	assert.Same(t, two, c.Unmatched[6].Beat)
	assert.False(t, c.Beats[1].Placed)
	assert.True(t, c.Beats[0].Placed)
	// They take their turn all the same.
	check(t, c, expect{lost[0], 0, 0.5, ""}, expect{lost[1], 0.5, 1, ""}, expect{quiet, 2.5, 3, ""})
	assert.EqualValues(t, 6, c.Beats[1].Start)
}

func TestAPickupHasAClockOfItsOwn(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	one := s.beat("one", nil)
	s.walk(mina, "M1", in(30))
	pick := s.newPickup("close")
	a := s.walk(mina, "M2 M3", in(4))
	b := s.say(otto, "one two", starting(when(s.reaches(mina, "M2"))))
	late := s.say(otto, "three", starting(plus(5)), by(plus(5.2)))
	lost := s.say(mina, "one", starting(when(beatEnds(one))))
	c := clock.SolvePickup(s.p, pick, lengths{})
	check(t, c, expect{a, 0, 4, "as the beat begins"}, expect{b, 2, 3, ""}, expect{late, 5, 5.5, ""})
	require.Len(t, c.Lates, 1)
	assert.InDelta(t, 0.3, float64(c.Lates[0].By()), 1e-9)
	require.Len(t, c.Unmatched, 1)
	assert.Equal(t, "a pickup is on its own clock: no beat of the take happens on it", c.Unmatched[0].String())
	assert.False(t, c.Of(lost).Placed)
	assert.EqualValues(t, 5.5, c.Length)
	assert.Len(t, c.Beats, 1)
	assert.Equal(t, []clock.Span{{From: 0, To: units.Seconds(5.5)}}, c.Spans())
	assert.Nil(t, c.BeatAt(1))
	assert.Zero(t, c.Of(s.p.Actions[0]), "not a line of the pickup")
}
