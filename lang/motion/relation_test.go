package motion

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/units"
)

const stage = `
set "Hall"
  mark M0 (0, 0)
  mark M1 (6, 3)
  mark M2 (12, 0)
  mark M3 (18, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w24 24 mm stops T2 to T22 weighs 1.2 kg
  rig vest body-rig
  rig dolly dolly
people
  performer mina height 1.7 m
  crew ida height 1.78 m
  crew bo height 1.8 m
beat "one"
  A takes w24 T2.8
`

// Where she walked, an operator can walk: the camera is on her own way, so far
// behind her along it.
func TestFollowsStaysOnTheTargetsPath(t *testing.T) {
	p := play(t, stage+`
  mina walks from M0 via M1 to M2 at 0.9 m/s
  A on vest with ida
  A follows mina by 2 m
  A sees mina
`)
	m, a := p.body("mina"), p.cam("A")
	path := m.Segments[0].Path
	require.NotNil(t, path)
	assertLens(t, a, 0, -2*path.Tangent(0).X, -2*path.Tangent(0).Y)
	end := float64(p.Clock.Length)
	for at := 0.0; at < end; at += 0.05 {
		v := a.At(units.Seconds(at))
		s, off := path.Nearest(geom.Vec{X: v.X, Y: v.Y})
		gone := float64(m.Segments[0].Profile.At(units.Seconds(at)))
		if gone > 2 {
			assert.InDelta(t, 0, off, 1e-6)
			assert.InDelta(t, gone-2, s, 1e-6)
		}
	}
	require.Len(t, p.Joins, 1)
	assert.True(t, p.Joins[0].InPlace)
	assert.Empty(t, p.Backing)
}

func TestLeadingOperatorWalksBackwards(t *testing.T) {
	p := play(t, stage+`
  mina walks from M0 to M2 at 0.9 m/s
  A on vest with ida
  A leads mina by 2.1 m
  A sees mina waist
  bo spots ida
`)
	a, ida, bo := p.cam("A"), p.body("ida"), p.body("bo")
	_, end := p.line("mina", 0)
	assertLens(t, a, 0, 2.1, 0)
	assertLens(t, a, end, 14.1, 0)
	assert.InDelta(t, math.Pi, math.Abs(ida.At(5).Heading), 1e-6, "she faces who she leads")
	assert.InDelta(t, math.Pi, math.Abs(a.At(5).Pan), 1e-6)
	require.Len(t, p.Backing, 1)
	b := p.Backing[0]
	assert.InDelta(t, 12, float64(b.Length), 0.1)
	assert.InDelta(t, 0.9, float64(b.Peak), 1e-3)
	assert.Equal(t, p.thing("bo"), b.Spotter)
	// The spotter walks behind her back: further along than she is.
	assert.InDelta(t, float64(ida.At(5).X)+spotBehind, float64(bo.At(5).X), 1e-3)
}

func TestBesideIsInTheTargetsFrame(t *testing.T) {
	p := play(t, stage+`
  mina walks from M0 to M2 at 1 m/s
  A on dolly
  A beside mina left 3 m
`)
	assertLens(t, p.cam("A"), 0, 0, 3)
	assertLens(t, p.cam("A"), 6, float64(p.body("mina").At(6).X), 3)
}

// Somebody who turns about doesn't fling the camera round: it takes its time.
func TestBesideIsNotFlung(t *testing.T) {
	p := play(t, stage+`
  mina stands at M0
  mina turns to 180 deg starting +2 s in 1 s
  mina stands until +12 s
  A on vest with ida
  A beside mina left 2 m
`)
	a := p.cam("A")
	assertLens(t, a, 0, 0, 2)
	assertLens(t, a, 12, 0, -2)
	fastest := 0.0
	for at := units.Seconds(0); at < 12; at += 0.02 {
		v := a.At(at)
		assert.InDelta(t, 2, math.Hypot(v.X, v.Y), 1e-6)
		fastest = math.Max(fastest, float64(a.Speed(at)))
	}
	assert.InDelta(t, 1.1, fastest, 0.02, "no faster than a body rig usually goes")
}

func TestJoiningTakesRealTime(t *testing.T) {
	p := play(t, stage+`
  ida stands at M3
  mina stands at M0
  mina stands until +24 s
  A on vest with ida
  A follows mina by 2 m starting +1 s
`)
	a := p.cam("A")
	assertLens(t, a, 1, 18, 0)
	require.Len(t, p.Joins, 1)
	j := p.Joins[0]
	assert.InDelta(t, 20, float64(j.Gap), 1e-9)
	assert.LessOrEqual(t, float64(j.Peak), 1.1+1e-6)
	// L/v + v/2a to gather speed and v/2b to lose it, more gently.
	assert.InDelta(t, 1+20/1.1+1.1/2/0.8+1.1/2/(chaseEasy*0.8), float64(j.Done), 0.2)
	assert.False(t, j.Cut)
	assertLens(t, a, j.Done, -2, 0)
	for at := units.Seconds(0); at < 24; at += 0.02 {
		assert.LessOrEqual(t, float64(a.Speed(at)), 1.1+1e-3)
	}
}

func TestCircleKeepsItsDistance(t *testing.T) {
	p := play(t, stage+`
  mina stands at M0
  ida stands at (2, 0)
  A on vest with ida
  A circles mina 140 deg left at 2 m in 6 s
  A sees mina
`)
	a := p.cam("A")
	for at := units.Seconds(0); at <= 6; at += 0.1 {
		v := a.At(at)
		assert.InDelta(t, 2, math.Hypot(v.X, v.Y), 1e-6)
		assert.InDelta(t, 0, math.Abs(geom.AngleDiff(math.Atan2(-v.Y, -v.X), v.Pan)), 1e-6)
	}
	v := a.At(6)
	assert.InDelta(t, 140, math.Atan2(v.Y, v.X)*180/math.Pi, 1e-6)
	assert.InDelta(t, 0, float64(a.Speed(6)), 1e-2)
}

// Counter to her spin the camera goes round the other way, as far as she turns
// and as fast, and looks at her all the while.
func TestCounterGoesAgainstTheSpin(t *testing.T) {
	p := play(t, stage+`
  mina stands at M0
  mina spins 300 deg left in 12 s
  A on vest with ida
  A counters mina at 2 m
  A sees mina
`)
	a, m := p.cam("A"), p.body("mina")
	first := m.At(0).Heading
	for at := units.Seconds(0); at <= 12; at += 0.1 {
		v, turned := a.At(at), m.At(at).Heading-first
		assert.InDelta(t, 2*math.Cos(first-turned), v.X, 1e-6)
		assert.InDelta(t, 2*math.Sin(first-turned), v.Y, 1e-6)
		assert.InDelta(t, 0, geom.AngleDiff(math.Atan2(-v.Y, -v.X), v.Pan), 1e-6, "looks at her")
	}
	assert.InDelta(t, -60, m.At(12).Heading*180/math.Pi, 1e-6)
	assert.InDelta(t, 300*math.Pi/180*2/12*1.5, p.peak(t, "ida", Speed), 0.02)
}

func TestPushGoesTowardsWhatIsSeen(t *testing.T) {
	p := play(t, stage+`
  mina stands at M2
  dolly stands at M0
  A on dolly at (0, 0)
  A sees mina
  A pushes 3 m
  A pulls 1 m in 4 s
`)
	_, end := p.line("A", 3)
	assertLens(t, p.cam("A"), end, 3, 0)
	// L/v + v/a of a dolly: 3/0.75 + 0.75/0.5
	assert.InDelta(t, 5.5, float64(end), 1e-9)
	assertLens(t, p.cam("A"), end+4, 2, 0)
	assert.InDelta(t, 0, p.body("dolly").At(end+4).Heading, 1e-9)
}

// peak is the most that a subject's lines ask for of a quantity.
func (p *playing) peak(t *testing.T, name string, q Quantity) float64 {
	most := math.Inf(-1)
	for _, d := range p.Demands {
		if d.Subject == p.thing(name) && d.Quantity == q {
			most = math.Max(most, d.Peak)
		}
	}
	require.False(t, math.IsInf(most, -1), "no such demand")
	return most
}

// A hidden lens is behind the wall from where its target is when it rolls, not
// from where the target was when nobody looked.
func TestAHiddenLensIsBehindItsHoleOnceItRolls(t *testing.T) {
	p := play(t, `take "Behind"
  rate 24 fps
set "Room"
  wall panel (0, 4) (8, 4) high 3 m
  hole eye on panel at 5 m up 1.45 m wide 120 mm
  mark M0 (-2, 8)
  mark M1 (-2, 4)
  mark M2 (5, 1)
kit
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm
people
  performer mina
beat "Come in"
  B hides behind eye
  B takes w35
  B sees mina
  mina walks from M0 via M1 to M2 at 1 m/s
  B rolls when mina reaches M2
`)
	v := p.cam("B").At(0)
	assert.Greater(t, v.Y, 4.0, "she is south of the wall when it rolls")
}

// Who is followed may be called away in the middle of a move; the trail is where
// they really went.
func TestFollowsWhoIsCalledAway(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to M2 at 1 m/s
  mina walks to (6, 9) starting +4 s at 1 m/s
`+"")
	q := play(t, strings.Replace(hall, "kit\n", "kit\n  camera A sensor 24.9 mm x 14 mm\n  lens w35 35 mm\n  rig wand gimbal\n", 1)+`
  mina walks from M0 to M2 at 1 m/s
  mina walks to (6, 9) starting +4 s at 1 m/s
  A on wand with otto
  A takes w35
  A follows mina by 2 m
  A sees mina
`)
	_, end := p.line("mina", 1)
	for at := units.Seconds(0); at < end; at += 0.25 {
		assert.Equal(t, p.body("mina").At(at).Point(), q.body("mina").At(at).Point())
		assert.InDelta(t, 2, q.body("otto").At(at).Point().Dist(q.body("mina").At(at).Point()), 0.5, "2 m along the trail, less across its corner, at %v", at)
	}
}
