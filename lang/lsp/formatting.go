package lsp

import (
	"longhand/lang/format"
)

// Format is the changes that put the document in the standard form.
func (s *Snapshot) Format() []TextEdit {
	return textEdits(s.Encoding, s.File.Source, string(format.File(s.File)))
}

// FormatRange is those of them that touch the lines of a range.
func (s *Snapshot) FormatRange(start, end int) []TextEdit {
	f := s.File.Source
	first, last := f.Pos(start).Line-1, f.Pos(end).Line-1
	if end > start && f.LineStart(last+1) == end {
		last-- // a range up to the beginning of a line is without it
	}
	out := []TextEdit{}
	for _, e := range s.Format() {
		from, to := e.Range.Start.Line, e.Range.End.Line
		if e.Range.End.Character == 0 && to > from {
			to--
		}
		if from >= first && to <= last {
			out = append(out, e)
		}
	}
	return out
}
