package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// The areas were computed apart from the project, by CGAL 5.5.1 (triangular
// expansion, exact kernel) and by the npm package visibility-polygon 1.1.0,
// which agreed. LOS-1 is the example of CGAL's manual, LOS-9 a square of its
// tests.
func TestVisibleAreas(t *testing.T) {
	needle := Polygon{{0, 4}, {0, 0}, {3, 2}, {4, 0}, {4, 4}, {1, 2}}
	ell := Polygon{{0, 0}, {10, 0}, {10, 4}, {4, 4}, {4, 10}, {0, 10}}
	room := Rectangle(Vec{}, Vec{10, 10})
	pillar := Rectangle(Vec{4, 4}, Vec{6, 6})
	// Two rooms of 4 x 4 m, a wall of 0.25 m, a door of 1 m.
	door := Polygon{{0, 0}, {4, 0}, {4, 1.5}, {4.25, 1.5}, {4.25, 0}, {8.25, 0},
		{8.25, 4}, {4.25, 4}, {4.25, 2.5}, {4, 2.5}, {4, 4}, {0, 4}}
	// A room of 2 x 4 m, a wall of 0.25 m with a hole of 0.1 m, a room of 4 x 4 m.
	hole := Polygon{{0, 0}, {2, 0}, {2, 1.95}, {2.25, 1.95}, {2.25, 0}, {6.25, 0},
		{6.25, 4}, {2.25, 4}, {2.25, 2.05}, {2, 2.05}, {2, 4}, {0, 4}}
	square := Rectangle(Vec{}, Vec{8, 8})
	for _, c := range []struct {
		id    string
		walls *Walls
		eye   Vec
		area  float64
	}{
		{"LOS-1", NewWalls(needle), Vec{0.5, 2}, 4},
		{"LOS-2", NewWalls(ell), Vec{2, 2}, 64},
		{"LOS-3", NewWalls(ell), Vec{9, 1}, 44.8},
		{"LOS-4", NewWalls(ell), Vec{8, 3}, 42},
		{"LOS-5", NewWalls(room, pillar.Edges()...), Vec{5, 1}, 76},
		{"LOS-6", NewWalls(room, pillar.Edges()...), Vec{1, 1}, 73.6},
		{"LOS-7", NewWalls(door), Vec{2, 2}, 857.0 / 36},
		{"LOS-8", NewWalls(hole), Vec{1.75, 2}, 10.025},
		{"LOS-9", NewWalls(square), Vec{1, 7}, 64},
		{"LOS-9 by the wall", NewWalls(square), Vec{1e-9, 4}, 64},
		{"LOS-9 in line with a wall", NewWalls(square, Segment{Vec{4, 4}, Vec{6, 4}}), Vec{1, 4}, 64},
	} {
		t.Run(c.id, func(t *testing.T) {
			assert.InDelta(t, c.area, c.walls.Visible(c.eye).SignedArea(), 1e-8)
			// Sectors that make up the whole turn make up the whole area.
			sum := 0.0
			for k := range 7 {
				sum += c.walls.VisibleWithin(c.eye, 0.3+float64(k)*2*math.Pi/7, 2*math.Pi/7).SignedArea()
			}
			assert.InDelta(t, c.area, sum, 1e-8)
			half := c.walls.VisibleWithin(c.eye, 1, math.Pi).SignedArea() +
				c.walls.VisibleWithin(c.eye, 1+math.Pi, math.Pi).SignedArea()
			assert.InDelta(t, c.area, half, 1e-8)
			most := c.walls.VisibleWithin(c.eye, 2, 5).SignedArea() +
				c.walls.VisibleWithin(c.eye, 2+math.Pi, 2*math.Pi-5).SignedArea()
			assert.InDelta(t, c.area, most, 1e-8)
		})
	}
	assert.ElementsMatch(t, Polygon{{3, 2}, {1, 2}, {0, 4}, {0, 0}}, NewWalls(needle).Visible(Vec{0.5, 2}), "LOS-1")
}

// castRay is how far a ray from a point goes before it meets a segment: the
// oracle, one segment after the other.
func castRay(segments []Segment, from, direction Vec) float64 {
	least := math.Inf(1)
	for _, s := range segments {
		d := s.B.Sub(s.A)
		det := direction.Cross(d)
		if det == 0 {
			continue
		}
		w := s.A.Sub(from)
		if r, k := w.Cross(d)/det, w.Cross(direction)/det; r > 0 && k >= 0 && k <= 1 {
			least = min(least, r)
		}
	}
	return least
}

// drawScene is a room with segments in it that cross, touch, share ends and
// repeat: on a coarse grid, where such things are common.
func drawScene(t *rapid.T) (boundary Polygon, segments []Segment, eye Vec) {
	boundary = Rectangle(Vec{}, Vec{12, 9})
	scale := rapid.SampledFrom([]float64{1, 0.37}).Draw(t, "scale")
	grid := func(name string) Vec {
		return Vec{float64(rapid.IntRange(0, 12).Draw(t, name+" x")), float64(rapid.IntRange(0, 9).Draw(t, name+" y"))}
	}
	for i := range rapid.IntRange(0, 14).Draw(t, "segments") {
		name := fmt.Sprint("segment ", i)
		segments = append(segments, Segment{grid(name + " from").Mul(scale), grid(name + " to").Mul(scale)})
	}
	eye = Vec{rapid.Float64Range(0.01, 11.99).Draw(t, "eye x"), rapid.Float64Range(0.01, 8.99).Draw(t, "eye y")}
	if rapid.Bool().Draw(t, "eye on the grid") {
		eye = Vec{float64(rapid.IntRange(1, 11).Draw(t, "gx")), float64(rapid.IntRange(1, 8).Draw(t, "gy"))}.Mul(scale)
	}
	return boundary, segments, eye
}

func TestVisibleAgainstRays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boundary, segments, eye := drawScene(t)
		all := append(boundary.Edges(), segments...)
		kept := all[:0:0]
		for _, s := range all { // what the eye lies on hides nothing
			if s.Distance(eye) > 1e-6 {
				kept = append(kept, s)
			}
		}
		if len(kept) != len(all) {
			return // half of a cut edge would still hide; see TestVisibleOnAnEdge
		}
		walls := NewWalls(boundary, segments...)
		seen := walls.Visible(eye)
		heading := rapid.Float64Range(-4, 4).Draw(t, "heading")
		width := rapid.Float64Range(0.05, 6.2).Draw(t, "width")
		sector := walls.VisibleWithin(eye, heading, width)
		const rays = 180
		for k := range rays {
			angle := (float64(k) + 0.437) * 2 * math.Pi / rays
			direction := Polar(1, angle)
			want := castRay(kept, eye, direction)
			if near := castRay(kept, eye, Polar(1, angle+1e-6)); math.Abs(near-want) > 1e-2 {
				continue // grazing a corner
			}
			assert.InDelta(t, want, castRay(seen.Edges(), eye, direction), 1e-6, "ray %d", k)
			switch off := math.Abs(AngleDiff(heading, angle)); {
			case off < width/2-1e-6:
				assert.InDelta(t, want, castRay(sector.Edges(), eye, direction), 1e-6, "ray %d in the sector", k)
			case off > width/2+1e-6:
				assert.False(t, sector.insideNear(eye.Add(direction.Mul(want/2))), "ray %d off the sector", k)
			}
		}
	})
}

func TestVisibleOnAnEdge(t *testing.T) {
	room := Rectangle(Vec{}, Vec{4, 4})
	assert.InDelta(t, 16, NewWalls(room).Visible(Vec{0, 2}).Area(), 1e-9, "on the boundary")
	assert.InDelta(t, 16, NewWalls(room).Visible(Vec{0, 0}).Area(), 1e-9, "in its corner")
	assert.InDelta(t, 16, NewWalls(room, Segment{Vec{1, 2}, Vec{3, 2}}).Visible(Vec{2, 2}).Area(), 1e-9)
	assert.Empty(t, NewWalls(nil).Visible(Vec{}))
	assert.Empty(t, NewWalls(room).VisibleWithin(Vec{1, 1}, 0, 0))
	assert.InDelta(t, 0, NewWalls(room).Visible(Vec{-5, 2}).Area()-NewWalls(room).VisibleWithin(Vec{-5, 2}, 0, 3).Area(), 1e-9)
	bad := NewWalls(room, Segment{Vec{math.NaN(), 1}, Vec{2, 2}}, Segment{Vec{1, 1}, Vec{math.Inf(1), 0}})
	assert.NotPanics(t, func() { bad.Visible(Vec{math.NaN(), 0}); bad.Visible(Vec{1, 2}) })
}

// More corners than fit beside a key in one word: two rows of posts, of which
// the nearer hides most of the further.
func TestVisibleAmongMany(t *testing.T) {
	var segments []Segment
	for i := range 17000 {
		at := Vec{float64(i) * 0.002, 10}
		segments = append(segments, Segment{at, at.Add(Vec{0.001, 0})}, Segment{at.Add(Vec{0, 1}), at.Add(Vec{0.001, 1})})
	}
	room := Rectangle(Vec{}, Vec{34, 20})
	walls := NewWalls(room, segments...)
	assert.Greater(t, len(walls.corners), math.MaxUint16)
	seen := walls.Visible(Vec{17, 5})
	all := append(room.Edges(), segments...)
	for k := range 100 {
		direction := Polar(1, float64(k)*0.0628+0.01)
		assert.InDelta(t, castRay(all, Vec{17, 5}, direction), castRay(seen.Edges(), Vec{17, 5}, direction), 1e-6)
	}
}

// benchWalls is 172 edges: a room and 42 blocks apart from each other.
func benchWalls() (*Walls, []Vec) {
	rng := rand.New(rand.NewPCG(7, 7))
	var segments []Segment
	var eyes []Vec
	for i := range 42 {
		at := Vec{2 + 4*float64(i%7) + rng.Float64(), 1.7 + 3*float64(i/7) + rng.Float64()}
		block := Rectangle(Vec{-0.4, -0.3}, Vec{0.4, 0.3}).Placed(at, rng.Float64()*7)
		segments = append(segments, block.Edges()...)
		eyes = append(eyes, at.Add(Vec{1.5, 1}))
	}
	return NewWalls(Rectangle(Vec{}, Vec{30, 20}), segments...), eyes
}

// The reference is CGAL's triangular expansion on as many edges: 63.5 us.
func BenchmarkVisible172(b *testing.B) {
	walls, eyes := benchWalls()
	viewer := walls.Viewer()
	var out Polygon
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		out = viewer.Visible(out, eyes[i%len(eyes)])
	}
}

func BenchmarkVisibleWithin172(b *testing.B) {
	walls, eyes := benchWalls()
	viewer := walls.Viewer()
	var out Polygon
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		out = viewer.VisibleWithin(out, eyes[i%len(eyes)], float64(i), 0.7)
	}
}
