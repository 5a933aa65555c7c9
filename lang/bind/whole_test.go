package bind

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/plan"
	"longhand/lang/units"
)

func readTestdata(t testing.TB, name string) string {
	text, err := os.ReadFile(filepath.Join(testdata, name))
	require.NoError(t, err)
	return string(text)
}

// TestWhole binds a whole plan without a mistake and holds what every line has
// come to.
func TestWhole(t *testing.T) {
	p := clean(t, readTestdata(t, "whole.take"))
	fit(t, p)
	var got []string
	for _, a := range p.Actions {
		got = append(got, fmt.Sprintf("%d %s %s: %s", a.Beat.Index, a.Who(), a.Verb, says(a)))
	}
	assert.Equal(t, strings.TrimSpace(`
0 van drives: Move from D0 to D1 at 3 m/s
0 mina rides: Ride van (0.3, 0.5)
0 otto rides: Ride van (0.3, -0.5)
0 mina says: Say 5 words
0 cart drives: Move from C0 to C1 when van leaves D0 +0.2 s at 3.1 m/s
0 A on: Mount cart with ida up 1.5 m at (0.6, 0)
0 A takes: Fit w24 T2.8
0 A sees: See mina, otto thigh
1 mina leaves: Leave van
1 mina walks: Move via M1 to M2 at 1.2 m/s
1 otto leaves: Leave van
1 otto walks: Move via M1 to M2 at 1.15 m/s
1  handoff: Handoff A cart to vest at C1
1 A follows: Keep mina 2.2 m
1 A sees: See mina knee
1 cart drives: Move to hideaway by +9 s
2 B hides: Hide pigeon card grey
2 B takes: Fit w24 T2.8
2 B sees: See mina, otto waist fifty-fifty
2 B rolls: Roll true
2 mina walks: Move via 1 m left of M3 to M3 at 1.1 m/s
2 otto walks: Move to 0.8 m right of M3 at 1.1 m/s
2 A circles: Circle otto 140° left at 2 m in 6 s
`), strings.Join(got, "\n"))

	require.Len(t, p.Beats, 3)
	assert.Nil(t, p.Beats[0].Start)
	assert.Equal(t, "van reaches D1", p.Beats[1].Start.Text)
	assert.Equal(t, "mina reaches M2", p.Beats[2].Start.Text)
	require.Len(t, p.PaintOuts, 1)
	assert.Equal(t, "A", p.PaintOuts[0].Thing.ID().Name)
	assert.Equal(t, "B", p.PaintOuts[0].Camera.Name)
	assert.Equal(t, "waist", p.Look.Tightest.Size)
	assert.NotNil(t, p.Look.NeverZoom)
	assert.Nil(t, p.Look.NeverModern)
	assert.Equal(t, units.Millimetres(24.9), p.Kit.Cameras[0].Width)
	assert.Equal(t, "hide", p.Kit.Rigs[2].Class)
	assert.Equal(t, plan.Range{High: 5}, p.Set.Walls[0].High)
	assert.Equal(t, units.Metres(0.1), p.Set.Walls[0].Thick)
	assert.True(t, p.Set.Doors[0].Open)
	assert.Same(t, p.Set.Walls[1], p.Set.Holes[0].Wall)
}

// says tells a deed and its timing in short.
func says(a *plan.Action) string {
	var b strings.Builder
	f := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	targets := func(list []plan.Target) string {
		var names []string
		for _, t := range list {
			names = append(names, t.Name())
		}
		return strings.Join(names, ", ")
	}
	f("%s", strings.TrimPrefix(fmt.Sprintf("%T", a.Deed), "*plan."))
	switch d := a.Deed.(type) {
	case *plan.Move:
		if d.Path.From != nil {
			f(" from %s", d.Path.From.Text)
		}
		for _, v := range d.Path.Via {
			f(" via %s", v.Text)
		}
		f(" to %s", d.Path.To.Text)
	case *plan.Ride:
		f(" %s (%v, %v)", d.Carrier.ID().Name, d.At.X, d.At.Y)
	case *plan.Say:
		f(" %d words", d.Words)
	case *plan.Mount:
		f(" %s with %s up %s at (%v, %v)", d.Rig.Name, d.With.Name, d.Up.Text(units.Metric), d.At.X, d.At.Y)
	case *plan.Fit:
		f(" %s %s", d.Lens.Name, d.Stop)
	case *plan.See:
		f(" %s %s", targets(d.Targets), d.Size)
		if d.Even {
			f(" fifty-fifty")
		}
	case *plan.Leave:
		f(" %s", d.Carrier.ID().Name)
	case *plan.Handoff:
		f(" %s %s to %s at %s", d.Camera.Name, d.From.Name, d.To.Name, d.At.Text)
	case *plan.Keep:
		f(" %s %s", d.Target.Name(), d.By.Text(units.Metric))
	case *plan.Hide:
		f(" %s card %s", d.Hole.Name, d.Card.Name)
	case *plan.Roll:
		f(" %v", d.On)
	case *plan.Circle:
		f(" %s %s %s at %s", d.Target.Name(), d.Angle, d.Turn, d.At.Text(units.Metric))
	}
	if s := a.Timing.Start; s != nil {
		f(" when %s %s +%s", s.Event.Subject.ID().Name, "leaves "+s.Event.Place.Text, s.Offset)
	}
	if a.Timing.In != nil {
		f(" in %s", *a.Timing.In)
	}
	if a.Timing.At != nil {
		f(" at %s", *a.Timing.At)
	}
	if a.Timing.By != nil {
		f(" by %s", a.Timing.By.Text)
	}
	return b.String()
}
