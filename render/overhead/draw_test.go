package overhead

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/render/label"
	"longhand/render/scene"
	"longhand/render/svg"
)

var update = flag.Bool("update", false, "write the golden files anew")

func compiled(t testing.TB, name string) *compile.Result {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", name+".take"))
	require.NoError(t, err)
	return fromText(t, string(b))
}

func fromText(t testing.TB, text string) *compile.Result {
	t.Helper()
	r, err := compile.Text(context.Background(), "test.take", text, compile.Options{})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r
}

// drawings are the sheets of every beat, every pickup and of the take.
func drawings(r *compile.Result, o Options) map[string][]*scene.Sheet {
	out := map[string][]*scene.Sheet{"take": Take(r, o)}
	for _, b := range r.Plan.Beats {
		out["beat "+strconv.Itoa(b.Index+1)] = Beat(r, b, o)
	}
	for _, u := range r.Pickups {
		out["pickup "+strconv.Itoa(u.Pickup.Index+1)] = Pickup(r, u, o)
	}
	return out
}

var plans = []string{"collection", "busy", "feet", "signs"}

// options are the ways every plan is drawn in tests.
func options() map[string]Options {
	return map[string]Options{
		"A4": {}, "A4 upright": {Turn: Portrait}, "A3": {Paper: scene.A3}, "Letter lying": {Paper: scene.Letter, Turn: Landscape},
		"Tabloid upright": {Paper: scene.Tabloid, Turn: Portrait}, "grip": {Department: "grip"}, "electric, colour": {Department: "electric", Colour: true},
		"never seen": {NeverSeen: true}, "1:50": {Scale: 50}, "1:500": {Scale: 500},
	}
}

func TestDrawingsRead(t *testing.T) {
	for _, name := range plans {
		r := compiled(t, name)
		for how, o := range options() {
			for what, sheets := range drawings(r, o) {
				require.NotEmpty(t, sheets)
				for i, s := range sheets {
					assertReads(t, s, name+", "+how+", "+what+", sheet "+strconv.Itoa(i+1))
				}
			}
		}
	}
}

// assertReads holds a sheet to what every drawing must be: Check finds nothing
// (text large enough, on the sheet, ids once each), no two texts on each other.
func assertReads(t *testing.T, s *scene.Sheet, what string) {
	t.Helper()
	assert.Empty(t, s.Check(), what)
	texts := s.Texts()
	for _, pair := range label.Overlaps(label.Quads(texts)) {
		assert.Fail(t, "texts overlap", "%s: %q and %q", what, texts[pair[0]].Text, texts[pair[1]].Text)
	}
}

// A label lies on no path where there is any other place for it: never, in these
// plans at the scales they get.
func TestLabelsKeepOffPaths(t *testing.T) {
	looked := 0
	for _, name := range plans {
		r := compiled(t, name)
		for _, b := range r.Plan.Beats {
			for _, s := range Beat(r, b, Options{}) {
				var lines []*scene.Polyline
				var words []*scene.Text
				var visit func(items []scene.Item, labels bool)
				visit = func(items []scene.Item, labels bool) {
					for _, it := range items {
						switch v := it.(type) {
						case *scene.Group:
							visit(v.Items, labels || strings.HasSuffix(v.ID, "labels"))
						case *scene.Polyline:
							if strings.HasPrefix(v.Class, "path-") {
								lines = append(lines, v)
							}
						case *scene.Text:
							if labels {
								words = append(words, v)
							}
						}
					}
				}
				visit(s.Items, false)
				looked += len(words) * len(lines)
				for _, w := range words {
					q := w.Quad()
					for _, l := range lines {
						for i := 1; i < len(l.Points); i++ {
							assert.False(t, meets(q[:], l.Points[i-1], l.Points[i]), "%s, %s: %q lies on a path", name, b.Title, w.Text)
						}
					}
				}
			}
		}
	}
	assert.Greater(t, looked, 100)
}

// meets is whether a segment meets a convex ring.
func meets(ring []scene.Point, a, b scene.Point) bool {
	side := func(p, q, r scene.Point) float64 { return (q.X-p.X)*(r.Y-p.Y) - (q.Y-p.Y)*(r.X-p.X) }
	inside := true
	for i, p := range ring {
		q := ring[(i+1)%len(ring)]
		if side(p, q, a)*side(p, q, b) < 0 && side(a, b, p)*side(a, b, q) < 0 {
			return true
		}
		inside = inside && side(p, q, a) < 0 == (side(ring[0], ring[1], ring[2]) < 0)
	}
	return inside
}

// Everything that a beat names is named on its drawing, or listed as off it.
func TestEverythingIsNamed(t *testing.T) {
	for _, name := range plans {
		r := compiled(t, name)
		for _, b := range r.Plan.Beats {
			var all strings.Builder
			for _, s := range Beat(r, b, Options{}) {
				for _, text := range s.Texts() {
					all.WriteString("\n" + text.Text)
				}
			}
			has := func(word string) bool {
				return regexp.MustCompile(`(?m)^`+regexp.QuoteMeta(word)+`(\W|$)`).MatchString(all.String()) ||
					regexp.MustCompile(`, `+regexp.QuoteMeta(word)+`(\W|$)`).MatchString(all.String())
			}
			d := &drawing{material: from(r), beat: b}
			for m := range d.usedMarks() {
				assert.True(t, has(m.Name), "%s, %s: mark %s", name, b.Title, m.Name)
			}
			for _, a := range r.Plan.Actions {
				if a.Beat != b || a.Subject == nil {
					continue
				}
				switch a.Subject.(type) {
				case *plan.Person, *plan.Camera, *plan.Vehicle, *plan.Rig:
					assert.True(t, has(a.Who()), "%s, %s: %s", name, b.Title, a.Who())
				}
			}
		}
	}
}

// A metre is 1000/N mm at 1:N, and a foot 304.8/N, in the file itself.
func TestScaleIsTrue(t *testing.T) {
	const one = `take "Rule"
UNITS
set "floor"
  block ruler (0, 0) (1, 0) (1, 0.2) (0, 0.2) high 1 FT
people
  performer ann
beat "stands"
  ann stands at (0.5, -1)
`
	points := regexp.MustCompile(`<polygon points="([^"]+)"[^>]*class="solid-thing"|class="solid-thing"[^>]*points="([^"]+)"`)
	for _, c := range []struct {
		units, high string
		scale, want float64
	}{
		{"", "m", 50, 20}, {"", "m", 20, 50}, {"", "m", 100, 10}, {"", "m", 250, 4},
		{"units feet", "ft", 48, 6.35}, // 1/4" to a foot
		{"units feet", "ft", 24, 12.7}, // 1/2"
	} {
		text := strings.NewReplacer("UNITS", "  "+c.units, "FT", c.high).Replace(one)
		r := fromText(t, text)
		out := string(svg.Write(Beat(r, r.Plan.Beats[0], Options{Scale: c.scale})[0], svg.Options{}))
		m := points.FindStringSubmatch(out)
		require.NotNil(t, m, "the ruler's outline")
		var xs []float64
		for i, f := range strings.FieldsFunc(m[1]+m[2], func(r rune) bool { return r == ' ' || r == ',' }) {
			v, err := strconv.ParseFloat(f, 64)
			require.NoError(t, err)
			if i%2 == 0 {
				xs = append(xs, v)
			}
		}
		low, high := xs[0], xs[0]
		for _, x := range xs {
			low, high = min(low, x), max(high, x)
		}
		assert.InDelta(t, c.want, high-low, 0.002, "1:%v", c.scale)
		assert.Regexp(t, `width="297(\.0+)?mm"|width="210(\.0+)?mm"`, out, "user units are millimetres of A4")
	}
}

func TestSameTextSameBytes(t *testing.T) {
	var before []byte
	for range 3 {
		r := compiled(t, "busy")
		var all []byte
		for _, s := range append(Beat(r, r.Plan.Beats[0], Options{NeverSeen: true}), Take(r, Options{})...) {
			all = append(all, svg.Write(s, svg.Options{})...)
		}
		if before != nil {
			require.Equal(t, string(before), string(all))
		}
		before = all
	}
}

func TestGolden(t *testing.T) {
	for _, c := range []struct {
		plan string
		beat int
		o    Options
	}{{"signs", 0, Options{}}, {"feet", 0, Options{Paper: scene.Letter}}} {
		r := compiled(t, c.plan)
		r.Findings = nil // their words are not this package's
		got := svg.Write(Beat(r, r.Plan.Beats[c.beat], c.o)[0], svg.Options{})
		file := filepath.Join("testdata", c.plan+".svg")
		if *update {
			require.NoError(t, os.WriteFile(file, got, 0o644))
			continue
		}
		want, err := os.ReadFile(file)
		require.NoError(t, err)
		assert.Equal(t, string(want), string(got), "run with -update if the drawing is meant to change")
	}
}

func BenchmarkBeat(b *testing.B) {
	r := compiled(b, "busy")
	for b.Loop() {
		Beat(r, r.Plan.Beats[0], Options{})
	}
}
