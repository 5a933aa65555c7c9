package lsp

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/compile"
)

// ask calls every handler at a place.
func ask(s *Snapshot, offset, other int) {
	s.Completion(offset)
	s.Hover(offset)
	s.SignatureHelp(offset)
	s.Definition(offset)
	s.References(offset, true)
	s.Highlights(offset)
	_, _ = s.PrepareRename(offset)
	_, _ = s.Rename(offset, "another")
	s.CallItems(offset)
	s.WaitsFor(offset)
	s.Waiting(offset)
	s.Selection(offset)
	start, end := min(offset, other), max(offset, other)
	s.FormatRange(start, end)
	s.Hints(start, end)
	s.Actions(start, end, nil)
}

// TestMangledTextsAreAnswered asks everything everywhere in texts with pieces
// taken out and put in, with what was computed for the text they came from.
func TestMangledTextsAreAnswered(t *testing.T) {
	rounds := 300
	if testing.Short() {
		rounds = 40
	}
	whole, err := compile.Text(context.Background(), "a.take", tiny(t), compile.Options{})
	require.NoError(t, err)
	require.NotNil(t, whole.Sight)
	r := rand.New(rand.NewPCG(11, 1931))
	for range rounds {
		text := tiny(t)
		for range 1 + r.IntN(6) {
			start := r.IntN(len(text) + 1)
			end := min(start+r.IntN(20), len(text))
			text = text[:start] + scraps[r.IntN(len(scraps))] + text[end:] // in the middle of characters, too
		}
		read := func(n string) (string, error) {
			if n == "a.take" {
				return text, nil
			}
			return "", fmt.Errorf("there is no file %s", n)
		}
		bound, err := textOnly(read, "a.take", skim(text).plan, nil)
		require.NoError(t, err)
		s := NewSnapshot(bound, "a.take")
		s.Whole, s.names = whole, nil
		s.Encoding = []Encoding{UTF8, UTF16}[r.IntN(2)]
		s.ready()
		require.NotPanics(t, func() {
			s.Symbols()
			s.Folds()
			s.Format()
			s.Links()
			s.Tokens()
			for range 40 {
				ask(s, r.IntN(len(text)+1), r.IntN(len(text)+1))
			}
		}, "%q", text)
	}
}

// FuzzAnswers asks everything at places all over a text.
func FuzzAnswers(f *testing.F) {
	f.Add(small)
	f.Add("beat \"x\"\n  mina walks to (1,\n")
	f.Add("use \"")
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 400 {
			return
		}
		read := func(n string) (string, error) {
			if n == "a.take" {
				return text, nil
			}
			return "", fmt.Errorf("there is no file %s", n)
		}
		bound, err := textOnly(read, "a.take", skim(text).plan, nil)
		require.NoError(t, err)
		s := NewSnapshot(bound, "a.take")
		s.Tokens()
		s.Symbols()
		s.Folds()
		for i := 0; i <= len(text); i += 1 + len(text)/8 {
			ask(s, i, len(text))
		}
	})
}
