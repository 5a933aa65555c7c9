package highlight

import (
	"encoding/json"
	"fmt"
	"strings"
)

// scopes are the names by which TextMate's grammars, and those made like them,
// tell themes what a piece of text is.
var scopes = map[Role]string{
	Comment: "comment.line.number-sign", Text: "string.quoted.double", Escape: "constant.character.escape",
	Number: "constant.numeric", Stop: "constant.numeric.stop", Section: "keyword.control.section",
	Statement: "keyword.other.statement", Verb: "support.function.verb", Join: "keyword.operator.word",
	Option: "support.constant.option", Class: "support.type.class", Declared: "entity.name.type",
	Name: "variable.other", Mark: "punctuation.separator", Wrong: "invalid.illegal",
}

// scope is a role's scope in the language.
func scope(r Role) string { return scopes[r] + ".longhand" }

type tmGrammar struct {
	Comment   string   `json:"comment"`
	Name      string   `json:"name"`
	ScopeName string   `json:"scopeName"`
	FileTypes []string `json:"fileTypes"`
	Patterns  []tmRule `json:"patterns"`
}

type tmRule struct {
	Name     string            `json:"name,omitempty"`
	Match    string            `json:"match,omitempty"`
	Captures map[string]tmName `json:"captures,omitempty"`
	Begin    string            `json:"begin,omitempty"`
	End      string            `json:"end,omitempty"`
	Patterns []tmRule          `json:"patterns,omitempty"`
}

type tmName struct {
	Name string `json:"name"`
}

var onig = perl{escape: `\x{%04x}`, alphabet: letters, inWord: inWords}

// textMate is the grammar for TextMate and what reads its grammars.
func textMate() []byte {
	g := tmGrammar{
		Comment: madeBy, Name: "Longhand", ScopeName: "source.longhand", FileTypes: []string{"take"},
		Patterns: []tmRule{
			{Name: scope(Comment), Match: "#.*$"},
			{Name: scope(Text), Begin: `"`, End: `"|$`, Patterns: []tmRule{{Name: scope(Escape), Match: `\\.`}}},
		},
	}
	for _, r := range rules() {
		match, caught := flat(r, onig, false)
		t := tmRule{Match: match}
		if len(caught) == 1 && !r.Start {
			t.Name = scope(caught[0])
			t.Match, _ = flat(r, onig, true)
		} else {
			t.Captures = map[string]tmName{}
			for i, role := range caught {
				t.Captures[fmt.Sprint(i+1)] = tmName{scope(role)}
			}
		}
		g.Patterns = append(g.Patterns, t)
	}
	return indented(g)
}

// flat is a rule as one pattern, with each part captured unless it is bare, and
// the roles of what is captured.
func flat(r rule, d dialect, bare bool) (match string, caught []Role) {
	var b strings.Builder
	if r.Start {
		b.WriteString(d.lineStart(written(blank, d)))
	}
	for i, p := range r.Parts {
		text := written(p.Pattern, d)
		if !bare {
			text = d.capture(text)
		}
		if i > 0 {
			text = written(many{blank}, d) + text
		}
		if p.Optional {
			text = d.group(text) + d.optional()
		}
		b.WriteString(text)
		caught = append(caught, p.Role)
	}
	if r.Ahead != nil {
		b.WriteString(d.ahead(written(r.Ahead, d), true))
	}
	return b.String(), caught
}

func indented(v any) []byte {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		panic(err) // only strings, lists and maps of them are given
	}
	return []byte(b.String())
}
