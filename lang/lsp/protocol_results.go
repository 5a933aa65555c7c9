package lsp

import "encoding/json"

// Diagnostic is a finding as editors show it.
type Diagnostic struct {
	Range    Range               `json:"range"`
	Severity int                 `json:"severity"` // 1 error, 2 warning, 3 note
	Code     string              `json:"code,omitempty"`
	Source   string              `json:"source"`
	Message  string              `json:"message"`
	Related  []RelatedDiagnostic `json:"relatedInformation,omitempty"`
	Data     *diagnosticData     `json:"data,omitempty"`
}

// RelatedDiagnostic is another place that had a part in it.
type RelatedDiagnostic struct {
	Location Location `json:"location"`
	Message  string   `json:"message"`
}

// diagnosticData is what mends a finding.
type diagnosticData struct {
	Fixes []fixData `json:"fixes"`
}

type fixData struct {
	Title string        `json:"title"`
	Edit  WorkspaceEdit `json:"edit"`
}

type publishParams struct {
	URI         string       `json:"uri"`
	Version     *int         `json:"version,omitempty"`
	Diagnostics []Diagnostic `json:"diagnostics"`
}

// CompletionList is what may stand at a place.
type CompletionList struct {
	IsIncomplete bool             `json:"isIncomplete"`
	Items        []CompletionItem `json:"items"`
}

// CompletionItem is one thing that may.
type CompletionItem struct {
	Label         string         `json:"label"`
	Kind          int            `json:"kind"`
	Detail        string         `json:"detail,omitempty"`
	Documentation *MarkupContent `json:"documentation,omitempty"`
	SortText      string         `json:"sortText,omitempty"`
	FilterText    string         `json:"filterText,omitempty"`
	InsertFormat  int            `json:"insertTextFormat,omitempty"` // 2: a snippet
	TextEdit      *TextEdit      `json:"textEdit,omitempty"`
}

// The kinds of completion that are used.
const (
	itemFunction   = 3
	itemVariable   = 6
	itemModule     = 9
	itemUnit       = 11
	itemValue      = 12
	itemKeyword    = 14
	itemEnumMember = 20
	itemConstant   = 21
	itemEvent      = 23
)

// Hover is what is said of a place.
type Hover struct {
	Contents MarkupContent `json:"contents"`
	Range    *Range        `json:"range,omitempty"`
}

// SignatureHelp is a statement's shape and where in it one is.
type SignatureHelp struct {
	Signatures      []Signature `json:"signatures"`
	ActiveSignature int         `json:"activeSignature"`
	ActiveParameter int         `json:"activeParameter"`
}

// Signature is a statement's shape.
type Signature struct {
	Label         string         `json:"label"`
	Documentation *MarkupContent `json:"documentation,omitempty"`
	Parameters    []Parameter    `json:"parameters"`
}

// Parameter is a part of it: from where to where in the label, in UTF-16 units.
type Parameter struct {
	Label         [2]int         `json:"label"`
	Documentation *MarkupContent `json:"documentation,omitempty"`
}

// DocumentHighlight is a place where the same name stands.
type DocumentHighlight struct {
	Range Range `json:"range"`
	Kind  int   `json:"kind"` // 2 used, 3 declared
}

type prepareRenameResult struct {
	Range       Range  `json:"range"`
	Placeholder string `json:"placeholder"`
}

// DocumentSymbol is an entry of a document's outline.
type DocumentSymbol struct {
	Name           string           `json:"name"`
	Detail         string           `json:"detail,omitempty"`
	Kind           int              `json:"kind"`
	Range          Range            `json:"range"`
	SelectionRange Range            `json:"selectionRange"`
	Children       []DocumentSymbol `json:"children,omitempty"`
}

// WorkspaceSymbol is a name anywhere.
type WorkspaceSymbol struct {
	Name          string   `json:"name"`
	Kind          int      `json:"kind"`
	ContainerName string   `json:"containerName,omitempty"`
	Location      Location `json:"location"`
}

// The kinds of symbol that are used.
const (
	symbolNamespace = 3
	symbolClass     = 5
	symbolMethod    = 6
	symbolVariable  = 13
	symbolConstant  = 14
	symbolObject    = 19
	symbolEvent     = 24
)

// FoldingRange is lines that may be folded away.
type FoldingRange struct {
	StartLine int    `json:"startLine"`
	EndLine   int    `json:"endLine"`
	Kind      string `json:"kind,omitempty"`
}

// SemanticTokens is five numbers a token.
type SemanticTokens struct {
	Data []int `json:"data"`
}

// InlayHint is something written between the lines.
type InlayHint struct {
	Position    Position       `json:"position"`
	Label       string         `json:"label"`
	Tooltip     *MarkupContent `json:"tooltip,omitempty"`
	PaddingLeft bool           `json:"paddingLeft,omitempty"`
}

// CodeAction is a change offered.
type CodeAction struct {
	Title       string         `json:"title"`
	Kind        string         `json:"kind,omitempty"`
	Diagnostics []Diagnostic   `json:"diagnostics,omitempty"`
	IsPreferred bool           `json:"isPreferred,omitempty"`
	Edit        *WorkspaceEdit `json:"edit,omitempty"`
	Command     *Command       `json:"command,omitempty"`
}

// Command is something the server can be told to do.
type Command struct {
	Title     string            `json:"title"`
	Command   string            `json:"command"`
	Arguments []json.RawMessage `json:"arguments,omitempty"`
}

// DocumentLink is a place that leads to another document.
type DocumentLink struct {
	Range   Range  `json:"range"`
	Target  string `json:"target"`
	Tooltip string `json:"tooltip,omitempty"`
}

// SelectionRange is a range and the next larger one.
type SelectionRange struct {
	Range  Range           `json:"range"`
	Parent *SelectionRange `json:"parent,omitempty"`
}

// CallItem is a line, beat or cue that others wait for or that waits.
type CallItem struct {
	Name           string `json:"name"`
	Kind           int    `json:"kind"`
	Detail         string `json:"detail,omitempty"`
	URI            string `json:"uri"`
	Range          Range  `json:"range"`
	SelectionRange Range  `json:"selectionRange"`
}

type callsParams struct {
	Item CallItem `json:"item"`
}

// IncomingCall is what an item waits for.
type IncomingCall struct {
	From       CallItem `json:"from"`
	FromRanges []Range  `json:"fromRanges"`
}

// OutgoingCall is what waits for an item.
type OutgoingCall struct {
	To         CallItem `json:"to"`
	FromRanges []Range  `json:"fromRanges"`
}
