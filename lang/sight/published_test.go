package sight

import (
	"context"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// box is an upright block.
func box(name, kind string, x0, y0, x1, y1, z0, z1 float64) Solid {
	return Solid{Name: name, Kind: kind, Z: [2]float64{z0, z1},
		Polygon: []geom.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}}
}

// person is an upright cylinder that stays where it is.
func person(name string, x, y, radius, height float64) Body {
	return Body{Name: name, Of: name, Kind: "performer", Radius: radius, Track: []Pose{{X: x, Y: y, Height: height}}}
}

// still is a scene of one camera and one frame.
func still(v View, bodies ...Body) *Scene {
	return &Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: 1, Aspect: 1.85, Bodies: bodies,
		Cameras: []Camera{{Name: "a", Width: 24, Height: 18, Rolls: []Frames{{0, 0}}, Track: []View{v}}}}
}

// TestOccluderOffTheLine is LOS-10: an occluder 0.2 m off a line of sight blocks
// it with a radius of 0.25 m and clears it by 0.05 m with one of 0.15 m (plane
// geometry). The line is that to a body as thin as a wire.
func TestOccluderOffTheLine(t *testing.T) {
	for _, c := range []struct {
		radius  float64
		visible float64
	}{{0.25, 0}, {0.15, 1}, {0.199, 1}, {0.201, 0}} {
		s := still(View{Z: 1.5, Focal: 25}, person("wire", 6, 0, 0.0001, 1.6), person("post", 3, 0.2, c.radius, 3))
		m, ok := see(t, s).Moment(0, 0, 0)
		require.True(t, ok)
		assert.InDelta(t, c.visible, m.Visible, 0.001, "radius %g", c.radius)
	}
}

// TestOverAWall is LOS-11: eye at 1.5 m, a wall 1.2 m high at 4 m, a head at
// 1.7 m at 6 m. The lowest height in sight at 6 m is 1.05 m (similar triangles).
func TestOverAWall(t *testing.T) {
	s := still(View{Z: 1.5, Focal: 12}, person("wire", 6, 0, 0.0001, 1.7))
	s.Solids = []Solid{box("wall", "wall", 3.9, -3, 4, 3, 0, 1.2)}
	report := see(t, s)
	m, ok := report.Moment(0, 0, 0)
	require.True(t, ok)
	assert.InDelta(t, (1.7-1.05)/1.7, m.Visible, 0.001)
	// The lower edge of what shows, back from the picture to 6 m.
	b, ok := report.Box(0, 0, 0)
	require.True(t, ok)
	assert.InDelta(t, 1.05, 1.5+(b.Bottom-0.5)*18/12*6, 0.001)
	assert.InDelta(t, 1.7, 1.5+(b.Top-0.5)*18/12*6, 0.001)
}

// TestCornerOfTheFrame holds the share of what only reaches into the frame at its
// side, where a tilted lens sees an upright edge lean, to rays.
func TestCornerOfTheFrame(t *testing.T) {
	block := func(heading float64) Body {
		return Body{Name: "block", Of: "block", Kind: "vehicle", Track: []Pose{{X: 2.4, Y: 1.9, Heading: heading, Height: 1.6}},
			Polygon: []geom.Vec{{X: -0.9, Y: -0.8}, {X: 0.9, Y: -0.8}, {X: 0.9, Y: 0.8}, {X: -0.9, Y: 0.8}}}
	}
	for _, tilt := range []float64{-0.15, -0.3, -0.42, -0.5, 0.3, 0.567} {
		for _, of := range []Body{block(0.2), block(1), person("stout", 2.1, 1.05, 0.35, 1.9), person("close", 2.28, 1.35, 0.23, 1.68)} {
			for _, pan := range []float64{0, 0.08, -0.05, -0.1} {
				s := still(View{Z: 1.7, Pan: pan, Tilt: tilt, Focal: 24}, of)
				if tilt > 0.5 { // a wide lens that looks up past somebody close
					s = still(View{X: 2.05, Y: 0.9 + pan, Z: 0.5, Pan: 0.8, Tilt: tilt, Focal: 12}, of)
				}
				want := newCaster(s, 0).rays(0, 0, 250)
				m, ok := see(t, s).Moment(0, 0, 0)
				if !ok {
					assert.Zero(t, want.hits, "%s, tilt %g, pan %g", of.Name, tilt, pan)
					continue
				}
				assert.InDelta(t, want.share, m.Share, 0.01*want.share+0.01, "%s, tilt %g, pan %g", of.Name, tilt, pan)
			}
		}
	}
}

// TestOverTheEdge is a lens just above the edge of what stands below it, or below
// the edge of what hangs above: half of what it sees is that, whether or not the
// last bit of a number puts it over it.
func TestOverTheEdge(t *testing.T) {
	deck := Body{Name: "deck", Of: "deck", Kind: "vehicle", Track: []Pose{{X: 1, Height: 0.5}},
		Polygon: []geom.Vec{{X: -1, Y: -30}, {X: 30, Y: -30}, {X: 30, Y: 30}, {X: -1, Y: 30}}}
	for _, tilt := range []float64{-0.6, -1.2, -math.Pi / 2, 0.6, 1.2, math.Pi / 2} {
		for _, pan := range []float64{0, math.Pi / 2, 2, math.Pi} {
			for _, x := range []float64{0, 1e-13, -1e-13} {
				of := deck
				if tilt > 0 {
					of.Track = []Pose{{X: 1, Z: 2.5, Height: 0.5}}
				}
				s := still(View{X: x, Z: 1.5, Pan: pan, Tilt: tilt, Focal: 18}, of)
				want := newCaster(s, 0).rays(0, 0, 200)
				got := At(s, 0, 0)
				share := 0.0
				if len(got) > 0 {
					share = got[0].Share
				}
				assert.InDelta(t, want.share, share, 0.6, "tilt %g, pan %g, lens at %g", tilt, pan, x)
			}
		}
	}
}

// TestHeldByABentBlock: a lens in one arm of an L sees through the other arm, too.
func TestHeldByABentBlock(t *testing.T) {
	s := still(View{X: 1, Y: 0.5, Z: 1.5, Focal: 24}, person("mina", 8, 0.5, 0.23, 1.7))
	s.Solids = []Solid{{Name: "bench", Kind: "block", Z: [2]float64{0, 2}, Polygon: []geom.Vec{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 3}, {X: 3, Y: 3}, {X: 3, Y: 1}, {X: 0, Y: 1}}}}
	got := At(s, 0, 0)
	require.Len(t, got, 1)
	assert.Equal(t, 1.0, got[0].Visible)
	s.Cameras[0].Track[0].Z = 2.2 // over it
	got = At(s, 0, 0)
	require.Len(t, got, 1)
	assert.Less(t, got[0].Visible, 1.0)
}

// mirrored is a person of a height before an upright mirror at some distance,
// seen by a lens in the person's own eye.
func mirrored(height, eye, distance, z0, z1 float64) *Scene {
	s := still(View{X: 0, Z: eye, Focal: 4}, person("self", 0, 0, 0.0001, height))
	s.Cameras[0].Own = []Own{{"self", Frames{0, 0}}}
	s.Mirrors = []Mirror{{Name: "glass", A: geom.Vec{X: distance, Y: -2}, B: geom.Vec{X: distance, Y: 2}, Z: [2]float64{z0, z1}}}
	return s
}

// image is what is seen of a body in the first mirror, and where.
func image(t *testing.T, s *Scene, body int) (Sighting, bool) {
	t.Helper()
	for _, m := range At(s, 0, 0) {
		if m.Body == body && m.Mirror == 0 {
			return m, true
		}
	}
	return Sighting{}, false
}

// TestFullLengthMirror is MIR-1 and MIR-2 (Boston University physics notes): a
// person sees all of their height h in a mirror of h/2 from half the eye's
// height to half way between eye and crown, at any distance; 1.80 m with the eye
// at 1.68 m: 0.84 m to 1.74 m.
func TestFullLengthMirror(t *testing.T) {
	for _, distance := range []float64{0.8, 2, 5} {
		whole, ok := image(t, mirrored(1.8, 1.68, distance, 0, 3), 0)
		require.True(t, ok)
		just, ok := image(t, mirrored(1.8, 1.68, distance, 0.84, 1.74), 0)
		require.True(t, ok)
		assert.InDelta(t, whole.Share, just.Share, 1e-6+whole.Share*1e-6, "all of it at %g m", distance)
		short, ok := image(t, mirrored(1.8, 1.68, distance, 0.84+0.01, 1.74-0.02), 0)
		require.True(t, ok)
		// Each centimetre of glass shows two of the person: h is 1.80 m.
		assert.InDelta(t, whole.Share*(1-0.06/1.8), short.Share, whole.Share*1e-3, "at %g m", distance)
	}
}

// TestTwoFootMirror is MIR-3 (a worked problem at physicsforums.com): a man of
// 6 ft, eye taken at 6 ft, before a mirror of 2 ft hung from 4 ft up sees himself
// from the head down 4 ft, at 5 ft or at 10 ft.
func TestTwoFootMirror(t *testing.T) {
	const ft = float64(units.Foot)
	for _, distance := range []float64{5 * ft, 10 * ft} {
		s := mirrored(6*ft, 6*ft, distance, 4*ft, 6*ft)
		m, ok := image(t, s, 0)
		require.True(t, ok)
		// The image is twice the distance away.
		low := 6*ft + (m.Box.Bottom-0.5)*18/4*2*distance
		high := 6*ft + (m.Box.Top-0.5)*18/4*2*distance
		assert.InDelta(t, 2*ft, low, 0.002)
		assert.InDelta(t, 6*ft, high, 0.002)
	}
}

// TestMirrorHit is MIR-5 (unfolded path): a camera at (0, 0) sees a subject at
// (4, 0) in a mirror along y = 3 at (2, 3), and nowhere else.
func TestMirrorHit(t *testing.T) {
	at := func(x0, x1 float64) bool {
		s := still(View{Z: 1.5, Pan: math.Pi / 4, Focal: 10}, person("subject", 4, 0, 0.01, 1.7))
		// The bright face is to the left of the way from A to B: below the line.
		s.Mirrors = []Mirror{{Name: "glass", A: geom.Vec{X: x1, Y: 3}, B: geom.Vec{X: x0, Y: 3}, Z: [2]float64{0, 3}}}
		m, ok := image(t, s, 0)
		return ok && m.Visible > 0
	}
	assert.True(t, at(1.9, 2.1))
	assert.False(t, at(1, 1.95))
	assert.False(t, at(2.05, 3))
}

// TestRoomAreas is LOS-2 to LOS-9: the area seen in plan from a point, as CGAL
// 5.5 (Triangular_expansion_visibility_2) and the npm package
// visibility-polygon 1.1 both give it. Here a lens one metre up turns round
// between tall walls; a cell is seen if anything above it is.
func TestRoomAreas(t *testing.T) {
	for _, c := range []struct {
		id     string
		eye    geom.Vec
		w, h   float64
		solids []Solid
		area   float64
	}{
		{"LOS-2", geom.Vec{X: 2, Y: 2}, 10, 10, []Solid{box("corner", "block", 4, 4, 10, 10, -1, 9)}, 64},
		{"LOS-3", geom.Vec{X: 9, Y: 1}, 10, 10, []Solid{box("corner", "block", 4, 4, 10, 10, -1, 9)}, 44.8},
		{"LOS-4", geom.Vec{X: 8, Y: 3}, 10, 10, []Solid{box("corner", "block", 4, 4, 10, 10, -1, 9)}, 42},
		{"LOS-5", geom.Vec{X: 5, Y: 1}, 10, 10, []Solid{box("pillar", "pillar", 4, 4, 6, 6, -1, 9)}, 76},
		{"LOS-6", geom.Vec{X: 1, Y: 1}, 10, 10, []Solid{box("pillar", "pillar", 4, 4, 6, 6, -1, 9)}, 73.6},
		{"LOS-7", geom.Vec{X: 2, Y: 2}, 8.25, 4, []Solid{
			box("wall", "wall", 4, 0, 4.25, 1.5, -1, 9), box("wall", "wall", 4, 2.5, 4.25, 4, -1, 9)}, 857.0 / 36},
		{"LOS-8", geom.Vec{X: 1.75, Y: 2}, 6.25, 4, []Solid{
			box("wall", "wall", 2, 0, 2.25, 1.95, -1, 9), box("wall", "wall", 2, 2.05, 2.25, 4, -1, 9)}, 10.025},
		{"LOS-9", geom.Vec{X: 3, Y: 5}, 8, 8, nil, 64},
	} {
		s := still(View{})
		s.Frames = 8
		s.Solids = c.solids
		s.Cameras[0].Rolls = []Frames{{0, 7}}
		s.Cameras[0].Track = nil
		for f := range 8 {
			s.Cameras[0].Track = append(s.Cameras[0].Track,
				View{X: c.eye.X, Y: c.eye.Y, Z: 1, Pan: float64(f) * math.Pi / 4, Focal: 20})
		}
		const cell = 0.02
		m, err := Floor(context.Background(), s, FloorOptions{Cell: cell, Height: Standing, Bounds: [2]geom.Vec{{}, {X: c.w, Y: c.h}}})
		require.NoError(t, err)
		n := 0
		for row := range m.Rows {
			for column := range m.Columns {
				if m.Seen(column, row) && !m.Taken(column, row) {
					n++
				}
			}
		}
		// A cell wide along the edges of what is seen, half of them either way.
		assert.InDelta(t, c.area, float64(n)*cell*cell, 0.06, c.id)
	}
}
