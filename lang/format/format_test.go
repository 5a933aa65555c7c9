package format

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/syntax"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Each archive of testdata/syntax holds a text, `in`, and how it is laid out,
// `fmt`.
func TestLayout(t *testing.T) {
	names, err := filepath.Glob("../../testdata/syntax/format-*.txtar")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		t.Run(filepath.Base(name), func(t *testing.T) {
			archive, err := txtar.ParseFile(name)
			require.NoError(t, err)
			require.Len(t, archive.Files, 2)
			in, want := &archive.Files[0], &archive.Files[1]
			require.Equal(t, "in", in.Name)
			require.Equal(t, "fmt", want.Name)
			text := strings.NewReplacer("<CR>", "\r", "<TAB>", "\t").Replace(string(in.Data))
			got := Text(text)
			if *update {
				require.Empty(t, os.Getenv("CI"), "golden files are not written in CI")
				want.Data = []byte(got)
				require.NoError(t, os.WriteFile(name, txtar.Format(archive), 0o644))
			}
			assert.Equal(t, string(want.Data), got)
			holds(t, text)
		})
	}
}

// holds checks what is true of every text: laying out changes blanks and line
// ends only, keeps every token, and changes nothing the second time.
func holds(t *testing.T, text string) {
	once := Text(text)
	if twice := Text(once); twice != once {
		t.Fatalf("laid out again, it changes:\n%q\n%q\nfrom %q", once, twice, text)
	}
	if got, want := bareText(once), bareText(text); got != want {
		t.Fatalf("more than blanks changed:\n%q\n%q", want, got)
	}
	if once != "" && !strings.HasSuffix(once, "\n") {
		t.Fatalf("no line end at the end: %q", once)
	}
	before, after := words(syntax.Lex("", text)), words(syntax.Lex("", once))
	if len(before) != len(after) {
		t.Fatalf("%d tokens became %d: %q", len(before), len(after), text)
	}
	for i := range before {
		if before[i].Type != after[i].Type {
			t.Fatalf("%q became another kind of token, %q", before[i].Value, after[i].Value)
		}
	}
}

func bareText(text string) string { return strings.ReplaceAll(bare(text), "\n", "") }

func TestHoldsForEveryExample(t *testing.T) {
	for _, text := range seeds(t) {
		holds(t, text)
	}
}

func seeds(t testing.TB) []string {
	var texts []string
	names, err := filepath.Glob("../../testdata/syntax/*.take")
	require.NoError(t, err)
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		texts = append(texts, string(text))
	}
	for _, k := range syntax.Statements {
		head := k.Section
		if k.Section == "beat" || k.Section == "pickup" || k.Section == "take" || k.Section == "set" {
			head += ` "x" after "y"`
		}
		texts = append(texts, head+"\n"+k.Example+" # note\n\n\n# more\n"+k.Example)
	}
	return append(texts, "", "\n\n", "#", "a,\n# c\nbeat \"x\"\n", "kit\n card c 8' 6 1/2\" x 45° # x\r\n", "beat \"x\"\nA sees a, # one\n # two\n\n b", "\"a \r\r\n", "take \"x\"\nscene 31A\nscene 31 A")
}

// FuzzFormat holds what is true of every text.
func FuzzFormat(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text)
	}
	f.Fuzz(holds)
}

func BenchmarkFormat(b *testing.B) {
	text, err := os.ReadFile("../../testdata/syntax/page.take")
	require.NoError(b, err)
	long := strings.Repeat(string(text), 40)
	b.SetBytes(int64(len(long)))
	for b.Loop() {
		Text(long)
	}
}

func TestLeavesOtherEncodingsAlone(t *testing.T) {
	for _, text := range []string{"\xff\xfet\x00\n\x00 \x00", "\xfe\xff\x00t\x00\n\x00 "} {
		assert.Equal(t, text, Text(text))
	}
}
