package lsp

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

// The kinds of change offered.
const (
	kindQuickFix = "quickfix"
	kindAccept   = "quickfix.accept" // a line that accepts a finding
)

// Actions is what can be done about the findings that touch a range: what mends
// them, a line that accepts them with a reason to fill in, and their explanation.
func (s *Snapshot) Actions(start, end int, only []string) []CodeAction {
	out := []CodeAction{}
	add := func(a CodeAction) {
		if len(only) > 0 && !slices.ContainsFunc(only, func(o string) bool { return a.Kind == o || strings.HasPrefix(a.Kind, o+".") }) {
			return
		}
		out = append(out, a)
	}
	found := s.found(start, end)
	for _, d := range found {
		shown := []Diagnostic{s.diagnostic(d)}
		for i, f := range d.Fixes {
			edit := s.workspaceEdit(f.Edits)
			add(CodeAction{Title: f.Title, Kind: kindQuickFix, Diagnostics: shown, IsPreferred: i == 0 && len(d.Fixes) == 1, Edit: &edit})
		}
	}
	for _, d := range found {
		shown := []Diagnostic{s.diagnostic(d)}
		for _, a := range s.acceptances(d) {
			edit := s.workspaceEdit([]diag.Edit{a.edit})
			add(CodeAction{Title: a.title, Kind: kindAccept, Diagnostics: shown, Edit: &edit})
		}
	}
	told := map[diag.Code]bool{}
	for _, d := range found {
		if told[d.Code] || aboutFinding(d.Code) == "" {
			continue
		}
		told[d.Code] = true
		argument, _ := json.Marshal(d.Code) // a string: it cannot fail
		add(CodeAction{Title: fmt.Sprintf("explain %s", d.Code), Kind: kindQuickFix, Diagnostics: []Diagnostic{s.diagnostic(d)},
			Command: &Command{fmt.Sprintf("explain %s", d.Code), commandExplain, []json.RawMessage{argument}}})
	}
	return out
}

// acceptance is a line that accepts a finding. Its reason is left empty, which is
// a mistake until somebody fills it in.
type acceptance struct {
	title string
	edit  diag.Edit
}

// acceptances are the lines that would accept a finding of the take; none for
// what is wrong with the text.
func (s *Snapshot) acceptances(d diag.Diagnostic) []acceptance {
	if ofText[d.Code] || d.Code == "idle-allow" || d.Code == "internal" {
		return nil
	}
	at, ok := s.endOfBeat(d)
	if !ok {
		return nil
	}
	during := s.during(d)
	var out []acceptance
	line := func(title, text string) {
		out = append(out, acceptance{title, diag.Edit{Span: at, Text: "\n  " + text + during + ` because ""`}})
	}
	if d.Subject != "" && d.Camera != "" && paintable[d.Code] {
		line(fmt.Sprintf("paint out %s from %s, with a reason", d.Subject, d.Camera), fmt.Sprintf("paint out %s from %s", d.Subject, d.Camera))
	}
	text := "allow " + string(d.Code)
	if d.Subject != "" {
		text += " " + d.Subject
	}
	if d.Camera != "" {
		text += " in " + d.Camera
	}
	line(fmt.Sprintf("allow %s, with a reason", d.Code), text)
	return out
}

// during names the beats that a finding happens in; "" where it is all of them,
// or none that is known.
func (s *Snapshot) during(d diag.Diagnostic) string {
	var in []string
	all := true
	if s.Whole != nil && len(d.Frames) > 0 {
		t := s.Whole.Tracks
		for _, span := range t.Clock.Spans() {
			from, to := t.Rate.From(span.From), t.Rate.From(span.To)-1
			meets := slices.ContainsFunc(d.Frames, func(f diag.Frames) bool { return f.From <= to && from <= f.To })
			switch {
			case meets && span.Beat != nil:
				in = append(in, syntax.Quote(span.Beat.Title))
			case from <= to:
				all = false
			}
		}
	} else if d.Beat != "" {
		in, all = []string{syntax.Quote(d.Beat)}, false
	}
	if len(in) == 0 || all {
		return ""
	}
	return " during " + strings.Join(in, ", ")
}

// paintable are the findings that a `paint out` answers: what is in frame.
var paintable = map[diag.Code]bool{
	"gear-in-shot": true, "crew-in-shot": true, "camera-in-shot": true, "left-in-shot": true,
	"hide-seen": true, "mirror-shows": true, "modern-in-shot": true,
}

// endOfBeat is where a line is added to the beat or pickup of a finding: the one
// it is written in, or the one it happens in.
func (s *Snapshot) endOfBeat(d diag.Diagnostic) (source.Span, bool) {
	var by, home *syntax.Section
	file := s.Files[0]
	for _, sec := range file.Sections {
		if sec.Word != "beat" && sec.Word != "pickup" {
			continue
		}
		end := len(file.Source.Text)
		if len(sec.Lines) > 0 {
			last := sec.Lines[len(sec.Lines)-1].Tokens
			end = last[len(last)-1].Pos.Offset + len(last[len(last)-1].Value)
		}
		if d.Span.Valid() && d.Span.File.Name == file.Source.Name && lineStart(sec.Head) <= d.Span.Start && d.Span.Start < end {
			home = sec
		}
		if d.Beat != "" && titleOf(sec) == d.Beat {
			by = sec
		}
	}
	sec := home
	if sec == nil || sec.Word == "beat" && by != nil {
		sec = by
	}
	if sec == nil {
		return source.Span{}, false
	}
	last := sec.Head.Span(file.Source)
	for _, l := range sec.Lines {
		if at := l.Span(file.Source); at.Valid() {
			last = at
			last.End = lineEnd(l)
		}
	}
	return source.Span{File: file.Source, Start: last.End, End: last.End}, true
}

// lineEnd is where a line ends, its comment included and its line end not.
func lineEnd(l *syntax.Line) int {
	end := lineStart(l)
	for _, t := range l.Tokens {
		if t.Type != syntax.TokEOL && t.Type != syntax.TokSpace {
			end = t.Pos.Offset + len(t.Value)
		}
	}
	return end
}
