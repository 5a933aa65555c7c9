package scene_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/render/scene"
)

// inside is even-odd by counting crossings of a ray, written apart from the
// hatching so that it can judge it.
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

func edgeDistance(p scene.Point, rings [][]scene.Point) float64 {
	best := math.Inf(1)
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			d := b.Sub(a)
			k := 0.0
			if l := d.Dot(d); l > 0 {
				k = math.Max(0, math.Min(1, p.Sub(a).Dot(d)/l))
			}
			best = math.Min(best, p.Dist(a.Add(d.Mul(k))))
		}
	}
	return best
}

func TestHatchStaysInsideAndFillsIt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := rapid.Custom(func(t *rapid.T) scene.Point {
			return scene.Pt(float64(rapid.IntRange(0, 200).Draw(t, "x"))/2, float64(rapid.IntRange(0, 200).Draw(t, "y"))/2)
		})
		rings := rapid.SliceOfN(rapid.SliceOfN(point, 3, 9), 1, 3).Draw(t, "rings") // crossing themselves too
		angle := float64(rapid.SampledFrom([]int{0, 15, 45, 90, 135, 200}).Draw(t, "angle"))
		spacing := rapid.Float64Range(0.5, 6).Draw(t, "spacing")
		lines, _ := scene.Hatch("h", rings, scene.Pattern{Angle: angle, Spacing: spacing}).Flat(1)

		sin, cos := math.Sincos(angle * math.Pi / 180)
		height := func(p scene.Point) float64 { return p.X*sin + p.Y*cos } // across the lines
		length := 0.0
		for _, l := range lines {
			length += l[0].Dist(l[1])
			if h := height(l[0]) / spacing; math.Abs(h-math.Round(h)) > 1e-6 || math.Abs(height(l[0])-height(l[1])) > 1e-6 {
				t.Fatal("a line is off the grid of lines")
			}
			for i := range 20 {
				p := l[0].Add(l[1].Sub(l[0]).Mul((float64(i) + 0.5) / 20))
				if !inside(p, rings) && edgeDistance(p, rings) > 1e-6 {
					t.Fatalf("%v is outside", p)
				}
			}
		}
		// Each point inside that lies on a line of the grid is drawn.
		for range 30 {
			p := point.Draw(t, "probe")
			k := math.Round(height(p) / spacing)
			p = p.Add(scene.Pt(sin, cos).Mul(k*spacing - height(p)))
			if !inside(p, rings) || edgeDistance(p, rings) < 0.02 {
				continue
			}
			drawn := false
			for _, l := range lines {
				drawn = drawn || edgeDistance(p, [][]scene.Point{l}) < 1e-6
			}
			if !drawn {
				t.Fatalf("%v is inside and bare", p)
			}
		}
	})
}

// The length of the lines times their spacing is the area, within half a
// spacing along the edge.
func TestHatchMeasuresTheArea(t *testing.T) {
	ring := scene.BoxAt(10, 10, 80, 50).Corners()
	hole := scene.BoxAt(30, 20, 20, 20).Corners()
	for _, angle := range []float64{0, 30, 45, 90} {
		lines, _ := scene.Hatch("h", [][]scene.Point{ring, hole}, scene.Pattern{Angle: angle, Spacing: 0.5}).Flat(1)
		sum := 0.0
		for _, l := range lines {
			sum += scene.LengthOf(l)
		}
		assert.InDelta(t, 80*50-20*20, sum*0.5, 0.02*3600, "at %v degrees", angle)
	}
	cross := scene.Hatch("h", [][]scene.Point{ring}, scene.Pattern{Angle: 10, Spacing: 2, Cross: true})
	once := scene.Hatch("h", [][]scene.Point{ring}, scene.Pattern{Angle: 10, Spacing: 2})
	assert.Greater(t, len(cross.Cmds), 19*len(once.Cmds)/10)
}

func TestHatchOfNothing(t *testing.T) {
	for _, rings := range [][][]scene.Point{nil, {{}}, {{{X: 1, Y: 1}}}, {{{X: math.NaN(), Y: 1}, {X: 2, Y: 2}, {X: 3, Y: 1}}}, {{{X: 0, Y: 0}, {X: 1e18, Y: 1e18}, {X: 0, Y: 1e18}}}} {
		assert.Empty(t, scene.Hatch("h", rings, scene.Pattern{}).Cmds)
	}
}
