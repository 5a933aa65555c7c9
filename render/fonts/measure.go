package fonts

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font/sfnt"
)

// Width is how far a line of text runs, in millimetres. Runes the face does not
// have count with the width of its empty box.
func (f Face) Width(points float64, text string) float64 {
	g := table(f)
	var b sfnt.Buffer
	units := 0.0
	for _, r := range text {
		units += g.advances[g.index(&b, r)]
	}
	return units / g.em * points * MMPerPoint
}

// Ascent is how far the highest letters reach above the baseline, accents
// included, in millimetres.
func (f Face) Ascent(points float64) float64 { g := table(f); return g.length(g.ascent, points) }

// Descent is how far letters reach below the baseline, in millimetres.
func (f Face) Descent(points float64) float64 { g := table(f); return g.length(g.descent, points) }

// CapHeight is the height of a capital, in millimetres.
func (f Face) CapHeight(points float64) float64 { g := table(f); return g.length(g.capitals, points) }

// XHeight is the height of a small x, in millimetres.
func (f Face) XHeight(points float64) float64 { g := table(f); return g.length(g.small, points) }

// LineHeight is the usual distance between baselines, in millimetres.
func LineHeight(points float64) float64 { return 1.25 * points * MMPerPoint }

func (g *glyphs) length(units, points float64) float64 {
	return units / g.em * points * MMPerPoint
}

// Missing lists the runes of the text that the face cannot draw, each once, in
// order of appearance. Space and other invisible runes are never missing.
func (f Face) Missing(text string) []rune {
	g := table(f)
	var b sfnt.Buffer
	var out []rune
	for _, r := range text {
		if unicode.IsSpace(r) || g.index(&b, r) != 0 || strings.ContainsRune(string(out), r) {
			continue
		}
		out = append(out, r)
	}
	return out
}

// Clean makes any text fit for one line of any output: control characters,
// line breaks and tabs become spaces, and bytes that are not UTF-8, or runes
// that XML 1.0 does not allow, become the replacement character.
func Clean(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == utf8.RuneError, r == 0xFFFE, r == 0xFFFF:
			return utf8.RuneError
		case unicode.IsControl(r), r == '\u2028', r == '\u2029':
			return ' '
		}
		return r
	}, text)
}

// Fit shortens the text with an ellipsis until it is no wider than the given
// millimetres. What fits is returned as it is; where not even the ellipsis
// fits, the result is empty.
func (f Face) Fit(points, width float64, text string) string {
	if f.Width(points, text) <= width {
		return text
	}
	runes := []rune(text)
	for n := len(runes) - 1; n >= 0; n-- {
		s := strings.TrimRight(string(runes[:n]), " ") + "…"
		if f.Width(points, s) <= width {
			return s
		}
	}
	return ""
}

// Wrap breaks text into lines no wider than the given millimetres, at spaces
// where it can, but not between a number and its unit, and inside a word where the
// word alone is too wide. Line breaks in the text are kept. There is always at
// least one line.
func (f Face) Wrap(points, width float64, text string) []string {
	var lines []string
	for para := range strings.SplitSeq(text, "\n") {
		lines = append(lines, f.wrap(points, width, Clean(para))...)
	}
	return lines
}

func (f Face) wrap(points, width float64, text string) []string {
	var lines []string
	line := ""
	for _, word := range f.whole(points, width, strings.Fields(text)) {
		next := word
		if line != "" {
			next = line + " " + word
		}
		if f.Width(points, next) <= width {
			line = next
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for f.Width(points, word) > width {
			head, tail := f.split(points, width, word)
			if tail == "" {
				break
			}
			lines = append(lines, head)
			word = tail
		}
		line = word
	}
	return append(lines, line)
}

// ofNumbers are the units that stay with the number before them.
var ofNumbers = func() map[string]bool {
	out := map[string]bool{}
	for _, u := range strings.Fields("m mm cm m² mm² ft ft² in m/s ft/s km/h mph s ms min h f fps % kg g lb K W kW A V lx cd counts count bars cd/m2 cd/m² N·m stops deg °/s") {
		out[u] = true
	}
	return out
}()

// whole puts each number and the unit after it into one word, where that fits a
// line.
func (f Face) whole(points, width float64, words []string) []string {
	var out []string
	for _, w := range words {
		if n := len(out); n > 0 && ofNumbers[strings.TrimRight(w, ".,;:)")] {
			last := out[n-1][len(out[n-1])-1]
			if both := out[n-1] + " " + w; last >= '0' && last <= '9' && f.Width(points, both) <= width {
				out[n-1] = both
				continue
			}
		}
		out = append(out, w)
	}
	return out
}

// split cuts a word after as many runes as fit, at least one.
func (f Face) split(points, width float64, word string) (head, tail string) {
	cut := 0
	for i, r := range word {
		end := i + utf8.RuneLen(r)
		if cut > 0 && f.Width(points, word[:end]) > width {
			break
		}
		cut = end
	}
	return word[:cut], word[cut:]
}
