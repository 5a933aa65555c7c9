// Package source holds the text of plans and the places in it.
//
// Everything inside longhand speaks in byte offsets; lines, columns and the
// UTF-16 units of editors are worked out here, at the edge, and nowhere else.
// It imports nothing of the project.
package source

import (
	"sort"
	"strings"
	"unicode/utf8"
)

// File is one text, named as the user named it. It never changes once made.
type File struct {
	Name string // as given on the command line, slashes forward
	Text string

	lines []int // byte offset of the first byte of each line
}

// NewFile indexes text. Lines end with "\n"; a "\r" before it belongs to the
// line's end.
func NewFile(name, text string) *File {
	f := &File{Name: name, Text: text, lines: []int{0}}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' {
			f.lines = append(f.lines, i+1)
		}
	}
	return f
}

// Span is the half-open byte range [Start, End) of a file. The zero Span is
// "no place": it belongs to findings about a plan as a whole.
type Span struct {
	File       *File
	Start, End int
}

// Valid reports whether the span names a place in a file.
func (s Span) Valid() bool { return s.File != nil }

// Text is the source text the span covers.
func (s Span) Text() string {
	if s.File == nil {
		return ""
	}
	n := len(s.File.Text)
	start, end := clamp(s.Start, 0, n), clamp(s.End, 0, n)
	if end < start {
		end = start
	}
	return s.File.Text[start:end]
}

// Join is the smallest span that covers both; an invalid one counts for nothing.
func (s Span) Join(t Span) Span {
	switch {
	case !s.Valid():
		return t
	case !t.Valid() || s.File != t.File:
		return s
	}
	return Span{s.File, min(s.Start, t.Start), max(s.End, t.End)}
}

// Pos is a place for people: line and column from 1, columns in characters.
type Pos struct{ Line, Column int }

// Start is the position of the span's first byte.
func (s Span) StartPos() Pos { return s.pos(s.Start) }

// EndPos is the position just after the span's last byte.
func (s Span) EndPos() Pos { return s.pos(s.End) }

func (s Span) pos(offset int) Pos {
	if s.File == nil {
		return Pos{}
	}
	return s.File.Pos(offset)
}

// Lines is the number of lines, counting a last one without a line end.
func (f *File) Lines() int { return len(f.lines) }

// Pos gives the line and column of a byte offset; offsets outside the text are
// moved to its nearest end.
func (f *File) Pos(offset int) Pos {
	offset = clamp(offset, 0, len(f.Text))
	line := f.lineOf(offset)
	return Pos{line + 1, utf8.RuneCountInString(f.Text[f.lines[line]:offset]) + 1}
}

// Line is the text of a line, counted from 1, without its line end; "" if
// there is no such line.
func (f *File) Line(n int) string {
	if n < 1 || n > len(f.lines) {
		return ""
	}
	end := len(f.Text)
	if n < len(f.lines) {
		end = f.lines[n]
	}
	return strings.TrimRight(f.Text[f.lines[n-1]:end], "\r\n")
}

// LineStart is the byte offset of the first byte of a line, counted from 1.
func (f *File) LineStart(n int) int {
	return f.lines[clamp(n, 1, len(f.lines))-1]
}

// UTF16 is a place as editors count: line and UTF-16 unit, both from 0.
type UTF16 struct{ Line, Unit int }

// UTF16At converts a byte offset for an editor.
func (f *File) UTF16At(offset int) UTF16 {
	offset = clamp(offset, 0, len(f.Text))
	line := f.lineOf(offset)
	units := 0
	for _, r := range f.Text[f.lines[line]:offset] {
		units += utf16Len(r)
	}
	return UTF16{line, units}
}

// OffsetOf converts an editor's place to a byte offset; a place past the end of
// its line is the line's end.
func (f *File) OffsetOf(p UTF16) int {
	if p.Line < 0 {
		return 0
	}
	if p.Line >= len(f.lines) {
		return len(f.Text)
	}
	units, start := 0, f.lines[p.Line]
	for i, r := range f.Line(p.Line + 1) {
		if units >= p.Unit {
			return start + i
		}
		units += utf16Len(r)
	}
	return start + len(f.Line(p.Line+1))
}

func (f *File) lineOf(offset int) int {
	return sort.SearchInts(f.lines, offset+1) - 1
}

func utf16Len(r rune) int {
	if r > 0xFFFF {
		return 2
	}
	return 1
}

func clamp(v, lo, hi int) int { return max(lo, min(v, hi)) }
