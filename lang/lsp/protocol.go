package lsp

import "encoding/json"

// The structures of the protocol that the server uses, as the specification
// names them; fields it has no use for are left out.
// Source: Language Server Protocol, version 3.17.

// Position is a place in a document: a line, and units of the encoding agreed
// on, both from 0.
type Position struct {
	Line      int `json:"line"`
	Character int `json:"character"`
}

// Range is from a position to another, not included.
type Range struct {
	Start Position `json:"start"`
	End   Position `json:"end"`
}

// Location is a range of a document.
type Location struct {
	URI   string `json:"uri"`
	Range Range  `json:"range"`
}

// TextEdit replaces a range.
type TextEdit struct {
	Range   Range  `json:"range"`
	NewText string `json:"newText"`
}

// WorkspaceEdit changes documents.
type WorkspaceEdit struct {
	Changes         map[string][]TextEdit `json:"changes,omitempty"`
	DocumentChanges []TextDocumentEdit    `json:"documentChanges,omitempty"`
}

// TextDocumentEdit changes one document, of one version.
type TextDocumentEdit struct {
	TextDocument VersionedDocument `json:"textDocument"`
	Edits        []TextEdit        `json:"edits"`
}

// VersionedDocument names a document; Version is null for one that is not open.
type VersionedDocument struct {
	URI     string `json:"uri"`
	Version *int   `json:"version"`
}

// Document names a document.
type Document struct {
	URI string `json:"uri"`
}

// DocumentItem is a document as it is opened.
type DocumentItem struct {
	URI        string `json:"uri"`
	LanguageID string `json:"languageId"`
	Version    int    `json:"version"`
	Text       string `json:"text"`
}

type didOpenParams struct {
	TextDocument DocumentItem `json:"textDocument"`
}

type didChangeParams struct {
	TextDocument struct {
		URI     string `json:"uri"`
		Version int    `json:"version"`
	} `json:"textDocument"`
	ContentChanges []ContentChange `json:"contentChanges"`
}

// ContentChange replaces a range of a document, or all of it where Range is nil.
type ContentChange struct {
	Range *Range `json:"range,omitempty"`
	Text  string `json:"text"`
}

type documentParams struct {
	TextDocument Document `json:"textDocument"`
}

type didChangeFilesParams struct {
	Changes []struct {
		URI string `json:"uri"`
	} `json:"changes"`
}

type didChangeFoldersParams struct {
	Event struct {
		Added   []folder `json:"added"`
		Removed []folder `json:"removed"`
	} `json:"event"`
}

type folder struct {
	URI  string `json:"uri"`
	Name string `json:"name"`
}

type positionParams struct {
	TextDocument Document `json:"textDocument"`
	Position     Position `json:"position"`
}

type rangeParams struct {
	TextDocument Document `json:"textDocument"`
	Range        Range    `json:"range"`
}

type referenceParams struct {
	positionParams
	Context struct {
		IncludeDeclaration bool `json:"includeDeclaration"`
	} `json:"context"`
}

type renameParams struct {
	positionParams
	NewName string `json:"newName"`
}

type codeActionParams struct {
	TextDocument Document `json:"textDocument"`
	Range        Range    `json:"range"`
	Context      struct {
		Only []string `json:"only"`
	} `json:"context"`
}

type selectionRangeParams struct {
	TextDocument Document   `json:"textDocument"`
	Positions    []Position `json:"positions"`
}

type workspaceSymbolParams struct {
	Query string `json:"query"`
}

type executeCommandParams struct {
	Command   string            `json:"command"`
	Arguments []json.RawMessage `json:"arguments"`
}

type cancelParams struct {
	ID json.RawMessage `json:"id"`
}

// MarkupContent is text for people, as Markdown.
type MarkupContent struct {
	Kind  string `json:"kind"`
	Value string `json:"value"`
}

func markdown(text string) *MarkupContent { return &MarkupContent{Kind: "markdown", Value: text} }
