package sight

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// TestOneFrame: in a ten-minute take a rig rolls past behind two doorways, fast
// enough that it lines up with both and the lens at one frame only.
func TestOneFrame(t *testing.T) {
	const frames, at = 14400, 9137
	s := &Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: frames, Aspect: 1.85}
	for _, y := range []float64{4, 8} { // two walls, each with a narrow doorway
		s.Solids = append(s.Solids,
			box("wall", "wall", -9, y, -0.05, y+0.2, 0, 3),
			box("wall", "wall", 0.05, y, 9, y+0.2, 0, 3),
			box("wall", "wall", -0.05, y, 0.05, y+0.2, 2.1, 3))
	}
	rig := Body{Name: "rig", Of: "rig", Kind: "rig", Radius: 0.05}
	for f := range frames {
		rig.Track = append(rig.Track, Pose{X: float64(f-at) * 0.5, Y: 12, Height: 1.2})
	}
	s.Bodies = []Body{rig}
	s.Cameras = []Camera{{Name: "a", Width: 24, Height: 13, Rolls: []Frames{{0, frames - 1}},
		Track: []View{{Z: 1.5, Pan: 1.5707963267948966, Focal: 35}}}}
	report := see(t, s)
	var showing []Frames
	for _, r := range report.Of(0, 0) {
		showing = append(showing, r.Showing(0)...)
	}
	assert.Equal(t, []Frames{{at, at}}, showing)
}

// TestHole: a camera in a box sees through a square hole in its wall, past the
// plug that stands for the hole to every other camera, and nothing else.
func TestHole(t *testing.T) {
	s := &Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: 1, Aspect: 1.85}
	const half = 0.06
	s.Solids = []Solid{
		box("wall", "wall", 0, -3, 0.1, -half, 0, 3),
		box("wall", "wall", 0, half, 0.1, 3, 0, 3),
		box("wall", "wall", 0, -half, 0.1, half, 0, 1.5-half),
		box("wall", "wall", 0, -half, 0.1, half, 1.5+half, 3),
	}
	plug := Body{Name: "hole", Of: "hole", Kind: "hole", Track: []Pose{{X: 0.05, Z: 1.5 - half, Height: 2 * half}},
		Polygon: []geom.Vec{{X: -0.05, Y: -half}, {X: 0.05, Y: -half}, {X: 0.05, Y: half}, {X: -0.05, Y: half}}}
	s.Bodies = []Body{plug, person("near", 4, 0, 0.23, 1.8), person("aside", 4, 2.5, 0.23, 1.8)}
	hidden := Camera{Name: "hidden", Width: 24, Height: 13, Rolls: []Frames{{0, 0}}, Own: []Own{{"hole", Frames{0, 0}}},
		Track: []View{{X: -0.1, Z: 1.5, Focal: 12}}}
	open := Camera{Name: "open", Width: 24, Height: 13, Rolls: []Frames{{0, 0}}, Track: []View{{X: 6, Y: 1, Z: 1.5, Pan: 3.14, Focal: 12}}}
	s.Cameras = []Camera{hidden, open}
	report := see(t, s)

	m, ok := report.Moment(0, 1, 0)
	require.True(t, ok)
	// The hole, narrowest at its far face 0.2 m from the lens, shows 0.06/0.2 of
	// the distance either way: at the front of a body 3.87 to 4.1 m away, down to
	// between 0.34 and 0.27 m.
	assert.InDelta(t, (1.8-0.32)/1.8, m.Visible, 0.01)
	m, ok = report.Moment(0, 2, 0)
	assert.True(t, ok && m.Visible == 0, "in frame, behind the wall")
	_, ok = report.Moment(0, 0, 0)
	assert.False(t, ok, "its own plug is left out")
	m, ok = report.Moment(1, 0, 0)
	assert.True(t, ok)
	// Of the block that stands for the hole the wall covers the sides.
	assert.InDelta(t, newCaster(s, 0).rays(1, 0, 300).visible, m.Visible, 0.005, "the other camera sees the hole")
}

func TestLensWithinABody(t *testing.T) {
	s := still(View{X: 0, Z: 1.5, Focal: 20}, person("round the lens", 0, 0, 0.3, 1.8), person("ahead", 3, 0, 0.3, 1.8))
	report := see(t, s)
	_, ok := report.Moment(0, 0, 0)
	assert.False(t, ok)
	m, ok := report.Moment(0, 1, 0)
	assert.True(t, ok)
	assert.Equal(t, 1.0, m.Visible)
}

func TestBehind(t *testing.T) {
	s := still(View{Z: 1.5, Focal: 20}, person("front", 3, 0, 0.2, 1.8), person("back", 5, 0, 0.1, 1.8), person("beside", 3, 1, 0.2, 1.8))
	s.Solids = []Solid{box("street", "wall", 8, -5, 8.2, 5, 0, 4)}
	report := see(t, s)
	got := report.Behind(0, 0, 0)
	require.Len(t, got, 3)
	names := map[string]Backing{}
	total := 0.0
	for _, b := range got {
		names[b.Name+b.Kind] = b
		total += b.Share
	}
	assert.InDelta(t, 1, total, 1e-9)
	assert.InDelta(t, 8, names["streetwall"].Distance, 0.05)
	assert.InDelta(t, 4.9, names["backperformer"].Distance, 0.02)
	assert.Greater(t, names["streetwall"].Share, names["backperformer"].Share)
	assert.Positive(t, names["floor"].Share)
	assert.Empty(t, report.Behind(0, 0, 0)[0].Share > 1)
}

func TestSeeStops(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	s := load{true, 2000, 1, 5}.scene()
	_, err := See(ctx, s, Options{Workers: 1, Progress: func(done, total int) {
		assert.Equal(t, 2000, total)
		assert.LessOrEqual(t, done, 300)
		cancel()
	}})
	assert.ErrorIs(t, err, context.Canceled)
	_, err = Floor(ctx, s, FloorOptions{})
	assert.ErrorIs(t, err, context.Canceled)
}

func TestSeeRefusesAScene(t *testing.T) {
	s := still(View{Focal: 20}, person("p", 1, 0, 0.2, 1))
	s.Frames = 5
	s.Bodies[0].Track = make([]Pose, 3)
	_, err := See(context.Background(), s, Options{})
	assert.ErrorContains(t, err, "body p: a track of 3 frames in a take of 5")
}

// TestWorkers: however many goroutines, the same report; and At agrees with it.
func TestWorkers(t *testing.T) {
	s := load{true, 500, 2, 20}.scene()
	one, err := See(context.Background(), s, Options{Workers: 1})
	require.NoError(t, err)
	many, err := See(context.Background(), s, Options{Workers: 5})
	require.NoError(t, err)
	assert.Equal(t, one.Sight, many.Sight)
	for f := units.Frame(0); f < 500; f += 97 {
		for camera := range s.Cameras {
			found := 0
			for _, got := range one.At(camera, f) {
				m, ok := one.Moment(camera, got.Body, f)
				require.True(t, ok)
				assert.InDelta(t, m.Visible, got.Visible, 1e-6)
				assert.InDelta(t, m.Share, got.Share, 1e-4)
				found++
			}
			for b := range s.Bodies {
				if _, ok := one.Moment(camera, b, f); ok {
					found--
				}
			}
			assert.Zero(t, found)
		}
	}
}

// TestNoAllocationPerFrame: once warm, looking allocates nothing.
func TestNoAllocationPerFrame(t *testing.T) {
	s := load{true, 400, 1, 40}.scene()
	s.Mirrors = []Mirror{{Name: "glass", A: geom.Vec{X: 14, Y: 9}, B: geom.Vec{X: 11, Y: 9}, Z: [2]float64{0.5, 2}}}
	st := newStage(s)
	w := newTileWorker(st, nil)
	tl := tile{Frames: Frames{0, tileFrames - 1}}
	for f := range units.Frame(tileFrames) {
		w.all(&tl, f)
	}
	n := testing.AllocsPerRun(3, func() {
		for f := range units.Frame(tileFrames) {
			w.all(&tl, f)
		}
	})
	assert.Less(t, n, float64(tileFrames)/16)
}

func TestRunSummaries(t *testing.T) {
	r := Run{Frames: Frames{10, 15}, Visible: []float32{0, 0.5, 0, 0.2, 0.9, 0}, Share: []float32{0, 2, 0, 3, 1, 0}}
	assert.Equal(t, units.Frame(13), r.Peak().Frame)
	assert.Equal(t, units.Frame(10), r.Least().Frame)
	assert.Equal(t, []Frames{{11, 11}, {13, 14}}, r.Showing(0))
	assert.Equal(t, []Frames{{10, 10}, {12, 12}, {15, 15}}, r.Hidden(0))
	c, ok := r.Cut(Frames{12, 99})
	require.True(t, ok)
	assert.Equal(t, Frames{12, 15}, c.Frames)
	assert.Equal(t, 4, c.Len())
	_, ok = r.Cut(Frames{16, 20})
	assert.False(t, ok)
}
