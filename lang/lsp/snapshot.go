package lsp

import (
	"context"
	"sync"

	"longhand/lang/bind"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Snapshot is a document and the plan it belongs to, at one version of all their
// texts. It never changes; every answer is a function of it.
type Snapshot struct {
	File  *syntax.File   // the document
	Files []*syntax.File // of the plan it belongs to, the main file first
	Plan  *plan.Plan     // of Files, with as much in it as could be understood
	// Findings are about the text as it is; those about the clock, the moves and
	// the lenses are left out where the lines they are about have changed since
	// they were found.
	Findings []diag.Diagnostic
	// Whole is the last result that everything was computed for, of this text or
	// an older one; nil if there is none. Places in it are to be shifted.
	Whole *compile.Result

	Encoding Encoding
	Snippets bool // the editor can step through the gaps of a snippet
	Related  bool // the editor shows related places
	Versions bool // the editor takes changes with the documents' versions

	shifts  shifts
	uri     func(name string) string
	version func(name string) *int
	names   func() *names           // of Files
	others  func() [][]*syntax.File // the files of every other plan there is
}

// NewSnapshot is the snapshot of a plan that was compiled, seen from one of its
// files; nil if it has no such file.
func NewSnapshot(r *compile.Result, name string) *Snapshot {
	s := &Snapshot{Files: r.Files, Plan: r.Plan, Findings: r.Findings, Encoding: UTF16}
	if r.Tracks != nil {
		s.Whole = r
	}
	for _, f := range r.Files {
		if f.Source.Name == name {
			s.File = f
		}
	}
	if s.File == nil {
		return nil
	}
	s.ready()
	return s
}

// ready fills in what follows from the rest.
func (s *Snapshot) ready() {
	if s.uri == nil {
		s.uri = uriOf
	}
	if s.version == nil {
		s.version = func(string) *int { return nil }
	}
	s.shifts = shiftsBetween(s.Whole, s.Files)
	if s.others == nil {
		s.others = func() [][]*syntax.File { return nil }
	}
	if s.names == nil {
		s.names = sync.OnceValue(func() *names { return namesOf(s.Files) })
	}
}

// shiftsBetween is the way from the texts of a result to newer ones.
func shiftsBetween(r *compile.Result, files []*syntax.File) shifts {
	m := shifts{}
	if r == nil {
		return m
	}
	now := map[string]*source.File{}
	for _, f := range files {
		now[f.Source.Name] = f.Source
	}
	for _, f := range r.Files {
		if to := now[f.Source.Name]; to != nil {
			m[f.Source.Name] = shiftOf(f.Source.Text, to)
		}
	}
	return m
}

// textOnly compiles a text as far as its names: that of a plan, or of somebody's
// set, kit or people, of which only the words can be checked, since what else it
// needs is in the plans that use it. Lines of an older result are not read again.
func textOnly(read compile.Read, name string, isPlan bool, before *compile.Result) (*compile.Result, error) {
	if !isPlan {
		text, err := read(name)
		if err != nil {
			return nil, err
		}
		var known []*syntax.File
		if before != nil {
			known = before.Files
		}
		files, _ := bind.Load(func(n string) (string, error) {
			if n == name {
				return text, nil
			}
			return read(n)
		}, name, known...)
		_, bag := syntax.Reparse(files[0], files[0].Source) // of this file alone
		p, _ := bind.Bind(files)
		return &compile.Result{Files: files, Plan: p, Findings: bag.Sorted(), Stopped: true}, nil
	}
	return compile.Compile(context.Background(), read, name, compile.Options{UpTo: &bound, Before: before})
}

// location is a span for the editor.
func (s *Snapshot) location(at source.Span) Location {
	if at.File == nil {
		return Location{URI: s.uri(s.Files[0].Source.Name)}
	}
	return Location{URI: s.uri(at.File.Name), Range: s.Encoding.span(at)}
}

// span is a span of this document.
func (s *Snapshot) span(start, end int) source.Span {
	return source.Span{File: s.File.Source, Start: start, End: end}
}
