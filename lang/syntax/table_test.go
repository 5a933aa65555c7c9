package syntax

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestEveryKindSaysWhatItIs(t *testing.T) {
	for _, k := range Statements {
		assert.NotEmpty(t, k.Words, k.Usage)
		assert.NotEmpty(t, k.Usage)
		assert.NotEmpty(t, k.Example, k.Usage)
		assert.True(t, strings.HasSuffix(k.Means, "."), "%s: %q is a sentence", k.Usage, k.Means)
		assert.NotNil(t, k.parse, k.Usage)
		for _, w := range k.Words {
			assert.Contains(t, k.Usage+" closes", w, "the usage of %q shows its word", w)
		}
	}
}

func TestNoTwoKindsShareAWordInASection(t *testing.T) {
	sections := append([]string{""}, SectionWords...)
	for _, section := range sections {
		seen := map[string]string{}
		for _, k := range Statements {
			if !k.In(section) || k.Head {
				continue
			}
			for _, w := range k.Words {
				assert.Empty(t, seen[w], "%q is the word of two statements of %q", w, section)
				seen[w] = k.Usage
			}
		}
	}
}

func TestEverySectionHasItsHeader(t *testing.T) {
	for _, w := range SectionWords {
		if k := head(w); assert.NotNil(t, k, w) {
			assert.Equal(t, w, k.Section)
		}
	}
}

// A verb that begins lines of its own in a beat would make `door opens` mean
// two things.
func TestVerbsAreNotWordsThatBeginLinesOfABeat(t *testing.T) {
	for _, v := range Verbs() {
		assert.Nil(t, find("beat", v, false), v)
	}
}

func TestReservedWordsCannotBeNames(t *testing.T) {
	for _, w := range ReservedWords() {
		_, messages := parseAs(t, "set", "mark "+w+" (1, 2)")
		assert.NotEmpty(t, messages, w)
	}
	for _, w := range []string{"wall", "racks", "lens", "x", "m", "h", "T2", "vestibule", "ånd", "M1-b"} {
		_, messages := parseAs(t, "set", "mark "+w+" (1, 2)")
		assert.Empty(t, messages, w)
	}
}
