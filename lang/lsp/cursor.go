package lsp

import (
	"sort"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// cursor is a place in a document and what stands around it.
type cursor struct {
	offset  int
	line    *syntax.Line // nil past the last line
	section string       // the word of the section it is in; "" before the first
	before  []syntax.Token
	// partial is the word, number or text that is being written: the place is in
	// it or right behind it; typed is as much of it as stands before the place.
	partial *syntax.Token
	typed   string
	comment bool // inside a comment
}

// cursor looks around a place.
func (s *Snapshot) cursor(offset int) cursor {
	offset = min(max(offset, 0), len(s.File.Source.Text))
	c := cursor{offset: offset, line: s.lineAt(offset)}
	if n := len(s.File.Sections); n > 0 && c.line == nil {
		c.section = s.File.Sections[n-1].Word
	}
	if c.line == nil {
		return c
	}
	c.section = c.line.Section.Word
	if c.line.Section.Head == c.line {
		c.section = s.sectionBefore(c.line)
	}
	for i := range c.line.Tokens {
		t := &c.line.Tokens[i]
		start, end := t.Pos.Offset, t.Pos.Offset+len(t.Value)
		if start >= offset {
			break
		}
		switch {
		case t.Type == syntax.TokComment && offset > start:
			c.comment = true
		case t.Type == syntax.TokSpace || t.Type == syntax.TokEOL || t.Type == syntax.TokComment:
		case end >= offset && written(*t) && !(t.Type == syntax.TokString && end == offset):
			c.partial, c.typed = t, t.Value[:offset-start]
		default:
			c.before = append(c.before, *t)
		}
	}
	return c
}

// written reports whether a token may be unfinished.
func written(t syntax.Token) bool { return t.Type != syntax.TokPunct && t.Type != syntax.TokIllegal }

// sectionBefore is the section that a header ends.
func (s *Snapshot) sectionBefore(head *syntax.Line) string {
	before := ""
	for _, sec := range s.File.Sections {
		if sec.Head == head {
			break
		}
		before = sec.Word
	}
	return before
}

// lineAt is the line a place is in: at the end of a line it is still in it. Nil
// past the last line's end.
func (s *Snapshot) lineAt(offset int) *syntax.Line {
	lines := s.File.Lines
	i := sort.Search(len(lines), func(i int) bool { return lineStart(lines[i]) > offset }) - 1
	if i < 0 {
		return nil
	}
	last := lines[i].Tokens[len(lines[i].Tokens)-1]
	if last.Type == syntax.TokEOL && offset >= last.Pos.Offset+len(last.Value) {
		return nil
	}
	return lines[i]
}

func lineStart(l *syntax.Line) int { return l.Tokens[0].Pos.Offset }

// token is the token a place is in or, failing that, right behind; nil for
// blanks and line ends.
func (s *Snapshot) token(offset int) *syntax.Token {
	line := s.lineAt(offset)
	if line == nil {
		return nil
	}
	var touched *syntax.Token
	for i := range line.Tokens {
		t := &line.Tokens[i]
		if t.Type == syntax.TokSpace || t.Type == syntax.TokEOL {
			continue
		}
		switch end := t.Pos.Offset + len(t.Value); {
		case t.Pos.Offset <= offset && offset < end:
			return t
		case end == offset && t.Type != syntax.TokPunct:
			touched = t
		}
	}
	return touched
}

func (s *Snapshot) tokenSpan(t *syntax.Token) source.Span { return wordSpan(s.File.Source, *t) }
