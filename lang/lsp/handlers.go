package lsp

import (
	"context"
	"encoding/json"
	"strings"

	"github.com/sourcegraph/jsonrpc2"

	"longhand/lang/compile"
	"longhand/lang/diag"
)

// handler decodes a request, with the server locked, and returns its work, which
// is done without.
type handler func(s *server, req *jsonrpc2.Request) (func(context.Context) (any, error), error)

func handlers() map[string]handler {
	return map[string]handler{
		"textDocument/completion":           at(func(s *Snapshot, o int) (any, error) { return s.Completion(o), nil }),
		"textDocument/hover":                at(func(s *Snapshot, o int) (any, error) { return orNull(s.Hover(o)), nil }),
		"textDocument/signatureHelp":        at(func(s *Snapshot, o int) (any, error) { return orNull(s.SignatureHelp(o)), nil }),
		"textDocument/definition":           at(func(s *Snapshot, o int) (any, error) { return s.Definition(o), nil }),
		"textDocument/documentHighlight":    at(func(s *Snapshot, o int) (any, error) { return s.Highlights(o), nil }),
		"textDocument/prepareRename":        at(func(s *Snapshot, o int) (any, error) { return s.PrepareRename(o) }),
		"textDocument/prepareCallHierarchy": at(func(s *Snapshot, o int) (any, error) { return s.CallItems(o), nil }),
		"textDocument/references": on(func(p referenceParams) string { return p.TextDocument.URI }, func(s *Snapshot, p referenceParams) (any, error) {
			return s.References(s.place(p.Position), p.Context.IncludeDeclaration), nil
		}),
		"textDocument/rename": on(func(p renameParams) string { return p.TextDocument.URI }, func(s *Snapshot, p renameParams) (any, error) {
			return s.Rename(s.place(p.Position), p.NewName)
		}),
		"textDocument/documentSymbol": on(documentOf, func(s *Snapshot, _ documentParams) (any, error) { return s.Symbols(), nil }),
		"textDocument/foldingRange":   on(documentOf, func(s *Snapshot, _ documentParams) (any, error) { return s.Folds(), nil }),
		"textDocument/formatting":     on(documentOf, func(s *Snapshot, _ documentParams) (any, error) { return s.Format(), nil }),
		"textDocument/documentLink":   on(documentOf, func(s *Snapshot, _ documentParams) (any, error) { return s.Links(), nil }),
		"textDocument/semanticTokens/full": on(documentOf, func(s *Snapshot, _ documentParams) (any, error) {
			return SemanticTokens{s.Tokens()}, nil
		}),
		"textDocument/rangeFormatting": on(rangeOf, func(s *Snapshot, p rangeParams) (any, error) {
			return s.FormatRange(s.place(p.Range.Start), s.place(p.Range.End)), nil
		}),
		"textDocument/inlayHint": on(rangeOf, func(s *Snapshot, p rangeParams) (any, error) {
			return s.Hints(s.place(p.Range.Start), s.place(p.Range.End)), nil
		}),
		"textDocument/codeAction": on(func(p codeActionParams) string { return p.TextDocument.URI }, func(s *Snapshot, p codeActionParams) (any, error) {
			return s.Actions(s.place(p.Range.Start), s.place(p.Range.End), p.Context.Only), nil
		}),
		"textDocument/selectionRange": on(func(p selectionRangeParams) string { return p.TextDocument.URI }, func(s *Snapshot, p selectionRangeParams) (any, error) {
			out := []SelectionRange{}
			for _, at := range p.Positions {
				out = append(out, s.Selection(s.place(at)))
			}
			return out, nil
		}),
		"callHierarchy/incomingCalls": on(callOf, func(s *Snapshot, p callsParams) (any, error) {
			return s.WaitsFor(s.place(p.Item.SelectionRange.Start)), nil
		}),
		"callHierarchy/outgoingCalls": on(callOf, func(s *Snapshot, p callsParams) (any, error) {
			return s.Waiting(s.place(p.Item.SelectionRange.Start)), nil
		}),
		"workspace/symbol":         workspaceSymbol,
		"workspace/executeCommand": execute,
	}
}

func documentOf(p documentParams) string { return p.TextDocument.URI }
func rangeOf(p rangeParams) string       { return p.TextDocument.URI }
func callOf(p callsParams) string        { return p.Item.URI }

// on makes a handler about a document.
func on[P any](uri func(P) string, f func(*Snapshot, P) (any, error)) handler {
	return func(s *server, req *jsonrpc2.Request) (func(context.Context) (any, error), error) {
		p, err := decode[P](req)
		if err != nil {
			return nil, err
		}
		snap := s.work.snapshot(nameOf(uri(p)))
		if snap == nil {
			return nil, failed("%s is not open", uri(p))
		}
		s.dress(snap)
		return func(context.Context) (any, error) { return f(snap, p) }, nil
	}
}

// at makes a handler about a place in a document.
func at(f func(s *Snapshot, offset int) (any, error)) handler {
	return on(func(p positionParams) string { return p.TextDocument.URI }, func(s *Snapshot, p positionParams) (any, error) {
		return f(s, s.place(p.Position))
	})
}

func (s *Snapshot) place(p Position) int { return s.Encoding.offset(s.File.Source, p) }

// orNull keeps a nil pointer from being an answer that is not null.
func orNull[T any](p *T) any {
	if p == nil {
		return nil
	}
	return p
}

func workspaceSymbol(s *server, req *jsonrpc2.Request) (func(context.Context) (any, error), error) {
	p, err := decode[workspaceSymbolParams](req)
	if err != nil {
		return nil, err
	}
	var snaps []*Snapshot
	for _, root := range s.work.order() {
		if b := s.work.plans[root].bound; b != nil && len(b.Files) > 0 {
			snaps = append(snaps, s.dress(&Snapshot{Files: b.Files, Plan: b.Plan}))
		}
	}
	return func(context.Context) (any, error) { return symbolsOf(snaps, p.Query), nil }, nil
}

// The commands the server can be told.
const (
	commandExplain = "longhand.explain" // CODE: says what a finding means
	commandWaits   = "longhand.waits"   // URI, position: the places of what waits for the line there
)

func execute(s *server, req *jsonrpc2.Request) (func(context.Context) (any, error), error) {
	p, err := decode[executeCommandParams](req)
	if err != nil {
		return nil, err
	}
	switch p.Command {
	case commandExplain:
		var code string
		if len(p.Arguments) != 1 || json.Unmarshal(p.Arguments[0], &code) != nil {
			return nil, failed("%s takes the code of a finding", commandExplain)
		}
		e, ok := compile.Explained(diag.Code(code))
		if !ok {
			return nil, failed("there is no finding %q", code)
		}
		text := string(e.Code) + ": " + e.Title + "\n\n" + strings.TrimSpace(e.Explain)
		s.post(message{method: "window/showMessage", params: object{"type": 3, "message": text}})
		return given(text), nil
	case commandWaits:
		var where positionParams
		if len(p.Arguments) != 1 || json.Unmarshal(p.Arguments[0], &where) != nil {
			return nil, failed("%s takes a document and a position", commandWaits)
		}
		snap := s.work.snapshot(nameOf(where.TextDocument.URI))
		if snap == nil {
			return nil, failed("%s is not open", where.TextDocument.URI)
		}
		s.dress(snap)
		return func(context.Context) (any, error) {
			out := []Location{}
			for _, c := range snap.Waiting(snap.place(where.Position)) {
				out = append(out, Location{c.To.URI, c.To.SelectionRange})
			}
			return out, nil
		}, nil
	}
	return nil, failed("there is no command %q", p.Command)
}
