package motion

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/units"
)

const gallery = `
set "Gallery"
  platform loft (6, -2) (12, -2) (12, 2) (6, 2) high 1.5 m
  stairs flight (3, 0) (6, 0) width 1.2 m rise 1.5 m
  mark M0 (0, 0)
  mark M1 (10, 0)
  mark M2 (10, 6)
people
  performer mina height 1.7 m
beat "one"
`

func TestClimbsStairsToAPlatform(t *testing.T) {
	p := play(t, gallery+`
  mina walks from M0 to M1
  mina walks to M0
`)
	m := p.body("mina")
	_, up := p.line("mina", 0)
	_, down := p.line("mina", 1)
	assert.InDelta(t, 1.5, float64(m.At(up).Z), 1e-9)
	assert.InDelta(t, 0, float64(m.At(down).Z), 1e-9)
	was := 0.0
	for at := units.Seconds(0); at < up; at += 0.02 {
		q := m.At(at)
		z := float64(q.Z)
		assert.GreaterOrEqual(t, z, was-1e-9, "she only climbs")
		if x := float64(q.X); x > 3.3 && x < 5.7 { // half a metre a metre
			assert.InDelta(t, (x-3)/2, z, 0.03)
		}
		was = z
	}
	assert.Empty(t, p.Jumps)
}

// No stairs lead up on that side: she gets there, and it is reported.
func TestAPlatformWithoutStairsIsAJump(t *testing.T) {
	p := play(t, gallery+`
  mina walks from M2 to M1
`)
	require.Len(t, p.Jumps, 1)
	assert.InDelta(t, 1.5, float64(p.Jumps[0].Gap), 1e-9)
	_, end := p.line("mina", 0)
	assert.InDelta(t, 1.5, float64(p.body("mina").At(end).Z), 1e-9)
}

func TestStandsOnAPlatformThatStandsOnTheFloor(t *testing.T) {
	p := play(t, gallery+`
  mina stands at M1
  mina walks to (15, 0)
`)
	m := p.body("mina")
	_, end := p.line("mina", 1)
	assert.InDelta(t, 1.5, float64(m.At(0).Z), 1e-9)
	assert.Zero(t, m.At(end).Z, "over the edge: for a check to find")
}
