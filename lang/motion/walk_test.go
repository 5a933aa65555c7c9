package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/plan"
	"longhand/lang/units"
)

const mm = 1e-3

func assertAt(t *testing.T, tr *Track, at units.Seconds, x, y float64) {
	t.Helper()
	require.NotNil(t, tr)
	p := tr.At(at)
	assert.InDelta(t, x, float64(p.X), mm, "x at %v", at)
	assert.InDelta(t, y, float64(p.Y), mm, "y at %v", at)
}

// A trapezoid of speed from rest to rest takes L/v + v/a: 12/1.2 + 1.2/1.5.
func TestWalkTakesItsTime(t *testing.T) {
	s := newScript()
	s.mark("M0", 0, 0)
	s.mark("M1", 12, 0)
	mina := s.performer("mina", 1.66)
	a := s.walk(mina, []string{"M1"}, from(s, "M0"), paced(1.2))
	tr := s.resolve()
	iv := tr.Clock.Of(a)
	assert.InDelta(t, 10.8, float64(iv.End), 1e-9)
	m := tr.Body(mina)
	assertAt(t, m, 0, 0, 0)
	assertAt(t, m, 5.4, 6, 0)
	assertAt(t, m, 10.8, 12, 0)
	assert.InDelta(t, 1.2, float64(m.Speed(5)), 1e-9)
	assert.InDelta(t, 0.6, float64(m.Speed(0.4)), 1e-9)
	assert.Equal(t, units.Metres(1.66), m.At(3).Height)
	assert.Zero(t, m.At(3).Heading)
	assert.Equal(t, 1, tr.Rounds)
	assert.Equal(t, 260, tr.Frames)
	assert.Empty(t, tr.Jumps)
	assert.Empty(t, tr.Problems)
}

func TestRidersTurnWithTheirCarrier(t *testing.T) {
	s := newScript()
	s.mark("D0", 0, 0)
	van := s.vehicle("van", 4.6, 1.9)
	mina := s.performer("mina", 1.66)
	// A quarter round at 10 m from (0, 0), turning left about (0, 10).
	s.line(van, &plan.Move{Path: plan.Path{Shape: plan.Round, From: s.at("D0"),
		Centre: plan.Place{Point: v(0, 10)}, Angle: 90, Turn: plan.Left}})
	s.line(mina, &plan.Ride{Carrier: van, At: v(1, 0.5)})
	leave := s.line(mina, &plan.Leave{Carrier: van}, after(20))
	tr := s.resolve()
	m := tr.Body(mina)
	assertAt(t, m, 0, 1, 0.5)
	assertAt(t, m, 20, 9.5, 11) // the van at (10, 10), heading +y
	assert.InDelta(t, math.Pi/2, m.At(15).Heading, 1e-6)
	assert.InDelta(t, vehicleFloor, float64(m.At(5).Z), 1e-9)
	iv := tr.Clock.Of(leave)
	assert.InDelta(t, 1, float64(iv.Length()), 1e-9)
	assertAt(t, m, iv.End, 10-0.95-stepClear, 11) // on its left
	assert.Zero(t, m.At(iv.End).Z)
	require.Len(t, tr.Rides, 1)
	assert.Equal(t, iv.Start, tr.Rides[0].To)
	assert.Equal(t, plan.Thing(van), m.Carrier(3))
	assert.Nil(t, m.Carrier(iv.End))
}
