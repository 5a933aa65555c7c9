package lsp

import (
	"strings"
	"unicode/utf16"

	"longhand/lang/syntax"
)

// SignatureHelp is the shape of the statement at a place and the part of it that
// comes next; nil where none is begun.
func (s *Snapshot) SignatureHelp(offset int) *SignatureHelp {
	c := s.cursor(offset)
	kind := kindOf(c.section, c.before)
	if kind == nil || c.comment {
		return nil
	}
	sig := Signature{Label: kind.Usage, Documentation: markdown(kind.Means)}
	for _, p := range topParts(kind.Usage) {
		text := kind.Usage[p[0]:p[1]]
		sig.Parameters = append(sig.Parameters, Parameter{Label: [2]int{units16(kind.Usage[:p[0]]), units16(kind.Usage[:p[1]])}, Documentation: markdownOf(text)})
	}
	next := expect(shapeOf(kind), c.before)
	active := len(sig.Parameters)
	if len(next) > 0 {
		active = next[0].top
	}
	return &SignatureHelp{Signatures: []Signature{sig}, ActiveParameter: active}
}

// topParts are the parts of the outermost level of a usage, as byte ranges.
func topParts(usage string) [][2]int {
	var out [][2]int
	deep, start := 0, -1
	for i := 0; i <= len(usage); i++ {
		end := i == len(usage)
		switch {
		case !end && usage[i] == '[':
			if deep == 0 && start >= 0 && start < i {
				out = append(out, [2]int{start, i}) // TARGET[, TARGET...]
				start = i
			}
			deep++
		case !end && usage[i] == ']':
			deep--
		}
		blank := end || usage[i] == ' ' && deep == 0
		switch {
		case blank && start >= 0:
			if usage[start:i] != "|" {
				out = append(out, [2]int{start, i})
			}
			start = -1
		case !blank && start < 0:
			start = i
		}
	}
	return out
}

func units16(s string) int { return len(utf16.Encode([]rune(s))) }

// markdownOf is what the capitals of a part stand for.
func markdownOf(part string) *MarkupContent {
	var lines []string
	for _, w := range capitals.FindAllString(part, -1) {
		if text, ok := syntax.Notation[w]; ok {
			lines = append(lines, "`"+w+"`: "+text)
		}
	}
	if len(lines) == 0 {
		return nil
	}
	return markdown(strings.Join(lines, "\n\n"))
}
