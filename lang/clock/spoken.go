package clock

import (
	"strings"
	"unicode"

	"longhand/lang/timecode"
	"longhand/lang/units"
)

// DefaultPace is how fast lines are spoken where the plan does not say:
// conversational English, words a minute (a figure commonly attributed to the
// National Center for Voice and Speech).
const DefaultPace = 150

// ShortestLine is the least time a spoken line takes.
const ShortestLine units.Seconds = 0.5

// Spoken is how long so many words take at a pace in words a minute; at
// [DefaultPace] where the pace is 0.
func Spoken(words int, pace float64) units.Seconds {
	if !(pace > 0) {
		pace = DefaultPace
	}
	return max(units.Seconds(float64(words)/pace*60), ShortestLine)
}

// partOf finds a part of a spoken line and counts the words through its end, of
// how many. Case and punctuation do not matter; a part need not end where a word
// does. An empty part is the whole line.
func partOf(line, part string) (through, of int, found bool) {
	words, wanted := spokenWords(line), spokenWords(part)
	of = len(words)
	if len(wanted) == 0 {
		return of, of, true
	}
	if of < len(wanted) {
		return 0, of, false
	}
	last := len(wanted) - 1
	whole := -1
	for i := 0; i+last < of; i++ {
		fits := true
		for k, w := range wanted {
			have := words[i+k]
			switch {
			case have == w:
			case last == 0:
				fits = strings.Contains(have, w)
			case k == 0:
				fits = strings.HasSuffix(have, w)
			case k == last:
				fits = strings.HasPrefix(have, w)
			default:
				fits = false
			}
			if !fits {
				break
			}
		}
		if !fits {
			continue
		}
		exact := words[i] == wanted[0] && words[i+last] == wanted[last]
		if exact {
			return i + last + 1, of, true // whole words win over pieces of words
		}
		if whole < 0 {
			whole = i + last + 1
		}
	}
	return whole, of, whole >= 0
}

// spokenWords are the words that a line's length is counted by, in lower case and
// with only their letters and digits where they have any.
func spokenWords(text string) []string {
	var out []string
	for _, w := range timecode.SplitWords(text) {
		plain := strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) {
				return unicode.ToLower(r)
			}
			return -1
		}, w)
		if plain == "" {
			plain = w
		}
		out = append(out, plain)
	}
	return out
}
