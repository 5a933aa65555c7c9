package frames

import (
	"context"
	"fmt"
	"math/rand"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
	"longhand/render/svg"
)

func compiled(t testing.TB, text string) *compile.Result {
	t.Helper()
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r
}

// examples are the plans that ship, by name.
func examples(t testing.TB) map[string]*compile.Result {
	t.Helper()
	files, err := filepath.Glob("../../examples/*.take")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	out := map[string]*compile.Result{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		out[filepath.Base(f)] = compiled(t, string(text))
	}
	return out
}

// clean holds a sheet to what every sheet must be.
func clean(t testing.TB, s *scene.Sheet, what string) {
	t.Helper()
	for _, p := range s.Check() {
		t.Errorf("%s: %s", what, p)
	}
	texts := s.Texts()
	for _, p := range label.Overlaps(label.Quads(texts)) {
		t.Errorf("%s: %q and %q overlap", what, texts[p[0]].Text, texts[p[1]].Text)
	}
}

func TestSheetsOfTheExamplesAreClean(t *testing.T) {
	for name, r := range examples(t) {
		d := New(r)
		for i, b := range r.Plan.Beats {
			for _, o := range []Options{{}, {Paper: scene.Letter}, {Paper: scene.A3}} {
				sheets := d.Sheet(b, o)
				for _, s := range sheets {
					clean(t, s, fmt.Sprintf("%s, beat %d", name, i+1))
				}
			}
		}
	}
}

func TestTheSameTextGivesTheSameBytes(t *testing.T) {
	text, err := os.ReadFile("../../examples/night-ferry.take")
	require.NoError(t, err)
	write := func() (out []byte) {
		r := compiled(t, string(text))
		for _, b := range r.Plan.Beats {
			for _, s := range Sheet(r, b, Options{}) {
				out = append(out, svg.Write(s, svg.Options{})...)
			}
		}
		return out
	}
	first := write()
	assert.NotEmpty(t, first)
	assert.True(t, string(first) == string(write()), "two runs differ")
}

// A figure fills the box in the frame that sight tells of the body: no more, and
// by no more than a hundredth less.
func TestFiguresAreAsLargeAsSightHasThem(t *testing.T) {
	seen := 0
	for name, r := range examples(t) {
		for i := range r.Stage.Scene.Cameras {
			cam := &r.Stage.Scene.Cameras[i]
			box := scene.BoxAt(0, 0, 100, 100*cam.Height/cam.Width)
			for _, roll := range cam.Rolls {
				for f := roll.From; f <= roll.To; f += 97 {
					l := newLens(cam.At(f), cam.Width, box)
					for _, s := range r.Sight.At(i, f) {
						b := &r.Stage.Scene.Bodies[s.Body]
						who, ok := r.Stage.Things[s.Body].(*plan.Person)
						inside := s.Box.Left > 0.001 && s.Box.Right < 0.999 && s.Box.Bottom > 0.001 && s.Box.Top < 0.999
						if !ok || s.Mirror >= 0 || s.Visible < 0.9999 || !inside {
							continue
						}
						fig := newFigure(l, b.At(f), b.Radius, r.Tracks.Body(who).Posture(r.Tracks.Rate.Time(f)), float64(r.Tracks.Body(who).Stature))
						require.NotNil(t, fig)
						var all []scene.Point
						for _, p := range fig.parts {
							all = append(all, p.ring...)
						}
						got, _ := scene.BoundsOf(all)
						want := scene.Box{
							Min: scene.Pt(s.Box.Left*box.Width(), (1-s.Box.Top)*box.Height()),
							Max: scene.Pt(s.Box.Right*box.Width(), (1-s.Box.Bottom)*box.Height()),
						}
						what := fmt.Sprintf("%s, %s at frame %d", name, who.Name, f)
						assert.InEpsilon(t, want.Width(), got.Width(), 0.01, what)
						assert.InEpsilon(t, want.Height(), got.Height(), 0.01, what)
						assert.InDelta(t, want.Min.X, got.Min.X, 0.01*want.Width(), what)
						assert.InDelta(t, want.Min.Y, got.Min.Y, 0.01*want.Height(), what)
						seen++
					}
				}
			}
		}
	}
	assert.Greater(t, seen, 10, "too few figures are whole in frame for the test to say anything")
}

// Who sight says is in frame and free has lines; who it says is out of frame has
// none.
func TestDrawnIsWhoSightSees(t *testing.T) {
	free, out := 0, 0
	for name, r := range examples(t) {
		d := New(r)
		for i, camera := range r.Stage.Cameras {
			cam := &r.Stage.Scene.Cameras[i]
			for _, roll := range cam.Rolls {
				for f := roll.From; f <= roll.To; f += 211 {
					g := d.Draw(camera, f, scene.BoxAt(0, 0, 200, 200*cam.Height/cam.Width))
					require.NotNil(t, g)
					drawn := map[string]int{}
					for _, it := range g.Items {
						if body, ok := it.(*scene.Group); ok && body.Class == "frame-body" {
							who, _, _ := strings.Cut(body.Title, ",")
							drawn[who] += len(body.Items)
						}
					}
					seen := map[string]float64{}
					for _, s := range r.Sight.At(i, f) {
						if s.Mirror < 0 {
							seen[r.Stage.Scene.Bodies[s.Body].Of] = max(s.Visible, 1e-9)
						}
					}
					for _, who := range r.Plan.People {
						v, in := seen[who.Name]
						switch {
						case !in:
							assert.Zero(t, drawn[who.Name], "%s: %s is out of %s's frame %d", name, who.Name, camera.Name, f)
							out++
						case v > 0.4:
							assert.Positive(t, drawn[who.Name], "%s: %s is in %s's frame %d", name, who.Name, camera.Name, f)
							free++
						}
					}
				}
			}
		}
	}
	assert.Greater(t, free, 10)
	assert.Greater(t, out, 10)
}

const studio = `take "Test"
  scene 1
  rate 24 fps
  aspect 1.85

set "Room"
  wall back (0, 0) (8, 0) high 3 m thick 0.2 m
  block crate (3, 2) (5, 2) (5, 3) (3, 3) high 2.6 m
  mark M1 (4, 5)
  mark M2 (4, 1)

kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks

people
  performer mina height 1.7 m
  crew ida
`

// One camera before a crate higher than a person: whoever stands behind it does
// not show, and before it they do.
func TestWhatACrateHidesIsNotDrawn(t *testing.T) {
	for _, c := range []struct {
		at   string
		seen bool
	}{{"(4, 4)", true}, {"(4, 1.2)", false}} {
		r := compiled(t, studio+`
beat "One" for 2 s
  A on legs with ida up 1.5 m
  A takes w35 T2.8
  A sees crate
  ida stands at (4, 9)
  legs stands at (4, 8)
  mina stands at `+c.at+"\n")
		g := Draw(r, r.Plan.Kit.Cameras[0], 10, scene.BoxAt(0, 0, 100, 54))
		require.NotNil(t, g)
		figures := 0
		for _, it := range g.Items {
			if body, ok := it.(*scene.Group); ok && strings.HasPrefix(body.Title, "mina") {
				figures += len(body.Items)
			}
		}
		assert.Equal(t, c.seen, figures > 0, c.at)
	}
}

func TestDrawHasNothingWithoutALensOrATake(t *testing.T) {
	assert.Nil(t, Draw(nil, nil, 0, scene.BoxAt(0, 0, 10, 10)))
	assert.Nil(t, Sheet(&compile.Result{}, nil, Options{}))
	r := compiled(t, "take \"Empty\"\n  rate 24 fps\n\nkit\n  camera A sensor 24.9 mm x 14 mm\n\nbeat \"One\" for 2 s\n")
	assert.Nil(t, Draw(r, r.Plan.Kit.Cameras[0], 0, scene.BoxAt(0, 0, 10, 10)))
	assert.Empty(t, Sheet(r, r.Plan.Beats[0], Options{}))
}

// Plans made up at random stay clean however people, blocks and the lens lie.
func TestSheetsOfGeneratedPlansAreClean(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	for i := range 12 {
		var b strings.Builder
		b.WriteString("take \"Generated\"\n  rate 24 fps\n  aspect 2.39\n\nset \"Floor\"\n")
		for k := range rng.Intn(6) {
			x, y := rng.Float64()*12, rng.Float64()*12
			fmt.Fprintf(&b, "  block b%d (%.2f, %.2f) (%.2f, %.2f) (%.2f, %.2f) high %.1f m\n", k, x, y, x+2, y, x+1, y+1.5, 0.5+rng.Float64()*2)
		}
		b.WriteString("\nkit\n  camera A sensor 24.9 mm x 14 mm\n  lens w25 25 mm\n  rig legs sticks\n\npeople\n  crew ida\n")
		n := 2 + rng.Intn(8)
		for k := range n {
			fmt.Fprintf(&b, "  performer person-%c height %.2f m\n", 'a'+k, 1.4+rng.Float64()*0.5)
		}
		b.WriteString("\nbeat \"One\" for 6 s\n  A on legs with ida up 1.4 m\n  A takes w25 T4\n  A sees person-a, person-b\n  ida stands at (-3, 6)\n  legs stands at (-2, 6)\n")
		for k := range n {
			fmt.Fprintf(&b, "  person-%c walks from (%.2f, %.2f) to (%.2f, %.2f)\n", 'a'+k, rng.Float64()*12, rng.Float64()*12, rng.Float64()*12, rng.Float64()*12)
		}
		r := compiled(t, b.String())
		sheets := Sheet(r, r.Plan.Beats[0], Options{})
		assert.NotEmpty(t, sheets)
		for _, s := range sheets {
			clean(t, s, fmt.Sprintf("plan %d", i))
		}
	}
}

func TestCaptionTellsLensAndDistance(t *testing.T) {
	r := compiled(t, studio+`
beat "One" for 2 s
  A on legs with ida up 1.5 m
  A takes w35 T2.8
  A sees mina full
  legs stands at (4, 8)
  ida stands at (4, 9)
  mina stands at M1 facing A
`)
	lines := New(r).Caption(r.Plan.Kit.Cameras[0], units.Frame(0), "start")
	require.Len(t, lines, 4)
	assert.Contains(t, lines[0], "A, start  0:00.0  frame 0")
	// PRJ-13: 24.89 mm wide at 3 m through 35 mm is 2.133 m; at 1.85, 1.15 m high.
	assert.Contains(t, lines[1], "thigh of mina at 3.0") // along the axis, which is tilted down
	assert.Contains(t, lines[1], "asked full")
	assert.Contains(t, lines[2], "35 mm, T2.8, focus 2.87 m, sharp 2.56 m to 3.27 m")
	assert.Contains(t, lines[3], "lens up 1.5 m, on legs with ida")
}

// A size is of no use where there is nobody to see: the caption says so.
func TestCaptionTellsWhoIsNotThere(t *testing.T) {
	for at, says := range map[string]string{"(4, 4)": "", "(4, 1.2)": "; mina hidden", "(9, 6)": "; mina out of frame"} {
		r := compiled(t, studio+`
beat "One" for 2 s
  A on legs with ida up 1.5 m
  A takes w35 T2.8
  A sees mina
  A sees crate starting +1 s
  ida stands at (4, 9)
  legs stands at (4, 8)
  mina stands at `+at+"\n")
		d, camera := New(r), r.Plan.Kit.Cameras[0]
		assert.Equal(t, strings.TrimPrefix(says, "; mina "), d.missing(camera, r.Plan.People[0], 47), at)
		if says == "; mina hidden" {
			assert.Contains(t, d.Caption(camera, 0, "start")[1], says)
		}
		if says == "" {
			assert.NotContains(t, d.Caption(camera, 0, "start")[1], ";")
		}
	}
}

func TestCaptionsLoseWholeParts(t *testing.T) {
	full := "32 mm, T4, focus 1.6 m, sharp 1.43 m to 1.81 m"
	assert.Equal(t, full, shortened(fonts.Regular, 100, full))
	assert.Equal(t, "32 mm, T4, focus 1.6 m", shortened(fonts.Regular, 45, full))
	assert.Equal(t, "32 mm", shortened(fonts.Regular, 10, full))
	assert.Equal(t, fonts.Regular.Fit(capSize, 4, full), shortened(fonts.Regular, 4, full))
}

func BenchmarkSheet(b *testing.B) {
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(b, err)
	r := compiled(b, string(text))
	d := New(r)
	for b.Loop() {
		d.Sheet(r.Plan.Beats[6], Options{})
	}
}

// MIR-5: by way of a mirror along y = 3, somebody at (4, 0) is 7.21 m from a lens at
// the origin.
func TestCaptionTellsTheMirror(t *testing.T) {
	r := compiled(t, `take "In the cloakroom"
set "Cloakroom"
  wall north (0, 3.101) (8, 3.101) high 3 m thick 0.2 m
  mirror glass on north 1.2 m to 2.8 m high 0.6 m to 2.4 m
kit
  camera A sensor 24.9 mm x 14 mm
  lens w50 50 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.66 m
  crew ida
beat "At the glass"
  mina stands at (4, 0) for 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w50 T4
  A sees mina in glass
`)
	lines := New(r).Caption(r.Plan.Kit.Cameras[0], 0, "start")
	require.Len(t, lines, 4)
	assert.Contains(t, lines[1], "on mina in glass: full of mina at 7.2")
	assert.Contains(t, lines[1], "by way of glass")
}

// What is drawn of a reflection lies where sight, which knows nothing of drawing, finds
// it, and within the glass; what stands before the glass hides it; a mirror whose face
// is turned away shows nothing.
func TestReflectionsAreDrawn(t *testing.T) {
	room := func(glass, more string) *compile.Result {
		return compiled(t, `take "In the cloakroom"
  aspect 1.85
set "Cloakroom"
  wall north (-2, 3.1) (8, 3.1) high 3 m thick 0.2 m
  wall east (8, 3.1) (8, -3) high 3 m thick 0.2 m
  mirror glass on north `+glass+` high 0.3 m to 2.4 m
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.66 m
  performer otto
  crew ida
beat "At the glass"
  mina stands at (4, 0) for 2 s
`+more+`  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina in glass
`)
	}
	box := scene.Box{Max: scene.Pt(185, 100)}
	length := 0.0 // of what was drawn last, in millimetres
	drawn := func(r *compile.Result) (scene.Box, bool) {
		length = 0
		var points []scene.Point
		var walk func(it scene.Item, in bool)
		walk = func(it scene.Item, in bool) {
			switch it := it.(type) {
			case *scene.Group:
				for _, c := range it.Items {
					walk(c, in || it.Title == "mina in glass")
				}
			case *scene.Polyline:
				if in {
					points = append(points, it.Points...)
					length += scene.LengthOf(it.Points)
				}
			}
		}
		walk(New(r).Draw(r.Plan.Kit.Cameras[0], 10, box), false)
		return scene.BoundsOf(points)
	}
	seen := func(r *compile.Result) scene.Box {
		for _, s := range r.Sight.At(0, 10) {
			if s.Mirror >= 0 && r.Stage.Scene.Bodies[s.Body].Name == "mina" {
				return scene.Box{
					Min: scene.Pt(185*s.Box.Left, 100-100*s.Box.Top),
					Max: scene.Pt(185*s.Box.Right, 100-100*s.Box.Bottom),
				}
			}
		}
		return scene.Box{}
	}
	for _, glass := range []string{"3 m to 6 m", "3 m to 4.1 m", "3.95 m to 6 m"} {
		r := room(glass, "")
		got, ok := drawn(r)
		require.True(t, ok, glass)
		want := seen(r)
		// A figure stands in for a cylinder: it is as high, and no wider.
		assert.GreaterOrEqual(t, got.Min.X, want.Min.X-0.5, glass)
		assert.LessOrEqual(t, got.Max.X, want.Max.X+0.5, glass)
		assert.LessOrEqual(t, got.Max.Y, want.Max.Y+0.5, glass)
		assert.GreaterOrEqual(t, got.Min.Y, want.Min.Y-0.5, glass)
		assert.Greater(t, got.Height(), 0.8*want.Height(), glass)
	}
	_, ok := drawn(room("5.5 m to 6 m", ""))
	assert.False(t, ok, "beyond the glass's edge")
	drawn(room("3 m to 6 m", ""))
	free := length
	drawn(room("3 m to 6 m", "  otto stands at (1, 1.5) for 2 s\n"))
	assert.Less(t, length, free/3, "behind otto, but for what shows past his arms")
}
