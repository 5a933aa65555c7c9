package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/units"
)

const room = `
take "Test"
  aspect 1.85
set "Hall"
  wall back (0, 5) (10, 5) high 4 m thick 0.2 m
  hole pigeon on back at 4 m up 1.45 m wide 90 mm
  mark M0 (0, 0)
  mark M1 (5, 0)
  mark M2 (5, 2)
  mark M3 (5, -2)
kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  camera B sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w24 24 mm stops T2 to T22 weighs 1.2 kg
  lens zoom 24 mm to 70 mm stops T2.8 to T22 weighs 2 kg
  rig legs sticks
  rig vest body-rig
  rig rackhide hide
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina height 1.7 m
  performer otto height 1.8 m
  crew ida height 1.78 m
beat "one"
  legs stands at M0
  A on legs up 1.5 m
`

// project is where a point falls in a camera's frame, in fractions of it.
func project(t *testing.T, c *CameraTrack, at units.Seconds, p geom.Vec3) (x, y float64) {
	t.Helper()
	v := c.At(at)
	view := optics.View{
		At:  geom.Vec3{X: v.X, Y: v.Y, Z: v.Z},
		Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt),
		Focal: units.Millimetres(v.Focal),
	}
	image, ok := view.Project(p)
	require.True(t, ok)
	return c.Frame.Fraction(image)
}

// A head a third of the frame's height below its top: the rule of thirds of any
// handbook of composition (common practice, no source).
func TestHeadsSitAThirdBelowTheTop(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina waist
  mina stands at M1
`)
	a := p.cam("A")
	head := 1.7 * (1 - headMiddle)
	x, y := project(t, a, 0, geom.Vec3{X: 5, Z: head})
	assert.InDelta(t, 0.5, x, 1e-9)
	assert.InDelta(t, 2.0/3, math.Max(y, 1-y), 1e-9)
	// The middle between the bearing extremes of two.
	p = play(t, room+`
  A takes w24 T2.8
  A sees mina, otto
  mina stands at M2
  otto stands at M3
`)
	assert.InDelta(t, 0, p.cam("A").At(0).Pan, 1e-9)
}

// A whole person asked for is a whole person: the feet stay in.
func TestAFullShotKeepsTheFeet(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina full
  mina stands at (3.7, 0)
`)
	_, feet := project(t, p.cam("A"), 0, geom.Vec3{X: 3.7})
	_, top := project(t, p.cam("A"), 0, geom.Vec3{X: 3.7, Z: 1.7})
	assert.InDelta(t, 1, math.Abs(feet-0.5)+0.5+body.Full.Cut().FootRoom, 0.01)
	assert.Less(t, math.Abs(top-0.5), 0.5)
}

// A change of target takes a real pan: no jump, and no faster than is usual on
// the rig.
func TestAChangeOfTargetIsAPan(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina
  mina stands at M2
  otto stands at M3
  otto stands until +8 s
  A sees otto starting +2 s
`)
	a := p.cam("A")
	angle := math.Atan2(2, 5)
	assert.InDelta(t, angle, a.At(2).Pan, 1e-9)
	assert.InDelta(t, -angle, a.At(8).Pan, 1e-9)
	require.Len(t, a.Aims, 2)
	assert.Greater(t, float64(a.Aims[1].Done), 2.5)
	usual := units.Degrees(a.Holds[0].Limits.Pan.Typical).Radians()
	was := a.At(0)
	for at := units.Seconds(0.01); at < 8; at += 0.01 {
		now := a.At(at)
		assert.LessOrEqual(t, math.Abs(now.Pan-was.Pan)/0.01, usual*1.001)
		assert.Less(t, math.Abs(now.Focus-was.Focus), 0.05)
		was = now
	}
}

func TestSwingComesOnTopOfTheAim(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina
  mina stands at M1
  mina stands until +8 s
  A pans 30 deg left in 2 s
  A tilts 10 deg down in 1 s
`)
	a := p.cam("A")
	assert.InDelta(t, 0, a.At(0).Pan, 1e-9)
	assert.InDelta(t, 15*math.Pi/180, a.At(1).Pan, 1e-9)
	assert.InDelta(t, 30*math.Pi/180, a.At(2).Pan, 1e-9)
	assert.InDelta(t, a.At(0).Tilt-10*math.Pi/180, a.At(3).Tilt, 1e-9)
	for _, d := range p.LensDemands() {
		if d.Quantity == PanRate { // minimum jerk: 15/8 of the mean
			assert.InDelta(t, 15*1.875, d.Peak, 0.1)
		}
	}
}

func TestFocusIsOnTheFace(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina, otto
  mina stands at M1
  otto stands at M2
  otto stands until +9 s
  A racks to otto starting +2 s in 1 s
  A racks to 3 m starting +5 s in 1 s
`)
	a := p.cam("A")
	axial := func(at units.Seconds, q geom.Vec3) float64 {
		v := a.At(at)
		axis := geom.Vec3{X: math.Cos(v.Pan) * math.Cos(v.Tilt), Y: math.Sin(v.Pan) * math.Cos(v.Tilt), Z: math.Sin(v.Tilt)}
		return q.Sub(geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}).Dot(axis)
	}
	eyes := func(stature float64) float64 { return stature * body.EyeFraction }
	assert.InDelta(t, axial(1, geom.Vec3{X: 5, Z: eyes(1.7)})-faceDepth, a.At(1).Focus, 1e-9)
	assert.InDelta(t, axial(4, geom.Vec3{X: 5, Y: 2, Z: eyes(1.8)})-faceDepth, a.At(4).Focus, 1e-9)
	assert.InDelta(t, 3, a.At(7).Focus, 1e-9)
}

func TestHiddenLensIsBehindItsWall(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina
  mina stands at M1
  B hides behind pigeon
  B takes w24 T2.8
  B sees mina
`)
	v := p.cam("B").At(0)
	assert.InDelta(t, 4, v.X, 1e-9)
	assert.InDelta(t, 5+0.1+pupilBehind, v.Y, 1e-9, "30 mm behind the back face")
	assert.InDelta(t, 1.45, v.Z, 1e-9)
	assert.Nil(t, p.cam("B").Rig(0))
	assert.NotNil(t, p.cam("B").Hold(0).Hide)
}

func TestLensHeightsAndZooms(t *testing.T) {
	p := play(t, room+`
  A takes zoom 24 mm T4
  A sees mina
  mina stands at M1
  mina stands until +20 s
  ida stands at M3
  B on vest with ida
  B takes w24 T2.8
  B sees mina
  B rises to 1.75 m starting +2 s in 3 s
  A takes zoom 54 mm starting +4 s
`)
	a, b := p.cam("A"), p.cam("B")
	assert.InDelta(t, 1.5, a.At(0).Z, 1e-9)
	assert.InDelta(t, 1.45, b.At(1).Z, 1e-9, "a body rig's usual height")
	assert.InDelta(t, 1.6, b.At(3.5).Z, 1e-9)
	assert.InDelta(t, 1.75, b.At(6).Z, 1e-9)
	assert.InDelta(t, 24, a.At(3).Focal, 1e-9)
	assert.InDelta(t, 36, a.At(4.5).Focal, 1e-9, "half way by parts: √(24·54)")
	assert.InDelta(t, 54, a.At(6).Focal, 1e-9)
	assert.EqualValues(t, 4, a.Stop(6))
	assert.True(t, a.Zooming(4.5))
	for _, d := range p.LensDemands() {
		if d.Quantity == RiseRate {
			assert.InDelta(t, 0.15, d.Peak, 1e-9, "3/2 of the mean")
			assert.False(t, d.Over())
		}
		if d.Quantity == LensHigh {
			assert.False(t, d.Over())
		}
	}
}

// A zoom that another cuts short goes on from where it is.
func TestAZoomCutShort(t *testing.T) {
	p := play(t, room+`
  A takes zoom 24 mm T4
  A sees mina
  mina stands at M1
  mina stands until +20 s
  A takes zoom 54 mm starting +10 s
  A takes zoom 24 mm starting +10.5 s
`)
	a := p.cam("A")
	assert.InDelta(t, 36, a.At(10.5).Focal, 0.1, "half way, by equal parts: √(24·54)")
	assert.InDelta(t, a.At(10.499).Focal, a.At(10.501).Focal, 0.2)
	assert.InDelta(t, 24, a.At(12).Focal, 1e-9)
}

func TestRollsAndCuts(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina
  mina stands at M1
  mina stands until +10 s
  B hides behind pigeon
  B takes w24 T2.8
  B sees mina
  B rolls starting +2 s
  B rests starting +6 s
  cut to A
  cut to B starting +3 s
`)
	a, b := p.cam("A"), p.cam("B")
	assert.True(t, a.Rolling(0))
	assert.True(t, a.Rolling(10), "the last frame, too")
	assert.False(t, b.Rolling(1.9))
	assert.True(t, b.Rolling(2))
	assert.False(t, b.Rolling(6))
	require.Len(t, p.Cuts, 2)
	assert.Equal(t, b.Camera, p.Cuts[1].Camera)
	assert.EqualValues(t, 3, p.Cuts[1].At)
}

// Somebody who walks right past, or through, the lens doesn't fling it round: it
// turns as fast as the head goes, and the plan is told what it would have needed.
func TestALensIsNotFlungRound(t *testing.T) {
	p := play(t, room+`
  A takes w24 T2.8
  A sees mina
  mina walks from (4, 0.02) to (-4, 0.02) at 1.5 m/s
  mina stands until +14 s
`)
	a := p.cam("A")
	limit := units.Degrees(a.Holds[0].Limits.Pan.Hard).Radians()
	was := a.At(0)
	for at := units.Seconds(0.01); at < 14; at += 0.01 {
		now := a.At(at)
		assert.LessOrEqual(t, math.Abs(geom.AngleDiff(was.Pan, now.Pan))/0.01, limit*1.01, "at %v", at)
		was = now
	}
	assert.InDelta(t, math.Pi, math.Abs(a.At(14).Pan), 0.02, "it has caught up")
	worst := 0.0
	for _, d := range p.LensDemands() {
		if d.Quantity == PanRate {
			worst = math.Max(worst, d.Peak)
			assert.True(t, d.Over())
		}
	}
	assert.Greater(t, worst, 1000.0)
}

const longTake = `
set "Hall"
  mark M0 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens zoom 20 mm to 80 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  performer otto
  crew ida
beat "one" for 20 s
  mina stands at (5, 5)
  otto stands at (5, -5)
  legs stands at M0
  A on legs with ida
  A takes zoom 20 mm T2
  A sees mina
beat "two" for 20 s
`

// A pan to the next subject takes the time its line gives.
func TestPanInATime(t *testing.T) {
	for text, want := range map[string]float64{"A sees otto in 8 s": 8, "A sees otto in 2.5 s": 2.5} {
		a := play(t, longTake+text).cam("A")
		require.Len(t, a.Aims, 2)
		assert.InDelta(t, want, float64(a.Aims[1].Done-a.Aims[1].Start), 1e-9, text)
		from, mid, to := a.At(20), a.At(units.Seconds(20+want/2)), a.At(units.Seconds(20+want))
		assert.InDelta(t, math.Atan2(5, 5), from.Pan, 0.03, text)
		assert.InDelta(t, 0, mid.Pan, 0.03, text)
		assert.InDelta(t, -math.Atan2(5, 5), to.Pan, 0.03, text)
	}
}

// A zoom and a pull of the stop go by equal parts of themselves over the time
// their line gives: half-way from 20 to 80 mm is 40 mm, from T2 to T8 T4.
func TestZoomAndPullInATime(t *testing.T) {
	a := play(t, longTake+"A takes zoom 80 mm T8 in 6 s").cam("A")
	assert.InDelta(t, 40, a.At(23).Focal, 1e-6)
	assert.InDelta(t, 4, float64(a.Stop(23)), 1e-6)
	assert.InDelta(t, 8, float64(a.Stop(26.1)), 1e-6)
	assert.True(t, a.Zooming(25.5))
	assert.False(t, a.Zooming(26.5))
	at := play(t, longTake+"A takes zoom T8").cam("A")
	assert.InDelta(t, 8, float64(at.Stop(20)), 1e-6, "without a time it is pulled at once")
}

// A line with a length is over after it.
func TestRollsForATime(t *testing.T) {
	for _, c := range []struct {
		text string
		want [][2]float64
	}{
		{"A rests", [][2]float64{{0, 20}}},
		{"A rests for 5 s", [][2]float64{{0, 20}, {25, 40}}},
		{"A rolls for 5 s", [][2]float64{{20, 25}}},
		{"A rolls for 5 s\nA rolls starting +12 s for 3 s", [][2]float64{{20, 25}, {32, 35}}},
		{"A rests for 5 s\nA rests starting +12 s until +14 s", [][2]float64{{0, 20}, {25, 32}, {34, 40}}},
		{"A rolls until 0:30", [][2]float64{{20, 30}}},
	} {
		a := play(t, longTake+c.text).cam("A")
		require.Len(t, a.Rolls, len(c.want), c.text)
		for i, w := range c.want {
			assert.InDelta(t, w[0], float64(a.Rolls[i].From), 1e-5, c.text)
			assert.InDelta(t, w[1], float64(a.Rolls[i].To), 1e-5, c.text)
		}
	}
}
