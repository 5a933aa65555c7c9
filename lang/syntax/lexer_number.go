package syntax

import (
	"strings"

	"github.com/alecthomas/participle/v2/lexer"

	"longhand/lang/units"
)

// startsNumber reports whether a sign or a point is followed by a number.
func startsNumber(text string) bool {
	i := 0
	if text[i] == '+' || text[i] == '-' {
		i++
	}
	if i < len(text) && text[i] == '.' {
		i++
	}
	return i < len(text) && isDigit(text[i])
}

// number finds the token that a digit, a sign or a point begins: a date, a
// clock, a quantity with its unit, or a bare number.
func number(text string) (lexer.TokenType, int) {
	n := 0
	if text[0] == '+' || text[0] == '-' {
		n++
	}
	if k := dateLength(text[n:]); k > 0 {
		return TokDate, n + k
	}
	whole := digits(text[n:])
	n += whole
	n += fraction(text[n:])
	if k := clockLength(text[n:]); k > 0 {
		return TokClock, n + k
	}
	if k := feetLength(text[n:]); k > 0 {
		return TokQuantity, n + k
	}
	if k := inchesLength(text[n:]); k > 0 {
		return TokQuantity, n + k
	}
	if k := unitLength(text[n:]); k > 0 {
		return TokQuantity, n + k
	}
	if k := letterOrDigit(text[n:]); k > 0 {
		return TokMixed, n + mixedLength(text[n:])
	}
	return TokNumber, n
}

// fraction is the length of a point and digits.
func fraction(text string) int {
	if len(text) > 1 && text[0] == '.' && isDigit(text[1]) {
		return 1 + digits(text[1:])
	}
	return 0
}

func dateLength(text string) int {
	y := digits(text)
	if y == 0 || y >= len(text) || text[y] != '-' {
		return 0
	}
	m := digits(text[y+1:])
	if i := y + 1 + m; m == 0 || i >= len(text) || text[i] != '-' {
		return 0
	}
	d := digits(text[y+m+2:])
	if d == 0 {
		return 0
	}
	return y + m + d + 2
}

// clockLength is the length of one or more colons, each with its number.
func clockLength(text string) int {
	n := 0
	for n+1 < len(text) && text[n] == ':' && isDigit(text[n+1]) {
		n++
		n += digits(text[n:])
		n += fraction(text[n:])
	}
	return n
}

// feetLength is the length of a foot mark and the inches after it: ' or '6" or
// ' 6 1/2" or '-6".
func feetLength(text string) int {
	foot := mark(text, "'", "′", "’")
	if foot == 0 {
		return 0
	}
	rest := text[foot:]
	skip := spaces(rest)
	if skip == 0 && strings.HasPrefix(rest, "-") {
		skip = 1
	}
	n := digits(rest[skip:])
	n += fraction(rest[skip+n:])
	if k := inchesLength(rest[skip+n:]); k > 0 && (n > 0 || strings.HasPrefix(rest[skip:], "½")) {
		return foot + skip + n + k
	}
	if n > 0 && strings.HasPrefix(rest[skip+n:], "/") { // ' 1/2"
		d := digits(rest[skip+n+1:])
		if k := mark(rest[skip+n+1+d:], `"`, "″", "”"); d > 0 && k > 0 {
			return foot + skip + n + 1 + d + k
		}
	}
	return foot
}

// inchesLength is the length of an inch mark after a whole number, with the
// fraction that may stand between: " or ½" or  1/2".
func inchesLength(text string) int {
	if k := mark(text, `"`, "″", "”"); k > 0 {
		return k
	}
	skip := spaces(text)
	frac := mark(text[skip:], "½", "¼", "¾", "⅛", "⅜", "⅝", "⅞")
	if frac == 0 {
		above := digits(text[skip:])
		if above == 0 || skip == 0 || !strings.HasPrefix(text[skip+above:], "/") {
			if skip > 0 || above > 0 || !strings.HasPrefix(text, "/") {
				return 0
			}
		}
		below := digits(text[skip+above+1:])
		if below == 0 {
			return 0
		}
		frac = above + 1 + below
	}
	if k := mark(text[skip+frac:], `"`, "″", "”"); k > 0 {
		return skip + frac + k
	}
	return 0
}

// unitLength is the length of a unit, with the blanks before it.
func unitLength(text string) int {
	skip := spaces(text)
	rest := text[skip:]
	if k := mark(rest, "%", "°/s", "°", "mm²"); k > 0 {
		return skip + k
	}
	word := wordLength(rest)
	if word == 0 {
		return 0
	}
	if word < len(rest) && rest[word] == '/' { // m/s, words/min, cd/m2
		if below := wordLength(rest[word+1:]); below > 0 && units.IsUnit(rest[:word+1+below]) {
			return skip + word + 1 + below
		}
	}
	if !units.IsUnit(rest[:word]) || rest[:word] == "in" && numberFollows(rest[word:]) {
		return 0
	}
	if units.Usual(rest[:word]) == "ft" {
		return skip + word + afterFeet(rest[word:])
	}
	return skip + word
}

// afterFeet is the length of the inches after feet written out: 8 ft 6 in.
func afterFeet(text string) int {
	n := spaces(text)
	d := digits(text[n:])
	if d == 0 {
		return 0
	}
	n += d
	n += fraction(text[n:])
	n += spaces(text[n:])
	word := wordLength(text[n:])
	if units.Usual(text[n:n+word]) != "in" || numberFollows(text[n+word:]) {
		return 0
	}
	return n + word
}

// numberFollows tells the `in` of a duration from the unit: bar 12.3 in 4 s.
func numberFollows(text string) bool {
	text = text[spaces(text):]
	return text != "" && (isDigit(text[0]) || startsNumber(text) || strings.HasPrefix(text, "."))
}

// mixedLength is the length of letters, digits, inner hyphens and points.
func mixedLength(text string) int {
	n := 0
	for n < len(text) {
		k := letterOrDigit(text[n:])
		if k == 0 && (text[n] == '-' || text[n] == '.' || text[n] == '/') {
			if k = letterOrDigit(text[n+1:]); k > 0 {
				k++
			}
		}
		if k == 0 {
			break
		}
		n += k
	}
	return n
}

// mark is the length of whichever of the marks the text begins with.
func mark(text string, marks ...string) int {
	if text == "" || isDigit(text[0]) || text[0] == '\n' {
		return 0
	}
	for _, m := range marks {
		if strings.HasPrefix(text, m) {
			return len(m)
		}
	}
	return 0
}
