package scout

import (
	"bytes"
	"context"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

func askIn(t testing.TB, take Take) Ask {
	return Ask{Take: take, Frame: frame(t), Focal: 28, Stop: 2.8, Sees: []plan.Thing{take.Plan.People[0], take.Plan.People[1]}, Frames: all(take), Walls: Walls(&take.Plan.Set), Floor: true}
}

func TestTheSameWhoeverLooks(t *testing.T) {
	take := taken(t, hall(5, true))
	ask := askIn(t, take)
	one, err := Cameras(context.Background(), ask)
	require.NoError(t, err)
	ask.Workers = 3
	three, err := Cameras(context.Background(), ask)
	require.NoError(t, err)
	assert.Equal(t, one.Places, three.Places)
	assert.NotEmpty(t, one.Places)
	for i, p := range one.Places {
		assert.True(t, p.Checked)
		assert.True(t, i == 0 || p.Score <= one.Places[i-1].Score, "best first")
		assert.InDelta(t, score(p.Sees, float64(p.Seen)/float64(ask.seconds(float64(take.Stage.Scene.Frames))), p.Tall), p.Score, 1e-9)
	}
}

// TestBrokenOff: a search that is interrupted gives what it has, marked as an
// estimate, and what it had worked out by then.
func TestBrokenOff(t *testing.T) {
	take := taken(t, hall(5, true))
	for _, at := range []int{1, 45, 80} {
		ctx, stop := context.WithCancel(context.Background())
		ask := askIn(t, take)
		ask.Progress = func(done, all int) {
			if done >= at {
				stop()
			}
		}
		r, err := Cameras(ctx, ask)
		stop()
		require.NoError(t, err)
		assert.True(t, r.Stopped, at)
		for _, p := range r.Places {
			assert.False(t, math.IsNaN(p.Score))
		}
		if at == 1 || at >= 45 { // before anything is known of the other cameras, nothing is said
			assert.Equal(t, at >= 45, len(r.Places) > 0, at)
		}
	}
}

// TestPasted: with the lines to paste in it, the plan compiles, its hole cuts
// nothing off, and the camera sees as much as was said.
func TestPasted(t *testing.T) {
	text := hall(1, false)
	take := taken(t, text)
	for _, floor := range []bool{false, true} {
		ask := askIn(t, take)
		ask.Floor = floor
		if floor {
			ask.Walls = nil
		}
		ask.Like = take.Plan.Kit.Cameras[0]
		r, err := Cameras(context.Background(), ask)
		require.NoError(t, err)
		require.NotEmpty(t, r.Places)
		pasted := text
		for _, l := range r.Paste(&r.Places[0], take.Plan.Kit.Lenses[0]) {
			switch l.Section {
			case "set":
				pasted = strings.Replace(pasted, "kit\n", "  "+l.Text+"\nkit\n", 1)
			case "kit":
				pasted = strings.Replace(pasted, "people\n", "  "+l.Text+"\npeople\n", 1)
			default:
				pasted += "  " + l.Text + "\n"
			}
		}
		res, err := compile.Text(context.Background(), "plan.take", pasted, compile.Options{})
		require.NoError(t, err)
		require.False(t, res.Stopped, "%v\n%s", res.Findings, pasted)
		for _, d := range res.Findings {
			assert.NotContains(t, []string{"hole-vignettes", "hole-blocked", "bump", "through-wall"}, string(d.Code), "%s", d.Message)
		}
		camera, ok := res.Stage.Scene.Camera("B")
		require.True(t, ok)
		sees := 0.0
		for f := range units.Frame(res.Stage.Scene.Frames) {
			least := 1.0
			for _, who := range []string{"mina", "otto"} {
				body, _ := res.Stage.Scene.Body(who)
				m, _ := res.Sight.Moment(camera, body, f)
				least = min(least, m.Visible)
			}
			sees += least / float64(res.Stage.Scene.Frames)
		}
		assert.InDelta(t, r.Places[0].Sees, sees, 0.06)
	}
}

// TestStandsAreUnseen: nothing that stands at a place listed is in the line of any
// camera, by rays.
func TestStandsAreUnseen(t *testing.T) {
	for seed := range uint64(2) {
		take := taken(t, hall(seed, true))
		for _, what := range Purposes() {
			r, err := Stands(context.Background(), StandAsk{Take: take, For: what, Near: take.Plan.People[0], Frames: all(take)})
			require.NoError(t, err)
			require.NotEmpty(t, r.Places, "%s, seed %d", what, seed)
			scene := take.Stage.Scene
			everybody := map[int]bool{}
			for i := range scene.Bodies {
				everybody[i] = true
			}
			for _, p := range r.Places {
				for f := units.Frame(0); int(f) < scene.Frames; f += 12 {
					v := scene.Cameras[0].At(f)
					view := optics.View{At: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: 28}
					for k := range 8 {
						q := p.At.At(float64(r.High) * (float64(k) + 0.5) / 8)
						at, ok := view.Project(q)
						assert.False(t, ok && frame(t).Holds(at) && !blocked(scene, "", everybody, f, view.At, q), "%s %v at frame %d", what, p.At, f)
					}
				}
				assert.LessOrEqual(t, float64(p.Nearest), float64(r.Reach))
				assert.LessOrEqual(t, float64(p.Nearest), float64(p.Mean))
				assert.LessOrEqual(t, float64(p.Mean), float64(p.Furthest))
			}
		}
	}
}

func TestNoSense(t *testing.T) {
	take := taken(t, hall(0, false))
	good := askIn(t, take)
	for name, spoil := range map[string]func(*Ask){
		"nobody to see":       func(a *Ask) { a.Sees = nil },
		"no size":             func(a *Ask) { a.Frame = optics.Frame{} },
		"no focal length":     func(a *Ask) { a.Focal = 0 },
		"nowhere to look":     func(a *Ask) { a.Walls, a.Floor = nil, false },
		"are not in a take":   func(a *Ask) { a.Frames = sight.Frames{From: 5, To: 1 << 20} },
		"nowhere in the take": func(a *Ask) { a.Sees = []plan.Thing{take.Plan.Kit.Rigs[0]} },
		"not been worked out": func(a *Ask) { a.Take = Take{} },
	} {
		a := good
		spoil(&a)
		_, err := Cameras(context.Background(), a)
		require.Error(t, err, name)
		assert.Contains(t, err.Error(), name)
	}
}

// TestRoomOnAWall: no hole where there is a door, a window, an edge, or another
// hole.
func TestRoomOnAWall(t *testing.T) {
	text := strings.Replace(hall(0, false), "kit\n", "  door gap on south 2 m to 3 m high 2 m\n  window pane on south 4 m to 5 m high 1 m to 2 m\n  hole old on south at 6 m up 1.4 m wide 200 mm\nkit\n", 1)
	take := taken(t, text)
	set := &take.Plan.Set
	south := set.Walls[0]
	for _, c := range []struct {
		along, up float64
		want      bool
	}{
		{1, 1.4, true}, {2.5, 1.4, false}, {2.5, 2.5, true}, {1.95, 1, false}, {4.5, 1.5, false}, {4.5, 0.5, true},
		{6, 1.4, false}, {6.1, 1.4, false}, {6.5, 1.4, true}, {0.05, 1.4, false}, {8.95, 1.4, false}, {1, 0.05, false}, {1, 2.95, false},
	} {
		assert.Equal(t, c.want, roomy(set, south, c.along, c.up, 0.1), "%v up %v", c.along, c.up)
	}
}

func TestUnusedNames(t *testing.T) {
	text := strings.Replace(hall(0, false), "kit\n", "  hole peep on south at 6 m up 1.4 m wide 200 mm\nkit\n", 1)
	p := taken(t, text).Plan
	assert.Equal(t, "peep-2", unused(p, "peep"))
	assert.Equal(t, "door", unused(p, "door"))
}

func TestReportsAreWhole(t *testing.T) {
	take := taken(t, hall(5, true))
	r, err := Cameras(context.Background(), askIn(t, take))
	require.NoError(t, err)
	var text, data bytes.Buffer
	require.NoError(t, r.WriteText(&text, `"On"`, take.Plan.Kit.Lenses[0]))
	require.NoError(t, r.WriteJSON(&data, `"On"`, take.Plan.Kit.Lenses[0]))
	for _, s := range []string{"NaN", "Inf", "-0 "} {
		assert.NotContains(t, text.String(), s)
		assert.NotContains(t, data.String(), s)
	}
	assert.Contains(t, text.String(), "to paste for the first:")
	assert.Contains(t, data.String(), `"schema": 1`)
}

func BenchmarkCameras(b *testing.B) {
	take := taken(b, hall(5, true))
	for b.Loop() {
		_, err := Cameras(context.Background(), askIn(b, take))
		require.NoError(b, err)
	}
}

// TestInFeet: a plan in feet gets its coordinates in feet.
func TestInFeet(t *testing.T) {
	p := Place{At: geom.Vec{X: 2.4384, Y: 3.81}, Up: 1.524}
	assert.Equal(t, `at (8, 12.5), lens 5' up`, p.In(units.Feet))
	assert.Equal(t, "at (2.44, 3.81), lens 1.52 m up", p.In(units.Metric))
}
