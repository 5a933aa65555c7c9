package lsp

import (
	"context"
	"encoding/json"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
)

// edits of the property: many whose text is only read, some of which everything
// is computed for. -short makes fewer.
const (
	manyEdits  = 10_000
	fewEdits   = 400
	settleEach = 100
)

// scraps are what random typing puts in: words and pieces of words, and
// characters of one, two, three and four bytes.
var scraps = []string{
	" ", "\n", "\r\n", "\"", "(", ")", ",", "#", "é", "中", "😀", "a", "1", "-", ".", "m", " m", "M1", "mina", " to ", " when ", "walks", "beat \"x\"\n",
	"  mark M1 (1, 2)\n", " at 1.2 m/s", "T2", "kit\n", "use \"b.take\"\n", " in 3 s", "\x00", "\xff", "take \"y\"\n", " sees ",
}

// TestFindingsEqualThoseOfAFreshCompile makes random edits on the examples,
// several a message, and compares what the server tells with what a compile of
// the same text finds.
func TestFindingsEqualThoseOfAFreshCompile(t *testing.T) {
	n := manyEdits
	if testing.Short() {
		n = fewEdits
	}
	r := rand.New(rand.NewPCG(7, 1931))
	texts := []string{small, tiny(t)}
	examples := []string{example(t, "eight-bars"), example(t, "last-collection"), example(t, "night-ferry")}
	e := edit(t, []string{"utf-16"})
	const name = "/plans/a.take"
	e.open(name, texts[0])
	var batch []ContentChange
	checked := 0
	for i := range n {
		if i%50 == 45 { // a text that can be checked again
			next := texts[r.IntN(2)]
			if i%1250 == 45 {
				next = examples[i/1250%len(examples)]
			}
			batch = append(batch, e.replace(name, 0, len(e.texts[name].Text), next))
		}
		f := e.texts[name]
		start := r.IntN(len(f.Text) + 1)
		for inside(f.Text, start) {
			start--
		}
		end := start
		if r.IntN(2) == 0 {
			end = min(start+r.IntN(12), len(f.Text))
			for inside(f.Text, end) {
				end++
			}
		}
		scrap := scraps[r.IntN(len(scraps))]
		if strings.ToValidUTF8(scrap, "") != scrap {
			scrap = "�" // the protocol has no bytes that are no text
		}
		batch = append(batch, e.replace(name, start, end, scrap))
		if len(batch) < 1+r.IntN(8) && i < n-1 && i%settleEach != settleEach-1 && i%50 != 45 {
			continue
		}
		e.send(name, batch...)
		batch = nil
		switch {
		case i%settleEach == settleEach-1 || i%50 == 45 || i == n-1:
			e.settle()
			if sameAsFresh(t, e, name) {
				checked++
			}
		case i%10 == 0:
			sameTextAsFresh(t, e, name)
		}
	}
	require.Greater(t, checked, n/settleEach/10, "too few texts that could be checked")
	e.open(name, examples[0])
	e.settle()
	require.True(t, sameAsFresh(t, e, name))
}

// inside reports whether a place lies within a character or a line's end, where
// no editor's cursor can stand.
func inside(text string, at int) bool {
	if at <= 0 || at >= len(text) {
		return false
	}
	return text[at]&0xC0 == 0x80 || text[at-1] == '\r' && text[at] == '\n'
}

// tiny is the small plan with mistakes that only the clock and the lenses show.
func tiny(t *testing.T) string {
	t.Helper()
	return strings.Replace(small, "mina walks from M1 to M2", "mina walks from M1 to M2 by +1 s\n  ida walks to (3, -1)", 1)
}

// sameAsFresh compares what the editor shows with a compile from nothing.
// It says whether everything was computed.
func sameAsFresh(t *testing.T, e *editor, name string) bool {
	t.Helper()
	fresh, err := textOnly(oneText(e, name), name, planText(e, name), nil)
	require.NoError(t, err)
	if !fresh.Stopped {
		fresh, err = compile.Compile(context.Background(), oneText(e, name), name, compile.Options{})
		require.NoError(t, err)
	}
	requireSame(t, e, name, fresh)
	return fresh.Tracks != nil
}

func planText(e *editor, name string) bool {
	return skim(e.texts[name].Text).plan
}

// sameTextAsFresh compares what the server knows of the text right after a
// change.
func sameTextAsFresh(t *testing.T, e *editor, name string) {
	t.Helper()
	var ignored any
	e.call("workspace/symbol", object{"query": "none"}, &ignored)
	fresh, err := textOnly(oneText(e, name), name, planText(e, name), nil)
	require.NoError(t, err)
	e.server.mu.Lock()
	got := e.server.work.plans[name].bound
	e.server.mu.Unlock()
	require.Equal(t, e.texts[name].Text, got.Files[0].Source.Text)
	require.Equal(t, messages(fresh), messages(got))
}

func messages(r *compile.Result) []string {
	out := []string{}
	for _, d := range r.Findings {
		out = append(out, d.Message)
	}
	return out
}

func oneText(e *editor, name string) compile.Read {
	return func(n string) (string, error) {
		if n == name {
			return e.texts[name].Text, nil
		}
		return e.server.work.disk.read(n)
	}
}

func requireSame(t *testing.T, e *editor, name string, r *compile.Result) {
	t.Helper()
	snap := &Snapshot{Files: r.Files, Plan: r.Plan, Encoding: e.enc, Related: true, Versions: true}
	snap.version = func(string) *int { v := e.vers[name]; return &v }
	snap.ready()
	want := []Diagnostic{}
	told := map[string]bool{}
	for _, d := range r.Findings {
		out := snap.diagnostic(d)
		text, err := json.Marshal([]any{out.Range, out.Code, out.Message})
		require.NoError(t, err)
		if !told[string(text)] {
			told[string(text)] = true
			want = append(want, out)
		}
	}
	text, err := json.Marshal(want)
	require.NoError(t, err)
	e.mu.Lock()
	got, err := json.Marshal(e.diags[uriOf(name)].Diagnostics)
	e.mu.Unlock()
	require.NoError(t, err)
	require.JSONEq(t, string(text), string(got), e.texts[name].Text)
}

// TestMovedMarksAreCheckedLikeAFreshPlan moves marks of the examples a little,
// many times, so that each check goes on from the one before.
func TestMovedMarksAreCheckedLikeAFreshPlan(t *testing.T) {
	moves := 6
	if testing.Short() {
		moves = 1
	}
	r := rand.New(rand.NewPCG(3, 31))
	e := edit(t, []string{"utf-8"})
	for _, x := range []string{"eight-bars", "last-collection"} {
		name := "/plans/" + x + ".take"
		e.open(name, example(t, x))
		e.settle()
		for range moves {
			marks := strings.Split(e.texts[name].Text, "\n  mark ")
			at := len(marks[0])
			for _, m := range marks[1 : 1+r.IntN(len(marks)-1)] {
				at += len("\n  mark ") + len(m)
			}
			at += strings.IndexByte(e.texts[name].Text[at:], ',') - 1 // the last digit of its x
			e.change(name, at, at+1, string(rune('0'+r.IntN(10))))
			e.settle()
			require.True(t, sameAsFresh(t, e, name), e.texts[name].Text[at-20:at+10])
		}
	}
}
