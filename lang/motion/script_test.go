package motion

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/bind"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// playing is a plan written as text and resolved.
type playing struct {
	*Tracks
	t    *testing.T
	plan *plan.Plan
}

func parse(t testing.TB, text string) *plan.Plan {
	t.Helper()
	files, found := bind.Load(func(string) (string, error) { return text, nil }, "test.take")
	require.Empty(t, found.Sorted(), "text")
	p, found := bind.Bind(files)
	require.Empty(t, found.Sorted(), "names")
	return p
}

func play(t *testing.T, text string) *playing {
	t.Helper()
	p := parse(t, text)
	return &playing{Resolve(context.Background(), p), t, p}
}

func (p *playing) thing(name string) plan.Thing {
	for _, who := range p.plan.People {
		if who.Name == name {
			return who
		}
	}
	for _, v := range p.plan.Kit.Vehicles {
		if v.Name == name {
			return v
		}
	}
	for _, r := range p.plan.Kit.Rigs {
		if r.Name == name {
			return r
		}
	}
	require.Fail(p.t, "no such thing", name)
	return nil
}

func (p *playing) body(name string) *Track {
	tr := p.Body(p.thing(name))
	require.NotNil(p.t, tr, name)
	return tr
}

func (p *playing) cam(name string) *CameraTrack {
	for _, c := range p.Cameras {
		if c.Camera.Name == name {
			return c
		}
	}
	require.Fail(p.t, "no such camera", name)
	return nil
}

// line is the interval of the n-th line, counted from 0, of a subject.
func (p *playing) line(name string, n int) (from, to units.Seconds) {
	for _, a := range p.plan.Actions {
		if a.Who() != name {
			continue
		}
		if n == 0 {
			iv := p.Clock.Of(a)
			return iv.Start, iv.End
		}
		n--
	}
	require.Fail(p.t, "no such line", name)
	return 0, 0
}

const mm = 1e-3

func assertAt(t *testing.T, tr *Track, at units.Seconds, x, y float64) {
	t.Helper()
	require.NotNil(t, tr)
	p := tr.At(at)
	assert.InDelta(t, x, float64(p.X), mm, "x at %v", at)
	assert.InDelta(t, y, float64(p.Y), mm, "y at %v", at)
}

func assertLens(t *testing.T, c *CameraTrack, at units.Seconds, x, y float64) {
	t.Helper()
	p := c.At(at)
	assert.InDelta(t, x, p.X, mm, "x at %v", at)
	assert.InDelta(t, y, p.Y, mm, "y at %v", at)
}
