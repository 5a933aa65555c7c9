package timecode

import (
	"math"
	"strings"
	"unicode"

	"longhand/lang/units"
)

// Tempo is music: beats a minute and beats a bar.
type Tempo struct {
	BPM float64
	In  int
}

// Beat is how long one count is: 60/BPM.
func (t Tempo) Beat() units.Seconds { return units.Seconds(60 / t.BPM) }

// Counts is how long a number of counts is.
func (t Tempo) Counts(n float64) units.Seconds { return units.Seconds(n * 60 / t.BPM) }

// Bar is when a count of a bar falls, both counted from 1 as musicians do, the
// music starting at 0: bar 1, count 1.
func (t Tempo) Bar(bar int, count float64) units.Seconds {
	return t.Counts(float64(bar-1)*float64(t.In) + count - 1)
}

// Position is the bar and count, from 1, at a time. A time that is short of a
// count only by rounding is on it.
func (t Tempo) Position(at units.Seconds) (bar int, count float64) {
	n := float64(at) * t.BPM / 60
	if r := math.Round(n); math.Abs(n-r) < 1e-9*math.Max(1, math.Abs(n)) {
		n = r
	}
	b := math.Floor(n / float64(t.In))
	return int(b) + 1, n - b*float64(t.In) + 1
}

// SpokenPace is the speaking pace taken where the plan gives none, in words a
// minute (conversational US English, National Center for Voice and Speech).
const SpokenPace = 150

// Words is how many words a line has: runs of letters and digits, with the
// apostrophes, hyphens and decimal points inside them, and signs that are read
// out, like &.
func Words(line string) int { return len(SplitWords(line)) }

// SplitWords are the words that Words counts, as they are written.
func SplitWords(line string) []string {
	runes := []rune(line)
	var out []string
	from, inWord := 0, false
	for i, r := range runes {
		switch {
		case isWord(r):
			if !inWord {
				from = i
			}
			inWord = true
		case inWord && i+1 < len(runes) && joins(runes[i-1], r, runes[i+1]):
		default:
			if inWord {
				out = append(out, string(runes[from:i]))
				inWord = false
			}
			if isSaid(r) {
				out = append(out, string(r))
			}
		}
	}
	if inWord {
		out = append(out, string(runes[from:]))
	}
	return out
}

func isWord(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) }

// isSaid says whether a sign is read out as a word of its own.
func isSaid(r rune) bool { return strings.ContainsRune("&%+=@", r) || unicode.Is(unicode.Sc, r) }

// joins says whether a mark between two runes makes one word of them.
func joins(before, mark, after rune) bool {
	switch mark {
	case '\'', '’', '-', '\u2010', '\u2011':
		return isWord(before) && isWord(after)
	case '.', ',':
		return unicode.IsDigit(before) && unicode.IsDigit(after)
	}
	return false
}

// Spoken is how long a number of words takes at a pace in words a minute.
func Spoken(words int, pace float64) units.Seconds {
	return units.Seconds(float64(words) / pace * 60)
}
