package sheets

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/units"
)

func frame(t require.TestingT) optics.Frame {
	f, err := optics.NewFrame(24.9, 14, 1, 1.85)
	require.NoError(t, err)
	return f
}

// A level lens 1.5 m up, 28 mm on a frame 13.459 mm high: at 4 m the upper edge is
// 4·13.459/56 = 0.961 m over the lens (similar triangles).
func TestBoomOverALevelLens(t *testing.T) {
	ct := &motion.CameraTrack{Frame: frame(t)}
	z, seen := frameTop(motion.View{Z: 1.5, Focal: 28}, ct, geom.Vec{X: 4})
	assert.True(t, seen)
	assert.InDelta(t, 2.461, z, 0.001)
	_, seen = frameTop(motion.View{Z: 1.5, Focal: 28}, ct, geom.Vec{X: 4, Y: 3})
	assert.False(t, seen, "beside the frame")
	_, seen = frameTop(motion.View{Z: 1.5, Focal: 28}, ct, geom.Vec{X: -4})
	assert.False(t, seen, "behind the lens")
}

// The height that frameTop finds is projected on the frame's upper edge.
func TestBoomIsOnTheFramesEdge(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		ct := &motion.CameraTrack{Frame: frame(r)}
		v := motion.View{
			X: rapid.Float64Range(-5, 5).Draw(r, "x"), Y: rapid.Float64Range(-5, 5).Draw(r, "y"), Z: rapid.Float64Range(0.3, 5).Draw(r, "z"),
			Pan: rapid.Float64Range(-3, 3).Draw(r, "pan"), Tilt: rapid.Float64Range(-0.8, 0.8).Draw(r, "tilt"), Focal: rapid.Float64Range(18, 85).Draw(r, "focal"),
		}
		off, d := rapid.Float64Range(-0.2, 0.2).Draw(r, "off"), rapid.Float64Range(1, 12).Draw(r, "d")
		p := geom.Vec{X: v.X, Y: v.Y}.Add(geom.Polar(d, v.Pan+off))
		z, seen := frameTop(v, ct, p)
		if !seen || math.IsInf(z, 0) {
			return
		}
		view := optics.View{At: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: units.Millimetres(v.Focal)}
		i, ok := view.Project(geom.Vec3{X: p.X, Y: p.Y, Z: z})
		require.True(r, ok)
		assert.InDelta(r, float64(ct.Frame.Height)/2, float64(i.Y), 1e-6)
	})
}

// A lens that looks square through a hole needs what optics.HoleFor says; one that
// turns needs more.
func TestHoleForATurningLens(t *testing.T) {
	ct := &motion.CameraTrack{Frame: frame(t)}
	face := 0.08
	w, h, _ := optics.HoleFor(ct.Frame, 28, 2.8, units.Metres(face).Millimetres())
	straight := holeNeeded(ct, motion.View{Focal: 28}, 2.8, geom.Vec{}, geom.Vec{X: 1}, face)
	assert.InDelta(t, float64(max(w, h)), float64(straight), 1e-6)
	turned := holeNeeded(ct, motion.View{Focal: 28, Pan: 0.3}, 2.8, geom.Vec{}, geom.Vec{X: 1}, face)
	assert.Greater(t, float64(turned), float64(straight)+20)
	away := holeNeeded(ct, motion.View{Focal: 28, Pan: 1.5}, 2.8, geom.Vec{}, geom.Vec{X: 1}, face)
	assert.True(t, math.IsInf(float64(away), 1))
}

func TestGapsBetweenOutlines(t *testing.T) {
	box := func(x, y, w, h float64) outline {
		return outline{poly: geom.Rectangle(geom.Vec{X: x, Y: y}, geom.Vec{X: x + w, Y: y + h})}
	}
	round := func(x, y, r float64) outline { return outline{centre: geom.Vec{X: x, Y: y}, radius: r} }
	assert.InDelta(t, 1.0, box(0, 0, 1, 1).between(box(2, 0, 1, 1)), 1e-12)
	assert.InDelta(t, math.Sqrt2, box(0, 0, 1, 1).between(box(2, 2, 1, 1)), 1e-12)
	assert.InDelta(t, 0.75, box(0, 0, 1, 1).between(round(2, 0.5, 0.25)), 1e-12)
	assert.InDelta(t, 0.75, round(2, 0.5, 0.25).between(box(0, 0, 1, 1)), 1e-12)
	assert.InDelta(t, 2.5, round(0, 0, 0.25).between(round(3, 0, 0.25)), 1e-12)
	assert.Zero(t, round(0, 0, 1).between(round(1, 0, 1)))
}

// 1 ft = 0.3048 m and 12 in to the foot (international yard and pound agreement,
// 1959); focus is called to the inch.
func TestFeetToo(t *testing.T) {
	for m, want := range map[units.Metres]string{0.3048: `1'0"`, 2.7432: `9'0"`, 2.78: `9'1"`, 3.6449: `12'0"`, 0.0254: `0'1"`} {
		assert.Equal(t, want, feetToo(m))
	}
	assert.Equal(t, "infinity", feetToo(units.Metres(math.Inf(1))))
}

func TestSlackPrints(t *testing.T) {
	assert.Equal(t, "2.5 s", slack(2.5).Text)
	assert.Empty(t, slack(774).Text)
	assert.Equal(t, 774.0, *slack(774).Value)
	assert.Nil(t, slack(units.Seconds(math.Inf(1))).Value)
	assert.Equal(t, "-3 s", slack(-3).Text)
	assert.Equal(t, "under 0.0001 %", share(1e-6))
	assert.Equal(t, "0.0012 %", share(0.00123))
}

func TestTicksAreRound(t *testing.T) {
	for v, want := range map[float64]float64{0.7: 1, 1.2: 2, 3: 5, 6: 10, 23: 25, 26: 50} {
		assert.InDelta(t, want, tick(v), 1e-9)
	}
}

func TestNumbersStayWithTheirUnits(t *testing.T) {
	assert.Equal(t, "follows mina by 2.4\u00a0m", together("follows mina by 2.4 m"))
	assert.Equal(t, "C1\u00a0+\u00a0(0.6,\u00a0-1)", together("C1 + (0.6, -1)"))
	assert.Equal(t, "2 marks", together("2 marks"))
}
