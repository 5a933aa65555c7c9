package lsp

import (
	"context"
	"slices"
	"sort"

	"github.com/sourcegraph/jsonrpc2"
)

type initializeParams struct {
	RootURI          string   `json:"rootUri"`
	WorkspaceFolders []folder `json:"workspaceFolders"`
	Capabilities     struct {
		General struct {
			PositionEncodings []string `json:"positionEncodings"`
		} `json:"general"`
		Workspace struct {
			WorkspaceEdit struct {
				DocumentChanges bool `json:"documentChanges"`
			} `json:"workspaceEdit"`
			InlayHint struct {
				RefreshSupport bool `json:"refreshSupport"`
			} `json:"inlayHint"`
			DidChangeWatchedFiles struct {
				DynamicRegistration bool `json:"dynamicRegistration"`
			} `json:"didChangeWatchedFiles"`
		} `json:"workspace"`
		TextDocument struct {
			Completion struct {
				CompletionItem struct {
					SnippetSupport bool `json:"snippetSupport"`
				} `json:"completionItem"`
			} `json:"completion"`
			PublishDiagnostics struct {
				RelatedInformation bool `json:"relatedInformation"`
			} `json:"publishDiagnostics"`
		} `json:"textDocument"`
	} `json:"capabilities"`
}

type object = map[string]any

// initialize is the answer to the editor's first request.
func (s *server) initialize(req *jsonrpc2.Request) (any, error) {
	p, err := decode[initializeParams](req)
	if err != nil {
		return nil, err
	}
	if s.begun {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: "the server is initialized already"}
	}
	s.begun = true
	c := p.Capabilities
	s.client = client{
		encoding: choose(c.General.PositionEncodings),
		snippets: c.TextDocument.Completion.CompletionItem.SnippetSupport,
		related:  c.TextDocument.PublishDiagnostics.RelatedInformation,
		versions: c.Workspace.WorkspaceEdit.DocumentChanges,
		refresh:  c.Workspace.InlayHint.RefreshSupport,
		watches:  c.Workspace.DidChangeWatchedFiles.DynamicRegistration,
	}
	for _, f := range p.WorkspaceFolders {
		s.work.folders = append(s.work.folders, nameOf(f.URI))
	}
	if len(s.work.folders) == 0 && p.RootURI != "" {
		s.work.folders = []string{nameOf(p.RootURI)}
	}
	return object{
		"serverInfo":   object{"name": "longhand", "version": s.options.Version},
		"capabilities": capabilities(s.client.encoding),
	}, nil
}

// initialized asks the editor to tell of plans that change outside of it.
func (s *server) initialized() {
	if !s.client.watches {
		return
	}
	s.post(message{method: "client/registerCapability", request: true, params: object{"registrations": []object{{
		"id": "plans", "method": "workspace/didChangeWatchedFiles",
		"registerOptions": object{"watchers": []object{{"globPattern": "**/*.{take,svg,dxf}"}}},
	}}}})
}

func capabilities(e Encoding) object {
	return object{
		"positionEncoding":                e,
		"textDocumentSync":                object{"openClose": true, "change": 2, "save": object{}},
		"completionProvider":              object{"triggerCharacters": []string{" ", "\"", ","}},
		"hoverProvider":                   true,
		"signatureHelpProvider":           object{"triggerCharacters": []string{" ", ","}},
		"definitionProvider":              true,
		"referencesProvider":              true,
		"documentHighlightProvider":       true,
		"renameProvider":                  object{"prepareProvider": true},
		"documentSymbolProvider":          true,
		"workspaceSymbolProvider":         true,
		"foldingRangeProvider":            true,
		"documentFormattingProvider":      true,
		"documentRangeFormattingProvider": true,
		"semanticTokensProvider":          object{"legend": object{"tokenTypes": tokenTypes, "tokenModifiers": tokenModifiers}, "full": true},
		"inlayHintProvider":               true,
		"codeActionProvider":              object{"codeActionKinds": []string{kindQuickFix, kindAccept}},
		"documentLinkProvider":            object{},
		"callHierarchyProvider":           true,
		"selectionRangeProvider":          true,
		"executeCommandProvider":          object{"commands": []string{commandExplain, commandWaits}},
		"workspace":                       object{"workspaceFolders": object{"supported": true, "changeNotifications": true}},
	}
}

// dress gives a snapshot what the editor can do.
func (s *server) dress(snap *Snapshot) *Snapshot {
	c := s.client
	snap.Encoding, snap.Snippets, snap.Related, snap.Versions = c.encoding, c.snippets, c.related, c.versions
	if snap.uri == nil {
		docs := map[string]*document{}
		for n, d := range s.work.docs {
			docs[n] = d
		}
		snap.uri = func(n string) string {
			if d := docs[n]; d != nil {
				return d.uri
			}
			return uriOf(n)
		}
		snap.version = func(n string) *int {
			if d := docs[n]; d != nil {
				return &d.version
			}
			return nil
		}
	}
	snap.ready()
	return snap
}

// prepare decodes a request and takes what it needs of the texts as they are
// now; what it returns does the work.
func (s *server) prepare(req *jsonrpc2.Request) (func(context.Context) (any, error), error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	switch {
	case req.Method == "initialize":
		result, err := s.initialize(req)
		return given(result), err
	case !s.begun:
		return nil, &jsonrpc2.Error{Code: codeNotBegun, Message: "the server is not initialized"}
	case s.down:
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeInvalidRequest, Message: "the server is shut down"}
	case req.Method == "shutdown":
		s.down = true
		for _, p := range s.work.plans {
			p.stop()
		}
		return given(nil), nil
	}
	h := s.handler[req.Method]
	if h == nil {
		return nil, &jsonrpc2.Error{Code: jsonrpc2.CodeMethodNotFound, Message: "there is no method " + req.Method}
	}
	return h(s, req)
}

func given(result any) func(context.Context) (any, error) {
	return func(context.Context) (any, error) { return result, nil }
}

func sortedKeys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	sort.Strings(out)
	return slices.Clip(out)
}
