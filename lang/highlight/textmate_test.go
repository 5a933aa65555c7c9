package highlight

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
)

// The engine of editors that read TextMate grammars gives every piece the scope
// of the role the parser gives it.
func TestTextMate(t *testing.T) {
	path := "../../editors/textmate/longhand.tmLanguage.json"
	runTextMate(t, path)
	one, err := os.ReadFile(path)
	require.NoError(t, err)
	other, err := os.ReadFile("../../editors/vscode/syntaxes/longhand.tmLanguage.json")
	require.NoError(t, err)
	require.Equal(t, one, other)
}

// Sublime Text itself cannot be run here; its rules are put back into a TextMate
// grammar, whose engine reads the same patterns.
func TestSublime(t *testing.T) {
	text, err := os.ReadFile("../../editors/sublime/Longhand.sublime-syntax")
	require.NoError(t, err)
	var file struct {
		Scope    string
		Contexts map[string][]struct {
			Match, Scope, Push string
			Pop                bool
			MetaScope          string `yaml:"meta_scope"`
			Captures           map[string]string
		}
	}
	_, body, _ := strings.Cut(string(text), "\n") // the version of YAML, which the reader is not told
	require.NoError(t, yaml.Unmarshal([]byte(body), &file))
	g := tmGrammar{Name: "Longhand", ScopeName: file.Scope}
	for _, r := range file.Contexts["main"] {
		rule := tmRule{Name: r.Scope, Match: r.Match}
		if len(r.Captures) > 0 {
			rule.Captures = map[string]tmName{}
			for n, scope := range r.Captures {
				rule.Captures[n] = tmName{scope}
			}
		}
		if r.Push != "" {
			rule = tmRule{Begin: r.Match}
			for _, in := range file.Contexts[r.Push] {
				switch {
				case in.MetaScope != "":
					rule.Name = in.MetaScope
				case in.Pop:
					rule.End = in.Match
				default:
					rule.Patterns = append(rule.Patterns, tmRule{Name: in.Scope, Match: in.Match})
				}
			}
			require.NotEmpty(t, rule.End)
		}
		g.Patterns = append(g.Patterns, rule)
	}
	path := filepath.Join(t.TempDir(), "sublime.tmLanguage.json")
	require.NoError(t, os.WriteFile(path, indented(g), 0o644))
	runTextMate(t, path)
}

type tmToken struct {
	Start, End int
	Scope      string
}

func runTextMate(t *testing.T, grammar string) {
	t.Helper()
	node, err := exec.LookPath("node")
	if err != nil {
		t.Skip("node is not installed")
	}
	if err := exec.Command(node, "-e", `require("vscode-textmate"); require("vscode-oniguruma")`).Run(); err != nil {
		t.Skip("the modules vscode-textmate and vscode-oniguruma are not there: install them and set NODE_PATH to their node_modules")
	}
	byScope := map[string]Role{"source.longhand": Plain}
	for r := range scopes {
		byScope[scope(r)] = r
	}
	all := plans(t)
	args := []string{"../../testdata/highlight/textmate.js", grammar}
	for _, p := range all {
		args = append(args, p.path)
	}
	out, err := exec.Command(node, args...).Output()
	require.NoError(t, err, "%v", err)
	var files [][][]tmToken
	require.NoError(t, json.Unmarshal(out, &files))
	require.Len(t, files, len(all))
	for i, p := range all {
		var got []Role
		for n, line := range strings.Split(p.text, "\n") {
			if n > 0 {
				got = append(got, Plain)
			}
			units := utf16.Encode([]rune(line))
			at := 0
			for _, token := range files[i][n] {
				role, known := byScope[token.Scope]
				require.True(t, known, token.Scope)
				require.Equal(t, at, token.Start)
				at = min(token.End, len(units)) // the engine counts the line's end
				for range len(string(utf16.Decode(units[token.Start:at]))) {
					got = append(got, role)
				}
			}
			require.Equal(t, len(units), at)
		}
		p.compare(t, filepath.Base(grammar), got, Role.String)
	}
}
