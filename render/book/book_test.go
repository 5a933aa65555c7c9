package book

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/render/label"
	"longhand/render/pdf"
	"longhand/render/scene"
)

// made are results by text: compiling is most of these tests' time, and a result
// never changes.
var made = map[string]*compile.Result{}

func compiled(t testing.TB, text string) *compile.Result {
	t.Helper()
	if r := made[text]; r != nil {
		return r
	}
	r := compiledAnew(t, text)
	made[text] = r
	return r
}

func compiledAnew(t testing.TB, text string) *compile.Result {
	t.Helper()
	r, err := compile.Text(context.Background(), "plan.take", text, compile.Options{})
	require.NoError(t, err)
	require.False(t, r.Stopped, "%v", r.Findings)
	return r
}

func example(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("../../examples", name+".take"))
	require.NoError(t, err)
	return string(text)
}

func clean(t testing.TB, d *pdf.Document, what string) {
	t.Helper()
	for i, p := range d.Pages {
		for _, e := range p.Sheet.Check() {
			t.Errorf("%s, page %d: %s", what, i+1, e)
		}
		texts := p.Sheet.Texts()
		for _, k := range label.Overlaps(label.Quads(texts)) {
			t.Errorf("%s, page %d: %q and %q overlap", what, i+1, texts[k[0]].Text, texts[k[1]].Text)
		}
		for _, l := range p.Links {
			assert.Less(t, l.Page, len(d.Pages), what)
		}
	}
}

func allTexts(d *pdf.Document) string {
	var b strings.Builder
	for _, p := range d.Pages {
		for _, x := range p.Sheet.Texts() {
			b.WriteString(x.Text + "\n")
		}
	}
	return b.String()
}

func TestBooksOfTheExamplesAreClean(t *testing.T) {
	files, err := filepath.Glob("../../examples/*.take")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	ctx := context.Background()
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		r := compiled(t, string(text))
		options := []Options{{}}
		if len(r.Plan.Beats) < 5 { // the long one once
			options = append(options, Options{Paper: scene.Letter, For: departments.Grip}, Options{Paper: scene.A3, For: departments.Camera})
		}
		for _, o := range options {
			d, err := Make(ctx, r, o)
			require.NoError(t, err)
			clean(t, d, fmt.Sprintf("%s for %q", f, o.For))
		}
		d, err := Cards(ctx, r, Options{})
		require.NoError(t, err)
		clean(t, d, f+", cards")
		for _, p := range d.Pages {
			assert.Equal(t, scene.A6.Width, p.Sheet.Width)
		}
	}
}

// Every page says its number and how many there are, and the contents say where
// each heading is.
func TestPagesAreNumberedThrough(t *testing.T) {
	d, err := Make(context.Background(), compiled(t, example(t, "night-ferry")), Options{})
	require.NoError(t, err)
	for i, p := range d.Pages {
		want := fmt.Sprintf("%d of %d", i+1, len(d.Pages))
		found := false
		for _, x := range p.Sheet.Texts() {
			found = found || strings.HasSuffix(x.Text, want)
		}
		assert.True(t, found, "page %d does not say %q", i+1, want)
		assert.Equal(t, fmt.Sprint(i+1), p.Label)
	}
	marks := map[string]int{}
	for i, p := range d.Pages {
		for _, b := range p.Bookmarks {
			if b.Level == 0 {
				marks[b.Text] = i + 1
			}
		}
	}
	require.Contains(t, marks, "Findings")
	require.Contains(t, marks, "Grip")
	listed := 0
	for _, x := range d.Pages[1].Sheet.Texts() {
		if at, ok := marks[x.Text]; ok {
			listed++
			number := ""
			for _, y := range d.Pages[1].Sheet.Texts() {
				if y.At.Y == x.At.Y && y.Anchor == scene.End {
					number = y.Text
				}
			}
			assert.Equal(t, fmt.Sprint(at), number, x.Text)
		}
	}
	assert.Greater(t, listed, 5)
}

func TestABookletHasItsOwnDepartmentOnly(t *testing.T) {
	r := compiled(t, example(t, "night-ferry"))
	d, err := Make(context.Background(), r, Options{For: departments.Grip})
	require.NoError(t, err)
	heads := ""
	for _, p := range d.Pages {
		for _, b := range p.Bookmarks {
			heads += b.Text + "\n"
		}
	}
	assert.Contains(t, heads, "Grip\n")
	assert.NotContains(t, heads, "Electric\n")
	assert.Contains(t, allTexts(d), "for grip")
}

func TestTheSameTextGivesTheSameBytes(t *testing.T) {
	ctx := context.Background()
	first, err := Write(ctx, compiled(t, example(t, "eight-bars")), Options{})
	require.NoError(t, err)
	second, err := Write(ctx, compiledAnew(t, example(t, "eight-bars")), Options{})
	require.NoError(t, err)
	assert.True(t, bytes.Equal(first, second), "two runs differ")
	one, err := WriteCards(ctx, compiled(t, example(t, "eight-bars")), Options{})
	require.NoError(t, err)
	two, err := WriteCards(ctx, compiledAnew(t, example(t, "eight-bars")), Options{})
	require.NoError(t, err)
	assert.True(t, bytes.Equal(one, two), "two runs differ")
}

func TestATextToolFindsTitlesAndFontsAreEmbedded(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("no pdftotext here")
	}
	r := compiled(t, example(t, "night-ferry"))
	data, err := Write(context.Background(), r, Options{})
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "book.pdf")
	require.NoError(t, os.WriteFile(file, data, 0o644))
	out, err := exec.Command(tool, "-layout", file, "-").Output()
	require.NoError(t, err)
	text := string(out)
	for _, want := range []string{r.Plan.Take.Title, r.Plan.Set.Title, "Contents", "Findings", "Assistant directors", "Running order"} {
		assert.Contains(t, text, want)
	}
	for _, b := range r.Plan.Beats {
		assert.Contains(t, text, b.Title)
	}
	for _, p := range r.Plan.People {
		assert.Contains(t, text, p.Name)
	}
	if tool, err := exec.LookPath("pdffonts"); err == nil {
		out, err := exec.Command(tool, file).Output()
		require.NoError(t, err)
		lines := strings.Split(strings.TrimSpace(string(out)), "\n")
		require.Greater(t, len(lines), 2)
		for _, l := range lines[2:] {
			assert.Regexp(t, `yes +(yes|no) +yes`, l, "embedded, and with a table of its letters")
		}
	}
}

// Every word on every page is one that a search of the file finds.
func TestEveryWordCanBeFound(t *testing.T) {
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("no pdftotext here")
	}
	ctx := context.Background()
	d, err := Make(ctx, compiled(t, example(t, "night-ferry")), Options{})
	require.NoError(t, err)
	data, err := pdf.Write(d)
	require.NoError(t, err)
	file := filepath.Join(t.TempDir(), "book.pdf")
	require.NoError(t, os.WriteFile(file, data, 0o644))
	for i, p := range d.Pages {
		page := fmt.Sprint(i + 1)
		out, err := exec.Command(tool, "-f", page, "-l", page, file, "-").Output()
		require.NoError(t, err)
		text := strings.Join(strings.Fields(string(out)), "")
		for _, x := range p.Sheet.Texts() {
			for _, w := range strings.Fields(x.Clean()) {
				if !strings.Contains(text, w) {
					t.Errorf("page %s: %q of %q is not found", page, w, x.Text)
				}
			}
		}
	}
}

func TestThePlansTextIsAttached(t *testing.T) {
	text := example(t, "eight-bars")
	d, err := Make(context.Background(), compiled(t, text), Options{})
	require.NoError(t, err)
	require.Len(t, d.Files, 1)
	assert.Equal(t, "plan.take", d.Files[0].Name)
	assert.Equal(t, text, string(d.Files[0].Content))
}

func changedPages(d *pdf.Document) (n int) {
	for _, p := range d.Pages {
		for _, it := range p.Sheet.Items {
			if l, ok := it.(*scene.Polyline); ok && l.Class == changeRule.Class {
				n++
			}
		}
	}
	return n
}

func TestOnlyWhatChangedIsMarked(t *testing.T) {
	ctx := context.Background()
	text := example(t, "night-ferry")
	r := compiled(t, text)
	same, err := Make(ctx, r, Options{Before: compiled(t, text)})
	require.NoError(t, err)
	assert.Zero(t, changedPages(same), "nothing changed, but pages are marked")
	clean(t, same, "unchanged")

	only, err := Make(ctx, r, Options{Before: compiled(t, text), OnlyChanged: true})
	require.NoError(t, err)
	assert.Less(t, len(only.Pages), 5, "only the front is left")

	says := strings.Replace(text, "I heard you.", "I did hear you.", 1)
	require.NotEqual(t, text, says)
	later, err := Make(ctx, compiled(t, says), Options{Before: r})
	require.NoError(t, err)
	n := changedPages(later)
	assert.Positive(t, n)
	assert.Less(t, n, len(later.Pages)*3/4, "one line changed, and nearly all pages are marked")
	clean(t, later, "changed")
}

func TestCardsTellOwnLines(t *testing.T) {
	r := compiled(t, `take "Test"
  scene 1
  rate 24 fps
  tempo 120 bpm in 4

set "Room"
  mark M1 (0, 0)
  mark M2 (4, 0)

people
  performer mina "Dancer"
  performer otto

beat "One" for 12 s
  mina walks from M1 to M2 in 8 counts starting +2 s
  otto stands at M2
`)
	d, err := Cards(context.Background(), r, Options{})
	require.NoError(t, err)
	require.Len(t, d.Pages, 2)
	text := allTexts(&pdf.Document{Pages: d.Pages[:1]})
	for _, want := range []string{"mina", "Dancer", "First position M1.", "0:02.0", "2.1", "in 4 s", "(8 counts)", "2 s into the beat"} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "otto")
}

// Who is needed after the take finds it on their card, on the pickup's own clock.
func TestCardsHaveThePickups(t *testing.T) {
	r := compiled(t, `take "Covered"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (4, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "One" for 12 s
  mina stands at M1
pickup "Her hands" after "One"
  mina stands at M2
  mina walks to M1 starting +2 s
  A on legs with ida at (2, -5)
  A takes w35 T4
  A sees mina
`)
	d, err := Cards(context.Background(), r, Options{})
	require.NoError(t, err)
	require.Len(t, d.Pages, 3, "mina, and ida and the legs, who work in the pickup alone")
	for i, want := range [][]string{{"mina", "First position M1.", "Pickup Her hands, from 0", "0:02.0", "2 s into the pickup", "walks to M1"}, {"ida", "A sees mina", "as the pickup begins"}} {
		text := allTexts(&pdf.Document{Pages: d.Pages[i : i+1]})
		for _, w := range want {
			assert.Contains(t, text, w)
		}
	}
}

func TestNoBookOfAPlanWithMistakes(t *testing.T) {
	r, err := compile.Text(context.Background(), "plan.take", "take \"X\"\n  nonsense\n", compile.Options{})
	require.NoError(t, err)
	_, err = Write(context.Background(), r, Options{})
	assert.Error(t, err)
	_, err = WriteCards(context.Background(), nil, Options{})
	assert.Error(t, err)
}

func TestASmallPlanHasABookToo(t *testing.T) {
	r := compiled(t, "take \"Small\"\n  rate 24 fps\n\nbeat \"One\" for 2 s\n")
	d, err := Make(context.Background(), r, Options{})
	require.NoError(t, err)
	clean(t, d, "small")
	c, err := Cards(context.Background(), r, Options{})
	require.NoError(t, err)
	clean(t, c, "small cards")
	_, err = Write(context.Background(), r, Options{})
	require.NoError(t, err)
}

func BenchmarkWrite(b *testing.B) {
	r := compiled(b, example(b, "last-collection"))
	for b.Loop() {
		if _, err := Write(context.Background(), r, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
