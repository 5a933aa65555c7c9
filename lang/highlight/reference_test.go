package highlight

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// unsaid is a byte that no grammar is held to: the words of a line the parser
// can make nothing of.
const unsaid Role = -1

var options = Options()

// plan is a text with the role of every byte, by the project's own lexer and
// parser.
type plan struct {
	path, text string
	roles      []Role
}

// plans are the examples, the tricky lines, and one of each statement of the
// table.
func plans(t *testing.T) []plan {
	t.Helper()
	paths, err := filepath.Glob("../../examples/*.take")
	require.NoError(t, err)
	more, err := filepath.Glob("../../examples/*/*.take")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	var all []plan
	for _, p := range append(append(paths, more...), "../../testdata/highlight/tricky.take", writeTable(t)) {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		abs, err := filepath.Abs(p)
		require.NoError(t, err)
		all = append(all, plan{abs, string(text), rolesOf(string(text))})
	}
	return all
}

// writeTable writes the examples of the table into a plan, each in its section,
// and with each word that picks its kind.
func writeTable(t *testing.T) string {
	t.Helper()
	text := ""
	for _, section := range syntax.SectionWords {
		for _, k := range syntax.Statements {
			if k.Section == section && k.Head {
				text += k.Example + "\n"
			}
		}
		for _, k := range syntax.Statements {
			if !k.Head && (k.Section == section || k.Section == "" && section == "take") {
				for _, w := range k.Words {
					text += "  " + withWord(k, w) + "\n"
				}
			}
		}
	}
	path := filepath.Join(t.TempDir(), "table.take")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o644))
	return path
}

// withWord is a kind's example with another of its words.
func withWord(k *syntax.Kind, word string) string {
	text, done := "", false
	for _, t := range syntax.Lex("", k.Example) {
		if !done && slices.Contains(k.Words, t.Value) {
			t.Value, done = word, true
		}
		text += t.Value
	}
	return text
}

func rolesOf(text string) []Role {
	roles := make([]Role, len(text))
	file, _ := syntax.Parse(source.NewFile("plan.take", text))
	for _, line := range file.Lines {
		words := line.Words()
		for _, t := range line.Tokens {
			i := slices.IndexFunc(words, func(w syntax.Token) bool { return w.Pos.Offset == t.Pos.Offset })
			fill(roles, t, roleOf(line, words, i, t))
		}
	}
	return roles
}

func fill(roles []Role, t syntax.Token, r Role) {
	at := t.Pos.Offset
	for i := range len(t.Value) {
		roles[at+i] = r
	}
	if r != Text {
		return
	}
	for i := 0; i+1 < len(t.Value); i++ {
		if t.Value[i] == '\\' {
			roles[at+i], roles[at+i+1] = Escape, Escape
			i++
		}
	}
}

// roleOf is the role of a token, which is the i-th word of its line.
func roleOf(line *syntax.Line, words []syntax.Token, i int, t syntax.Token) Role {
	switch t.Type {
	case syntax.TokComment:
		return Comment
	case syntax.TokString, syntax.TokOpenText:
		return Text
	case syntax.TokNumber, syntax.TokQuantity, syntax.TokClock, syntax.TokDate, syntax.TokMixed:
		return Number
	case syntax.TokStop:
		return Stop
	case syntax.TokPunct:
		return Mark
	case syntax.TokKeyword:
		if i == 1 && line.Kind != nil && line.Kind.Verb {
			return Verb
		}
		return Join
	case syntax.TokName, syntax.TokStopName:
		return wordRole(line, words, i, t)
	case syntax.TokIllegal:
		return unsaid
	}
	return Plain
}

func wordRole(line *syntax.Line, words []syntax.Token, i int, t syntax.Token) Role {
	k := line.Kind
	switch {
	case k == nil:
		return unsaid
	case i == 0 && k.Head:
		return Section
	case i == 0 && !k.Verb:
		return Statement
	case i == 0:
		return Name
	case i == 1 && k.Verb:
		return Verb
	}
	first := words[0].Value
	switch {
	case t.Type == syntax.TokStopName && (first == "lens" || words[1].Value == "takes" && i > 2):
		return Stop
	case i == 1 && (first == "door" || first == "cue"):
		return Declared
	case line.Stmt != nil && syntax.Declared(line.Stmt) != nil && syntax.Declared(line.Stmt).Pos.Offset == t.Pos.Offset:
		return Declared
	case slices.Contains(syntax.Classes, t.Value) && (first == "rig" && i == 2 || first == "speed" && i == 1):
		return Class
	case t.Value == "x" && i+1 < len(words) && words[i+1].Type != syntax.TokName:
		return Join
	case slices.Contains(options, t.Value):
		return Option
	}
	return Name
}

// compare holds what an engine says to what the parser says, but for what is
// blank; same says which roles look alike in it.
func (p plan) compare(t *testing.T, engine string, got []Role, same func(Role) string) {
	t.Helper()
	require.Len(t, got, len(p.roles), p.path)
	shown := 0
	for i, want := range p.roles {
		if want == unsaid || p.text[i] == '\n' || want != Text && want != Comment && want != Escape && isBlank(p.text, i) {
			continue
		}
		if same(got[i]) != same(want) {
			start := i
			for start > 0 && p.text[start-1] != '\n' {
				start--
			}
			end := i
			for end < len(p.text) && p.text[end] != '\n' {
				end++
			}
			t.Errorf("%s, %s: `%s` at %d is %v (%s), the parser says %v (%s)", engine, filepath.Base(p.path),
				p.text[start:end], i-start, got[i], same(got[i]), want, same(want))
			if shown++; shown > 10 {
				t.FailNow()
			}
		}
	}
}

// isBlank reports whether a byte is of a blank, one inside a quantity too.
func isBlank(text string, i int) bool { return text[i] == ' ' || text[i] == '\t' || text[i] == '\r' }

// Every word of the table stands in the plans that the engines colour, and is
// the section, statement or verb there.
func TestTableWords(t *testing.T) {
	text, err := os.ReadFile(writeTable(t))
	require.NoError(t, err)
	roles := rolesOf(string(text))
	as := map[string]Role{}
	for _, token := range syntax.Lex("", string(text)) {
		switch r := roles[token.Pos.Offset]; r {
		case Section, Statement, Verb:
			as[token.Value] = r
		}
	}
	for _, k := range syntax.Statements {
		for _, w := range k.Words {
			switch {
			case k.Verb:
				require.Equal(t, Verb, as[w], w)
			case k.Head:
				require.Equal(t, Section, as[w], w)
			default:
				require.Equal(t, Statement, as[w], w)
			}
		}
	}
}

// The tricky lines are the language's: but for the half-typed ones, the parser
// knows the statement of each.
func TestTrickyLines(t *testing.T) {
	text, err := os.ReadFile("../../testdata/highlight/tricky.take")
	require.NoError(t, err)
	file, _ := syntax.Parse(source.NewFile("tricky.take", string(text)))
	known, seen := 0, map[*syntax.Kind]bool{}
	for _, l := range file.Lines {
		if l.Kind != nil {
			known++
			seen[l.Kind] = true
		}
	}
	require.Greater(t, known, 80)
	for _, k := range syntax.Statements {
		require.True(t, seen[k] || k.Words[0] == "plan", "no tricky line of %v", k.Words)
	}
}
