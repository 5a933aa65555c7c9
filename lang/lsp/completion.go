package lsp

import (
	"fmt"
	"slices"
	"strings"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// Completion is what may stand at a place: it knows the section, the statement
// begun, and what of it is there already.
func (s *Snapshot) Completion(offset int) CompletionList {
	c := completer{Snapshot: s, cursor: s.cursor(offset), list: []CompletionItem{}}
	c.complete()
	return CompletionList{Items: c.list}
}

type completer struct {
	*Snapshot
	cursor
	list []CompletionItem
}

func (c *completer) complete() {
	switch {
	case c.comment:
	case len(c.before) == 0:
		if c.partial == nil || syntax.IsNameToken(*c.partial) || c.partial.Type == syntax.TokKeyword {
			c.beginnings()
		}
	default:
		c.rest()
	}
}

// rest completes a line after its first word.
func (c *completer) rest() {
	words := c.before
	kind := kindOf(c.section, words)
	if kind == nil {
		if len(words) == 1 && syntax.IsNameToken(words[0]) && (c.section == "beat" || c.section == "pickup") {
			c.verbs(words[0].Value)
		}
		return
	}
	next := expect(shapeOf(kind), words)
	if c.partial != nil && c.number() {
		c.units(next, c.partial)
		return
	}
	if last := &words[len(words)-1]; c.partial == nil || syntax.IsNameToken(*c.partial) {
		if last.Type == syntax.TokNumber { // 2.4 and a blank: its unit
			c.units(expect(shapeOf(kind), words[:len(words)-1]), nil)
		}
	}
	for _, t := range next {
		c.term(kind, t)
	}
}

// number reports whether what is being written is a number, with or without the
// beginnings of a unit.
func (c *completer) number() bool {
	switch c.partial.Type {
	case syntax.TokNumber, syntax.TokMixed, syntax.TokQuantity:
		return true
	}
	return false
}

// add offers a word.
func (c *completer) add(item CompletionItem, text string) {
	for _, o := range c.list {
		if o.Label == item.Label && o.Kind == item.Kind {
			return
		}
	}
	item.SortText = fmt.Sprintf("%04d", len(c.list))
	item.TextEdit = &TextEdit{c.Encoding.span(c.gap()), text}
	c.list = append(c.list, item)
}

// gap is what a choice takes the place of: what has been written of it, and all
// of a text in quotes.
func (c *completer) gap() source.Span {
	end := c.offset
	if c.partial != nil && c.partial.Type == syntax.TokString {
		end = c.partial.Pos.Offset + len(c.partial.Value)
	}
	return c.span(c.offset-len(c.typed), end)
}

// beginnings are the words and names a line may begin with.
func (c *completer) beginnings() {
	names := c.names()
	if c.section == "beat" || c.section == "pickup" {
		for _, n := range sortedKeys(names.kinds) {
			if slices.Contains(subjects, names.kinds[n]) {
				c.name(n)
			}
		}
	}
	for _, k := range syntax.Statements {
		if !k.Verb && !k.Head && k.In(c.section) && (k.Section != "" || c.section == "") {
			c.statement(k, k.Words[0], itemKeyword)
		}
	}
	for _, k := range syntax.Statements {
		if k.Head {
			c.statement(k, k.Words[0], itemModule)
		}
	}
	for _, k := range syntax.Statements {
		if k.Section == "" && c.section != "" {
			c.statement(k, k.Words[0], itemKeyword)
		}
	}
}

// verbs are those that a subject may have.
func (c *completer) verbs(subject string) {
	kind, known := c.names().kinds[subject]
	for _, k := range syntax.Statements {
		if !k.Verb {
			continue
		}
		for _, w := range k.Words {
			if (!known || does(kind, w)) && slices.Contains(usageWords(k), w) {
				c.statement(k, w, itemFunction)
			}
		}
	}
}

// statement offers a word that begins a statement, with gaps for the rest where
// the editor can step through them.
func (c *completer) statement(k *syntax.Kind, word string, kind int) {
	item := CompletionItem{Label: word, Kind: kind, Detail: k.Usage, Documentation: markdown(aboutStatement(k))}
	text := word
	if c.Snippets {
		if snippet, ok := snippetOf(k, word); ok {
			text, item.InsertFormat = snippet, 2
		}
	}
	c.add(item, text)
}

// name offers a declared name.
func (c *completer) name(n string) {
	d := c.names().decls[key{ofThings, n}]
	if d == nil {
		return
	}
	c.add(CompletionItem{Label: n, Kind: itemVariable, Detail: strings.TrimSpace(d.line.Span(d.at.File).Text())}, n)
}

// term offers what one word of the line may be.
func (c *completer) term(kind *syntax.Kind, t term) {
	if t.word != "" {
		if syntax.IsKeyword(t.word) && said(c.before, t.word) {
			return
		}
		c.word(kind, t.word)
		return
	}
	if kinds, ok := nameKinds[t.want]; ok {
		names := c.names()
		for _, n := range sortedKeys(names.kinds) {
			if len(kinds) == 0 || slices.Contains(kinds, names.kinds[n]) {
				c.name(n)
			}
		}
		if t.want == "SEEN" && kind.Verb {
			c.word(kind, "camera-left")
			c.word(kind, "camera-right")
		}
		return
	}
	c.value(kind, t)
}

// said reports whether a word that comes once stands in a line already.
func said(words []syntax.Token, word string) bool {
	switch word {
	case "left", "right", "up", "down", "of", "to", "at", "from", "in", "before", "after", "behind":
		return false // may come again, in places
	}
	return slices.ContainsFunc(words, func(t syntax.Token) bool { return t.Value == word })
}

// word offers a word of the language.
func (c *completer) word(kind *syntax.Kind, w string) {
	switch {
	case strings.ContainsAny(w, "(),+"):
		return
	default:
		c.add(CompletionItem{Label: w, Kind: itemKeyword, Detail: kind.Usage}, w)
	}
}
