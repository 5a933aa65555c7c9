package bind

import (
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/diag"
)

// mend does every fix of some findings, from the end of the text to its start.
func mend(text string, found []diag.Diagnostic) string {
	var edits []diag.Edit
	for _, d := range found {
		for _, f := range d.Fixes {
			edits = append(edits, f.Edits...)
		}
	}
	sort.Slice(edits, func(i, j int) bool { return edits[i].Span.Start > edits[j].Span.Start })
	for _, e := range edits {
		text = text[:e.Span.Start] + e.Text + text[e.Span.End:]
	}
	return text
}

// TestOneSlipOneFix: a name misspelt in three places is one finding, with one fix
// that mends them all.
func TestOneSlipOneFix(t *testing.T) {
	text := `set "S"
  mark dock (1, 1)
  mark side 2 m left of dok

people
  performer mina

beat "One"
  mina walks from (9, 9) to dok
  mina walks to (9, 9)
  mina walks to dok
`
	_, found := bindText("plan.take", text)
	require.Len(t, found, 1)
	assert.Len(t, found[0].Related, 2)
	require.Len(t, found[0].Fixes, 1)
	assert.Len(t, found[0].Fixes[0].Edits, 3)
	_, left := bindText("plan.take", mend(text, found))
	assert.Empty(t, left)
}

// TestFixesMend does all the fixes that forty mistakes have: each mends its own
// and makes no new one.
func TestFixesMend(t *testing.T) {
	text := readTestdata(t, "forty.take")
	_, found := bindText("forty.take", text)
	fixed := 0
	for _, d := range found {
		if len(d.Fixes) > 0 {
			fixed++
		}
	}
	require.Greater(t, fixed, 5)
	_, left := bindText("forty.take", mend(text, found))
	for _, d := range left {
		assert.Empty(t, d.Fixes, "%s: %s", d.Code, d.Message)
	}
	assert.Len(t, left, len(found)-fixed)
}

func BenchmarkBind(b *testing.B) {
	text := readTestdata(b, "whole.take")
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		_, found := bindText("whole.take", text)
		if len(found) > 0 {
			b.Fatal(found)
		}
	}
}

// BenchmarkBindMistakes binds a text in which every line of five hundred has a
// mistake.
func BenchmarkBindMistakes(b *testing.B) {
	text := "people\n  performer mina\n\nbeat \"One\"\n" + strings.Repeat("  mina walkz to M1\n  mina waits until mina says \"no\"\n", 250)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		bindText("mistakes.take", text)
	}
}
