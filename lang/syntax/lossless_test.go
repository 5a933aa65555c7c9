package syntax

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

func printFile(f *File) string {
	var b strings.Builder
	for _, l := range f.Lines {
		b.WriteString(Print(l.Tokens))
	}
	return b.String()
}

func seeds(t testing.TB) []string {
	var texts []string
	files, err := filepath.Glob("../../testdata/syntax/*.take")
	require.NoError(t, err)
	for _, f := range files {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		texts = append(texts, string(text))
	}
	for _, k := range Statements {
		texts = append(texts, k.Section+"\n"+k.Example, head0(k.Section)+"\n"+k.Example+" "+k.Example)
	}
	return append(texts, "", "\r\n", "\xff\xfe", "mark M1 (1,\n2)\n", "sees a,\n\nb", "beat \"x\n", "“x”", "8'6 1/2\"", "8'", "T2.", "-", "+", "a-", "2-3-4", "1:2:3:4", "((((", "a,\r\n", "\x00", "#")
}

func head0(section string) string {
	if k := head(section); k != nil {
		return k.Example
	}
	return ""
}

func TestPrintsBack(t *testing.T) {
	for _, text := range seeds(t) {
		f, _ := Parse(source.NewFile("x.take", text))
		assert.Equal(t, text, printFile(f))
	}
}

// FuzzParse holds that any bytes can be read, print back as they were, and cost
// at most one error a line.
func FuzzParse(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text)
	}
	f.Add("\xff\xfe\n\xfe")
	f.Fuzz(func(t *testing.T, text string) {
		file, bag := Parse(source.NewFile("x.take", text))
		if got := printFile(file); got != text {
			t.Fatalf("%q printed back as %q", text, got)
		}
		bad := 0
		for _, l := range file.Lines {
			if l.Bad {
				bad++
			}
			if l.Stmt != nil && l.Bad {
				t.Fatalf("a bad line has a statement: %q", Print(l.Tokens))
			}
		}
		if file.Wide() {
			bad = 1 // told once of the whole file
		}
		if bag.Len() != bad {
			t.Fatalf("%d errors on %d bad lines", bag.Len(), bad)
		}
		for _, d := range bag.Sorted() {
			if d.Span.Start > d.Span.End || d.Span.End > len(text) {
				t.Fatalf("a span outside the text: %v", d.Span)
			}
		}
	})
}
