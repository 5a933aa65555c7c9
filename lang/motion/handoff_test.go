package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

const yard = `
set "Yard"
  mark M0 (0, 0)
  mark M1 (8, 0)
  mark M2 (14, 3)
kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w24 24 mm stops T2 to T22 weighs 1.2 kg
  rig cart cart size 2.4 m x 1.2 m high 0.5 m seats 3
  rig vest body-rig
  rig arm crane reach 6 m seats 1
  rig pole jib reach 2.5 m
  rig hand gimbal
people
  performer mina height 1.7 m
  crew ida height 1.78 m
  crew joe height 1.8 m
beat "one"
  A takes w24 T2.8
  mina stands at M2
  mina stands until +30 s
  A sees mina
`

// assertSmooth finds jumps of a lens.
func assertSmooth(t *testing.T, c *CameraTrack, end, fastest float64) {
	t.Helper()
	const h = 0.01
	was := c.pupil(0)
	for at := h; at <= end; at += h {
		now := c.pupil(at)
		require.LessOrEqual(t, now.Dist(was), fastest*h, "at %.2f s", at)
		was = now
	}
}

func TestStepsOffACartWithTheCamera(t *testing.T) {
	p := play(t, yard+`
  cart drives from M0 to M1 at 2 m/s
  A on cart with ida up 1.6 m at (0.6, 0)
  handoff A from cart to vest at M1 when cart reaches M1 plus 0.5 s
  A follows mina by 3 m
`)
	a, ida := p.cam("A"), p.body("ida")
	require.Len(t, p.Handoffs, 1)
	h := p.Handoffs[0]
	assert.InDelta(t, 6, float64(h.End-h.Start), 1e-9, "what stepping off usually takes")
	assert.Zero(t, h.Moving)
	assert.True(t, h.StepsOff)
	assert.Equal(t, "cart", h.Left.Name)
	assert.InDelta(t, 0.6, float64(h.Off), 1e-6)
	assertLens(t, a, h.Start, 8.6, 0)
	assert.InDelta(t, 1.6, a.At(h.Start).Z, 1e-9)
	assert.InDelta(t, 1.45, a.At(h.End).Z, 1e-9)
	assert.Zero(t, ida.At(h.End).Z)
	off := math.Abs(float64(ida.At(h.End).Y))
	assert.InDelta(t, 0.6+stepClear, off, 1e-6, "beside the cart")
	assertSmooth(t, a, float64(p.Clock.Length), 2.2)
	// Camera and lens on the rig, both while it changes hands.
	require.Len(t, p.Loads, 2)
	assert.InDelta(t, 3.8, float64(p.Loads[0].Weight), 1e-9)
	assert.Equal(t, h.End, p.Loads[0].End)
	assert.Equal(t, h.Start, p.Loads[1].Start)
	require.Len(t, p.Carries, 1)
}

// The operator steps off the arm with the camera; somebody else's weight steps
// on.
func TestStepsOffACrane(t *testing.T) {
	p := play(t, yard+`
  arm stands at M0
  joe stands at (5.2, 1)
  A on arm with ida up 3.2 m at (4.5, 0)
  A lowers to 1.6 m in 12 s
  handoff A from arm to vest weight joe
  A leads mina by 2 m
`)
	a, ida, joe := p.cam("A"), p.body("ida"), p.body("joe")
	h := p.Handoffs[0]
	assert.Equal(t, p.thing("joe"), h.Weight)
	assert.True(t, h.StepsOff)
	assert.InDelta(t, 3.2-platformBelow, float64(ida.At(0).Z), 1e-6, "on the platform")
	assert.InDelta(t, 0.15, float64(ida.At(h.Start).Z), 1e-6)
	assert.Zero(t, ida.At(h.End).Z)
	assert.Equal(t, p.thing("arm"), joe.Carrier(h.End), "and stays on")
	assert.Equal(t, p.thing("arm"), joe.Carrier(p.Clock.Length))
	for _, r := range p.Rides {
		if r.Who == p.thing("joe") {
			assert.True(t, r.Weight)
		}
	}
	assertSmooth(t, a, float64(p.Clock.Length), 1.7)
	arm, ok := a.Arm(0)
	require.True(t, ok)
	assert.InDelta(t, 4.5, arm.Tip.X, 1e-9)
	assert.InDelta(t, 3.2, arm.Tip.Z, 1e-9)
	_, ok = a.Arm(h.End + 1)
	assert.False(t, ok)
}

// A jib's arm has one length: as it rises its end comes nearer the pivot.
func TestAJibSwingsOnItsReach(t *testing.T) {
	p := play(t, yard+`
  pole stands at M1
  A on pole up 1.4 m
  A rises to 3 m in 4 s
  A circles mina 40 deg left in 6 s
`)
	a := p.cam("A")
	for at := units.Seconds(0); at < 12; at += 0.1 {
		arm, ok := a.Arm(at)
		require.True(t, ok)
		assert.InDelta(t, 2.5, arm.Pivot.Dist(arm.Tip), 1e-6, "at %v", at)
	}
	require.NotEmpty(t, p.Armed, "it can't go all the way round her")
	assertSmooth(t, a, 12, 3)
}

func TestFromHandToHand(t *testing.T) {
	p := play(t, yard+`
  A on vest with ida
  ida stands at M0
  A follows mina by 3 m starting +1 s
  handoff A from vest to hand with joe starting +20 s
  A beside mina left 2 m
`)
	a := p.cam("A")
	h := p.Handoffs[0]
	assert.Equal(t, p.thing("ida"), h.Giver)
	assert.Equal(t, p.thing("joe"), h.Taker)
	assert.Less(t, float64(h.GapStart), 0.8, "joe waits beside her")
	assertSmooth(t, a, float64(p.Clock.Length), 2)
	assert.Equal(t, p.thing("ida"), p.body("vest").Carrier(25), "she keeps the empty rig on")
	assert.Equal(t, "hand", a.Rig(25).Name)
	assert.Equal(t, p.thing("joe"), a.Operator(25))
}
