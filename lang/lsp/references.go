package lsp

import (
	"path"
	"slices"

	"longhand/lang/bind"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// mention is the name at a place; nil if none is there.
func (s *Snapshot) mention(offset int) *mention { return s.names().at(s.File.Source.Name, offset) }

// Definition is where what stands at a place is declared: a thing, a cue, a
// beat, a line that is waited for, a file that is used.
func (s *Snapshot) Definition(offset int) []Location {
	out := []Location{}
	if m := s.mention(offset); m != nil {
		if d := s.names().decls[key{m.space, m.name}]; d != nil {
			return append(out, s.location(d.at))
		}
		return out
	}
	if use, name := s.useAt(offset); use != nil {
		for _, f := range s.Files {
			if f.Source.Name == name {
				return append(out, s.location(source.Span{File: f.Source}))
			}
		}
		return out
	}
	if say := s.sayingAt(offset); say.Valid() {
		out = append(out, s.location(say))
	}
	return out
}

// useAt is the `use` line at a place, and the file it names.
func (s *Snapshot) useAt(offset int) (*syntax.Use, string) {
	line := s.lineAt(offset)
	if line == nil {
		return nil, ""
	}
	use, ok := line.Stmt.(*syntax.Use)
	if !ok {
		return nil, ""
	}
	return use, bind.Resolve(s.File.Source.Name, use.File.Value())
}

// sayingAt is the line that the words at a place are waited for of: the text
// after `says` in a cue.
func (s *Snapshot) sayingAt(offset int) source.Span {
	t := s.token(offset)
	if t == nil || t.Type != syntax.TokString || s.Plan == nil {
		return source.Span{}
	}
	for _, e := range s.events() {
		if e.Kind != plan.Says || e.Span.File != s.File.Source || t.Pos.Offset < e.Span.Start || t.Pos.Offset >= e.Span.End {
			continue
		}
		for _, a := range s.Plan.Actions {
			if say, ok := a.Deed.(*plan.Say); ok && a.Subject == e.Subject && holds(say.Text, e.Text) {
				return a.Span
			}
		}
	}
	return source.Span{}
}

// events are all events that lines and beats of the plan wait for.
func (s *Snapshot) events() []*plan.Event {
	var out []*plan.Event
	add := func(ms ...*plan.Moment) {
		for _, m := range ms {
			if m != nil && m.Event != nil {
				out = append(out, m.Event)
			}
		}
	}
	for _, b := range s.Plan.Beats {
		add(b.Start)
	}
	for _, a := range s.Plan.Actions {
		add(a.Timing.Start, a.Timing.By, a.Timing.Until)
	}
	return out
}

// References is every place where the name at a place stands.
func (s *Snapshot) References(offset int, declaration bool) []Location {
	out := []Location{}
	m := s.mention(offset)
	if m == nil {
		return out
	}
	for _, o := range s.mentions(m) {
		if declaration || !o.decl {
			out = append(out, s.location(o.at))
		}
	}
	return out
}

// plansWith are the names of every plan that has the file in which a name is
// declared, this plan's first.
func (s *Snapshot) plansWith(m *mention) []*names {
	out := []*names{s.names()}
	d := s.names().decls[key{m.space, m.name}]
	if d == nil {
		return out
	}
	for _, files := range s.others() {
		if slices.ContainsFunc(files, func(f *syntax.File) bool { return f.Source.Name == d.at.File.Name }) {
			out = append(out, namesOf(files))
		}
	}
	return out
}

// mentions are those of a name, in all plans that it is a name of.
func (s *Snapshot) mentions(m *mention) []mention {
	type place struct {
		file  string
		start int
	}
	var out []mention
	told := map[place]bool{}
	for _, n := range s.plansWith(m) {
		for _, o := range n.same(key{m.space, m.name}) {
			if at := (place{o.at.File.Name, o.at.Start}); !told[at] {
				told[at] = true
				out = append(out, o)
			}
		}
	}
	return out
}

// Highlights is every place of the document where the name at a place stands.
func (s *Snapshot) Highlights(offset int) []DocumentHighlight {
	out := []DocumentHighlight{}
	m := s.mention(offset)
	if m == nil {
		return out
	}
	for _, o := range s.names().same(key{m.space, m.name}) {
		if o.at.File.Name != s.File.Source.Name {
			continue
		}
		kind := 2
		if o.decl {
			kind = 3
		}
		out = append(out, DocumentHighlight{s.Encoding.span(o.at), kind})
	}
	return out
}

// PrepareRename says what would be renamed at a place.
func (s *Snapshot) PrepareRename(offset int) (*prepareRenameResult, error) {
	m := s.mention(offset)
	if m == nil {
		return nil, failed("there is no name here to change")
	}
	if s.names().decls[key{m.space, m.name}] == nil {
		return nil, failed("`%s` is declared nowhere", m.name)
	}
	return &prepareRenameResult{s.Encoding.span(m.at), m.at.Text()}, nil
}

// Rename gives what the name at a place stands for another name, in all files of
// all plans that the document belongs to.
func (s *Snapshot) Rename(offset int, to string) (*WorkspaceEdit, error) {
	if _, err := s.PrepareRename(offset); err != nil {
		return nil, err
	}
	m := s.mention(offset)
	text := to
	if m.space == ofTitles {
		text = syntax.Quote(to)
		text = text[1 : len(text)-1]
	} else if err := s.goodName(to); err != nil {
		return nil, err
	}
	for _, n := range s.plansWith(m) {
		if d := n.decls[key{m.space, to}]; d != nil && to != m.name {
			return nil, failed("there is something called `%s` already, in %s", to, path.Base(d.at.File.Name))
		}
	}
	var edits []diag.Edit
	for _, o := range s.mentions(m) {
		edits = append(edits, diag.Edit{Span: o.at, Text: text})
	}
	w := s.workspaceEdit(edits)
	return &w, nil
}

// goodName says why a text can be no name.
func (s *Snapshot) goodName(name string) error {
	tokens := syntax.Lex("", name)
	for _, w := range syntax.ReservedWords() {
		if w == name {
			return failed("`%s` is a word of the language and cannot be a name", name)
		}
	}
	if len(tokens) != 1 || !syntax.IsNameToken(tokens[0]) {
		return failed("`%s` cannot be a name: a name is a letter, then letters, digits and hyphens between them", name)
	}
	return nil
}
