package png_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	topng "longhand/render/png"
	"longhand/render/scene"
	"longhand/render/scene/sample"
)

// What is clipped shows inside every clip around it and nowhere else, whatever
// the rings: compared pixel by pixel with an even-odd test of its own.
func TestClipsShowTheInsideOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := rapid.Custom(func(t *rapid.T) scene.Point {
			return scene.Pt(rapid.Float64Range(-5, 45).Draw(t, "x"), rapid.Float64Range(-5, 45).Draw(t, "y"))
		})
		// Rings that do not cross themselves: triangles, which may overlap.
		clip := func(name string) [][]scene.Point {
			return rapid.SliceOfN(rapid.SliceOfN(point, 3, 3), 1, 3).Draw(t, name)
		}
		outer, inner := clip("outer"), clip("inner")
		s := &scene.Sheet{Width: 40, Height: 40, Title: "x", Styles: sample.Styles()}
		s.Add(&scene.Group{Clip: outer, Items: []scene.Item{
			&scene.Group{Clip: inner, Items: []scene.Item{&scene.Rect{Class: "solid", Box: scene.BoxAt(-10, -10, 60, 60)}}},
		}})
		img, err := topng.Image(s, 50.8) // two pixels a millimetre
		require.NoError(t, err)
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				p := scene.Pt((float64(x)+0.5)/2, (float64(y)+0.5)/2)
				if nearEdge(p, outer) || nearEdge(p, inner) {
					continue
				}
				want := 255
				if inside(p, outer) && inside(p, inner) {
					want = 0
				}
				if got := grey(img, x, y); got != want {
					t.Fatalf("pixel %d,%d is %d, not %d", x, y, got, want)
				}
			}
		}
	})
}

func inside(p scene.Point, rings [][]scene.Point) bool {
	in := false
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y) {
				in = !in
			}
		}
	}
	return in
}

// nearEdge is whether a pixel may be covered in part.
func nearEdge(p scene.Point, rings [][]scene.Point) bool {
	for _, r := range rings {
		for i, a := range r {
			d := r[(i+1)%len(r)].Sub(a)
			k := 0.0
			if l := d.Dot(d); l > 0 {
				k = max(0, min(1, p.Sub(a).Dot(d)/l))
			}
			if p.Dist(a.Add(d.Mul(k))) < 0.5 {
				return true
			}
		}
	}
	return false
}
