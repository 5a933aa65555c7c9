package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
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

// bearing is the direction on paper from one point to another, by atan2 alone.
func bearing(x, y, tox, toy float64) float64 { return math.Atan2(toy-y, tox-x) }

func TestStandsFacing(t *testing.T) {
	p := play(t, hall+`
  mina walks from M1 to M2 at 1 m/s
  otto stands at M0 facing mina
  cart stands at C facing M0
  van stands at (20, 20) facing mina
beat "two"
  otto stands facing C for 3 s
  otto walks to (0, 6) facing M1
`)
	assert.InDelta(t, bearing(0, 3, 0, 0), p.body("cart").At(0).Heading, 1e-9, "a rig is set down that way")
	assert.InDelta(t, bearing(20, 20, 6, 3), geom.AngleDiff(0, p.body("van").At(0).Heading), 1e-9)
	assert.Equal(t, p.body("van").At(0).Heading, p.body("van").At(5).Heading, "a vehicle doesn't turn on the spot after her")
	otto, mina := p.body("otto"), p.body("mina")
	_, end := p.line("mina", 0)
	for at := units.Seconds(0); at <= end; at += 0.5 {
		m := mina.At(at).Point()
		assert.InDelta(t, bearing(0, 0, m.X, m.Y), otto.At(at).Heading, 0.02, "at %v", at)
	}
	assert.InDelta(t, bearing(0, 0, 0, 3), otto.At(end+2.5).Heading, 1e-6, "and to the next, and stays so")
}

// Who goes sideways from the first frame on doesn't first look ahead.
func TestBeginsFacing(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to M2 facing M1
`)
	assert.InDelta(t, bearing(0, 0, 6, 3), p.body("mina").At(0).Heading, 1e-9)
}

// Where on its carrier somebody is, as the text says: ahead of its middle and to
// its left; on a crane, of the platform at the end of its arm, here 4.5 m out.
func TestPlacesAboard(t *testing.T) {
	p := play(t, `
set "Yard"
  mark M0 (0, 0)
  mark K0 (10, 0)
kit
  rig cart cart size 2.4 m x 1.2 m high 0.5 m
  rig lift crane reach 6 m seats 3
people
  performer mina
  crew ida
  crew jon
  crew nils
beat "one"
  cart stands at M0
  lift stands at K0
  nils stands at (0, 1)
  nils boards cart at (0.6, 0.2)
  ida rides lift
  jon rides lift at (-0.3, 0.4)
  mina stands at M0 + (0, 5) for 6 s
`)
	assertAt(t, p.body("nils"), 6, 0.6, 0.2)
	assertAt(t, p.body("ida"), 6, 10+4.5-0.4, 0)
	assertAt(t, p.body("jon"), 6, 10+4.5-0.3, 0.4)
}

// A way goes to where a place on it is told from the way, and not on to what it
// is told from: 1 m short of (6, 0) from (0, 0), and 2 m past it.
func TestWayThroughPlacesToldFromIt(t *testing.T) {
	p := play(t, hall+`
  mina walks straight from M0 via 1 m before (6, 0) to (5, 4) at 1 m/s
  otto walks straight from (0, 9) via 2 m after (6, 9) to (8, 14) at 1 m/s
`)
	mina, otto := p.body("mina").Segments[0].Path, p.body("otto").Segments[0].Path
	assert.InDelta(t, 5+4, mina.Length(), 1e-9)
	assert.InDelta(t, 8+5, otto.Length(), 1e-9)
	for s := 0.0; s < 9; s += 0.1 {
		require.LessOrEqual(t, mina.At(s).X, 5+1e-9)
	}
}

// A height that a line gives to a place on a floor that isn't there is a jump,
// at its end and on the way.
func TestHeightsWithoutAFloor(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to (5, 0, 1.5)
  otto walks from (0, 3) via (3, 3, 2) to (5, 3)
`)
	require.Len(t, p.Jumps, 2)
	for i, gap := range []float64{2, 1.5} {
		assert.InDelta(t, gap, float64(p.Jumps[i].Gap), 1e-9)
	}
}

// Who faces somebody that passes close by turns no faster than a body does,
// 360 deg/s, in any frame, the turn to them included.
func TestFacesWhoPassesCloseBy(t *testing.T) {
	var texts []string
	for _, start := range []string{"2.9", "3", "3.1", "3.2", "3.3", "3.4"} {
		texts = append(texts, "mina walks from (-6, 0.1) to (6, 0.1) at 1.9 m/s\notto stands at (0, -0.2)\notto turns to 320 deg starting +1 s\notto stands facing mina starting +"+start+" s\n",
			"mina walks from (-6, 0.1) to (6, 0.1) at 1.9 m/s\notto stands at (0, -0.2)\notto turns to 0 deg starting +1 s\notto stands facing mina starting +"+start+" s\n",
			"mina walks from (-6, 0.1) to (6, 0.1) at 1.9 m/s\notto walks from (8, -0.2) to (-6, -0.2) at 1.9 m/s facing mina starting +"+start+" s\n")
	}
	for _, text := range texts {
		p := play(t, hall+text)
		otto, was := p.body("otto"), 0.0
		for k := 0; k < p.Frames; k++ {
			at := p.Rate.Time(units.Frame(k))
			now := otto.At(at).Heading
			if k > 0 {
				assert.LessOrEqual(t, math.Abs(geom.AngleDiff(was, now))*24*180/math.Pi, 361.0, "%s at %v", text, at)
			}
			was = now
		}
	}
}
