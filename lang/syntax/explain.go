package syntax

import (
	"fmt"
	"slices"
	"strings"

	"longhand/lang/source"
	"longhand/lang/units"
)

// explain says in the user's words why a line stops fitting.
func (p *parser) explain(kind *Kind, words []Token, failed *failure) *complaint {
	at := slices.IndexFunc(words, func(t Token) bool { return t.Pos.Offset == failed.at.Pos.Offset })
	if at < 0 {
		at = len(words)
	}
	if bad := p.badToken(words[:min(at+1, len(words))]); bad != nil {
		bad.notes = append(bad.notes, usageNote(kind))
		return bad
	}
	if open := openBracket(words); open >= 0 && (at == len(words) || words[at].Value == "(" || words[at].Type != TokPunct && !isNumeric(words[at])) {
		return &complaint{code: CodeSyntax, span: spanOf(p.file.Source, words[open:open+1]),
			message: "the bracket opened here is not closed on this line", notes: []string{"a point is written (x, y) or (x, y, z)"}}
	}
	c := &complaint{code: CodeSyntax, span: spanOf(p.file.Source, words)}
	if at == 0 {
		c.message = fmt.Sprintf("what begins with `%s` cannot be read", words[0].Value)
	} else if at == len(words) {
		c.span = spanOf(p.file.Source, words[len(words)-1:])
		c.message = fmt.Sprintf("after `%s` comes %s, and the line ends there", words[at-1].Value, expected(kind, words, at, failed.expect))
	} else {
		c.span = spanOf(p.file.Source, words[at:at+1])
		unexpected(c, kind, words, at, failed.expect)
	}
	if at < len(words) && strings.Contains(kind.Usage, "[SIZE]") {
		c.notes = append(c.notes, "how tight, from loose to tight: "+strings.Join(Sizes, ", "))
	}
	switch kind.Words[0] {
	case "opens":
		c.notes = append(c.notes, "a door that opens or shuts by itself is written: door dock opens")
	case "turns":
		c.notes = append(c.notes, "a turn by an angle is written: mina spins 90 deg left")
	}
	c.notes = append(c.notes, usageNote(kind))
	return c
}

// unexpected says what is wrong with the word at which a line stops fitting.
func unexpected(c *complaint, kind *Kind, words []Token, at int, expect string) {
	word := words[at]
	before := words[at-1]
	wanted := ""
	if expect != "" {
		wanted = expected(kind, words, at, expect)
	}
	switch near := Nearest(word.Value, choices(kind, expect)); {
	case (wantsQuantity(expect) || strings.HasPrefix(expect, "Goal")) && (word.Type == TokNumber || word.Type == TokMixed):
		withoutUnit(c, words, at, meant(kind, words, at))
	case expect == "" && word.Type == TokNumber && (unitAfter(words, at) || IsNameToken(before)),
		expect == "" && word.Type == TokMixed && startsNumber(word.Value):
		withoutUnit(c, words, at, meant(kind, words, at))
	case word.Type == TokName && len(word.Value) > 1 && word.Value[0] == 'x' && allDigits(word.Value[1:]):
		c.message, c.fix = fmt.Sprintf("`%s` is written apart: x %s", word.Value, word.Value[1:]), "x "+word.Value[1:]
	case looksLikeStop(word) && strings.Contains(kind.Usage, "T"):
		c.message = "stops are written with a T: T2.8"
	case before.Value == "x" && word.Type == TokQuantity && strings.HasPrefix(expect, "Number") && at >= 3:
		c.message = fmt.Sprintf("what `%s x %s` is must be said before it: `sensor` or `size`", words[at-2].Value, word.Value)
	case word.Type == TokNumber && before.Type == TokQuantity && strings.HasSuffix(before.Value, "'"):
		c.message = fmt.Sprintf("inches carry their mark: %s%s\"", before.Value, word.Value)
		c.fix = word.Value + `"`
	case isNumeric(word) && isNumeric(before) && strings.HasPrefix(expect, `"," Coordinate`):
		c.message = fmt.Sprintf("a comma is missing between `%s` and `%s`: a point is written (x, y)", before.Value, word.Value)
	case word.Value == "and" && strings.Contains(kind.Usage, "[, "):
		c.message, c.fix = "a list has commas between its names", ","
	case word.Type == TokMixed:
		c.message = fmt.Sprintf("`%s` is neither a number with a unit nor a name", word.Value)
		c.notes = append(c.notes, "a name begins with a letter")
	case near != "" && word.Type == TokName:
		c.message, c.fix = fmt.Sprintf("`%s` has no meaning after `%s`; did you mean `%s`?", word.Value, before.Value, near), near
	case before.Type == TokNumber && word.Type == TokName && expect == "":
		c.message = fmt.Sprintf("`%s` is not a unit", word.Value)
		if near := nearestUnit(word.Value); near != "" {
			c.message, c.fix = fmt.Sprintf("%s; did you mean `%s`?", c.message, near), near
		}
	case word.Type == TokKeyword && strings.HasPrefix(expect, "Name") && !joins(kind, word.Value):
		c.code, c.message = CodeReserved, fmt.Sprintf("`%s` is a word of the language and cannot be a name", word.Value)
	case sideWithoutOf(words, at): // 2 m left M1
		c.message = fmt.Sprintf("`of` is missing: %s %s of %s", words[at-2].Value, before.Value, word.Value)
		c.fix = "of " + word.Value
	case expect == "" && lacksTo(kind, words, at):
		c.message = fmt.Sprintf("`%s` has no meaning after `%s`; is `to` missing?", word.Value, before.Value)
		c.fix = "to " + word.Value
	case expect == "" && (IsNameToken(word) || word.Value == "(") && strings.Contains(kind.Usage, "at PLACE") && at <= 2:
		c.message = fmt.Sprintf("`%s` has no meaning after `%s`; is `at` missing?", word.Value, before.Value)
		c.fix = "at " + word.Value
	case wanted != "":
		c.message = fmt.Sprintf("after `%s` comes %s, not `%s`", before.Value, wanted, word.Value)
	case word.Type == TokName && IsNameToken(before) && strings.Contains(kind.Usage, ", "):
		c.message = fmt.Sprintf("`%s` has no meaning after `%s`; is a comma missing between them?", word.Value, before.Value)
	default:
		c.message = fmt.Sprintf("`%s` has no meaning after `%s`", word.Value, before.Value)
	}
}

// withoutUnit is about a number that stands where a quantity must.
func withoutUnit(c *complaint, words []Token, at int, d units.Dimension) {
	word := words[at]
	example := d.Example()
	if d == units.NoDimension {
		example = units.Length.Example()
	}
	if word.Type == TokMixed {
		n := len(word.Value) - len(strings.TrimLeft(word.Value, "+-.0123456789"))
		unknownUnit(c, word.Value[:n], word.Value[n:])
		return
	}
	if at+1 < len(words) && words[at+1].Type == TokName && nearestUnit(words[at+1].Value) != "" {
		c.span.End = words[at+1].Pos.Offset + len(words[at+1].Value)
		unknownUnit(c, word.Value, words[at+1].Value)
		return
	}
	if at+2 < len(words) && words[at+1].Value == "," && touches(words[at], words[at+1]) && touches(words[at+1], words[at+2]) {
		c.span = c.span.Join(source.Span{File: c.span.File, Start: c.span.Start, End: words[at+2].Pos.Offset + len(words[at+2].Value)})
		c.message = "decimals are written with a point"
		c.fix = word.Value + "." + words[at+2].Value
		return
	}
	c.message = fmt.Sprintf("`%s` needs its unit", word.Value)
	c.notes = append(c.notes, "written for example "+example)
}

func unknownUnit(c *complaint, number, unit string) {
	c.message = fmt.Sprintf("`%s` is not a unit", unit)
	if near := nearestUnit(unit); near != "" {
		c.message += fmt.Sprintf("; did you mean `%s`?", near)
		c.fix = number + " " + near
	}
}

// looksLikeStop reports whether a word is a stop as lenses are marked: f2, F4.
func looksLikeStop(t Token) bool {
	return t.Type == TokName && len(t.Value) > 1 && (t.Value[0] == 'f' || t.Value[0] == 'F') && allDigits(t.Value[1:])
}

// touches reports whether no blank parts two words.
func touches(a, b Token) bool { return a.Pos.Offset+len(a.Value) == b.Pos.Offset }

// unitAfter reports whether a number is followed by what looks like a unit.
func unitAfter(words []Token, at int) bool {
	if words[at].Type == TokMixed {
		return true
	}
	return at+1 < len(words) && words[at+1].Type == TokName && nearestUnit(words[at+1].Value) != ""
}

// lacksTo reports whether a place stands where `to` and a place must.
func lacksTo(kind *Kind, words []Token, at int) bool {
	return kind.Verb && at == 2 && (IsNameToken(words[at]) || words[at].Value == "(") &&
		(strings.Contains(kind.Usage, "PATH") || strings.Contains(kind.Usage, words[1].Value+" to "))
}

func isNumeric(t Token) bool { return t.Type == TokNumber || t.Type == TokQuantity }

// badToken is about the first piece of text that has no meaning anywhere.
func (p *parser) badToken(words []Token) *complaint {
	for i, t := range words {
		c := &complaint{code: CodeSyntax, span: spanOf(p.file.Source, words[i:i+1])}
		switch {
		case t.Type == TokOpenText:
			c.message = "the text that begins here has no closing quote"
			return c
		case t.Type != TokIllegal:
			continue
		case len([]rune(t.Value)) > 1 && t.Value[0] != 0:
			inner := strings.Trim(t.Value, "“”„«»'‘’`")
			c.message, c.fix = "a text stands between straight double quotes", Quote(inner)
		case t.Value == "_" && i > 0 && t.Pos.Offset == words[i-1].Pos.Offset+len(words[i-1].Value):
			c.message = fmt.Sprintf("a name has letters, digits and hyphens between them; `%s_` has `_`", words[i-1].Value)
			c.fix = "-"
		case t.Value == "-":
			c.message = "`-` has no meaning here; the hyphens of a name stand between its letters, and a minus before its number"
		default:
			c.message = fmt.Sprintf("`%s` has no meaning here", printable(t.Value))
		}
		return c
	}
	return nil
}

// printable shows bytes that are no text as their number.
func printable(s string) string {
	if strings.ToValidUTF8(s, "") != s || strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r == 0x7f }) {
		return fmt.Sprintf("% X", s)
	}
	return s
}

// openBracket is the index of the first bracket that is not closed; -1 if none.
func openBracket(words []Token) int {
	var open []int
	for i, t := range words {
		if t.Type != TokPunct {
			continue
		}
		switch {
		case t.Value == "(":
			open = append(open, i)
		case t.Value == ")" && len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return -1
	}
	return open[0]
}

// sideWithoutOf reports whether `2 m left M1` is what is written.
func sideWithoutOf(words []Token, at int) bool {
	return at >= 2 && (words[at-1].Value == "left" || words[at-1].Value == "right") &&
		words[at-2].Type == TokQuantity && (IsNameToken(words[at]) || words[at].Value == "(")
}

// joins reports whether a word is one of the kind's own.
func joins(k *Kind, word string) bool { return slices.Contains(k.usageWords(), word) }

func usageNote(k *Kind) string { return "written: " + k.Usage }

// misfit is about a phrase that is said twice or out of place; a word misspelt
// before it, which was taken for a name, is the likelier mistake.
func (p *parser) misfit(kind *Kind, words []Token, f *folder) *complaint {
	c := &complaint{code: CodeSyntax, span: f.at.Span(p.file.Source), message: f.message,
		notes: append(f.notes, usageNote(kind))}
	i := slices.IndexFunc(words, func(t Token) bool { return t.Pos.Offset == c.span.Start })
	if i < 2 || words[i-1].Type != TokName || !isNumeric(words[i]) || slices.Contains(kind.Words, words[i-1].Value) {
		return c
	}
	if near := Nearest(words[i-1].Value, kind.usageWords()); near != "" {
		c.span = spanOf(p.file.Source, words[i-1:i])
		c.message, c.fix = fmt.Sprintf("`%s` has no meaning here; did you mean `%s`?", words[i-1].Value, near), near
	}
	return c
}
