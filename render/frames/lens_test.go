package frames

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/scene"
)

// A frame drawn as large as the sensor shows points where a pinhole throws them.
// PRJ-7 to PRJ-11 were computed by another program, a 3D library's perspective
// camera; its y is up and it looks along -z.
func TestPointsFallWhereAnotherProgramHasThem(t *testing.T) {
	gate := scene.BoxAt(0, 0, 24.89, 18.66)
	standing := func(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: -z, Z: y} }
	looking := func(from, at geom.Vec3) *lens {
		o := optics.View{At: from, Focal: 35}.LookAt(at)
		return newLens(sight.View{X: from.X, Y: from.Y, Z: from.Z, Pan: o.Pan.Radians(), Tilt: o.Tilt.Radians(), Focal: 35}, 24.89, gate)
	}
	straight := looking(standing(0, 1.6, 0), standing(0, 1.6, -1))
	turned := looking(standing(1, 1.7, 2), standing(0, 1.2, -3))
	for _, c := range []struct {
		name  string
		lens  *lens
		point geom.Vec3
		x, y  float64
	}{
		{"PRJ-7", straight, standing(1, 1.75, -5), 7, 1.05},
		{"PRJ-8", straight, standing(-1, 0, -5), -7, -11.2},
		{"PRJ-9", straight, standing(2, 1.6, -10), 7, 0},
		{"PRJ-10", turned, standing(0, 1.75, -3), 0, 3.77887},
		{"PRJ-11", turned, standing(0.5, 1.5, -4), 4.02247, 2.25437},
	} {
		p := c.lens.paper(c.lens.see(c.point))
		assert.InDelta(t, c.x, p.X-gate.Center().X, 1e-4, c.name)
		assert.InDelta(t, c.y, gate.Center().Y-p.Y, 1e-4, c.name)
	}
	// PRJ-14: a person of 1.75 m at 5 m through 35 mm is 12.25 mm high.
	head, feet := straight.paper(straight.see(standing(0, 1.75, -5))), straight.paper(straight.see(standing(0, 0, -5)))
	assert.InDelta(t, 12.25, feet.Y-head.Y, 1e-9)
}

func TestPaperAndOpticsAgree(t *testing.T) {
	v := sight.View{X: 3, Y: -2, Z: 1.4, Pan: 0.7, Tilt: -0.2, Roll: 0.1, Focal: 28}
	l := newLens(v, 24.9, scene.BoxAt(10, 20, 100, 56))
	for _, p := range []geom.Vec3{{X: 6, Y: 1, Z: 0}, {X: 9, Y: 4, Z: 2}, {X: 5, Y: -0.5, Z: 1}} {
		i, ok := view(v).Project(p)
		assert.True(t, ok)
		q := l.paper(l.see(p))
		k := 100 / 24.9
		assert.InDelta(t, 60+float64(i.X)*k, q.X, 1e-9)
		assert.InDelta(t, 48-float64(i.Y)*k, q.Y, 1e-9)
		assert.InDelta(t, float64(i.Depth), float64(units.Metres(l.see(p).Z)), 1e-12)
		back := l.paper(l.ray(q).Mul(7))
		assert.InDelta(t, 0, back.Dist(q), 1e-9)
	}
}
