package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"

	"longhand/lang/units"
)

const hall = `
set "Hall"
  mark M0 (0, 0)
  mark M1 (6, 3)
  mark M2 (12, 0)
  mark C (0, 3)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
  rig cart cart size 2.4 m x 1.2 m high 0.5 m
people
  performer mina height 1.7 m
  performer otto height 1.8 m
beat "one"
`

// find is the demand of a subject for a quantity, in its n-th line that has one.
func (p *playing) find(name string, q Quantity, n int) Demand {
	for _, d := range p.Demands {
		if d.Subject == p.thing(name) && d.Quantity == q {
			if n == 0 {
				return d
			}
			n--
		}
	}
	require.Fail(p.t, "no such demand", "%s %d", name, q)
	return Demand{}
}

// KIN-1: an arc of 3 m by 90 deg is 4.712389 m long. KIN-14: v²/R sideways.
func TestRound(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 round C 90 deg left at 3 m at 1.4 m/s
`)
	m := p.body("mina")
	_, end := p.line("mina", 0)
	assertAt(t, m, end, 3, 3)
	path := m.Segments[0].Path
	assert.InDelta(t, 4.712389, path.Length(), 1e-6)
	assert.InDelta(t, 1.4*1.4/3, p.find("mina", Lateral, 0).Peak, 1e-6)
	assert.InDelta(t, math.Pi/2, m.At(end).Heading, 1e-9)
	// What she walked is what her speed adds up to.
	walked := quad.Fixed(func(at float64) float64 { return float64(m.Speed(units.Seconds(at))) }, 0, float64(end), 2000, nil, 0)
	assert.InDelta(t, path.Length(), walked, 1e-4)
}

// Curves are slowed down in until the sideways acceleration is what a walker
// bears: v = √(aR), 1.22 m/s at 1.5 m/s² and 1 m.
func TestTightCurvesAreSlow(t *testing.T) {
	p := play(t, hall+`
  mina runs from M0 round C 360 deg left at 3 m
`)
	d := p.find("mina", Lateral, 0)
	assert.InDelta(t, 1.5, d.Peak, 0.01)
	assert.InDelta(t, math.Sqrt(1.5*3), p.find("mina", Speed, 0).Peak, 0.01)
	assert.False(t, d.Over())
}

func TestTimeFixedMakesThePace(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to M2 in 6 s
  otto walks from M0 to M2 in 20 s
`)
	// 12 m in 6 s: the trapezoid at 1.5 m/s² would need 3 m/s, the limit is 2.
	d := p.find("mina", Speed, 0)
	assert.True(t, d.Over())
	assert.True(t, d.Fixed)
	assert.InDelta(t, 2, d.Limit, 1e-9)
	assert.Contains(t, d.Source, "walk")
	assertAt(t, p.body("mina"), 6, 12, 0)
	slow := p.find("otto", Speed, 0)
	assert.False(t, slow.Over())
	// v²/a - vT + L = 0
	assert.InDelta(t, (20-math.Sqrt(400-4*12/1.5))/2*1.5, slow.Peak, 1e-6)
}

func TestPassesItsPlacesWhenTheClockSays(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 via M1 to M2 in 15 s
  otto stands at C
  otto walks to M0 when mina reaches M1
`)
	start, _ := p.line("otto", 1)
	assertAt(t, p.body("mina"), start, 6, 3)
}

func TestShortOfAPlace(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to 1.5 m before M2
`)
	_, end := p.line("mina", 0)
	assertAt(t, p.body("mina"), end, 10.5, 0)
}

func TestBackwardsAndFacing(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to M2 backwards
  otto walks from C to (12, 3) facing M1
`)
	m, o := p.body("mina"), p.body("otto")
	assert.InDelta(t, math.Pi, math.Abs(m.At(5).Heading), 1e-9)
	d := p.find("mina", BackSpeed, 0)
	assert.InDelta(t, 0.8, d.Peak, 1e-9, "as fast as people usually walk backwards")
	require.NotEmpty(t, p.Backing)
	assert.InDelta(t, 12, float64(p.Backing[0].Length), 0.1)
	_, end := p.line("otto", 0)
	assert.InDelta(t, math.Pi, math.Abs(o.At(end).Heading), 0.01, "back towards M1")
}

func TestTurnsAndSpins(t *testing.T) {
	p := play(t, hall+`
  mina stands at M0
  mina turns to 90 deg
  mina turns to otto
  otto walks from C to (-6, 0) in 4 s
  mina walks to M2 starting +10 s
  mina spins 360 deg left in 4 s with
`)
	m := p.body("mina")
	_, end := p.line("mina", 1)
	assert.InDelta(t, math.Pi/2, m.At(end).Heading, 1e-9)
	// 90 deg at a usual 120 deg/s, smooth: 1.5 times the mean.
	assert.InDelta(t, 90.0/120*1.5, float64(end), 1e-9)
	_, end = p.line("mina", 2)
	o := p.body("otto").At(end)
	assert.InDelta(t, math.Atan2(float64(o.Y), float64(o.X)), m.At(end).Heading, 1e-6, "where he is when she has turned")
	walk, _ := p.line("mina", 3)
	spin, stop := p.line("mina", 4)
	assert.Equal(t, walk, spin)
	assert.InDelta(t, math.Pi, math.Abs(m.At((spin+stop)/2).Heading), 0.01, "half way round while she walks on")
	assert.InDelta(t, 0, m.At(stop).Heading, 1e-6)
	assert.InDelta(t, 360.0/4*1.5, p.find("mina", TurnRate, 2).Peak, 1e-9)
}

func TestSitsAndRises(t *testing.T) {
	p := play(t, hall+`
  mina stands at M0
  mina sits
  mina rises starting +5 s
`)
	m := p.body("mina")
	_, down := p.line("mina", 1)
	assert.InDelta(t, 1.7*0.785, float64(m.At(down).Height), 1e-9)
	assert.InDelta(t, 1.7*0.785, float64(m.At(5).Height), 1e-9)
	assert.InDelta(t, 1.7, float64(m.At(9).Height), 1e-9)
	assert.Equal(t, "sitting", m.Posture(4).String())
}

func TestWheelsSetOutTheWayTheyPoint(t *testing.T) {
	p := play(t, hall+`
  van drives from M0 to M2
  van drives to (12, 20)
`)
	v := p.body("van")
	start, end := p.line("van", 1)
	assertAt(t, v, end, 12, 20)
	assert.InDelta(t, 0, v.At(start+0.2).Heading, 0.02)
	assert.InDelta(t, 4, p.find("van", Radius, 0).Peak, 1e-6)
	assert.InDelta(t, p.find("van", Radius, 0).Limit, 4, 1e-9)
}

func TestABeginningElsewhereIsAJump(t *testing.T) {
	p := play(t, hall+`
  mina walks from M0 to M1
  mina walks from C to M2
`)
	require.Len(t, p.Jumps, 1)
	j := p.Jumps[0]
	assert.InDelta(t, 6, float64(j.Gap), 1e-9)
	assert.InDelta(t, 6/1.3+1.3/1.5, float64(j.Needs), 1e-9)
	_, end := p.line("mina", 1)
	assertAt(t, p.body("mina"), end, 12, 0)
}

func TestWhatCannotBeFollowed(t *testing.T) {
	p := play(t, hall+`
  mina walks to M1
  van stands at M2
  otto stands at M0
  otto leaves van
  otto rides van starting +8 s
`)
	require.Len(t, p.Problems, 2)
	assert.Len(t, p.Jumps, 1, "from M0 into the van")
	assert.Equal(t, NoStart, p.Problems[0].Kind)
	assert.Equal(t, NotAboard, p.Problems[1].Kind)
	assertAt(t, p.body("mina"), 0, 6, 3)
	assert.Nil(t, p.Body(p.thing("cart")), "nothing says where it is")
}
