package bind

import (
	"sort"
	"strings"

	"github.com/agnivade/levenshtein"

	"longhand/lang/diag"
	"longhand/lang/source"
)

// farthest is how many letters may be wrong in a near miss.
const farthest = 2

// nearest is the word a misspelt one is most likely meant to be, or "". Short
// words have to be nearer: of one letter, only its case may differ; of up to
// four, one letter may.
func nearest(word string, words []string) string {
	sorted := append([]string(nil), words...)
	sort.Strings(sorted)
	best, distance := "", farthest+1
	for _, w := range sorted {
		if d, near := distanceOf(word, w); near && d < distance {
			best, distance = w, d
		}
	}
	return best
}

// distanceOf is how many letters of two words differ, case aside if nothing else
// does, and whether they are near enough for one to be a slip for the other.
func distanceOf(word, other string) (d int, near bool) {
	if strings.EqualFold(word, other) {
		return 0, true
	}
	allowed := farthest
	switch n := min(len([]rune(word)), len([]rune(other))); {
	case n <= 1:
		allowed = 0
	case n <= 4:
		allowed = 1
	}
	d = levenshtein.ComputeDistance(word, other)
	return d, d <= allowed
}

// suggest offers the nearest of some words, if one is near.
func suggest(d *diag.Diagnostic, at source.Span, word string, words []string) bool {
	near := nearest(word, words)
	if near == "" || near == word {
		return false
	}
	d.Note("did you mean `%s`?", near)
	d.Fix("write `"+near+"`", diag.Edit{Span: at, Text: near})
	return true
}
