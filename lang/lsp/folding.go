package lsp

import (
	"longhand/lang/bind"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Folds is what may be folded away: sections, runs of comments, statements of
// several lines.
func (s *Snapshot) Folds() []FoldingRange {
	out := []FoldingRange{}
	f := s.File.Source
	add := func(from, to int, kind string) {
		if to > from {
			out = append(out, FoldingRange{from - 1, to - 1, kind})
		}
	}
	for _, sec := range s.File.Sections {
		if sec.Head == nil {
			continue
		}
		last := f.Pos(lineStart(sec.Head)).Line
		for _, l := range sec.Lines {
			if at := l.Span(f); at.Valid() {
				last = at.EndPos().Line
			}
		}
		add(f.Pos(lineStart(sec.Head)).Line, last, "region")
	}
	run := 0 // the line a run of comments begins in
	for i, l := range s.File.Lines {
		at := f.Pos(lineStart(l)).Line
		if span := l.Span(f); span.Valid() {
			add(at, span.EndPos().Line, "")
		}
		if isComment(l) && run == 0 {
			run = at
		}
		if run > 0 && (!isComment(l) || i+1 == len(s.File.Lines)) {
			end := at - 1
			if isComment(l) {
				end = at
			}
			add(run, end, "comment")
			run = 0
		}
	}
	return out
}

// isComment reports whether a line is a comment and nothing else.
func isComment(l *syntax.Line) bool {
	if len(l.Words()) > 0 {
		return false
	}
	for _, t := range l.Tokens {
		if t.Type == syntax.TokComment {
			return true
		}
	}
	return false
}

// Links is the files that lines name: plans that are used, and drawings.
func (s *Snapshot) Links() []DocumentLink {
	out := []DocumentLink{}
	for _, l := range s.File.Lines {
		var file *syntax.String
		switch stmt := l.Stmt.(type) {
		case *syntax.Use:
			file = stmt.File
		case *syntax.Plan:
			file = stmt.File
		}
		if file == nil || file.Value() == "" {
			continue
		}
		at := file.Span(s.File.Source)
		at.Start++
		at.End--
		name := bind.Resolve(s.File.Source.Name, file.Value())
		out = append(out, DocumentLink{s.Encoding.span(at), s.uri(name), "open " + file.Value()})
	}
	return out
}

// Selection is the ranges around a place, from the word to the document.
func (s *Snapshot) Selection(offset int) SelectionRange {
	f := s.File.Source
	all := source.Span{File: f, End: len(f.Text)}
	spans := []source.Span{all}
	if line := s.lineAt(offset); line != nil {
		if sec := line.Section; sec != nil && sec.Head != nil {
			whole := sec.Head.Span(f)
			for _, l := range sec.Lines {
				whole = whole.Join(l.Span(f))
			}
			spans = append(spans, whole)
		}
		spans = append(spans, line.Span(f))
		if t := s.token(offset); t != nil {
			spans = append(spans, s.tokenSpan(t))
		}
	}
	var out *SelectionRange
	last := all
	for i, at := range spans {
		if i > 0 && (!at.Valid() || at == last || at.Start > offset || at.End < offset || at.Start < last.Start || at.End > last.End) {
			continue
		}
		out, last = &SelectionRange{s.Encoding.span(at), out}, at
	}
	return *out
}
