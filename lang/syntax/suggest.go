package syntax

import (
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/agnivade/levenshtein"

	"longhand/lang/units"
)

// Nearest is the word of a list that a mistyped one most likely means; "" if
// none is near. The first of the list wins among equals.
func Nearest(word string, words []string) string {
	best, bestAt := "", nearEnough(word)+1
	for _, w := range words {
		if w == word {
			continue
		}
		if strings.EqualFold(w, word) {
			return w
		}
		if d := distance(strings.ToLower(word), strings.ToLower(w)); d < bestAt {
			best, bestAt = w, d
		}
	}
	return best
}

// distance is how many letters are wrong; two neighbours changed about count as
// one.
func distance(a, b string) int {
	d := levenshtein.ComputeDistance(a, b)
	x, y := []rune(a), []rune(b)
	if d != 2 || len(x) != len(y) {
		return d
	}
	for i := range len(x) - 1 {
		if x[i] != y[i] {
			if x[i] == y[i+1] && x[i+1] == y[i] {
				return 1
			}
			break
		}
	}
	return d
}

// nearEnough is how many letters may be wrong in a word: one in a short word,
// two from five letters on, three from nine.
func nearEnough(word string) int {
	switch n := utf8.RuneCountInString(word); {
	case n < 2:
		return 0
	case n < 5:
		return 1
	case n < 9:
		return 2
	}
	return 3
}

// spelled are units as people write them out, for suggestions.
var spelled = map[string]string{
	"watt": "W", "watts": "W", "kilowatt": "kW", "kilowatts": "kW", "volt": "V", "volts": "V",
	"amp": "A", "amps": "A", "ampere": "A", "amperes": "A", "kelvin": "K", "kilo": "kg", "kilos": "kg",
	"kilogram": "kg", "kilograms": "kg", "pound": "lb", "pounds": "lb", "candela": "cd", "percent": "%",
	"centimetre": "cm", "centimetres": "cm", "millimetre": "mm", "millimetres": "mm", "msec": "ms",
	"secs": "s", "mins": "min", "hr": "h", "hrs": "h", "kph": "km/h", "kmh": "km/h", "fr": "f",
	"mps": "m/s", "nits": "cd/m2", "nit": "cd/m2", "degs": "deg", "wpm": "words/min", "mtr": "m", "mtrs": "m",
}

// nearestUnit is the unit a mistyped one most likely means; "" if none is near.
func nearestUnit(word string) string {
	if u := spelled[strings.ToLower(word)]; u != "" {
		return u
	}
	var short, long []string
	for _, u := range units.Table {
		if len(u.Text) > 1 {
			short = append(short, u.Text)
		}
	}
	for w := range spelled {
		long = append(long, w)
	}
	slices.Sort(long)
	if u := Nearest(word, short); u != "" {
		return units.Usual(u)
	}
	if w := Nearest(word, long); w != "" {
		return spelled[w]
	}
	for _, u := range units.Table {
		if len(u.Text) == 1 && strings.EqualFold(u.Text, word) {
			return u.Text
		}
	}
	return ""
}

// lineWords are the words that may begin a line of a section.
func lineWords(section string) []string {
	var words []string
	for _, k := range Statements {
		if !k.Verb && !k.Head && k.In(section) {
			words = append(words, k.Words...)
		}
	}
	return append(words, SectionWords...)
}

// Verbs are the words that may follow a name at the start of a line of a beat.
func Verbs() []string {
	var words []string
	for _, k := range Statements {
		if k.Verb {
			words = append(words, k.Words...)
		}
	}
	return words
}

// usageWords are the language's own words in a kind's usage, and in what its
// capitals stand for.
func (k *Kind) usageWords() []string {
	text := k.Usage
	for _, name := range []string{"HIGH", "PATH", "TIMING", "EVENT", "SIZE", "CLASS", "WINDOW"} {
		if strings.Contains(text, name) {
			text += " " + Notation[name]
		}
	}
	words := []string{}
	for _, w := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" []|,.;+()", r) }) {
		if w != strings.ToUpper(w) && w != "each" && w != "x" && w != "y" && !slices.Contains(words, w) {
			words = append(words, w)
		}
	}
	slices.Sort(words)
	return words
}
