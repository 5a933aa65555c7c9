package lsp

import (
	"strings"

	"longhand/lang/diag"
	"longhand/lang/source"
)

// shift says where the places of an older text are in a newer one: all that
// changed lies between the lines that both begin with and what both end with.
type shift struct {
	file   *source.File // the newer text
	prefix int          // bytes both begin with
	old    int          // where the common end begins in the older text
	new    int          // and in the newer
}

func shiftOf(old string, to *source.File) shift {
	s := shift{file: to, old: len(old), new: len(to.Text)}
	if old == to.Text {
		s.prefix = len(old)
		return s
	}
	for s.prefix < min(len(old), len(to.Text)) && old[s.prefix] == to.Text[s.prefix] {
		s.prefix++
	}
	s.prefix = strings.LastIndexByte(old[:s.prefix], '\n') + 1
	for s.old > s.prefix && s.new > s.prefix && old[s.old-1] == to.Text[s.new-1] {
		s.old--
		s.new--
	}
	return s
}

// forward is where a span of the older text is now; false if it was changed.
func (s shift) forward(at source.Span) (source.Span, bool) {
	switch {
	case at.End <= s.prefix:
		return source.Span{File: s.file, Start: at.Start, End: at.End}, true
	case at.Start >= s.old:
		d := s.new - s.old
		return source.Span{File: s.file, Start: at.Start + d, End: at.End + d}, true
	}
	return source.Span{}, false
}

// shifts are those of all files of a plan, by name.
type shifts map[string]shift

func (m shifts) forward(at source.Span) (source.Span, bool) {
	if !at.Valid() {
		return at, true
	}
	s, ok := m[at.File.Name]
	if !ok {
		return source.Span{}, false
	}
	return s.forward(at)
}

// finding is a finding about the older text as one about the newer; false if the
// text it is about has changed.
func (m shifts) finding(d diag.Diagnostic) (diag.Diagnostic, bool) {
	var ok bool
	if d.Span, ok = m.forward(d.Span); !ok {
		return d, false
	}
	related, fixes := d.Related, d.Fixes
	d.Related, d.Fixes = nil, nil
	for _, r := range related {
		if r.Span, ok = m.forward(r.Span); ok {
			d.Related = append(d.Related, r)
		}
	}
	for _, f := range fixes {
		edits := make([]diag.Edit, 0, len(f.Edits))
		for _, e := range f.Edits {
			if e.Span, ok = m.forward(e.Span); ok {
				edits = append(edits, e)
			}
		}
		if len(edits) == len(f.Edits) {
			d.Fixes = append(d.Fixes, diag.Fix{Title: f.Title, Edits: edits})
		}
	}
	return d, true
}
