package check

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/geom"
	"longhand/lang/sight"
)

// full is the full 4-perf camera aperture (SMPTE, as an encyclopedia has it:
// 0.980 by 0.735 in).
var full = sight.Camera{Width: 24.89, Height: 18.66}

func seeing(v sight.View) *eye {
	e := eyeOf(&full, v)
	return &e
}

func TestFramingNumbers(t *testing.T) {
	// PRJ-13, similar triangles: a frame 24.89 mm wide at 35 mm is 2.13343 m wide
	// at 3 m; so it is 1.59943 m high.
	fr := seeing(sight.View{Z: 1.6, Focal: 35}).framing(sight.Pose{X: 3, Height: 1.75}, 1.75)
	assert.InDelta(t, 2.13343, fr.high*full.Width/full.Height, 1e-5)
	assert.InDelta(t, 3, fr.depth, 1e-12)

	// PRJ-14: somebody of 1.75 m at 5 m through 35 mm is 12.25 mm on the gate, 65.6 %
	// of its height. From half their height, half of that is above the middle.
	fr = seeing(sight.View{Z: 0.875, Focal: 35}).framing(sight.Pose{X: 5, Height: 1.75}, 1.75)
	assert.InDelta(t, 12.25/18.66, 2*(fr.top-0.5), 1e-9)

	// PRJ-15: at 3.2824 m they fill it: head at the upper edge, feet at the lower.
	fr = seeing(sight.View{Z: 0.875, Focal: 35}).framing(sight.Pose{X: 3.2824, Height: 1.75}, 1.75)
	assert.InDelta(t, 1, fr.top, 1e-4)
	assert.InDelta(t, 0, fr.lower, 1e-4)
	fr = seeing(sight.View{Z: 1, Focal: 35}).framing(sight.Pose{X: -2, Height: 1.75}, 1.75)
	assert.False(t, fr.headIn(), "behind the lens")
}

// PRJ-7 and PRJ-8, worked with npm three 0.187.0: from (0, 0, 1.6) along +y, the
// point 1 m to the right and 0.15 m above falls at 5 m on x = 7 mm, y = 1.05 mm, and
// one on the floor falls 11.2 mm below, out of a gate of 18.66 mm.
func TestAcrossFrame(t *testing.T) {
	v := seeing(sight.View{Z: 1.6, Focal: 35, Pan: math.Pi / 2})
	x, ok := v.across(sight.Pose{X: 1, Y: 5, Z: 1.75})
	assert.True(t, ok)
	assert.InDelta(t, 0.5+7.0/24.89, x, 1e-9)
	assert.True(t, v.holds(geom.Vec3{X: 1, Y: 5, Z: 0.15}))
	assert.False(t, v.holds(geom.Vec3{X: -1, Y: 5, Z: -1.6}))
	_, ok = v.across(sight.Pose{X: 1, Y: -5, Z: 1.75})
	assert.False(t, ok)
	assert.False(t, v.holds(geom.Vec3{Y: -1}))
}

func lines(solids ...sight.Solid) *sightlines {
	l := &sightlines{solids: solids}
	for i := range solids {
		low, high := geom.Bounds(solids[i].Polygon)
		l.low, l.high = append(l.low, low), append(l.high, high)
	}
	return l
}

func slab(x0, y0, x1, y1, z0, z1 float64) sight.Solid {
	return sight.Solid{Name: "slab", Kind: "wall", Z: [2]float64{z0, z1},
		Polygon: []geom.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}}
}

// LOS-11, arithmetic of similar triangles: from an eye at 1.5 m over a wall of
// 1.2 m at 4 m, a head of 1.7 m at 6 m shows, down to 1.05 m.
func TestOverALowWall(t *testing.T) {
	l := lines(slab(4, -5, 4.000001, 5, 0, 1.2))
	eye := geom.Vec3{Z: 1.5}
	assert.Nil(t, l.blocked(eye, geom.Vec3{X: 6, Z: 1.7}, 0, false))
	assert.Nil(t, l.blocked(eye, geom.Vec3{X: 6, Z: 1.051}, 0, false))
	assert.NotNil(t, l.blocked(eye, geom.Vec3{X: 6, Z: 1.049}, 0, false))
	assert.NotNil(t, l.blocked(geom.Vec3{Z: 1}, geom.Vec3{X: 6, Z: 3}, 0, true), "under a roof the wall goes on up")
	assert.Nil(t, l.blocked(eye, geom.Vec3{X: 6, Z: 1.7}, 0, true), "what one looks over holds no roof")
}

// LOS-1's polygon, the example of the manual of a computational geometry library,
// has a reflex corner: the notch lets a line through that the hull would stop.
func TestPastACorner(t *testing.T) {
	notched := sight.Solid{Name: "press", Kind: "block", Z: [2]float64{0, 3},
		Polygon: []geom.Vec{{X: 0, Y: 4}, {X: 0, Y: 0}, {X: 3, Y: 2}, {X: 4, Y: 0}, {X: 4, Y: 4}, {X: 1, Y: 2}}}
	l := lines(notched)
	at := func(x, y float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: 1} }
	assert.Nil(t, l.blocked(at(2, -1), at(3, 1.5), 0, false))
	assert.NotNil(t, l.blocked(at(2, -1), at(2, 4), 0, false))
	assert.NotNil(t, l.blocked(at(-1, 2), at(0.9, 2), 0, false))
	assert.Nil(t, l.blocked(at(2.5, 5), at(2.2, 3), 0, false), "into the notch from above")
}

func TestDoorsOnlyWhileShut(t *testing.T) {
	door := slab(4, -5, 4.1, 5, 0, 2)
	door.Kind, door.Shut = "door", []sight.Frames{{From: 10, To: 20}}
	l := lines(door)
	a, b := geom.Vec3{Z: 1}, geom.Vec3{X: 6, Z: 1}
	assert.Nil(t, l.blocked(a, b, 9, false))
	assert.NotNil(t, l.blocked(a, b, 10, false))
	assert.Nil(t, l.blocked(a, b, 21, false))
}
