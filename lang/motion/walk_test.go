package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

// A trapezoid of speed from rest to rest takes L/v + v/a: 12/1.2 + 1.2/1.5.
func TestWalkTakesItsTime(t *testing.T) {
	p := play(t, `
set "Hall"
  mark M0 (0, 0)
  mark M1 (12, 0)
people
  performer mina height 1.66 m
beat "one"
  mina walks from M0 to M1 at 1.2 m/s
`)
	_, end := p.line("mina", 0)
	assert.InDelta(t, 10.8, float64(end), 1e-9)
	m := p.body("mina")
	assertAt(t, m, 0, 0, 0)
	assertAt(t, m, 5.4, 6, 0)
	assertAt(t, m, 10.8, 12, 0)
	assert.InDelta(t, 1.2, float64(m.Speed(5)), 1e-9)
	assert.InDelta(t, 0.6, float64(m.Speed(0.4)), 1e-9)
	assert.Equal(t, units.Metres(1.66), m.At(3).Height)
	assert.Zero(t, m.At(3).Heading)
	assert.Equal(t, 1, p.Rounds)
	assert.Equal(t, 260, p.Frames)
	assert.Empty(t, p.Jumps)
	assert.Empty(t, p.Problems)
}

func TestRidersTurnWithTheirCarrier(t *testing.T) {
	// A quarter round at 10 m from (0, 0), turning left about (0, 10).
	p := play(t, `
set "Yard"
  mark D0 (0, 0)
  mark C (0, 10)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina height 1.66 m
beat "one"
  van drives from D0 round C 90 deg left
  mina rides van at (1, 0.5)
  mina leaves van starting +20 s
`)
	m := p.body("mina")
	assertAt(t, m, 0, 1, 0.5)
	assertAt(t, m, 20, 9.5, 11) // the van at (10, 10), heading +y
	assert.InDelta(t, math.Pi/2, m.At(15).Heading, 1e-6)
	assert.InDelta(t, vehicleFloor, float64(m.At(5).Z), 1e-9)
	from, to := p.line("mina", 1)
	assert.InDelta(t, 1, float64(to-from), 1e-9)
	assertAt(t, m, to, 10-0.95-stepClear, 11) // on its left
	assert.Zero(t, m.At(to).Z)
	require.Len(t, p.Rides, 1)
	assert.Equal(t, from, p.Rides[0].To)
	assert.Equal(t, p.thing("van"), m.Carrier(3))
	assert.Nil(t, m.Carrier(to))
}
