package lsp

import (
	"context"
	"encoding/json"
	"io"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/require"

	"longhand/lang/source"
)

// editor is the other end of the protocol: it keeps documents, as an editor
// does, and what the server publishes of them.
type editor struct {
	t      testing.TB
	server *server
	conn   *jsonrpc2.Conn
	ended  chan error
	texts  map[string]*source.File
	vers   map[string]int
	enc    Encoding

	mu    sync.Mutex
	diags map[string]publishParams
	told  *sync.Cond // of new diagnostics
	shown []string   // by window/showMessage
}

func (e *editor) Handle(_ context.Context, _ *jsonrpc2.Conn, req *jsonrpc2.Request) {
	e.mu.Lock()
	defer e.mu.Unlock()
	switch req.Method {
	case "textDocument/publishDiagnostics":
		var p publishParams
		if json.Unmarshal(*req.Params, &p) == nil {
			e.diags[p.URI] = p
			e.told.Broadcast()
		}
	case "window/showMessage":
		var p struct{ Message string }
		if json.Unmarshal(*req.Params, &p) == nil {
			e.shown = append(e.shown, p.Message)
		}
	}
}

// edit starts a server and shakes hands with it.
func edit(t testing.TB, encodings []string, folders ...string) *editor {
	t.Helper()
	toServer, fromEditor := io.Pipe()
	toEditor, fromServer := io.Pipe()
	ctx, cancel := context.WithCancel(context.Background())
	e := &editor{
		t: t, ended: make(chan error, 1), texts: map[string]*source.File{}, vers: map[string]int{},
		diags: map[string]publishParams{}, enc: choose(encodings), server: newServer(ctx, Options{Pause: -1}),
	}
	e.told = sync.NewCond(&e.mu)
	go func() { e.ended <- e.server.serve(ctx, toServer, fromServer) }()
	e.conn = jsonrpc2.NewConn(ctx, jsonrpc2.NewBufferedStream(pipes{toEditor, fromEditor}, jsonrpc2.VSCodeObjectCodec{}), e)
	t.Cleanup(func() {
		cancel()
		e.conn.Close()
	})
	var list []object
	for _, f := range folders {
		list = append(list, object{"uri": uriOf(f), "name": f})
	}
	var result struct {
		Capabilities struct {
			PositionEncoding Encoding `json:"positionEncoding"`
		} `json:"capabilities"`
	}
	e.call("initialize", object{
		"workspaceFolders": list,
		"capabilities": object{
			"general":   object{"positionEncodings": encodings},
			"workspace": object{"workspaceEdit": object{"documentChanges": true}},
			"textDocument": object{
				"completion":         object{"completionItem": object{"snippetSupport": true}},
				"publishDiagnostics": object{"relatedInformation": true},
			},
		},
	}, &result)
	require.Equal(t, e.enc, result.Capabilities.PositionEncoding)
	e.notify("initialized", object{})
	return e
}

func (e *editor) call(method string, params, result any) {
	e.t.Helper()
	require.NoError(e.t, e.try(method, params, result))
}

func (e *editor) try(method string, params, result any) error {
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	return e.conn.Call(ctx, method, params, result)
}

func (e *editor) notify(method string, params any) {
	e.t.Helper()
	require.NoError(e.t, e.conn.Notify(context.Background(), method, params))
}

func (e *editor) open(name, text string) {
	e.texts[name], e.vers[name] = source.NewFile(name, text), 1
	e.notify("textDocument/didOpen", didOpenParams{DocumentItem{uriOf(name), "longhand", 1, text}})
}

// change replaces bytes of a document.
func (e *editor) change(name string, start, end int, text string) {
	e.send(name, e.replace(name, start, end, text))
}

// replace changes the editor's text and says how.
func (e *editor) replace(name string, start, end int, text string) ContentChange {
	f := e.texts[name]
	r := e.enc.span(source.Span{File: f, Start: start, End: end})
	e.texts[name] = source.NewFile(name, f.Text[:start]+text+f.Text[end:])
	return ContentChange{Range: &r, Text: text}
}

// send tells the server of changes.
func (e *editor) send(name string, changes ...ContentChange) {
	e.vers[name]++
	var p didChangeParams
	p.TextDocument.URI, p.TextDocument.Version = uriOf(name), e.vers[name]
	p.ContentChanges = changes
	e.notify("textDocument/didChange", p)
}

// at is the place of the first of some words in a document, | for the place in
// them; the beginning of the words where they have none.
func (e *editor) at(name, words string) positionParams {
	e.t.Helper()
	f := e.texts[name]
	in := max(strings.Index(words, "|"), 0)
	i := strings.Index(f.Text, strings.Replace(words, "|", "", 1))
	require.GreaterOrEqual(e.t, i, 0, words)
	return positionParams{Document{uriOf(name)}, e.enc.position(f, i+in)}
}

// wait waits until the findings of the text as it is now are told.
func (e *editor) wait(name string) {
	e.mu.Lock()
	defer e.mu.Unlock()
	for {
		if v := e.diags[uriOf(name)].Version; v != nil && *v == e.vers[name] {
			return
		}
		e.told.Wait()
	}
}

// settle waits until everything is checked and told.
func (e *editor) settle() {
	e.t.Helper()
	var ignored any
	e.call("workspace/symbol", object{"query": ""}, &ignored) // all notifications before it were taken
	deadline := time.Now().Add(2 * time.Minute)
	for !e.settled() {
		require.True(e.t, time.Now().Before(deadline), "the server does not settle")
		time.Sleep(200 * time.Microsecond)
	}
}

func (e *editor) settled() bool {
	e.server.mu.Lock()
	defer e.server.mu.Unlock()
	for _, p := range e.server.work.plans {
		if !p.fresh && p.bound != nil && !p.bound.Stopped {
			return false
		}
	}
	e.mu.Lock()
	defer e.mu.Unlock()
	for name, text := range e.server.published {
		var want publishParams
		if json.Unmarshal([]byte(text), &want) != nil {
			return false
		}
		got, err := json.Marshal(e.diags[want.URI])
		if err != nil || string(got) != text {
			return false
		}
		_ = name
	}
	return true
}

// found are the codes published of a document, in order.
func (e *editor) found(name string) []string {
	e.mu.Lock()
	defer e.mu.Unlock()
	out := []string{}
	for _, d := range e.diags[uriOf(name)].Diagnostics {
		out = append(out, d.Code)
	}
	return out
}

// apply makes the changes of an edit to the documents and tells the server.
func (e *editor) apply(w WorkspaceEdit) {
	e.t.Helper()
	for _, c := range w.DocumentChanges {
		e.applyTo(nameOf(c.TextDocument.URI), c.Edits)
	}
	for uri, edits := range w.Changes {
		e.applyTo(nameOf(uri), edits)
	}
}

// applyTo makes changes from the last to the first, so that none moves another.
func (e *editor) applyTo(name string, edits []TextEdit) {
	e.t.Helper()
	require.NotNil(e.t, e.texts[name], "%s is not open", name)
	for i := len(edits) - 1; i >= 0; i-- {
		f := e.texts[name]
		e.change(name, e.enc.offset(f, edits[i].Range.Start), e.enc.offset(f, edits[i].Range.End), edits[i].NewText)
	}
}
