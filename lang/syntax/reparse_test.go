package syntax

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/source"
)

// requireSame holds that a file and what was found in it are what Parse gives.
func requireSame(t require.TestingT, f *File, found any) {
	want, bag := Parse(source.NewFile(f.Source.Name, f.Source.Text))
	require.Equal(t, len(want.Lines), len(f.Lines), "lines of %q", f.Source.Text)
	for i, l := range want.Lines {
		require.True(t, reflect.DeepEqual(l.Stmt, f.Lines[i].Stmt), "%q in %q", Print(l.Tokens), f.Source.Text)
	}
	require.True(t, reflect.DeepEqual(want, f), "file of %q", f.Source.Text)
	require.True(t, reflect.DeepEqual(bag, found), "findings in %q", f.Source.Text)
}

// pieces are what edits put in: parts of lines, lines, and what breaks them.
func pieces(tb testing.TB) []string {
	out := []string{"", " ", "\n", "\r\n", ",", "(", ")", "\"", "#", "x", "5", " m", "é", "\u00a0", "\xff", "\t", "beat \"x\"\n", "set \"x\"\n",
		"kit\n", "kitt\n", "beat \"x\n", "pickup \"x\" after \"x\"\n", "mina sits\n", "A sees mina,\n", "use \"a.take\"\n", "mark to (1, 2)\n"}
	for _, k := range Statements {
		out = append(out, k.Example+"\n")
	}
	return out
}

// shipped are whole plans.
func shipped(tb testing.TB) []string {
	names, err := filepath.Glob("../../examples/*.take")
	require.NoError(tb, err)
	more, err := filepath.Glob("../../testdata/syntax/*.take")
	require.NoError(tb, err)
	var texts []string
	for _, name := range append(names, more...) {
		text, err := os.ReadFile(name)
		require.NoError(tb, err)
		texts = append(texts, string(text))
	}
	return texts
}

// However a text is edited, reading only what changed comes to what reading all
// of it does, and leaves the text before it as it was.
func TestReparseIsParse(t *testing.T) {
	texts, put := append(shipped(t), seeds(t)...), pieces(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.SampledFrom(texts).Draw(t, "text")
		file, _ := Parse(source.NewFile("x.take", text))
		for range rapid.IntRange(1, 6).Draw(t, "edits") {
			start := rapid.IntRange(0, len(text)).Draw(t, "start")
			end := min(len(text), start+rapid.SampledFrom([]int{0, 0, 1, 2, 7, 40, 400}).Draw(t, "length"))
			said := rapid.SampledFrom(put).Draw(t, "said")
			if at := rapid.IntRange(0, len(text)).Draw(t, "from"); said == "" { // a part of the text again
				said = text[at:min(len(text), at+rapid.IntRange(0, 300).Draw(t, "taken"))]
			}
			text = text[:start] + said + text[end:]
			old, found := file, any(nil)
			file, found = Reparse(old, source.NewFile("x.take", text))
			requireSame(t, file, found)
			_, before := Parse(old.Source)
			requireSame(t, old, before)
		}
	})
}

// A statement that moves stays one: what two of its fields point at is one part.
func TestReparseKeepsPartsOne(t *testing.T) {
	const line = "beat \"x\"\nmina walks to M1 in 4 s\n"
	old, _ := Parse(source.NewFile("x.take", line))
	file, _ := Reparse(old, source.NewFile("x.take", "# a note\n"+line))
	before, after := old.Lines[1].Stmt.(*Move), file.Lines[2].Stmt.(*Move)
	require.NotSame(t, before.Timing.In, after.Timing.In)
	require.Same(t, after.Phrases[1].In, after.Timing.In)
	require.Equal(t, before.Who.Pos.Offset+len("# a note\n"), after.Who.Pos.Offset)
}

// What did not change is not read again, whether it stays where it is or moves.
func TestReparseShares(t *testing.T) {
	text := shipped(t)[0]
	old, _ := Parse(source.NewFile("x.take", text))
	file, _ := Reparse(old, source.NewFile("x.take", text+"mina sits\n"))
	for i, l := range old.Lines {
		if l.Stmt != nil && strings.Count(text, Print(l.Tokens)) == 1 {
			require.Same(t, l.Stmt, file.Lines[i].Stmt)
		}
	}
}

// BenchmarkReparse reads a plan of 300 lines after a letter was typed in its
// middle. Its references are BenchmarkReparseMoved, where a line was put in at
// the top, so that all places move, and BenchmarkReparseNothing, where nothing
// is known.
func BenchmarkReparse(b *testing.B) {
	text := threeHundred(b)
	at := strings.LastIndexByte(text[:len(text)/2], '\n')
	reparse(b, text, text[:at]+" "+text[at:])
}

// BenchmarkReparseMoved reads it after a line was put in at the top.
func BenchmarkReparseMoved(b *testing.B) {
	text := threeHundred(b)
	reparse(b, text, "# a note\n"+text)
}

// BenchmarkReparseNothing reads it as if it were new.
func BenchmarkReparseNothing(b *testing.B) { reparse(b, "", threeHundred(b)) }

func reparse(b *testing.B, before, after string) {
	old, _ := Parse(source.NewFile("x.take", before))
	src := source.NewFile("x.take", after)
	b.ReportAllocs()
	for b.Loop() {
		Reparse(old, src)
	}
}

// threeHundred is a shipped plan with notes up to 300 lines.
func threeHundred(b *testing.B) string {
	text, err := os.ReadFile("../../examples/last-collection.take")
	require.NoError(b, err)
	return string(text) + strings.Repeat("# a note\n", max(0, 300-strings.Count(string(text), "\n")))
}
