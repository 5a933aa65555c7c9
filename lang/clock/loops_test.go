package clock_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/clock"
	"longhand/lang/plan"
)

func TestCuesThatWaitForEachOther(t *testing.T) {
	s := newScript()
	mina, otto, ida := person("mina"), person("otto"), person("ida")
	s.beat("one", nil)
	before := s.say(mina, "one two")
	a := s.walk(mina, "M1", starting(when(s.reaches(otto, "M4"))))
	b := s.walk(otto, "M4", starting(when(s.reaches(mina, "M1"), 1)))
	free := s.walk(ida, "M2", in(3))
	s.beat("two", nil)
	after := s.walk(ida, "M3", in(2))
	c := solve(s, lengths{})
	require.Len(t, c.Loops, 1)
	assert.Equal(t, "mina walks to M1 when otto reaches M4; otto walks to M4 when mina reaches M1, +1 s", c.Loops[0].String())
	for _, x := range []*plan.Action{a, b} {
		assert.False(t, c.Of(x).Placed)
	}
	for _, x := range []*plan.Action{before, free, after} {
		assert.True(t, c.Of(x).Placed)
	}
	// In a loop: as if without the cues. The rest as ever.
	check(t, c, expect{a, 1, 5, ""}, expect{b, 0, 4, ""}, expect{free, 0, 3, ""}, expect{after, 5, 7, ""})
	assert.Empty(t, c.Unmatched)
}

func TestTheWayAroundNamesWhatLiesBetween(t *testing.T) {
	s := newScript()
	mina, otto := person("mina"), person("otto")
	s.beat("one", nil)
	s.walk(mina, "M1", starting(when(s.reaches(otto, "M4"))))
	two := s.beat("two", nil)
	s.say(otto, "one")
	s.walk(otto, "M4")
	c := solve(s, lengths{})
	require.Len(t, c.Loops, 1)
	assert.Equal(t, `beat "one" ends with mina walks to M1; mina walks to M1 when otto reaches M4; otto walks to M4 after otto says "one"; `+
		`otto says "one" in beat "two"; beat "two" after beat "one"`, c.Loops[0].String())
	assert.True(t, c.Beats[two.Index].Placed == false, "its start is part of the circle")
}

func TestLoopsOfEveryKind(t *testing.T) {
	mina, otto := person("mina"), person("otto")
	for _, row := range []struct {
		name  string
		build func(s *script)
		want  []string
	}{
		{"a beat that waits for its own line", func(s *script) {
			s.beat("one", when(s.reaches(mina, "M1")))
			s.walk(mina, "M1")
		}, []string{`beat "one" when mina reaches M1; mina walks to M1 in beat "one"`}},
		{"an end that waits for what it lets happen", func(s *script) {
			s.beat("one", nil)
			s.walk(mina, "M1 M2", until(when(s.reaches(otto, "M4"))))
			s.walk(otto, "M4", starting(when(s.reaches(mina, "M1"))))
		}, []string{"mina walks to M2 when otto reaches M4; otto walks to M4 when mina reaches M1"}},
		{"two at once, reported one by one", func(s *script) {
			s.beat("one", nil)
			s.walk(mina, "M1", starting(when(s.reaches(otto, "M4"))))
			s.walk(otto, "M4", starting(when(s.reaches(mina, "M1"))))
			s.say(mina, "yes", starting(when(says(otto, "no"))))
			s.say(otto, "no", starting(when(says(mina, "yes"))))
		}, []string{
			"mina walks to M1 when otto reaches M4; otto walks to M4 when mina reaches M1",
			`mina says "yes" when otto says "no"; otto says "no" when mina says "yes"`,
		}},
		{"two that share a line: one, as mending it may mend both", func(s *script) {
			s.beat("one", nil)
			s.walk(mina, "M1", starting(when(s.reaches(otto, "M4"))))
			s.walk(otto, "M4", starting(when(s.reaches(mina, "M1"))))
			s.cue("dusk", 1, starting(when(s.reaches(mina, "M1"))))
			s.say(otto, "no", starting(when(cueFires("dusk"))))
		}, []string{"mina walks to M1 when otto reaches M4; otto walks to M4 when mina reaches M1"}},
		{"a beat that waits for its own end", func(s *script) {
			one := s.beat("one", nil)
			s.walk(mina, "M1", starting(when(beatEnds(one))))
		}, []string{`beat "one" ends with mina walks to M1; mina walks to M1 when "one" ends`}},
		{"a beat that waits for itself", func(s *script) {
			one := s.beat("one", nil)
			one.Start = when(beatEnds(one), 1)
			s.walk(mina, "M1")
		}, []string{`beat "one" when "one" ends, +1 s`}},
		{"a spin and its counter", func(s *script) {
			s.beat("one", nil)
			a := s.camera("A")
			s.line(a, "counters", &plan.Circle{Target: plan.Target{Thing: mina}, Counter: true})
			s.line(a, "circles", &plan.Circle{Target: plan.Target{Thing: mina}})
			s.cue("dusk", 1)
			s.line(mina, "spins", &plan.Spin{Angle: 180}, starting(when(beatEnds(s.p.Beats[0]))))
		}, []string{`beat "one" ends with mina spins 180° left; mina spins 180° left when "one" ends`}},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := newScript()
			row.build(s)
			c := solve(s, lengths{})
			var got []string
			for _, l := range c.Loops {
				got = append(got, l.String())
			}
			assert.Equal(t, row.want, got)
		})
	}
}

// Whatever a plan says, it is solved: every line has a finite time, ends no
// sooner than it starts, and a step of every loop is followed by what it waits
// for.
func TestAnyPlanIsSolved(t *testing.T) { rapid.Check(t, anyPlanIsSolved) }

func anyPlanIsSolved(t *rapid.T) {
	s := anyPlan(t, true)
	c := solve(s, anyLengths(t, s, 0))
	for i, a := range s.p.Actions {
		iv := c.Actions[i]
		if !(iv.Start >= 0) || !(iv.End >= iv.Start) || iv.End > 1e6 {
			t.Fatalf("%s: %v to %v", clock.Describe(a), iv.Start, iv.End)
		}
		if iv.Placed && c.Words(a) == "" {
			t.Fatalf("%s has no cue", clock.Describe(a))
		}
	}
	for _, l := range c.Loops {
		if len(l.Steps) == 0 {
			t.Fatal("a loop without a way around")
		}
		for _, step := range l.Steps {
			if step.Waits == "" {
				t.Fatalf("%s: a step that waits for nothing in %s", step, l)
			}
			if step.Action != nil && c.Of(step.Action).Placed {
				t.Fatalf("%s is in a loop and placed", step)
			}
		}
	}
	if again := solve(s, lengths{}); len(again.Loops) != len(c.Loops) {
		t.Fatal("loops depend on lengths")
	}
}

// anyPlan draws a plan of a few people over a few beats; with loops, its cues
// may wait for anything.
func anyPlan(t *rapid.T, loops bool) *script {
	s := newScript()
	who := []*plan.Person{person("mina"), person("otto"), person("ida")}
	cam := s.camera("A")
	var done []*plan.Action // lines that can be waited for
	moment := func() *plan.Moment {
		offset := float64(rapid.IntRange(0, 6).Draw(t, "offset")) / 4
		switch kind := rapid.IntRange(0, 5).Draw(t, "moment"); {
		case kind == 0:
			return plus(offset * 8)
		case kind == 1:
			return onClock(offset * 20)
		case len(done) == 0 || loops && kind == 2:
			p := rapid.SampledFrom(who).Draw(t, "whom")
			return when(s.reaches(p, fmt.Sprint("M", rapid.IntRange(0, 9).Draw(t, "place"))), offset)
		}
		a := rapid.SampledFrom(done).Draw(t, "line")
		switch d := a.Deed.(type) {
		case *plan.Move:
			stops := d.Path.Stops()
			stop := stops[rapid.IntRange(0, len(stops)-1).Draw(t, "stop")]
			return when(&plan.Event{Kind: plan.Reaches, Subject: a.Subject, Place: &stop}, offset)
		case *plan.Say:
			return when(says(a.Subject, "two"), offset)
		}
		return when(beatStarts(a.Beat), offset)
	}
	marks := 0
	for b := range rapid.IntRange(1, 4).Draw(t, "beats") {
		var start *plan.Moment
		if b > 0 && rapid.IntRange(0, 2).Draw(t, "stated") == 0 {
			start = moment()
		}
		s.beat(fmt.Sprint("beat ", b), start)
		for range rapid.IntRange(0, 7).Draw(t, "lines") {
			var opts []opt
			switch rapid.IntRange(0, 5).Draw(t, "start") {
			case 0, 1:
				opts = append(opts, starting(moment()))
			case 2:
				opts = append(opts, with)
			}
			p := rapid.SampledFrom(who).Draw(t, "who")
			var a *plan.Action
			switch rapid.IntRange(0, 5).Draw(t, "deed") {
			case 0:
				a = s.say(p, fmt.Sprintf("one two three m%d", marks), opts...)
			case 1:
				a = s.line(p, "waits", &plan.Stand{}, append(opts, until(moment()))...)
			case 2:
				a = s.line(cam, "sees", &plan.See{Targets: []plan.Target{{Thing: p}}}, opts...)
			default:
				// Marks of its own, so that which passing is meant is clear; with
				// loops now and then one of many.
				to := fmt.Sprintf("P%d Q%d", marks, marks)
				if loops && rapid.Bool().Draw(t, "shared") {
					to = fmt.Sprint("M", rapid.IntRange(0, 9).Draw(t, "to"))
				}
				a = s.walk(p, to, opts...)
			}
			marks++
			if _, see := a.Deed.(*plan.See); !see && a.Timing.Until == nil {
				done = append(done, a)
			}
		}
	}
	return s
}

func anyLengths(t *rapid.T, s *script, least int) lengths {
	l := lengths{}
	for _, a := range s.p.Actions {
		l[a] = float64(rapid.IntRange(least, 40).Draw(t, "length")) / 4
	}
	return l
}

func FuzzAnyPlan(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(anyPlanIsSolved))
}
