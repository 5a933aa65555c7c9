package lsp

import (
	"unicode/utf8"

	"longhand/lang/source"
)

// Encoding is how an editor counts along a line.
type Encoding string

// The encodings the server speaks; every client speaks UTF-16.
const (
	UTF8  Encoding = "utf-8"
	UTF16 Encoding = "utf-16"
)

// choose is the encoding to use with a client that offers some.
func choose(offered []string) Encoding {
	for _, o := range offered {
		if e := Encoding(o); e == UTF8 || e == UTF16 {
			return e
		}
	}
	return UTF16
}

// position converts a byte offset for the editor.
func (e Encoding) position(f *source.File, offset int) Position {
	if e == UTF8 {
		line := f.Pos(offset).Line
		return Position{line - 1, min(max(offset, 0), len(f.Text)) - f.LineStart(line)}
	}
	at := f.UTF16At(offset)
	return Position{at.Line, at.Unit}
}

// offset converts an editor's place to a byte offset: at the line's end if it
// lies past that, before a character if it lies inside of it.
func (e Encoding) offset(f *source.File, p Position) int {
	if e != UTF8 {
		at := source.UTF16{Line: p.Line, Unit: max(p.Character, 0)}
		o := f.OffsetOf(at)
		if back := f.UTF16At(o); back.Line == at.Line && back.Unit > at.Unit && o > 0 {
			_, n := utf8.DecodeLastRuneInString(f.Text[:o]) // between the halves of a pair
			o -= n
		}
		return o
	}
	switch {
	case p.Line < 0:
		return 0
	case p.Line >= f.Lines():
		return len(f.Text)
	}
	start, line := f.LineStart(p.Line+1), f.Line(p.Line+1)
	at := min(max(p.Character, 0), len(line))
	for at > 0 && at < len(line) && !utf8.RuneStart(line[at]) {
		at--
	}
	return start + at
}

// span converts a span for the editor.
func (e Encoding) span(s source.Span) Range {
	if s.File == nil {
		return Range{}
	}
	return Range{e.position(s.File, s.Start), e.position(s.File, s.End)}
}
