package lsp

import (
	"fmt"
	"slices"
	"strings"

	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
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

// gap is what a choice takes the place of: what has been written of it.
func (c *completer) gap() source.Span { return c.span(c.offset-len(c.typed), c.offset) }

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

// value offers the values of a part that has a list of them.
func (c *completer) value(kind *syntax.Kind, t term) {
	switch t.want {
	case "SIZE":
		c.listed(syntax.Sizes, aboutSize)
	case "CLASS":
		c.listed(syntax.Classes, aboutClass)
	case "WINDOWNAME":
		c.listed(syntax.Windows, nil)
	case "DEPARTMENT":
		c.listed(departments, nil)
	case "GAUGE":
		c.listed([]string{"35mm-4perf", "35mm-3perf", "16mm"}, nil)
	case "COLOUR":
		c.listed(c.colours(), nil)
	case "CODE":
		for _, e := range entries() {
			if ofText[e.Code] {
				continue // a mistake of the text is mended, not allowed
			}
			c.add(CompletionItem{Label: string(e.Code), Kind: itemConstant, Detail: e.Title, Documentation: markdown(strings.TrimSpace(e.Explain))}, string(e.Code))
		}
	case "T", "STOP":
		for _, stop := range c.stops() {
			c.add(CompletionItem{Label: stop, Kind: itemValue, Detail: "a stop"}, stop)
		}
	case "CUE":
		for _, k := range c.declared(ofCues) {
			c.add(CompletionItem{Label: k, Kind: itemEvent, Detail: "a cue"}, k)
		}
	case "BEAT":
		for _, k := range c.declared(ofTitles) {
			q := syntax.Quote(k)
			c.add(CompletionItem{Label: q, Kind: itemEvent, Detail: "a beat"}, q)
		}
	case "SAID":
		for _, line := range c.spoken() {
			c.add(CompletionItem{Label: line, Kind: itemEvent, Detail: "a line"}, line)
		}
	case "QUANTITY":
		c.units([]term{t}, nil)
	}
}

func (c *completer) listed(words []string, about func(string) string) {
	for _, w := range words {
		item := CompletionItem{Label: w, Kind: itemEnumMember}
		if about != nil {
			if text := about(w); text != "" {
				item.Documentation = markdown(text)
			}
		}
		c.add(item, w)
	}
}

// departments are those that a note may go to.
var departments = []string{"camera", "grip", "electric", "art", "sound", "effects", "directors", "movement", "vehicles", "script"}

// declared are the names of a space, in the order of the text.
func (c *completer) declared(sp space) []string {
	var out []string
	for _, m := range c.names().all {
		if m.space == sp && m.decl && m.line.Kind != nil && m.line.Kind.Words[0] != "pickup" {
			out = append(out, m.name)
		}
	}
	return out
}

// spoken are the lines said by the one whose line is waited for.
func (c *completer) spoken() []string {
	who := ""
	if n := len(c.before); n > 1 {
		who = c.before[n-2].Value
	}
	var out []string
	for _, f := range c.Files {
		for _, l := range f.Lines {
			if say, ok := l.Stmt.(*syntax.Say); ok && say.Who.Text == who {
				out = append(out, say.Line.Raw)
			}
		}
	}
	return out
}

// colours are those that the plan names, and usual ones.
func (c *completer) colours() []string {
	out := []string{"amber", "blue", "green", "grey", "red", "white"}
	for _, l := range c.Plan.Kit.Lamps {
		out = append(out, l.Colour)
	}
	slices.Sort(out)
	return slices.DeleteFunc(slices.Compact(out), func(s string) bool { return s == "" })
}

// stops are the full stops that the lens of the line has.
func (c *completer) stops() []string {
	low, high := 0.0, 100.0
	for _, l := range c.Plan.Kit.Lenses {
		for _, w := range c.before {
			if w.Value == l.Name && l.Widest > 0 {
				low, high = float64(l.Widest), float64(l.Closest)
			}
		}
	}
	var out []string
	for _, t := range []float64{1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22} {
		if low <= t && t <= high {
			out = append(out, units.Stop(t).String())
		}
	}
	return out
}

// units offers the units of what a number may measure: after the number that is
// being written, or after one that is complete.
func (c *completer) units(next []term, number *syntax.Token) {
	digits := ""
	if number != nil {
		digits = strings.TrimRight(c.typed[:numberLength(c.typed)], " ")
	}
	for _, t := range next {
		if t.want != "QUANTITY" {
			continue
		}
		for _, u := range units.Table {
			if u.Dimension != t.dim || u.Same != "" {
				continue
			}
			item := CompletionItem{Label: u.Text, Kind: itemUnit, Detail: t.dim.String() + ": " + t.dim.Example()}
			switch {
			case number != nil:
				item.Label = digits + " " + u.Text
				c.add(item, item.Label)
			case len(c.before) > 0 && c.before[len(c.before)-1].Type == syntax.TokNumber:
				c.add(item, u.Text)
			}
		}
	}
}

// numberLength is how much of a text is digits and what goes with them.
func numberLength(s string) int {
	n := 0
	for n < len(s) && strings.IndexByte("+-.0123456789", s[n]) >= 0 {
		n++
	}
	return n
}
