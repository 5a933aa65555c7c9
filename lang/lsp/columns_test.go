package lsp

import (
	"bufio"
	"bytes"
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/source"
)

// One character of one, two, three and four bytes, which are one, one, one and
// two units in UTF-16 (The Unicode Standard, table 3-5, UTF-16 bit distribution).
const mixedLine = "aé中😀b"

func TestColumnsAreCountedAsTheEditorDoes(t *testing.T) {
	f := source.NewFile("a.take", "first\r\n"+mixedLine+"\n")
	start := f.LineStart(2)
	for i, want := range []struct{ bytes, units int }{{0, 0}, {1, 1}, {3, 2}, {6, 3}, {10, 5}, {11, 6}} {
		at := start + want.bytes
		assert.Equal(t, Position{1, want.units}, UTF16.position(f, at), "%d", i)
		assert.Equal(t, Position{1, want.bytes}, UTF8.position(f, at), "%d", i)
		assert.Equal(t, at, UTF16.offset(f, Position{1, want.units}), "%d", i)
		assert.Equal(t, at, UTF8.offset(f, Position{1, want.bytes}), "%d", i)
	}
	assert.Equal(t, start+6, UTF16.offset(f, Position{1, 4}), "between the halves of a pair is before it")
	assert.Equal(t, start+6, UTF8.offset(f, Position{1, 8}), "inside a character is before it")
	for _, e := range []Encoding{UTF8, UTF16} {
		assert.Equal(t, 5, e.offset(f, Position{0, 99}), "past the end of a line is its end, before what ends it")
		assert.Equal(t, 0, e.offset(f, Position{-1, 3}))
		assert.Equal(t, len(f.Text), e.offset(f, Position{9, 0}))
	}
}

// TestUTF16IsThatOfTheStandardLibrary compares positions with unicode/utf16.
func TestUTF16IsThatOfTheStandardLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("a é中😀\n\"")), 0, 40, -1).Draw(t, "text")
		f := source.NewFile("a.take", text)
		for i := range text {
			line := text[strings.LastIndexByte(text[:i], '\n')+1 : i]
			p := UTF16.position(f, i)
			require.Equal(t, len(utf16.Encode([]rune(line))), p.Character)
			require.Equal(t, strings.Count(text[:i], "\n"), p.Line)
			require.Equal(t, i, UTF16.offset(f, p))
			require.Equal(t, i, UTF8.offset(f, UTF8.position(f, i)))
		}
	})
}

func TestFindingsStandBehindWideCharacters(t *testing.T) {
	for _, c := range []struct {
		encodings []string
		from, to  int
	}{{[]string{"utf-8"}, 25, 29}, {nil, 20, 24}} { // `  mina says "` is 13 units
		e := edit(t, c.encodings)
		e.open("/a.take", "take \"x\"\npeople\n  performer mina\nbeat \"b\"\n  mina says \"é中😀.\" wehn mina reaches (1, 1)\n")
		e.settle()
		e.mu.Lock()
		list := e.diags["file:///a.take"].Diagnostics
		e.mu.Unlock()
		require.NotEmpty(t, list)
		text := e.texts["/a.take"].Line(5)
		assert.Equal(t, "wehn", strings.TrimSpace(text[strings.Index(text, "wehn"):strings.Index(text, "wehn")+4]))
		assert.Equal(t, Range{Position{4, c.from}, Position{4, c.to}}, list[0].Range, "%v", c.encodings)
	}
}

func TestNamesOfDocuments(t *testing.T) {
	for uri, name := range map[string]string{
		"file:///plans/a%20b/caf%C3%A9.take": "/plans/a b/café.take",
		"file:///C:/plans/a.take":            "c:/plans/a.take",
		"file:///c%3A/plans/a.take":          "c:/plans/a.take",
		"file://host/plans/a.take":           "//host/plans/a.take",
		"untitled:Untitled-1":                "untitled:Untitled-1",
	} {
		assert.Equal(t, name, nameOf(uri), uri)
		assert.Equal(t, name, nameOf(uriOf(name)), uri)
	}
	assert.True(t, isURI("untitled:Untitled-1"))
	assert.False(t, isURI("/a:b.take"))
}

func TestAMessageThatIsNoneIsPassedOver(t *testing.T) {
	var told []error
	c := codec{func(err error) { told = append(told, err) }}
	in := "Content-Length: 5\r\n\r\n{\"a\":" + "content-type: x\r\ncontent-length: 7\r\n\r\n{\"a\":1}"
	r := bufio.NewReader(strings.NewReader(in))
	var got map[string]int
	require.NoError(t, c.ReadObject(r, &got))
	assert.Equal(t, map[string]int{"a": 1}, got)
	assert.Len(t, told, 1)
	assert.Error(t, c.ReadObject(r, &got), "the end")
	for _, bad := range []string{"Content-Length: x\r\n\r\n", "Content-Length: -1\r\n\r\n", "Content-Length: 99999999999\r\n\r\n"} {
		assert.Error(t, c.ReadObject(bufio.NewReader(strings.NewReader(bad)), &got), bad)
	}
	var out bytes.Buffer
	require.NoError(t, c.WriteObject(&out, map[string]string{"é": "😀"}))
	head, body, _ := strings.Cut(out.String(), "\r\n\r\n")
	assert.Equal(t, "Content-Length: 13", head, "bytes are counted, not characters")
	assert.True(t, json.Valid([]byte(body)))
}
