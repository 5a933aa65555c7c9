package clock_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

func TestDescribe(t *testing.T) {
	s := newScript()
	mina, ida := person("mina"), crew("ida")
	van, cart := vehicle("van"), rig("cart", "cart")
	a := s.camera("A")
	door := &plan.Door{Ident: plan.Ident{Name: "dock"}}
	lens := &plan.Lens{Ident: plan.Ident{Name: "w24"}}
	angle, up := units.Degrees(90), units.Metres(2.5)
	m := plan.Target{Thing: mina}
	s.beat("one", nil)
	for _, row := range []struct {
		who  plan.Thing
		verb string
		deed plan.Deed
		want string
	}{
		{mina, "walks", &plan.Move{Path: plan.Path{To: s.place("M1")}}, "mina walks to M1"},
		{mina, "walks", &plan.Move{Path: plan.Path{Shape: plan.Round, Centre: *s.place("M1")}}, "mina walks round M1"},
		{mina, "runs", &plan.Move{Path: plan.Path{Shape: plan.Eight, Centre: *s.place("M1"), Other: *s.place("M2")}}, "mina runs an eight round M1, M2"},
		{mina, "walks", &plan.Move{}, "mina walks"},
		{mina, "stands", &plan.Stand{At: s.place("M1")}, "mina stands at M1"},
		{mina, "waits", &plan.Stand{}, "mina waits"},
		{mina, "turns", &plan.Turn{To: &plan.Target{Thing: van}}, "mina turns to van"},
		{mina, "turns", &plan.Turn{Angle: &angle}, "mina turns to 90°"},
		{mina, "spins", &plan.Spin{Angle: 180, Turn: plan.Right}, "mina spins 180° right"},
		{mina, "rides", &plan.Ride{Carrier: van}, "mina rides van"},
		{mina, "leaves", &plan.Leave{Carrier: van}, "mina leaves van"},
		{mina, "leaves", &plan.Leave{Carrier: van, To: s.place("M1")}, "mina leaves van to M1"},
		{ida, "boards", &plan.Board{Carrier: cart}, "ida boards cart"},
		{ida, "spots", &plan.Spot{Whom: crew("jon")}, "ida spots jon"},
		{mina, "kneels", &plan.Pose{Posture: "kneeling"}, "mina kneels"},
		{mina, "opens", &plan.Operate{Door: door, Open: true}, "mina opens dock"},
		{door, "opens", &plan.Operate{Door: door, Open: true}, "dock opens"},
		{mina, "says", &plan.Say{Text: "Wait."}, `mina says "Wait."`},
		{mina, "says", &plan.Say{Text: "The last collection was at six o'clock this evening."}, `mina says "The last collection was at six o'clock…"`},
		{a, "on", &plan.Mount{Rig: cart}, "A on cart"},
		{a, "takes", &plan.Fit{Lens: lens}, "A takes w24"},
		{a, "takes", &plan.Fit{}, "A takes"},
		{a, "sees", &plan.See{Targets: []plan.Target{m, {Place: s.place("M1")}}}, "A sees mina, M1"},
		{a, "follows", &plan.Keep{Target: m}, "A follows mina"},
		{a, "beside", &plan.Beside{Target: m}, "A beside mina"},
		{a, "circles", &plan.Circle{Target: m}, "A circles mina"},
		{a, "pushes", &plan.Travel{By: 1}, "A pushes"},
		{a, "rises", &plan.Lift{To: up}, "A rises"},
		{a, "pans", &plan.Swing{Angle: 90, Turn: plan.Left}, "A pans 90° left"},
		{a, "racks", &plan.Rack{To: &m}, "A racks to mina"},
		{a, "racks", &plan.Rack{Distance: &up}, "A racks"},
		{a, "hides", &plan.Hide{Hole: &plan.Hole{Ident: plan.Ident{Name: "pigeon"}}}, "A hides behind pigeon"},
		{a, "rolls", &plan.Roll{On: true}, "A rolls"},
		{nil, "handoff", &plan.Handoff{Camera: a, From: cart, To: rig("vest", "body-rig")}, "handoff A from cart to vest"},
		{nil, "cut", &plan.Cut{Camera: a}, "the cut to A"},
		{nil, "cue", &plan.Cue{Name: "dusk"}, "cue dusk"},
		{mina, "dances", nil, "mina dances"},
	} {
		got := s.line(row.who, row.verb, row.deed)
		assert.Equal(t, row.want, clock.Describe(got))
		assert.Equal(t, row.deed == nil, clock.FacultyOf(got.Deed) == clock.NoFaculty, row.want)
	}
	assert.Equal(t, "", clock.Describe(nil))
	c := solve(s, lengths{})
	assert.Equal(t, "", c.Words(&plan.Action{}), "not a line of the plan")
	assert.Equal(t, "", c.BeatWords(nil))
	assert.Equal(t, "feet", clock.Feet.String())
	assert.Equal(t, "nothing", clock.Faculty(99).String())
}

func TestCuesThatAreEvents(t *testing.T) {
	s := newScript()
	mina, van := person("mina"), vehicle("van")
	one := s.beat("one", nil)
	for _, row := range []struct {
		e    *plan.Event
		want string
	}{
		{s.reaches(mina, "M1"), "when mina reaches M1"},
		{s.leaves(mina, "M1"), "when mina leaves M1"},
		{leavesCarrier(mina, van), "when mina leaves van"},
		{says(mina, "six"), `when mina says "six"`},
		{cueFires("dusk"), "on cue dusk"},
		{beatStarts(one), `when "one" starts`},
		{beatEnds(one), `when "one" ends`},
		{beatEnds(nil), "when the beat ends"},
		{nil, ""},
	} {
		assert.Equal(t, row.want, clock.EventWords(row.e))
	}
}
