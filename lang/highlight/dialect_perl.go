package highlight

import (
	"fmt"
	"regexp"
	"strings"
)

// perl is the dialect most engines share. They try the rules where they stand,
// and every word and number is taken whole by one of them, so that no rule has
// to look back for a word's start.
type perl struct {
	escape   string // how a character is written by its number: \x{%04x}
	alphabet string // a letter, or the accent of one
	inWord   string // one of these, or a digit
}

// The letters, by their properties, and for engines that do not know those.
const (
	letters, inWords           = `[\p{L}\p{M}]`, `[\p{L}\p{M}0-9]`
	plainLetters, plainInWords = `[^\W\d_]`, `[^\W_]`
)

func (perl) literal(text string) string { return regexp.QuoteMeta(text) }
func (d perl) letter() string           { return d.alphabet }

func (d perl) set(chars string) string { return "[" + d.inside(chars) + "]" }

// inside writes characters between square brackets; "0-9" is a range.
func (d perl) inside(chars string) string {
	if chars == digits {
		return chars
	}
	var b strings.Builder
	for _, r := range chars {
		switch {
		case r == '\t':
			b.WriteString(`\t`)
		case strings.ContainsRune(`\]^-[`, r):
			b.WriteString(`\` + string(r))
		case invisible(r):
			fmt.Fprintf(&b, d.escape, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// invisible reports whether a character is better written by its number.
func invisible(r rune) bool { return r > 0x7f && strings.ContainsRune(blanks, r) }

func (perl) group(inner string) string   { return "(?:" + inner + ")" }
func (perl) capture(inner string) string { return "(" + inner + ")" }
func (perl) either() string              { return "|" }
func (perl) optional() string            { return "?" }
func (perl) repeat() string              { return "*" }
func (perl) many() string                { return "+" }
func (perl) wordStart() string           { return "" }
func (d perl) wordEnd() string           { return "(?!" + d.inWord + "|-" + d.inWord + ")" }

func (perl) ahead(inner string, is bool) string {
	if is {
		return "(?=" + inner + ")"
	}
	return "(?!" + inner + ")"
}

func (perl) lineStart(blanks string) string { return "^" + blanks + "*" }
