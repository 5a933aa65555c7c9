package lsp

import (
	"github.com/aymanbagabas/go-udiff"

	"longhand/lang/diag"
	"longhand/lang/source"
)

// applied is a text after a change.
func applied(e Encoding, f *source.File, c ContentChange) *source.File {
	if c.Range == nil {
		return source.NewFile(f.Name, c.Text)
	}
	start, end := e.offset(f, c.Range.Start), e.offset(f, c.Range.End)
	if end < start {
		start, end = end, start
	}
	return source.NewFile(f.Name, f.Text[:start]+c.Text+f.Text[end:])
}

// textEdits are the changes that make one text of another, of whole lines.
func textEdits(e Encoding, f *source.File, to string) []TextEdit {
	out := []TextEdit{}
	for _, d := range udiff.Lines(f.Text, to) {
		out = append(out, TextEdit{e.span(source.Span{File: f, Start: d.Start, End: d.End}), d.New})
	}
	return out
}

// workspaceEdit is a change of texts for the editor.
func (s *Snapshot) workspaceEdit(edits []diag.Edit) WorkspaceEdit {
	var order []string
	byURI := map[string][]TextEdit{}
	versions := map[string]*int{}
	for _, e := range edits {
		if !e.Span.Valid() {
			continue
		}
		uri := s.uri(e.Span.File.Name)
		if byURI[uri] == nil {
			order = append(order, uri)
			versions[uri] = s.version(e.Span.File.Name)
		}
		byURI[uri] = append(byURI[uri], TextEdit{s.Encoding.span(e.Span), e.Text})
	}
	if !s.Versions {
		return WorkspaceEdit{Changes: byURI}
	}
	var w WorkspaceEdit
	for _, uri := range order {
		w.DocumentChanges = append(w.DocumentChanges, TextDocumentEdit{VersionedDocument{uri, versions[uri]}, byURI[uri]})
	}
	return w
}
