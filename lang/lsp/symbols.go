package lsp

import (
	"strings"
	"unicode"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Symbols is the outline of the document: its sections, what they declare, and
// in beats who does what.
func (s *Snapshot) Symbols() []DocumentSymbol {
	out := []DocumentSymbol{}
	for _, sec := range s.File.Sections {
		if sec.Head == nil {
			continue
		}
		head := sec.Head.Span(s.File.Source)
		whole := head
		sym := DocumentSymbol{Name: titleOf(sec), Detail: sec.Word, Kind: symbolNamespace, SelectionRange: s.Encoding.span(head)}
		if sec.Word == "beat" || sec.Word == "pickup" {
			sym.Kind = symbolEvent
		}
		for _, l := range sec.Lines {
			at := l.Span(s.File.Source)
			if !at.Valid() {
				continue
			}
			whole = whole.Join(at)
			if child, ok := s.lineSymbol(l, at); ok {
				sym.Children = append(sym.Children, child)
			}
		}
		sym.Range = s.Encoding.span(whole)
		out = append(out, sym)
	}
	return out
}

// titleOf is a section's title, or its word where it has none.
func titleOf(sec *syntax.Section) string {
	for _, t := range sec.Head.Words() {
		if t.Type == syntax.TokString {
			if title := (&syntax.String{Raw: t.Value}).Value(); title != "" {
				return title
			}
		}
	}
	return sec.Word
}

// lineSymbol is a line's entry: what it declares, or all of it.
func (s *Snapshot) lineSymbol(l *syntax.Line, at source.Span) (DocumentSymbol, bool) {
	if l.Kind == nil {
		return DocumentSymbol{}, false
	}
	sym := DocumentSymbol{Range: s.Encoding.span(at), SelectionRange: s.Encoding.span(at)}
	if l.Stmt != nil {
		if n := syntax.Declared(l.Stmt); n != nil {
			sym.Name, sym.Detail, sym.Kind = n.Text, l.Kind.Words[0], symbolKind(l.Kind.Words[0])
			sym.SelectionRange = s.Encoding.span(n.Span(s.File.Source))
			return sym, true
		}
	}
	if l.Kind.Section != "beat" && l.Kind.Section != "pickup" {
		return DocumentSymbol{}, false
	}
	sym.Name, sym.Kind = oneLine(at.Text()), symbolMethod
	return sym, true
}

func symbolKind(word string) int {
	switch word {
	case "performer", "crew":
		return symbolVariable
	case "mark":
		return symbolConstant
	case "camera", "rig", "lens", "vehicle":
		return symbolClass
	}
	return symbolObject
}

// oneLine is a statement's text with one blank where there are any.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// symbolsOf finds names in plans whose letters hold those of a query, in order.
func symbolsOf(snaps []*Snapshot, query string) []WorkspaceSymbol {
	out := []WorkspaceSymbol{}
	told := map[string]bool{}
	for _, s := range snaps {
		for _, m := range s.names().all {
			where := m.at.File.Name
			if !m.decl || !subsequence(query, m.name) || told[where+"\x00"+m.name] {
				continue
			}
			told[where+"\x00"+m.name] = true
			sym := WorkspaceSymbol{Name: m.name, Kind: symbolEvent, ContainerName: m.line.Section.Word, Location: s.location(m.at)}
			if m.space == ofThings {
				sym.Kind = symbolKind(m.line.Kind.Words[0])
				sym.ContainerName = m.line.Kind.Words[0]
			}
			out = append(out, sym)
		}
	}
	return out
}

// subsequence reports whether all letters of a query stand in a text, in order,
// whatever their case.
func subsequence(query, text string) bool {
	letters := []rune(text)
	for _, q := range query {
		i := 0
		for i < len(letters) && unicode.ToLower(letters[i]) != unicode.ToLower(q) {
			i++
		}
		if i == len(letters) {
			return false
		}
		letters = letters[i+1:]
	}
	return true
}
