package optics

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// Rows left out: PRJ-16, a close-up attachment lens, which no plan can name; of
// PRJ-6 the two depth-buffer elements, which a picture on paper has no use for.

// standing turns a point of the graphics convention (y up, looking along -z)
// into ours (z up, looking along +y with a pan of 90°).
func standing(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: -z, Z: y} }

// visionPoint turns a point of the machine vision convention (x right, y down, z
// ahead) into ours.
func visionPoint(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: z, Z: -y} }

func TestProjection(t *testing.T) {
	t.Run("PRJ-1 to 3 (P. Corke, Robotics, Vision & Control, 13.1)", func(t *testing.T) {
		// f = 8 mm, pixels of 10 µm, principal point (500, 500).
		pixel := func(cameraX float64, p geom.Vec3) (float64, float64) {
			i, ok := View{At: geom.Vec3{X: cameraX}, Pan: 90, Focal: 8}.Project(p)
			assert.True(t, ok)
			return float64(i.X)/0.01 + 500, -float64(i.Y)/0.01 + 500
		}
		u, v := pixel(0, visionPoint(0.3, 0.4, 2))
		assert.InDelta(t, 620, u, 1e-9)
		assert.InDelta(t, 660, v, 1e-9)
		// The camera matrix: u = (800x + 500z)/z.
		u, _ = pixel(0, visionPoint(1, 0, 1))
		assert.InDelta(t, 800+500, u, 1e-9)
		// Moved by +0.1 m: element [0,3] is -80, so u falls by 80/z.
		u, _ = pixel(0.1, visionPoint(0, 0, 1))
		assert.InDelta(t, 500-80, u, 1e-9)
	})
	t.Run("PRJ-4, PRJ-5 (same book, example from memory)", func(t *testing.T) {
		i, _ := View{Pan: 90, Focal: 15}.Project(visionPoint(0.3, 0.4, 3))
		assert.InDelta(t, 1.5, float64(i.X), 1e-12)
		assert.InDelta(t, -2.0, float64(i.Y), 1e-12, "y runs down in the book, up here")
		i, _ = View{At: visionPoint(-0.5, 0, 0), Pan: 90, Focal: 15}.Project(visionPoint(0.3, 0.4, 3))
		assert.InDelta(t, 4.0, float64(i.X), 1e-12)
		assert.InDelta(t, -2.0, float64(i.Y), 1e-12)
	})
	t.Run("PRJ-6 (unit test of a 3D library)", func(t *testing.T) {
		// Vertical angle 75°, aspect 16/9: m00 and m11 scale x/z and y/z to -1..1.
		h := units.Millimetres(10)
		focal, _ := FocalLength(h, 75)
		f := Frame{Width: h * 16 / 9, Height: h}
		i, _ := View{Pan: 90, Focal: focal}.Project(standing(1, 1, -1))
		x, y := f.Fraction(i)
		assert.InDelta(t, 0.7330642939, 2*x-1, 1e-6)
		assert.InDelta(t, 1.3032253981, 2*y-1, 1e-6)
	})

	// PRJ-7 to PRJ-11: computed by another program, a 3D library's
	// Vector3.project, for a gate of 24.89 x 18.66 mm and f = 35.
	gate := Frame{Width: 24.89, Height: 18.66, Squeeze: 1}
	straight := View{At: standing(0, 1.6, 0), Pan: 90, Focal: 35}
	turned := View{At: standing(1, 1.7, 2), Focal: 35}.LookAt(standing(0, 1.2, -3))
	rows := []struct {
		id        string
		view      View
		point     geom.Vec3
		x, y      float64
		inside    bool
		tolerance float64
	}{
		{"PRJ-7", straight, standing(1, 1.75, -5), 7, 1.05, true, 1e-6},
		{"PRJ-8 feet cut off", straight, standing(-1, 0, -5), -7, -11.2, false, 1e-6},
		{"PRJ-9", straight, standing(2, 1.6, -10), 7, 0, true, 1e-6},
		{"PRJ-10", turned, standing(0, 1.75, -3), 0, 3.77887, true, 1e-4},
		{"PRJ-11", turned, standing(0.5, 1.5, -4), 4.02247, 2.25437, true, 1e-4},
	}
	for _, r := range rows {
		t.Run(r.id, func(t *testing.T) {
			i, ok := r.view.Project(r.point)
			assert.True(t, ok)
			assert.InDelta(t, r.x, float64(i.X), r.tolerance)
			assert.InDelta(t, r.y, float64(i.Y), r.tolerance)
			assert.Equal(t, r.inside, gate.Holds(i))
		})
	}
	i, _ := straight.Project(standing(1, 1.75, -5))
	x, y := gate.Fraction(i)
	assert.InDelta(t, 0.562475, 2*x-1, 1e-6, "PRJ-7")
	assert.InDelta(t, 0.112540, 2*y-1, 1e-6, "PRJ-7")
}

func TestProjectionConventions(t *testing.T) {
	// From the definition: pan 0 looks along +x, so +y is to the left.
	i, ok := View{Focal: 35}.Project(geom.Vec3{X: 5, Y: 1, Z: 0.5})
	assert.True(t, ok)
	assert.Negative(t, float64(i.X))
	assert.Positive(t, float64(i.Y))
	// The top leans to the right: what was at the top moves to the left of frame.
	i, _ = View{Focal: 35, Roll: 10}.Project(geom.Vec3{X: 5, Z: 1})
	assert.Negative(t, float64(i.X))
	// Tilting up lowers what is level.
	i, _ = View{Focal: 35, Tilt: 10}.Project(geom.Vec3{X: 5})
	assert.Negative(t, float64(i.Y))
	// Behind the lens.
	i, ok = View{Focal: 35}.Project(geom.Vec3{X: -1})
	assert.False(t, ok)
	assert.InDelta(t, -1, float64(i.Depth), 1e-12)
	up := View{Pan: 30}.LookAt(geom.Vec3{Z: 2})
	assert.InDelta(t, 90, float64(up.Tilt), 1e-9)
	assert.InDelta(t, 30, float64(up.Pan), 1e-9)
}

func TestProjectionProperties(t *testing.T) {
	coordinate := rapid.Float64Range(-20, 20)
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) geom.Vec3 {
			return geom.Vec3{X: coordinate.Draw(t, name+"x"), Y: coordinate.Draw(t, name+"y"), Z: coordinate.Draw(t, name+"z")}
		}
		v := View{
			At:    draw("at"),
			Pan:   units.Degrees(rapid.Float64Range(-360, 360).Draw(t, "pan")),
			Tilt:  units.Degrees(rapid.Float64Range(-89, 89).Draw(t, "tilt")),
			Roll:  units.Degrees(rapid.Float64Range(-180, 180).Draw(t, "roll")),
			Focal: units.Millimetres(rapid.Float64Range(8, 300).Draw(t, "focal")),
		}
		a, r, u := v.Axes()
		for _, d := range []float64{a.Dot(r), a.Dot(u), r.Dot(u), a.Len() - 1, r.Len() - 1, u.Len() - 1} {
			if math.Abs(d) > 1e-12 {
				t.Fatalf("axes are not at right angles or not of length 1: %v", d)
			}
		}
		p := draw("p")
		i, ok := v.Project(p)
		if ok && i.Depth > 1e-3 {
			// Along the ray, at the point's distance, lies the point.
			ray := v.Ray(i.X, i.Y)
			if back := v.At.Add(ray.Mul(p.Dist(v.At))); back.Dist(p) > 1e-6 {
				t.Fatalf("%v came back as %v", p, back)
			}
		}
		if p.Dist(v.At) > 1e-3 {
			i, ok := v.LookAt(p).Project(p)
			if !ok || math.Abs(float64(i.X)) > 1e-6 || math.Abs(float64(i.Y)) > 1e-6 {
				t.Fatalf("looked at, %v falls on %v", p, i)
			}
		}
	})
}

func TestField(t *testing.T) {
	// Similar triangles.
	assert.InDelta(t, 2.489, float64(Field(24.89, 50, 5)), 1e-12, "PRJ-12")
	assert.InDelta(t, 2.13343, float64(Field(24.89, 35, 3)), 1e-5, "PRJ-13")
	assert.InDelta(t, 12.250, float64(ImageSize(1.75, 35, 5)), 1e-9, "PRJ-14")
	assert.InDelta(t, 0.656, float64(ImageSize(1.75, 35, 5)/18.66), 0.001, "PRJ-14")
	assert.InDelta(t, 3.2824, float64(DistanceFor(1.75, 18.66, 35)), 1e-4, "PRJ-15")
	assert.InDelta(t, 2.8660, float64(DiscHalfAngle(0.25, 5)), 1e-4, "PRJ-17")
	assert.Greater(t, float64(DiscHalfAngle(0.25, 5)), 2.8630, "PRJ-17: not the arc tangent, 2.8624")
	assert.InDelta(t, 180, float64(DiscHalfAngle(0.25, 0.1)), 1e-9)
	w, h := Frame{Width: 24.89, Height: 18.66}.FieldSize(50, 5)
	assert.InDelta(t, 24.89/18.66, float64(w/h), 1e-12)
}
