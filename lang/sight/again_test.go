package sight

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// edited is a copy of a scene with a few random edits: what a change of the plan
// does to a scene.
func edited(t *rapid.T, s *Scene) *Scene {
	c := *s
	c.Solids = append([]Solid(nil), s.Solids...)
	c.Bodies = append([]Body(nil), s.Bodies...)
	c.Cameras = append([]Camera(nil), s.Cameras...)
	c.Mirrors = append([]Mirror(nil), s.Mirrors...)
	frame := rapid.IntRange(0, s.Frames-1)
	for range rapid.IntRange(0, 3).Draw(t, "edits") {
		from := frame.Draw(t, "from")
		to := rapid.IntRange(from, s.Frames-1).Draw(t, "to")
		switch rapid.IntRange(0, 8).Draw(t, "edit") {
		case 0: // a body goes another way for a while
			i := rapid.IntRange(0, len(c.Bodies)-1).Draw(t, "body")
			b := &c.Bodies[i]
			b.Track = append([]Pose(nil), b.Track...)
			for f := from; f <= to; f++ {
				b.Track[f].X += rapid.Float64Range(-2, 2).Draw(t, "dx")
			}
		case 1: // a camera too
			i := rapid.IntRange(0, len(c.Cameras)-1).Draw(t, "camera")
			k := &c.Cameras[i]
			k.Track = append([]View(nil), k.Track...)
			for f := from; f <= to; f++ {
				k.Track[f].Pan += 0.2
			}
		case 2: // the door
			c.Solids[6].Shut = []Frames{{units.Frame(from), units.Frame(to)}}
		case 3: // somebody stays at home
			i := rapid.IntRange(0, len(c.Bodies)-1).Draw(t, "gone")
			c.Bodies = append(c.Bodies[:i:i], c.Bodies[i+1:]...)
		case 4: // somebody else comes
			b := c.Bodies[0]
			b.Name, b.Radius, b.Polygon = "guest", 0.3, nil
			if _, ok := c.Body("guest"); !ok {
				c.Bodies = append([]Body{b}, c.Bodies...)
			}
		case 5: // a block is moved
			i := len(c.Solids) - 1
			poly := append([]geom.Vec(nil), c.Solids[i].Polygon...)
			for k := range poly {
				poly[k].X += 0.5
			}
			c.Solids[i].Polygon = poly
		case 6: // a camera cuts
			c.Cameras[0].Rolls = []Frames{{units.Frame(from), units.Frame(to)}}
		case 7: // a body is fatter
			b := &c.Bodies[0]
			if b.Radius > 0 {
				b.Radius += 0.1
			}
		case 8: // the operator steps into view
			c.Cameras[0].Own = nil
		}
	}
	return &c
}

// TestAgainIsSee: after any edit, what Again keeps and what it does anew are
// together what See finds.
func TestAgainIsSee(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64Range(0, 50).Draw(t, "scene"), 3))
		s := randomScene(r, 6, 2, 7)
		if rapid.Bool().Draw(t, "mirrors") {
			s.Mirrors = []Mirror{{Name: "mirror", A: geom.Vec{X: 1, Y: 3}, B: geom.Vec{X: -1, Y: 3}, Z: [2]float64{0.2, 2.5}}}
			s.Glows = []Glow{{Name: "window", A: geom.Vec{X: 4, Y: 1}, B: geom.Vec{X: 4, Y: 3}, Z: [2]float64{1, 2}}}
		}
		if rapid.Bool().Draw(t, "tilted") {
			tilt, roll := rapid.Float64Range(-1.2, 0.8).Draw(t, "tilt"), rapid.Float64Range(-1.5, 1.5).Draw(t, "roll")
			eachView(s, func(v *View) { v.Tilt, v.Roll = tilt, roll })
		}
		before, err := See(context.Background(), s, Options{Workers: 1})
		require.NoError(t, err)
		for range 2 {
			s = edited(t, s)
			want, err := See(context.Background(), s, Options{Workers: 1})
			require.NoError(t, err)
			got, err := Again(context.Background(), before, s, Options{Workers: 1})
			require.NoError(t, err)
			require.Equal(t, want.Sight, got.Sight)
			require.Equal(t, want.Reflected, got.Reflected)
			require.Equal(t, want.Glares, got.Glares)
			before = got
		}
	})
}
