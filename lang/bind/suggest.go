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
		d := levenshtein.ComputeDistance(word, w)
		allowed := farthest
		switch n := min(len([]rune(word)), len([]rune(w))); {
		case n <= 1:
			allowed = 0
		case n <= 4:
			allowed = 1
		}
		if strings.EqualFold(word, w) {
			d, allowed = 0, 0
		}
		if d <= allowed && d < distance {
			best, distance = w, d
		}
	}
	return best
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
