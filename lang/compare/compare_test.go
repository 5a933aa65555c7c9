package compare

import (
	"bytes"
	"context"
	"flag"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/format"
	"longhand/lang/plan"
)

var update = flag.Bool("update", false, "rewrite the reports that are expected")

func compiled(tb testing.TB, text string) *compile.Result {
	tb.Helper()
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{})
	require.NoError(tb, err)
	require.False(tb, r.Stopped, "%v", r.Findings)
	return r
}

func report(r *Report) string {
	var b bytes.Buffer
	_ = r.WriteText(&b)
	return b.String()
}

func examples(t testing.TB) map[string]string {
	files, err := filepath.Glob("../../examples/*.take")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	out := map[string]string{}
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		out[filepath.Base(f)] = string(text)
	}
	return out
}

const small = `take "Small"
  rate 24 fps

set "A hall"
  wall north (0, 6) (9, 6) high 3 m thick 24 mm
  block bench (4, 2) (6, 2) (6, 2.5) (4, 2.5) high 1 m
  hole peep on north at 4.5 m up 1.4 m wide 120 mm
  mark M1 (1, 1)
  mark M2 (7, 1)
  mark M3 (7, 4.5)

kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  camera B sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w24 24 mm stops T2 to T22 weighs 1.2 kg
  lens w35 35 mm stops T2 to T22 weighs 1.2 kg
  rig stabilised gimbal

people
  performer runa "Porter" height 1.7 m
  performer egil "Clerk" height 1.8 m
  crew ola "A operator"

beat "In"
  runa walks from M1 to M2 at 1.1 m/s
  egil stands at M3
  A on stabilised with ola
  A takes w24 T2.8
  A follows runa by 2 m
  A sees runa full
  runa says "Is anybody still here?" when runa reaches M2
  note grip "keep the bench"

beat "On" when runa reaches M2
  runa walks to M3 at 1 m/s
  egil says "Only me." starting +2 s
  A sees runa, egil
`

// TestSelf: a plan is no different from itself, nor from its standard form, nor
// from itself with comments and the statements of a block in another order.
func TestSelf(t *testing.T) {
	for name, text := range examples(t) {
		r := compiled(t, text)
		again := compiled(t, text)
		assert.Empty(t, Compare(r, again).Changes, name)
		squeezed := strings.ReplaceAll(text, "\n  ", "\n\t   ")
		assert.Empty(t, Compare(r, compiled(t, format.Text(squeezed))).Changes, name)
		assert.Empty(t, Compare(compiled(t, squeezed), r).Changes, name)
	}
}

func TestFormatIsNoChange(t *testing.T) {
	loose := strings.NewReplacer("  mark M2 (7, 1)", "      mark   M2   (7.0,1.00)   # where she stops",
		"24 mm thick", "24 mm thick", "height 1.7 m", "height 170 cm").Replace(small)
	loose = strings.Replace(loose, "  mark M1 (1, 1)\n", "", 1)
	loose = strings.Replace(loose, "  mark M3 (7, 4.5)\n", "  mark M3 (7, 4.5)\n\n\n  mark M1 (1, 1)\n", 1)
	// Lines of different subjects run side by side, whichever is written first.
	loose = strings.Replace(loose, "  egil stands at M3\n  A on stabilised with ola\n", "  A on stabilised with ola\n  egil stands at M3\n", 1)
	require.NotEqual(t, small, loose)
	assert.Empty(t, Compare(compiled(t, small), compiled(t, loose)).Changes)
	f := format.Text(loose)
	assert.Empty(t, Compare(compiled(t, small), compiled(t, f)).Changes)
}

// edits change the small plan, each in one way, with what is to be said of it.
var edits = []struct {
	name, old, new string
	says           []string
}{
	{"mark", "mark M2 (7, 1)", "mark M2 (7.6, 1.8)", []string{"mark M2 moves 1 m, from (7, 1) to (7.6, 1.8)", "runa walks to M2: "}},
	{"wall", "high 3 m thick", "high 3.4 m thick", []string{"wall north: height 3.4 m, was 3 m"}},
	{"hole", "up 1.4 m wide", "up 1.5 m wide", []string{"hole peep: height of its middle 1.5 m, was 1.4 m"}},
	{"lens", "A takes w24 T2.8", "A takes w35 T2.8", []string{"A takes w35: lens w35, was w24 (was: A takes w24)"}},
	{"pace", "to M2 at 1.1 m/s", "to M2 at 0.9 m/s", []string{"pace 0.9 m/s, was 1.1 m/s", "take \"Small\" takes 1.1 s longer"}},
	{"words", "Only me.", "Only us.", []string{`egil says "Only us.": words "Only us.", was "Only me." (was: egil says "Only me.")`}},
	{"cue", "starting +2 s", "starting +2.5 s", []string{"cue +2.5 s into the beat, was +2 s into the beat", "begins 0.5 s later into the beat (2.5 s, was 2 s)"}},
	{"beat's cue", `beat "On" when runa reaches M2`, `beat "On" when runa reaches M2 plus 1 s`, []string{`beat "On": begins when runa reaches M2, +1 s, was when runa reaches M2`}},
	{"new line", "  egil says", "  egil turns to runa\n  egil says", []string{"egil turns to runa is new (to runa)"}},
	{"line gone", "  A sees runa full\n", "", []string{"A sees runa is gone (sees runa, size full)"}},
	{"person", `performer egil "Clerk" height 1.8 m`, `performer egil "Clerk" height 1.86 m`, []string{"performer egil: height 1.86 m, was 1.8 m"}},
	{"note", `note grip "keep the bench"`, `note grip "strike the bench"`, []string{`note for grip "strike the bench" is new`, `note for grip "keep the bench" is gone`}},
	{"rate", "rate 24 fps", "rate 25 fps", []string{"rate 25 fps, was 24 fps"}},
	{"title", `take "Small"`, `take "Less small"`, []string{"title Less small, was Small"}},
	{"block", "block bench (4, 2)", "block bench (4.2, 2)", []string{"block bench: corners (4.2, 2), (6, 2), (6, 2.5), (4, 2.5), was (4, 2), (6, 2)"}},
	{"kit", "rig stabilised gimbal", "rig stabilised gimbal carries 1 kg to 5 kg", []string{"rig stabilised: carries at least 1 kg, was not given; carries at most 5 kg, was not given"}},
	{"finding", "A follows runa by 2 m", "A follows runa by 6 m", []string{"distance 6 m, was 2 m", "findings"}},
	{"look", "beat \"In\"", "look\n  never zoom\n\nbeat \"In\"", []string{"never zoom yes, was not given"}},
}

func edited(t testing.TB, i int) string {
	e := edits[i]
	out := strings.Replace(small, e.old, e.new, 1)
	require.NotEqual(t, small, out, e.name)
	return out
}

func TestEachEditIsSaid(t *testing.T) {
	was := compiled(t, small)
	for i, e := range edits {
		got := report(Compare(was, compiled(t, edited(t, i))))
		for _, s := range e.says {
			assert.Contains(t, got, s, e.name)
		}
	}
}

// TestRenamed: what has another name and is the same in all else was renamed, and
// what only speaks of it is no change.
// Durations read as a plan would have them.
func TestDurations(t *testing.T) {
	with := func(reset string) *compile.Result {
		return compiled(t, strings.Replace(small, "  rate 24 fps\n", "  rate 24 fps\n  reset "+reset+"\n", 1))
	}
	assert.Contains(t, report(Compare(with("660 s"), with("14 min"))), "reset 14 min, was 11 min")
	assert.Contains(t, report(Compare(with("45 s"), with("90.5 s"))), "reset 90.5 s, was 45 s")
}

func TestRenamed(t *testing.T) {
	is := strings.NewReplacer("M2", "stop", "runa", "signe", "north", "far-wall", `"In"`, `"Inside"`).Replace(small)
	r := Compare(compiled(t, small), compiled(t, is))
	var says []string
	for i := range r.Changes {
		says = append(says, r.Sentence(&r.Changes[i]))
	}
	assert.ElementsMatch(t, []string{
		"wall far-wall was called north", "mark stop was called M2", "performer signe was called runa", `beat "Inside" was called "In"`,
	}, says)
}

func TestMovedToAnotherBeat(t *testing.T) {
	is := strings.Replace(small, "  egil says \"Only me.\" starting +2 s\n", "", 1)
	is = strings.Replace(is, "  note grip", "  egil says \"Only me.\" starting +2 s\n  note grip", 1)
	assert.Contains(t, report(Compare(compiled(t, small), compiled(t, is))), `egil says "Only me." moves from On to In`)
}

// mirrored is a change as comparing the other way round has to tell it.
func mirrored(c Change) Change {
	switch c.Kind {
	case Added:
		c.Kind = Removed
	case Removed:
		c.Kind = Added
	}
	if c.Was != "" {
		c.Name, c.Was = c.Was, c.Name
	}
	fields := c.Fields
	c.Fields = nil
	for _, f := range fields {
		c.Fields = append(c.Fields, Field{f.Name, f.New, f.Old})
	}
	c.Distance, c.Later, c.Longer, c.From, c.To = -c.Distance, -c.Later, -c.Longer, c.To, c.From
	if c.What == "mark" {
		c.Distance = -c.Distance
	}
	c.order = 0
	return c
}

func assertMirrored(t assert.TestingT, there, back *Report, msg string) {
	var want, got []Change
	for _, c := range there.Changes {
		c = mirrored(c)
		c.Beat, c.Departments = "", nil
		want = append(want, c)
	}
	for _, c := range back.Changes {
		c.order, c.Beat, c.Departments = 0, "", nil
		got = append(got, c)
	}
	// What is unchanged but for its name is told by the name it has in the newer.
	key := func(list []Change) []string {
		var out []string
		for _, c := range list {
			if c.Kind == Changed && c.Section != Findings && c.Was == "" && c.Name != "" {
				c.Name = "-"
			}
			for i, f := range c.Fields {
				c.Fields[i] = Field{f.Name, f.Old, f.New}
			}
			c.Distance, c.Later, c.Longer = 0, 0, 0
			out = append(out, strings.Join([]string{string(c.Section), string(c.Kind), c.What, c.Name, c.Was, string(c.Code), joinFields(c.Fields)}, "|"))
		}
		return out
	}
	assert.ElementsMatch(t, key(want), key(got), msg)
	sum := func(list []Change) (d float64) {
		for _, c := range list {
			d += float64(c.Distance) + 3*float64(c.Later) + 7*float64(c.Longer)
		}
		return d
	}
	assert.InDelta(t, sum(want), sum(got), 1e-6, msg)
}

func joinFields(f []Field) string {
	var out []string
	for _, x := range f {
		out = append(out, x.Name+"="+x.Old+">"+x.New)
	}
	return strings.Join(out, ";")
}

var memo sync.Map

// edit is the small plan with some of the edits, compiled once.
func editedBy(t testing.TB, which []int) *compile.Result {
	text := small
	for _, i := range which {
		text = strings.Replace(text, edits[i].old, edits[i].new, 1)
	}
	if r, ok := memo.Load(text); ok {
		return r.(*compile.Result)
	}
	r := compiled(t, text)
	memo.Store(text, r)
	return r
}

// TestSymmetric: comparing the other way round mirrors every change.
func TestSymmetric(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		pick := rapid.SliceOfNDistinct(rapid.IntRange(0, len(edits)-1), 0, 3, func(i int) int { return i })
		a, b := editedBy(t, pick.Draw(rt, "older")), editedBy(t, pick.Draw(rt, "newer"))
		there, back := Compare(a, b), Compare(b, a)
		assertMirrored(rt, there, back, report(there)+"\n"+report(back))
	})
}

// TestEditsApplied: the findings of the older plan, less those told gone, with
// those told new, are the newer plan's.
func TestEditsApplied(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		pick := rapid.SliceOfNDistinct(rapid.IntRange(0, len(edits)-1), 0, 3, func(i int) int { return i })
		a, b := editedBy(t, pick.Draw(rt, "older")), editedBy(t, pick.Draw(rt, "newer"))
		count := map[string]int{}
		for _, d := range a.Findings {
			count[string(d.Code)]++
		}
		for _, c := range Compare(a, b).In(Findings) {
			switch c.Kind {
			case Added:
				count[string(c.Code)]++
			case Removed:
				count[string(c.Code)]--
			}
		}
		for _, d := range b.Findings {
			count[string(d.Code)]--
		}
		for code, n := range count {
			assert.Zero(rt, n, code)
		}
	})
}

// TestEverySayingFieldIsTold: whatever a plan's statements hold is compared, unless
// the table of words says that it has no meaning of its own; and the table names
// no field that is not there.
func TestTheTableOfWordsNamesFields(t *testing.T) {
	known := map[string]bool{}
	var visit func(reflect.Type)
	seen := map[reflect.Type]bool{}
	visit = func(r reflect.Type) {
		for r.Kind() == reflect.Pointer || r.Kind() == reflect.Slice {
			r = r.Elem()
		}
		if r.Kind() != reflect.Struct || seen[r] {
			return
		}
		seen[r] = true
		for i := range r.NumField() {
			known[r.Name()+"."+r.Field(i).Name] = true
			visit(r.Field(i).Type)
		}
	}
	visit(reflect.TypeFor[plan.Plan]())
	for _, d := range []plan.Deed{&plan.Move{}, &plan.Stand{}, &plan.Turn{}, &plan.Spin{}, &plan.Ride{}, &plan.Leave{}, &plan.Board{}, &plan.Spot{}, &plan.Pose{},
		&plan.Operate{}, &plan.Say{}, &plan.Mount{}, &plan.Fit{}, &plan.See{}, &plan.Keep{}, &plan.Beside{}, &plan.Circle{}, &plan.Travel{}, &plan.Lift{},
		&plan.Swing{}, &plan.Rack{}, &plan.Hide{}, &plan.Roll{}, &plan.Handoff{}, &plan.Cut{}, &plan.Cue{}} {
		visit(reflect.TypeOf(d))
	}
	for w := range words {
		assert.True(t, known[w], "%s is in the table and in no plan", w)
	}
}

func TestDepartments(t *testing.T) {
	r := Compare(compiled(t, small), compiled(t, edited(t, 0)))
	grip := r.For(departments.Grip)
	assert.NotEmpty(t, grip.In(Marks))
	assert.Empty(t, r.For(departments.Electric).In(Marks))
	for _, c := range r.Changes {
		assert.NotEmpty(t, c.Departments)
	}
}

// TestReports holds the three forms of one comparison.
func TestReports(t *testing.T) {
	text := examples(t)["last-collection.take"]
	is := strings.NewReplacer(
		"mark M2 (6.6, 5.4)", "mark M2 (7.2, 6.2)",
		"A takes w35 T4", "A takes w28 T4",
		"wait", "wait",
		"otto walks to R2 at 1 m/s starting +4 s", "otto walks to R2 at 1 m/s starting +2 s",
		"mark K9", "mark K8", "from K9", "from K8",
		"cue blackout amber-hall 5 %", "cue blackout amber-hall 10 %",
		`mina says "I know."`, `mina says "I knew."`,
		`when otto says "you" plus 2 s`, `when otto says "you" plus 1 s`,
		`when mina says "know"`, `when mina says "knew"`,
	).Replace(text)
	r := Compare(compiled(t, text), compiled(t, is))
	for name, write := range map[string]func(*bytes.Buffer) error{
		"revised.txt":  func(b *bytes.Buffer) error { return r.WriteText(b) },
		"revised.md":   func(b *bytes.Buffer) error { return r.WriteMarkdown(b) },
		"revised.json": func(b *bytes.Buffer) error { return r.WriteJSON(b) },
	} {
		var b bytes.Buffer
		require.NoError(t, write(&b))
		path := filepath.Join("testdata", name)
		if *update && os.Getenv("CI") == "" {
			require.NoError(t, os.MkdirAll("testdata", 0o755))
			require.NoError(t, os.WriteFile(path, b.Bytes(), 0o644))
		}
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.Equal(t, string(want), b.String(), name)
		assert.NotContains(t, b.String(), "-0 ")
	}
}

func BenchmarkCompare(b *testing.B) {
	text := examples(b)["last-collection.take"]
	x := compiled(b, text)
	y := compiled(b, strings.Replace(text, "mark M2 (6.6, 5.4)", "mark M2 (7.2, 6.2)", 1))
	for b.Loop() {
		Compare(x, y)
	}
}

// TestInFeet: a plan in feet is told in feet, coordinates too.
func TestInFeet(t *testing.T) {
	text := examples(t)["night-ferry.take"]
	got := report(Compare(compiled(t, text), compiled(t, strings.Replace(text, "mark D1 (8, 12)", "mark D1 (9, 12)", 1))))
	assert.Contains(t, got, "mark D1 moves 1', from (8, 12) to (9, 12)")
}
