package timeline

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
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

// A pickup's timeline has its own clock, its own lines and findings, and the cameras
// that it names.
func TestAPickupHasATimelineOfItsOwn(t *testing.T) {
	r := compiled(t, `take "Covered"
  rate 24 fps
set "Room"
  mark M1 (0, 0)
  mark M2 (6, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
  rig other sticks
people
  performer mina
  crew ida
  crew per
  crew gus
beat "Across"
  mina walks from M1 to M2
  A on legs with ida at (3, -9)
  A takes w35 T8
  A sees mina
pickup "Her face" after "Across"
  mina stands at M2
  mina says "Nobody has been here." starting +1 s
  B on other with per at (6, -2.4)
  B takes w35 T8
  B sees mina
  gus stands at (6.5, 1.5)
`)
	texts := func(sheets []*scene.Sheet) string {
		var out []string
		for _, s := range sheets {
			clean(t, s, s.Title)
			for _, x := range s.Texts() {
				out = append(out, x.Text)
			}
		}
		return strings.Join(out, "\n") + "\n"
	}
	require.Len(t, r.Pickups, 1)
	own, take := texts(Pickup(r, r.Pickups[0], Options{})), texts(Sheets(r, Options{}))
	for _, want := range []string{"Timeline  0:00.0 to 0:02.6   pickup Her face   Covered", "\nB\n", "“Nobody has been here.”", "crew-in-shot gus"} {
		assert.Contains(t, own, want)
		assert.NotContains(t, take, "“Nobody")
	}
	assert.NotContains(t, own, "\nA\n")
	assert.NotContains(t, own, "walks to M2")
	assert.NotContains(t, take, "gus")
	assert.Nil(t, Pickup(nil, nil, Options{}))
	assert.Nil(t, Pickup(r, &compile.Shot{}, Options{}))
}

func TestTimelinesOfTheExamplesAreClean(t *testing.T) {
	for name, r := range examples(t) {
		for _, o := range []Options{{}, {Paper: scene.A4}, {Paper: scene.Letter}, {Strip: true}, {Scale: 2}, {Scale: 25}} {
			sheets := Sheets(r, o)
			assert.NotEmpty(t, sheets)
			for i, s := range sheets {
				clean(t, s, fmt.Sprintf("%s, %+v, page %d", name, o, i+1))
			}
			if o.Strip {
				assert.Len(t, sheets, 1, "a strip is one sheet")
			}
		}
	}
}

func TestEverySpokenLineAndBeatIsOnIt(t *testing.T) {
	for name, r := range examples(t) {
		var all []string
		for _, s := range Sheets(r, Options{}) {
			for _, x := range s.Texts() {
				all = append(all, x.Text)
			}
		}
		text := strings.Join(all, "\n")
		for _, b := range r.Plan.Beats {
			assert.Contains(t, text, b.Title, name)
		}
		for _, a := range r.Plan.Actions {
			if d, ok := a.Deed.(*plan.Say); ok {
				assert.Contains(t, text, d.Text, name)
			}
		}
	}
}

func TestTheSameTextGivesTheSameBytes(t *testing.T) {
	text, err := os.ReadFile("../../examples/eight-bars.take")
	require.NoError(t, err)
	write := func() (out string) {
		for _, s := range Sheets(compiled(t, string(text)), Options{}) {
			out += string(svg.Write(s, svg.Options{}))
		}
		return out
	}
	first := write()
	assert.True(t, first == write(), "two runs differ")
}

// A second is as long everywhere: a line of 4 s is four times the scale long, and
// begins where its start lies on the ruler.
func TestBarsAreToScale(t *testing.T) {
	r := compiled(t, `take "Test"
  scene 1
  rate 24 fps

set "Room"
  mark M1 (0, 0)
  mark M2 (4, 0)

people
  performer mina

beat "One" for 20 s
  mina walks from M1 to M2 in 4 s starting +5 s
`)
	sheets := Sheets(r, Options{Scale: 10})
	require.Len(t, sheets, 1)
	var bars []*scene.Rect
	var walk func(items []scene.Item)
	walk = func(items []scene.Item) {
		for _, it := range items {
			switch s := it.(type) {
			case *scene.Group:
				walk(s.Items)
			case *scene.Rect:
				if s.Class == "bar-move" {
					bars = append(bars, s)
				}
			}
		}
	}
	walk(sheets[0].Items)
	require.Len(t, bars, 1)
	assert.InDelta(t, 40, bars[0].Box.Width(), 1e-9)
	assert.InDelta(t, margin+names+kinds+50, bars[0].Box.Min.X, 1e-9)
	assert.InDelta(t, 5.0, float64(r.Tracks.Clock.Actions[0].Start), 1e-9)
}

func TestPagesCoverTheTakeWithoutGapsAtOneScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := units.Seconds(rapid.Float64Range(0.5, 3000).Draw(t, "length"))
		d := &drawing{taker: &taker{length: length}, margin: margin, width: 420, height: 297}
		ws := d.windows(Options{Scale: rapid.SampledFrom([]float64{0, 0, 3, 7.5, 40}).Draw(t, "scale")})
		at := units.Seconds(0)
		for _, w := range ws {
			if math.Abs(float64(w.from-at)) > 1e-9 || w.scale != ws[0].scale || w.right() > 420-margin+1e-6 {
				t.Fatalf("%+v after %v", w, at)
			}
			at = w.to
		}
		if math.Abs(float64(at-length)) > 1e-6 && len(ws) < 500 {
			t.Fatalf("ends at %v of %v", at, length)
		}
	})
}

// Whatever the items, no two texts of a row lie on each other, and no bar of one
// row on another.
func TestPackedRowsKeepTextsApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := window{from: 10, to: 60, left: 50, scale: rapid.Float64Range(1, 12).Draw(t, "scale")}
		g := &group{keyed: rapid.Bool().Draw(t, "keyed")}
		for range rapid.IntRange(0, 30).Draw(t, "n") {
			from := units.Seconds(rapid.Float64Range(0, 70).Draw(t, "from"))
			it := item{from: from, to: from + units.Seconds(rapid.Float64Range(0, 20).Draw(t, "long")), text: rapid.SampledFrom([]string{"", "mina", "walks to M2 and on", "says nothing"}).Draw(t, "text"), bar: "bar-do"}
			if rapid.Bool().Draw(t, "open") {
				it.hold, it.to = it.to, it.from
			}
			g.items = append(g.items, it)
		}
		ps, rows := w.pack(g)
		for i, p := range ps {
			if p.row < 0 || p.row >= rows || p.x0 < w.left-1e-9 || p.x1 > w.right()+1e-9 {
				t.Fatalf("%+v is off the page or its rows", p)
			}
			for _, q := range ps[:i] {
				if q.row != p.row || p.text == "" || q.text == "" {
					continue
				}
				pw, qw := p.face.Width(textSize, p.text), q.face.Width(textSize, q.text)
				if p.tx < q.tx+qw && q.tx < p.tx+pw {
					t.Fatalf("%q and %q meet", p.text, q.text)
				}
			}
		}
	})
}

func TestNothingWithoutATake(t *testing.T) {
	assert.Nil(t, Sheets(nil, Options{}))
	assert.Nil(t, Sheets(&compile.Result{}, Options{}))
}

func TestLateLinesSayBy(t *testing.T) {
	r := compiled(t, `take "Test"
  scene 1
  rate 24 fps

set "Room"
  mark M1 (0, 0)
  mark M2 (9, 0)

people
  performer mina

beat "One" for 12 s
  mina walks from M1 to M2 in 8 s by +6 s
`)
	var texts []string
	for _, s := range Sheets(r, Options{}) {
		for _, x := range s.Texts() {
			texts = append(texts, x.Text)
		}
	}
	assert.Contains(t, texts, "walks to M2, late by 2 s")
}

func BenchmarkSheets(b *testing.B) {
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(b, err)
	r := compiled(b, string(text))
	for b.Loop() {
		Sheets(r, Options{})
	}
}
