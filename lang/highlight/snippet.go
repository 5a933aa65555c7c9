package highlight

import (
	"fmt"
	"slices"
	"strings"

	"longhand/lang/syntax"
)

type snippet struct {
	Prefix      []string `json:"prefix"`
	Body        []string `json:"body"`
	Description string   `json:"description"`
}

// snippets are the examples of the table, with the names, numbers and texts of
// each to be filled in.
func snippets() []byte {
	all, words := map[string]snippet{}, fixed()
	for _, k := range syntax.Statements {
		label := strings.Join(k.Words, ", ") + " (" + k.Section + ")"
		if k.Section == "" {
			label = k.Words[0]
		}
		all[label] = snippet{Prefix: k.Words, Body: []string{stops(k, words)}, Description: k.Means}
	}
	return indented(all)
}

// stops is an example with a place to stop at for each thing to be filled in.
func stops(k *syntax.Kind, fixed []string) string {
	var b strings.Builder
	n := 0
	own := false // the word that picks the statement has gone by
	for _, t := range syntax.Lex("", k.Example) {
		text := snippetSpecial.Replace(t.Value)
		switch {
		case syntax.IsNameToken(t) && slices.Contains(k.Words, t.Value) && !own:
			own = true
			if len(k.Words) == 1 {
				b.WriteString(text)
				break
			}
			n++
			fmt.Fprintf(&b, "${%d|%s|}", n, strings.Join(k.Words, ","))
		case filledIn(t, fixed):
			n++
			b.WriteString(fmt.Sprintf("${%d:%s}", n, text))
		default:
			b.WriteString(text)
		}
	}
	return b.String() + "$0"
}

var snippetSpecial = strings.NewReplacer(`\`, `\\`, `$`, `\$`, `}`, `\}`)

// fixed are the words of examples that stay as they are.
func fixed() []string { return slices.Concat(Options(), syntax.Verbs(), times) }

// filledIn reports whether a piece of an example is there to be replaced.
func filledIn(t syntax.Token, fixed []string) bool {
	switch t.Type {
	case syntax.TokName, syntax.TokStopName:
		return !slices.Contains(fixed, t.Value)
	case syntax.TokString, syntax.TokNumber, syntax.TokQuantity, syntax.TokClock, syntax.TokDate, syntax.TokMixed, syntax.TokStop:
		return true
	}
	return false
}
