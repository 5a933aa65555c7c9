package motion

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// hungOn is a mirror in the middle of a wall.
func hungOn(a, b geom.Vec, thick units.Metres) *plan.Mirror {
	w := &plan.Wall{Line: []geom.Vec{a, b}, Thick: thick}
	l := units.Metres(a.Dist(b))
	return &plan.Mirror{On: plan.On{Wall: w, From: l / 4, To: 3 * l / 4}, High: plan.Range{Low: 0.5, High: 2}}
}

func at(x, y, heading float64) Pose {
	return Pose{X: units.Metres(x), Y: units.Metres(y), Z: 0.2, Heading: heading, Height: 1.7}
}

// TestImage: rows MIR-4 and MIR-6 of the design's check values (plane geometry).
func TestImage(t *testing.T) {
	thin := units.Metres(-2e-3) // so that the faces, 1 mm clear of the wall, are in its middle
	p := Image(hungOn(geom.Vec{X: 5, Y: -9}, geom.Vec{X: 5, Y: 9}, thin), at(2, 3, 0.3))
	assert.InDelta(t, 8, float64(p.X), 1e-9, "MIR-4")
	assert.InDelta(t, 3, float64(p.Y), 1e-9, "MIR-4")
	assert.InDelta(t, math.Pi-0.3, p.Heading, 1e-9)
	assert.Equal(t, units.Metres(0.2), p.Z)
	p = Image(hungOn(geom.Vec{X: -9, Y: -9}, geom.Vec{X: 9, Y: 9}, thin), at(2, 3, 0))
	assert.InDelta(t, 3, float64(p.X), 1e-9, "MIR-4, in y = x")
	assert.InDelta(t, 2, float64(p.Y), 1e-9, "MIR-4, in y = x")
	turned := Image(hungOn(geom.Vec{}.Sub(geom.Polar(9, 10*math.Pi/180)), geom.Polar(9, 10*math.Pi/180), thin), at(3, 0, 0))
	assert.InDelta(t, 20, turned.Point().Angle()*180/math.Pi, 1e-9, "MIR-6")
	assert.Equal(t, at(2, 3, 0.3), Image(nil, at(2, 3, 0.3)), "without a mirror")
	assert.Equal(t, at(2, 3, 0.3), Image(&plan.Mirror{}, at(2, 3, 0.3)), "a mirror that hangs nowhere")
}

// TestImageUnfolds: for any mirror, from any place on the same side, the way by the glass
// is as long as the straight one to the image (MIR-5), and it leaves the glass at the
// angle at which it comes in.
func TestImageUnfolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		num := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		a := geom.Vec{X: num("ax", -5, 5), Y: num("ay", -5, 5)}
		along := geom.Polar(1, num("angle", -math.Pi, math.Pi))
		m := hungOn(a, a.Add(along.Mul(num("long", 1, 20))), units.Metres(num("thick", 0.02, 0.5)))
		side := rapid.SampledFrom([]float64{-1, 1}).Draw(t, "side")
		across := along.Left().Mul(side)
		place := func(name string) geom.Vec {
			return a.Add(along.Mul(num(name+" along", -10, 10))).Add(across.Mul(num(name+" before", 0.5, 10)))
		}
		lens, who := place("lens"), place("who")
		image := Image(m, at(who.X, who.Y, 0)).Point()
		face, _ := m.Face(side > 0)
		before := func(p geom.Vec) float64 { return p.Sub(face).Dot(across) }
		require.InDelta(t, -before(who), before(image), 1e-9)
		k := before(lens) / (before(lens) - before(image))
		hit := lens.Lerp(image, k)
		require.InDelta(t, 0, before(hit), 1e-9)
		assert.InDelta(t, lens.Dist(image), lens.Dist(hit)+hit.Dist(who), 1e-9)
		in, out := hit.Sub(lens).Unit(), who.Sub(hit).Unit()
		assert.InDelta(t, in.Dot(along), out.Dot(along), 1e-9)
		assert.InDelta(t, in.Dot(across), -out.Dot(across), 1e-9)
	})
}
