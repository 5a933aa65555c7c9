package diag

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

func sample() ([]Diagnostic, *source.File) {
	f := source.NewFile("a b.take", "beat \"Über\"\n\tcart drives to shed by +9 s\n")
	at := strings.Index(f.Text, "by +9 s")
	var b Bag
	b.Errorf("late", source.Span{File: f, Start: at, End: at + 7}, "cart gets there 1.4 s late").
		Relate(source.Span{File: f, Start: 0, End: 4}, "the beat begins here").
		Note("%s", "a note, with 100 % and : in it").
		Fix("start sooner", Edit{source.Span{File: f, Start: at, End: at}, "x"}).
		Frames = []Frames{{From: 10, To: 20}}
	b.Add(Diagnostic{Code: "soft", Severity: Warning, Message: "no place"})
	b.Errorf("late", source.Span{File: f, Start: at, End: at + 7}, "cart gets there 1.4 s late")
	return b.Sorted(), f
}

func TestSortedDropsRepeats(t *testing.T) {
	list, _ := sample()
	require.Len(t, list, 2)
	assert.Equal(t, Code("soft"), list[0].Code, "a finding of no file comes first")
}

func TestTextPointsAtTheWords(t *testing.T) {
	list, _ := sample()
	var b bytes.Buffer
	require.NoError(t, WriteText(&b, list, Paint{}))
	assert.Equal(t, `warning soft: no place
a b.take:2:22: error late: cart gets there 1.4 s late
    2 | 	cart drives to shed by +9 s
      | 	                    ^^^^^^^
  see a b.take:1:1: the beat begins here
  note: a note, with 100 % and : in it
  fix: start sooner
`, b.String())
	b.Reset()
	require.NoError(t, WriteText(&b, list, Paint{On: true}))
	assert.Contains(t, b.String(), "\x1b[31;1merror late\x1b[0m")
	assert.Equal(t, "1 error, 1 warning", Summary(list))
	assert.Equal(t, "nothing found", Summary(nil))
}

func TestShort(t *testing.T) {
	list, _ := sample()
	var b bytes.Buffer
	require.NoError(t, WriteShort(&b, list))
	assert.Equal(t, "-:1:1: warning: no place [soft]\na b.take:2:22: error: cart gets there 1.4 s late [late]\n", b.String())
}

func TestJSONHasTheSchemaAndEveryField(t *testing.T) {
	list, _ := sample()
	var b bytes.Buffer
	require.NoError(t, WriteJSON(&b, list))
	var got map[string]any
	require.NoError(t, json.Unmarshal(b.Bytes(), &got))
	assert.EqualValues(t, 1, got["schema"])
	f := got["findings"].([]any)[1].(map[string]any)
	for _, key := range []string{"code", "severity", "message", "file", "start", "end", "frames", "related", "notes", "fixes"} {
		assert.Contains(t, f, key)
	}
	assert.Equal(t, map[string]any{"line": 2.0, "column": 22.0, "offset": 34.0}, f["start"])
	b.Reset()
	require.NoError(t, WriteJSON(&b, nil))
	assert.JSONEq(t, `{"schema": 1, "findings": []}`, b.String())
}

func TestSARIFAndCodeQualityParseBack(t *testing.T) {
	list, _ := sample()
	for name, write := range map[string]func(*bytes.Buffer) error{
		"sarif":   func(b *bytes.Buffer) error { return WriteSARIF(b, list, map[Code]string{"late": "missed"}) },
		"quality": func(b *bytes.Buffer) error { return WriteGitLab(b, list) },
	} {
		var b, again bytes.Buffer
		require.NoError(t, write(&b), name)
		require.NoError(t, write(&again), name)
		assert.Equal(t, b.String(), again.String(), "same findings, same bytes")
		assert.True(t, json.Valid(b.Bytes()), name)
	}
}

func TestFingerprintsOutliveLinesAddedAbove(t *testing.T) {
	list, f := sample()
	moved := source.NewFile(f.Name, "# a new line\n"+f.Text)
	other := append([]Diagnostic(nil), list...)
	for i := range other {
		if other[i].Span.Valid() {
			other[i].Span = source.Span{File: moved, Start: other[i].Span.Start + 13, End: other[i].Span.End + 13}
		}
	}
	assert.Equal(t, Fingerprints(list), Fingerprints(other))
	twins := []Diagnostic{list[1], list[1]}
	prints := Fingerprints(twins)
	assert.NotEqual(t, prints[0], prints[1], "equals are told apart")
}

func TestJUnit(t *testing.T) {
	list, _ := sample()
	var b bytes.Buffer
	require.NoError(t, WriteJUnit(&b, []string{"a b.take", "clean.take"}, list))
	var got junitSuites
	require.NoError(t, xml.Unmarshal(b.Bytes(), &got))
	require.Len(t, got.Suites, 3)
	assert.Equal(t, 1, got.Suites[0].Failures)
	assert.Equal(t, 0, got.Suites[1].Failures)
}

func TestAnnotationsAreEscapedAndCapped(t *testing.T) {
	list, _ := sample()
	for range 12 {
		list = append(list, list[1])
	}
	var b bytes.Buffer
	require.NoError(t, WriteGitHub(&b, list))
	lines := strings.Split(strings.TrimSpace(b.String()), "\n")
	assert.Equal(t, "::error file=a b.take,line=2,col=22,endLine=2,endColumn=29,title=late::cart gets there 1.4 s late", lines[0])
	assert.Len(t, lines, 10+1+1)
	assert.Equal(t, "3 more of kind error, not annotated", lines[10])
}

func TestTextIsNoCommandToATerminal(t *testing.T) {
	f := source.NewFile("a.take", "x\x1b[2J\x00\xff y\n")
	var bag Bag
	bag.Errorf("syntax", source.Span{File: f, Start: 0, End: 1}, "no")
	var b bytes.Buffer
	require.NoError(t, WriteText(&b, bag.Sorted(), Paint{}))
	assert.Contains(t, b.String(), "x·[2J·· y")
}
