package highlight

import (
	"fmt"
	"regexp"
	"strings"
)

// vim is the dialect of Vim's "very magic" patterns, between slashes.
type vim struct{}

var vimSpecial = regexp.MustCompile(`[^0-9A-Za-z_\x80-\x{10ffff}]`)

func (vim) literal(text string) string { return vimSpecial.ReplaceAllString(text, `\$0`) }

// letter is a letter as far as Vim can say: any character beyond ASCII that is
// none of the signs and blanks of the language.
func (d vim) letter() string {
	return `%(\a|[^\x00-\x7f` + d.inside(signs+blanks) + `])`
}

func (d vim) set(chars string) string { return "[" + d.inside(chars) + "]" }

func (vim) inside(chars string) string {
	if chars == digits {
		return chars
	}
	var b strings.Builder
	for _, r := range chars {
		switch {
		case r == '\t':
			b.WriteString(`\t`)
		case strings.ContainsRune(`\]^-/[`, r):
			b.WriteString(`\` + string(r))
		case invisible(r):
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

func (vim) group(inner string) string   { return "%(" + inner + ")" }
func (vim) capture(inner string) string { return "(" + inner + ")" }
func (vim) either() string              { return "|" }
func (vim) optional() string            { return "?" }
func (vim) repeat() string              { return "*" }
func (vim) many() string                { return "+" }
func (vim) wordStart() string           { return "" }

func (d vim) wordEnd() string {
	wordChar := d.group(d.letter() + "|[0-9]")
	return d.group(`\-?`+wordChar) + "@!"
}

func (d vim) ahead(inner string, is bool) string {
	if is {
		return d.group(inner) + "@="
	}
	return d.group(inner) + "@!"
}

func (d vim) lineStart(blanks string) string { return d.group("^"+blanks+"*") + "@<=" }
