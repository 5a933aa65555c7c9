package syntax

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"longhand/lang/source"
)

// notUTF8 is the first byte of a line that is not UTF-8, wherever a word has it,
// in a text between quotes as well: an é of an older code page would be printed
// as something else on every sheet. Comments are for the writer alone.
func (p *parser) notUTF8(words []Token) *complaint {
	for _, t := range words {
		if utf8.ValidString(t.Value) {
			continue
		}
		for i, r := range t.Value {
			if _, n := utf8.DecodeRuneInString(t.Value[i:]); r == utf8.RuneError && n == 1 {
				at := t.Pos.Offset + i
				return &complaint{code: CodeSyntax, span: source.Span{File: p.file.Source, Start: at, End: at + 1},
					message: fmt.Sprintf("the byte %02X is not UTF-8; save the plan as UTF-8, and type this character anew", t.Value[i])}
			}
		}
	}
	return nil
}

// Wide reports whether the characters of the text take two bytes each, so that
// it has no lines that could be read or laid out.
func (f *File) Wide() bool {
	return strings.HasPrefix(f.Source.Text, "\xff\xfe") || strings.HasPrefix(f.Source.Text, "\xfe\xff")
}

// sixteen reports a text whose characters take two bytes each. Nothing in it can
// be read, so that this is the one thing told of it.
func (p *parser) sixteen() bool {
	if !p.file.Wide() {
		return false
	}
	p.report(&complaint{code: CodeSyntax, span: source.Span{File: p.file.Source, Start: 0, End: 2},
		message: "this file is UTF-16; a plan is UTF-8: save it anew in that encoding"})
	return true
}
