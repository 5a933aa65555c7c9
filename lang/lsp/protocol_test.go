package lsp

import (
	"context"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/sourcegraph/jsonrpc2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"longhand/lang/format"
)

const small = `take "Late Post é 中 😀"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (6, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina "Posteä 😀"
  crew ida
beat "Across 中"
  mina walks from M1 to M2
  A on legs with ida at (3, -9)
  A takes w35 T8
  A sees mina
`

func example(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../examples/" + name + ".take")
	require.NoError(t, err)
	return string(text)
}

func TestATakeIsTypedLineByLineAndEveryStateIsAnswered(t *testing.T) {
	for _, encodings := range [][]string{{"utf-8", "utf-16"}, {"utf-16"}} {
		e := edit(t, encodings)
		e.open("/plans/a.take", "")
		for _, r := range small {
			end := len(e.texts["/plans/a.take"].Text)
			e.change("/plans/a.take", end, end, string(r))
			f := e.texts["/plans/a.take"]
			at := positionParams{Document{"file:///plans/a.take"}, e.enc.position(f, len(f.Text))}
			var list CompletionList
			e.call("textDocument/completion", at, &list)
			for _, method := range []string{"hover", "signatureHelp", "definition", "documentHighlight"} {
				var any json.RawMessage
				e.call("textDocument/"+method, at, &any)
			}
			if r != '\n' {
				continue
			}
			whole := object{"textDocument": at.TextDocument, "range": Range{End: at.Position}, "context": object{}, "positions": []Position{at.Position}}
			for _, method := range []string{"documentSymbol", "foldingRange", "formatting", "semanticTokens/full", "inlayHint", "codeAction", "documentLink", "selectionRange", "rangeFormatting"} {
				var any json.RawMessage
				e.call("textDocument/"+method, whole, &any)
			}
		}
		e.settle()
		assert.NotContains(t, e.found("/plans/a.take"), "syntax")
		var any json.RawMessage
		e.call("shutdown", nil, &any)
		assert.Error(t, e.try("textDocument/hover", e.at("/plans/a.take", "mina"), &any), "nothing is answered after shutdown")
		e.notify("exit", nil)
		assert.NoError(t, <-e.ended)
	}
}

func TestAnEditorThatLeavesWithoutShutdownIsAnError(t *testing.T) {
	e := edit(t, nil)
	e.notify("exit", nil)
	assert.ErrorIs(t, <-e.ended, ErrNoShutdown)
}

func TestAMarkUsedInThreeFilesIsRenamed(t *testing.T) {
	dir := t.TempDir()
	hall := "set \"Hall\"\n  mark T2 (0, 0)\n  mark M2 (6, 0)\n  place par at T2 up 3 m\n"
	people := "use \"hall.take\"\nkit\n  camera A sensor 24.9 mm x 14 mm\n  lens w35 35 mm stops T2 to T22\n  rig legs sticks\n  lamp par 500 W\npeople\n  performer mina\n  crew ida\n"
	main := "take \"é😀\"\n  use \"people.take\"\nset \"Yard\"\n  place par at 1 m left of T2 up 2 m\nbeat \"T2\"\n  mina walks from T2 to M2 # T2 is the door\n  A on legs with ida at (3, -9)\n  A takes w35 T2\n  A sees mina\n"
	other := "take \"Other\"\n  use \"hall.take\"\npeople\n  performer otto\nbeat \"One\"\n  otto walks from M2 to T2\n"
	for name, text := range map[string]string{"hall.take": hall, "people.take": people, "main.take": main, "other.take": other} {
		require.NoError(t, os.WriteFile(dir+"/"+name, []byte(text), 0o600))
	}
	e := edit(t, []string{"utf-16"}, dir)
	e.open(dir+"/main.take", main)
	e.open(dir+"/hall.take", hall)
	e.open(dir+"/people.take", people)
	e.open(dir+"/other.take", other)
	var place prepareRenameResult
	e.call("textDocument/prepareRename", e.at(dir+"/main.take", "from T|2"), &place)
	assert.Equal(t, "T2", place.Placeholder)
	var w WorkspaceEdit
	rename := func(to string) error {
		return e.try("textDocument/rename", renameParams{e.at(dir+"/main.take", "from |T2"), to}, &w)
	}
	assert.ErrorContains(t, rename("M2"), "already")
	assert.ErrorContains(t, rename("when"), "word of the language")
	assert.ErrorContains(t, rename("two words"), "cannot be a name")
	require.NoError(t, rename("sill"))
	e.apply(w)
	text := func(name string) string { return e.texts[dir+"/"+name].Text }
	assert.Equal(t, strings.NewReplacer("of T2", "of sill", "from T2", "from sill").Replace(main), text("main.take"), "the stop, the title and the comment stay")
	assert.Equal(t, strings.ReplaceAll(hall, "T2", "sill"), text("hall.take"))
	assert.Equal(t, people, text("people.take"))
	assert.Equal(t, strings.ReplaceAll(other, "T2", "sill"), text("other.take"))
	e.settle()
	assert.NotContains(t, e.found(dir+"/main.take"), "unknown-name")
}

func TestAPartIsLookedAtInThePlanThatUsesIt(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(dir+"/hall.take", []byte("set \"Hall\"\n  mark M1 (0, 0)\n"), 0o600))
	require.NoError(t, os.WriteFile(dir+"/main.take", []byte("take \"a\"\n  use \"hall.take\"\npeople\n  performer mina\nbeat \"b\"\n  mina walks from M1 to M2\n"), 0o600))
	e := edit(t, nil, dir)
	e.open(dir+"/hall.take", "set \"Hall\"\n  mark M1 (0, 0)\n")
	e.settle()
	assert.Equal(t, []string{"unknown-name"}, e.found(dir+"/main.take"), "found in a file that is not open")
	end := len(e.texts[dir+"/hall.take"].Text)
	e.change(dir+"/hall.take", end, end, "  mark M2 (3, 0)\n")
	e.settle()
	assert.NotContains(t, e.found(dir+"/main.take"), "unknown-name", "the unsaved text wins over the file")
	e.notify("textDocument/didClose", documentParams{Document{uriOf(dir + "/hall.take")}})
	e.settle()
	assert.Empty(t, e.found(dir+"/main.take"), "nothing is open any more")
}

func TestAFixIsAppliedAndTheTextFormatted(t *testing.T) {
	e := edit(t, nil)
	name := "/plans/a.take"
	e.open(name, strings.Replace(small, "mina walks", "mina   wlks", 1))
	e.settle()
	require.Equal(t, []string{"unknown-word"}, e.found(name))
	at := e.at(name, "|wlks").Position
	var actions []CodeAction
	e.call("textDocument/codeAction", object{"textDocument": Document{uriOf(name)}, "range": Range{at, at}, "context": object{"diagnostics": []object{}}}, &actions)
	require.NotEmpty(t, actions)
	require.NotNil(t, actions[0].Edit)
	e.apply(*actions[0].Edit)
	e.settle()
	assert.Contains(t, e.texts[name].Text, "mina   walks")
	assert.NotContains(t, e.found(name), "unknown-word")
	var edits []TextEdit
	e.call("textDocument/formatting", object{"textDocument": Document{uriOf(name)}, "options": object{"tabSize": 8}}, &edits)
	e.applyTo(name, edits)
	assert.Equal(t, format.Text(small), e.texts[name].Text)
}

func TestAPanicIsAnsweredAndTheServerLivesOn(t *testing.T) {
	e := edit(t, nil)
	e.server.handler["test/panic"] = on(documentOf, func(*Snapshot, documentParams) (any, error) { panic("on purpose") })
	e.open("/a.take", small)
	var any json.RawMessage
	assert.ErrorContains(t, e.try("test/panic", documentParams{Document{"file:///a.take"}}, &any), "on purpose")
	assert.ErrorContains(t, e.try("test/none", nil, &any), "no method")
	assert.ErrorContains(t, e.try("textDocument/hover", documentParams{Document{"file:///none.take"}}, &any), "not open")
	e.call("textDocument/hover", e.at("/a.take", "mina"), &any)
	assert.Contains(t, string(any), "mina")
}

func TestItAnswersWhileACheckRuns(t *testing.T) {
	e := edit(t, nil)
	e.server.checks <- struct{}{} // a check that takes for ever
	e.open("/a.take", example(t, "last-collection"))
	var any json.RawMessage
	e.call("textDocument/hover", e.at("/a.take", "mina rides"), &any)
	assert.Contains(t, string(any), "mina")
	<-e.server.checks
	e.settle()
}

func TestStaleChecksAreGivenUp(t *testing.T) {
	e := edit(t, nil)
	e.server.checks <- struct{}{} // no check gets on
	e.open("/a.take", small)
	for i := range 20 {
		e.change("/a.take", len(e.texts["/a.take"].Text), len(e.texts["/a.take"].Text), "# "+string(rune('a'+i))+"\n")
	}
	e.wait("/a.take")
	e.server.mu.Lock()
	turn := e.server.work.plans["/a.take"].turn
	e.server.mu.Unlock()
	assert.Equal(t, 21, turn)
	<-e.server.checks
	e.settle()
	e.server.mu.Lock()
	p := e.server.work.plans["/a.take"]
	e.server.mu.Unlock()
	assert.Equal(t, e.texts["/a.take"].Text, p.whole.Files[0].Source.Text, "the last text is what was checked")
}

func TestARequestThatIsCancelledIsAnsweredSo(t *testing.T) {
	e := edit(t, nil)
	e.open("/a.take", small)
	begun := make(chan struct{})
	e.server.handler["test/slow"] = func(*server, *jsonrpc2.Request) (func(context.Context) (any, error), error) {
		return func(ctx context.Context) (any, error) {
			close(begun)
			<-ctx.Done()
			return nil, nil
		}, nil
	}
	answered := make(chan error, 1)
	go func() {
		answered <- e.conn.Call(context.Background(), "test/slow", object{}, nil, jsonrpc2.PickID(jsonrpc2.ID{Num: 9999}))
	}()
	<-begun
	e.notify("$/cancelRequest", object{"id": 9999})
	var err *jsonrpc2.Error
	require.ErrorAs(t, <-answered, &err)
	assert.EqualValues(t, codeCancelled, err.Code)
}

func TestAFindingIsExplainedOnDemand(t *testing.T) {
	e := edit(t, nil)
	var text string
	e.call("workspace/executeCommand", object{"command": commandExplain, "arguments": []string{"late"}}, &text)
	assert.Contains(t, text, "late:")
	var ignored any
	assert.ErrorContains(t, e.try("workspace/executeCommand", object{"command": commandExplain, "arguments": []string{"none"}}, &ignored), "no finding")
	assert.ErrorContains(t, e.try("workspace/executeCommand", object{"command": "none"}, &ignored), "no command")
	e.open("/a.take", small)
	e.settle()
	var places []Location
	e.call("workspace/executeCommand", object{"command": commandWaits, "arguments": []any{e.at("/a.take", "|beat \"Across")}}, &places)
	assert.NotEmpty(t, places)
	var symbols []WorkspaceSymbol
	e.call("workspace/symbol", object{"query": "m2"}, &symbols)
	require.Len(t, symbols, 1)
	assert.Equal(t, "M2", symbols[0].Name)
}

// TestFindingsStayWhileTheRestIsChecked holds that what the lenses show is shown
// on, at its new place, until it is looked at again.
func TestFindingsStayWhileTheRestIsChecked(t *testing.T) {
	e := edit(t, nil)
	e.open("/a.take", strings.Replace(small, "mina walks from M1 to M2", "mina walks from M1 to M2 by +1 s", 1))
	e.settle()
	require.Contains(t, e.found("/a.take"), "late")
	e.server.checks <- struct{}{}
	at := strings.Index(e.texts["/a.take"].Text, "beat")
	e.change("/a.take", at, at, "# a line more\n")
	e.wait("/a.take")
	assert.Contains(t, e.found("/a.take"), "late")
	e.change("/a.take", at, at, "nonsense\n")
	e.wait("/a.take")
	assert.NotContains(t, e.found("/a.take"), "late", "the text comes first")
	<-e.server.checks
}
