package lsp

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"longhand/lang/source"
)

func TestPlacesMoveWithTheirLines(t *testing.T) {
	old := source.NewFile("a", "one\ntwo\nthree\n")
	for _, c := range []struct {
		to         string
		start, end int // in the old text
		want       string
		ok         bool
	}{
		{"one\ntwo\nthree\n", 4, 7, "two", true},
		{"one\nnew\ntwo\nthree\n", 4, 7, "two", true},
		{"one\ntwo\ntwo\nthree\n", 8, 13, "three", true},
		{"one\ntwx\nthree\n", 4, 7, "", false},
		{"one\ntwx\nthree\n", 8, 13, "three", true},
		{"one\ntwx\nthree\n", 0, 3, "one", true},
		{"three\n", 8, 13, "three", true},
		{"", 0, 3, "", false},
	} {
		f := source.NewFile("a", c.to)
		got, ok := shiftOf(old.Text, f).forward(source.Span{File: old, Start: c.start, End: c.end})
		assert.Equal(t, c.ok, ok, "%q", c.to)
		assert.Equal(t, c.want, got.Text(), "%q", c.to)
	}
}

// TestWhatMovesIsTheSameText holds that a place that is said to have moved has
// the text it had.
func TestWhatMovesIsTheSameText(t *testing.T) {
	texts := rapid.StringOfN(rapid.RuneFrom([]rune("ab\n")), 0, 20, -1)
	rapid.Check(t, func(t *rapid.T) {
		old := source.NewFile("a", texts.Draw(t, "old"))
		now := source.NewFile("a", texts.Draw(t, "now"))
		start := rapid.IntRange(0, len(old.Text)).Draw(t, "start")
		end := rapid.IntRange(start, len(old.Text)).Draw(t, "end")
		at := source.Span{File: old, Start: start, End: end}
		if got, ok := shiftOf(old.Text, now).forward(at); ok {
			require.Equal(t, at.Text(), got.Text())
		}
	})
}
