package highlight

import (
	"fmt"
	"regexp"
	"strings"
)

// emacs is the dialect of Emacs, as it is written in a Lisp string. It cannot
// look ahead: what must follow is matched outside the captured parts, and what
// must not follow is left to the order of the rules.
type emacs struct{}

func (emacs) literal(text string) string {
	return lisp(regexp.MustCompile(`[.*+?\[^$\\]`).ReplaceAllString(text, `\$0`))
}

// lisp writes a text inside the quotes of a Lisp string.
func lisp(text string) string {
	return strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\t", `\t`).Replace(text)
}

func (emacs) letter() string { return "[[:alpha:]]" }

func (d emacs) set(chars string) string { return "[" + d.inside(chars) + "]" }

// inside puts ] first and - last, where they stand for themselves.
func (emacs) inside(chars string) string {
	if chars == digits {
		return chars
	}
	var b strings.Builder
	last := ""
	for _, r := range chars {
		switch {
		case r == '-':
			last = "-"
		case invisible(r):
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteString(lisp(string(r)))
		}
	}
	return b.String() + last
}

func (emacs) group(inner string) string   { return `\\(?:` + inner + `\\)` }
func (emacs) capture(inner string) string { return `\\(` + inner + `\\)` }
func (emacs) either() string              { return `\\|` }
func (emacs) optional() string            { return "?" }
func (emacs) repeat() string              { return "*" }
func (emacs) many() string                { return "+" }
func (emacs) wordStart() string           { return `\\_<` }
func (emacs) wordEnd() string             { return `\\_>` }

func (emacs) ahead(inner string, is bool) string {
	if is {
		return inner
	}
	return ""
}

func (emacs) lineStart(blanks string) string { return "^" + blanks + "*" }
