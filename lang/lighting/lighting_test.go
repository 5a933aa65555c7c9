package lighting_test

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/bind"
	"longhand/lang/geom"
	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/motion"
	"longhand/lang/plan"
)

func of(t *testing.T, text string) (*lighting.Lighting, *plan.Plan) {
	t.Helper()
	files, bag := bind.Load(func(string) (string, error) { return text, nil }, "plan.take")
	p, more := bind.Bind(files)
	require.Zero(t, bag.Errors()+more.Errors(), "%v %v", bag.Sorted(), more.Sorted())
	return lighting.Of(p, motion.Resolve(context.Background(), p).Clock), p
}

const hall = `take "Hall"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 4) (0, 4) high 5 m points 40
  supply mains 230 V 63 A x 2
  mark M1 (4, 2)
  place key at (0, 6.096) up 2 m
kit
  lamp big 6000 W
  lamp bigger 8000 W 20000 cd
  lamp key 1000 W 20000 cd
  wash early big x 1 on flies
  wash late bigger x 1 on flies
people
  performer mina
beat "One"
  mina stands at M1 in 20 s
  cue first early 100 % over 0 s
  cue cross early 0 %, late 100 % over 10 s starting +2 s
`

// ELE-8: 6 kW go down as 8 kW come up, evenly over 10 s: 6.6 kW after 3 s, at the
// most 8 kW (power in proportion to level).
func TestCrossfade(t *testing.T) {
	l, _ := of(t, hall)
	require.Len(t, l.Units, 3)
	fading := l.Loads()[:2]
	assert.InDelta(t, 6600, float64(light.Power(fading, 5)), 1e-6)
	peak, at := light.Peak(fading, 0, l.Length)
	assert.InDelta(t, 8000, float64(peak), 1e-6)
	assert.InDelta(t, 12, float64(at), 1e-9)
	assert.EqualValues(t, 100, l.Unit("key").Level(0), "what no cue moves burns in full")
	assert.EqualValues(t, 0, l.Unit("late").Level(1), "what a cue moves is out until then")
	assert.Nil(t, l.Unit("nobody"))
	assert.Empty(t, l.Overlaps)
}

// EXP-18: 20 000 cd at 20 ft are 50 footcandles, 538.2 lx (inverse square, as a
// lamp maker's formula has it).
func TestLux(t *testing.T) {
	l, _ := of(t, hall)
	at := geom.Vec3{Z: 2}
	assert.InDelta(t, 538.2, float64(l.Unit("key").Lux(at, 0)), 0.05)
	assert.InDelta(t, 538.2, float64(l.Lux(at, 0)), 0.05, "a lamp without candela gives what nobody knows")
	assert.Zero(t, l.Reaching(at, 0, func(geom.Vec3) bool { return false }))
	blind := l.Blind()
	require.Len(t, blind, 1)
	assert.Equal(t, "early", blind[0].Name)
	// Half way up, half of the late wash's light.
	assert.InDelta(t, float64(l.Unit("late").Lux(at, 15))/2, float64(l.Unit("late").Lux(at, 7)), 1e-6)
}

// ELE-6: 10 kW at 230 V are 43.478 A; lamps go on circuits in full.
func TestDraw(t *testing.T) {
	l, p := of(t, hall)
	d := l.Draw(p.Set.Supplies)
	assert.InDelta(t, 15000, float64(d.Full), 1e-6)
	assert.InDelta(t, 9000, float64(d.Peak), 1e-6)
	assert.InDelta(t, 2*63*230, float64(d.Rated), 1e-6)
	assert.InDelta(t, 0.8*2*63*230, float64(d.Lasting), 1e-6)
	assert.Empty(t, d.Homeless)
	d = l.Draw([]*plan.Supply{{Volts: 230, Amperes: 43.478 / 0.8, Count: 1}})
	assert.Len(t, d.Homeless, 1, "8 and 1 of 10 kW; 6 kW find no room")
	assert.Zero(t, l.Draw(nil).Circuits)
}

func TestLampsHangEvenly(t *testing.T) {
	l, p := of(t, `take "Grid"
set "Hall"
  grid flies (0, 0) (8, 0) (8, 4) (0, 4) high 5 m points 40
  grid bent (0, 0) (8, 0) (8, 2) (2, 2) (2, 8) (0, 8) high 4 m points 40
  mark M1 (4, 2)
kit
  lamp globe 500 W
  wash hall globe x 8 on flies
  wash bend globe x 13 on bent
people
  performer mina
beat "One"
  mina stands at M1 in 2 s
`)
	at := l.Unit("hall").At
	require.Len(t, at, 8)
	for i, a := range at {
		assert.EqualValues(t, 5, a.Z)
		for _, b := range at[:i] {
			assert.GreaterOrEqual(t, a.Dist(b), float64(light.Spacing(32, 8))-1e-9, "8 over 32 m² are 2 m apart")
		}
	}
	assert.InDelta(t, 4, mean(at).X, 1e-9)
	at = l.Unit("bend").At
	require.Len(t, at, 13)
	for _, a := range at {
		assert.True(t, geom.Polygon(p.Set.Grids[1].Polygon).Contains(a.Floor()), "%v", a)
	}
	assert.Equal(t, 8, l.Hanging(p.Set.Grids[0]).Lamps)
}

func mean(list []geom.Vec3) geom.Vec3 {
	var sum geom.Vec3
	for _, v := range list {
		sum = sum.Add(v)
	}
	return sum.Mul(1 / math.Max(1, float64(len(list))))
}
