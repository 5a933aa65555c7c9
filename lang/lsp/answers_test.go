package lsp

import (
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/tools/txtar"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
)

var update = flag.Bool("update", false, "write what is answered into the archives")

// TestAnswers asks each archive of testdata/lsp what its file `ask` asks, one
// question a line:
//
//	WHAT FILE WORDS
//
// where WORDS stand in the file once, with | for the place asked about, and
// compares the answers with its file `want`. Handlers are asked directly, without
// the protocol.
func TestAnswers(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/lsp/*.txtar")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			ar, err := txtar.ParseFile(path)
			require.NoError(t, err)
			files := map[string]string{}
			for _, f := range ar.Files {
				files[f.Name] = string(f.Data)
			}
			a := asked{t: t, files: files, snaps: map[string]*Snapshot{}}
			var got strings.Builder
			for q := range strings.Lines(files["ask"]) {
				if q = strings.TrimSpace(q); q != "" {
					fmt.Fprintf(&got, "? %s\n%s\n\n", q, a.answer(q))
				}
			}
			if *update {
				for i := range ar.Files {
					if ar.Files[i].Name == "want" {
						ar.Files[i].Data = []byte(got.String())
					}
				}
				require.NoError(t, os.WriteFile(path, txtar.Format(ar), 0o644))
				return
			}
			assert.Equal(t, files["want"], got.String())
		})
	}
}

type asked struct {
	t     *testing.T
	files map[string]string
	snaps map[string]*Snapshot
}

// snapshot is a file as the plan main.take has it; where there is a file
// before.take, the plan was computed for that and main.take is what became of
// it.
func (a *asked) snapshot(name string) *Snapshot {
	if s := a.snaps[name]; s != nil {
		return s
	}
	read := func(main string) compile.Read {
		return func(n string) (string, error) {
			if n == "main.take" {
				n = main
			}
			if text, ok := a.files[n]; ok {
				return text, nil
			}
			return "", fmt.Errorf("there is no file %s", n)
		}
	}
	r, err := compile.Compile(context.Background(), read("main.take"), "main.take", compile.Options{})
	require.NoError(a.t, err)
	s := NewSnapshot(r, name)
	require.NotNil(a.t, s, name)
	if _, older := a.files["before.take"]; older {
		s.Whole, err = compile.Compile(context.Background(), read("before.take"), "main.take", compile.Options{})
		require.NoError(a.t, err)
		s.ready()
	}
	s.Snippets, s.Related = true, true
	a.snaps[name] = s
	return s
}

func (a *asked) answer(q string) string {
	what, rest, _ := strings.Cut(q, " ")
	name, words, _ := strings.Cut(rest, " ")
	s := a.snapshot(name)
	text := s.File.Source.Text
	offset := 0
	if words != "" {
		words = strings.ReplaceAll(words, `\n`, "\n")
		plain := strings.Replace(words, "|", "", 1)
		require.Equal(a.t, 1, strings.Count(text, plain), "%s: how often it stands there", q)
		offset = strings.Index(text, plain) + max(strings.Index(words, "|"), 0)
	}
	switch what {
	case "complete":
		return a.completions(s, offset, false)
	case "snippets":
		return a.completions(s, offset, true)
	case "hover":
		if h := s.Hover(offset); h != nil {
			return h.Contents.Value
		}
		return "nothing"
	case "signature":
		h := s.SignatureHelp(offset)
		if h == nil {
			return "nothing"
		}
		sig := h.Signatures[0]
		if h.ActiveParameter >= len(sig.Parameters) {
			return sig.Label + " (at the end)"
		}
		p := sig.Parameters[h.ActiveParameter].Label
		return sig.Label[:p[0]] + ">" + sig.Label[p[0]:p[1]] + "<" + sig.Label[p[1]:]
	case "definition":
		return a.places(s.Definition(offset))
	case "references":
		return a.places(s.References(offset, true))
	case "hints":
		var out []string
		for _, h := range s.Hints(0, len(text)) {
			out = append(out, fmt.Sprintf("%s [%s]", strings.TrimSpace(s.File.Source.Line(h.Position.Line+1)), h.Label))
		}
		return strings.Join(out, "\n")
	case "actions":
		var out []string
		for _, c := range s.Actions(offset, offset, nil) {
			line := c.Kind + ": " + c.Title
			if c.Edit != nil {
				for _, edits := range c.Edit.Changes {
					for _, e := range edits {
						line += fmt.Sprintf("\n  %d:%d %q", e.Range.Start.Line+1, e.Range.Start.Character+1, e.NewText)
					}
				}
			}
			out = append(out, line)
		}
		return strings.Join(out, "\n")
	case "symbols":
		return outline(s.Symbols(), "")
	case "waiting":
		var out []string
		for _, c := range s.Waiting(offset) {
			out = append(out, c.To.Name+" ("+c.To.Detail+")")
		}
		return strings.Join(out, "\n")
	case "waitsfor":
		var out []string
		for _, c := range s.WaitsFor(offset) {
			out = append(out, c.From.Name+" ("+c.From.Detail+")")
		}
		return strings.Join(out, "\n")
	case "tokens":
		return paint(s)
	}
	text2, err := json.MarshalIndent(map[string]any{"folds": s.Folds(), "links": s.Links(), "selection": s.Selection(offset)}[what], "", " ")
	require.NoError(a.t, err)
	return string(text2)
}

func (a *asked) completions(s *Snapshot, offset int, snippets bool) string {
	var out []string
	for _, i := range s.Completion(offset).Items {
		if snippets {
			out = append(out, i.Label+": "+i.TextEdit.NewText)
		} else {
			out = append(out, i.Label)
		}
	}
	if snippets {
		return strings.Join(out, "\n")
	}
	return strings.Join(out, ", ")
}

func (a *asked) places(list []Location) string {
	var out []string
	for _, l := range list {
		s := a.snapshot(l.URI)
		f := s.File.Source
		at := source.Span{File: f, Start: s.place(l.Range.Start), End: s.place(l.Range.End)}
		out = append(out, fmt.Sprintf("%s:%d:%d %s", l.URI, l.Range.Start.Line+1, l.Range.Start.Character+1, at.Text()))
	}
	return strings.Join(out, "\n")
}

func outline(list []DocumentSymbol, indent string) string {
	var out []string
	for _, d := range list {
		out = append(out, fmt.Sprintf("%s%s (%s)", indent, d.Name, d.Detail))
		if len(d.Children) > 0 {
			out = append(out, outline(d.Children, indent+"  "))
		}
	}
	return strings.Join(out, "\n")
}

// paint writes each semantic token with its type.
func paint(s *Snapshot) string {
	data := s.Tokens()
	var out strings.Builder
	line, column, last := 0, 0, 0
	for i := 0; i+4 < len(data); i += 5 {
		if data[i] > 0 {
			line, column = line+data[i], 0
		}
		column += data[i+1]
		if i > 0 && line != last {
			out.WriteByte('\n')
		}
		last = line
		start, end := s.place(Position{line, column}), s.place(Position{line, column + data[i+2]})
		fmt.Fprintf(&out, "%s/%s ", s.File.Source.Text[start:end], tokenTypes[data[i+3]])
	}
	return strings.TrimSpace(strings.ReplaceAll(out.String(), " \n", "\n"))
}

func TestEveryStatementHasAShapeThatItsExampleFits(t *testing.T) {
	for _, k := range syntax.Statements {
		var words []syntax.Token
		for _, w := range syntax.Lex("", k.Example) {
			if w.Type != syntax.TokSpace {
				words = append(words, w)
			}
		}
		ends := (&matcher{words: words}).match(shapeOf(k), 0)
		assert.Contains(t, ends, len(words), "%s\n%s", k.Usage, k.Example)
		for n := range words {
			assert.NotEmpty(t, expect(shapeOf(k), words[:n]), "%s: what comes after %v", k.Usage, words[:n])
		}
	}
}

func TestEveryVerbIsSomebodys(t *testing.T) {
	for _, v := range syntax.Verbs() {
		n := 0
		for _, k := range subjects {
			if does(k, v) {
				n++
			}
		}
		assert.Positive(t, n, v)
	}
	for v := range doers {
		assert.Contains(t, syntax.Verbs(), v)
	}
	// Whoever does it in the example may do it.
	cast := map[string]plan.Kind{"mina": plan.KindPerformer, "otto": plan.KindPerformer, "ida": plan.KindCrew, "nils": plan.KindCrew, "A": plan.KindCamera, "B": plan.KindCamera}
	for _, k := range syntax.Statements {
		if words := strings.Fields(k.Example); k.Verb {
			who, known := cast[words[0]]
			if assert.True(t, known, "who is %s, in %q?", words[0], k.Example) {
				assert.True(t, does(who, words[1]), "%s is not offered to a %s, for want of a line in doers", words[1], who)
			}
		}
	}
}

func TestEveryCapitalOfTheNotationIsKnown(t *testing.T) {
	known := map[string]bool{}
	for _, s := range syntax.Statements {
		for _, at := range terms(shapeOf(s)) {
			known[at.want] = true
		}
	}
	one := []string{"STRING", "SCENE", "BEAT", "SAID", "FILE", "QUANTITY", "CLOCK", "COORDINATE", "NUMBER", "INT", "1:INT", ":NUMBER", "T", "STOP", "DATE", "OFFSET", "GAUGE",
		"NEWNAME", "SIZE", "CLASS", "WINDOWNAME", "DEPARTMENT", "COLOUR", "CODE", "CUE", ""}
	for want := range known {
		_, name := nameKinds[want]
		assert.True(t, name || contains(one, want), "nothing is offered for %s", want)
	}
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

func terms(s *shape) []term {
	if s.term != nil {
		return []term{*s.term}
	}
	var out []term
	for _, p := range append(append([]*shape(nil), s.parts...), s.any...) {
		out = append(out, terms(p)...)
	}
	if s.often != nil {
		out = append(out, terms(s.often)...)
	}
	return out
}
