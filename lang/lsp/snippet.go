package lsp

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"longhand/lang/syntax"
)

// snippetOf is a statement's example with gaps where it has names, numbers and
// texts of its own; false if nothing of it is a gap, or if the example is of
// another of the statement's words.
func snippetOf(k *syntax.Kind, word string) (string, bool) {
	tokens := syntax.Lex("", k.Example)
	if k.Verb && len(tokens) > 2 {
		tokens = tokens[2:] // the name and its blank are there already
	}
	if len(tokens) == 0 || tokens[0].Value != word {
		return "", false
	}
	kept := usageWords(k)
	var out strings.Builder
	gaps := 0
	gap := func(text string) {
		gaps++
		fmt.Fprintf(&out, "${%d:%s}", gaps, escapeSnippet.Replace(text))
	}
	for i, t := range tokens {
		switch {
		case i == 0:
			out.WriteString(word)
		case t.Type == syntax.TokSpace, t.Type == syntax.TokPunct, t.Type == syntax.TokKeyword, slices.Contains(kept, t.Value):
			out.WriteString(escapeSnippet.Replace(t.Value))
		case t.Type == syntax.TokString:
			out.WriteByte('"')
			gap(t.Value[1 : len(t.Value)-1])
			out.WriteByte('"')
		default:
			gap(t.Value)
		}
	}
	return out.String(), gaps > 0
}

var escapeSnippet = strings.NewReplacer(`\`, `\\`, `$`, `\$`, `}`, `\}`)

var lowerWord = regexp.MustCompile(`[a-z][a-z-]*`)

// usageWords are the language's own words in a usage.
func usageWords(k *syntax.Kind) []string { return wordsOfUsages()[k] }

var wordsOfUsages = sync.OnceValue(func() map[*syntax.Kind][]string {
	m := map[*syntax.Kind][]string{}
	for _, k := range syntax.Statements {
		m[k] = append(lowerWord.FindAllString(k.Usage, -1), lowerWord.FindAllString(meanings["EVENT"], -1)...)
	}
	return m
})
