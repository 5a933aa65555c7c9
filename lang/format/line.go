package format

import (
	"strings"

	"longhand/lang/syntax"
)

// lineRows lays out one line of the plan: one row, or more for a statement
// broken after a comma or inside brackets.
func lineRows(line *syntax.Line, outer bool) []row {
	lead := indent
	if outer || line.Section == nil || line.Section.Word == "" || isHeader(line) {
		lead = ""
	}
	if _, ok := line.Stmt.(*syntax.Use); ok {
		lead = ""
	}
	if isComment(line) {
		return []row{{text: lead + comment(line.Tokens)}}
	}
	if line.Stmt != nil {
		rows := statementRows(line, lead)
		if same(line.Tokens, rows) {
			return rows
		}
	}
	return asWritten(line.Tokens)
}

// asWritten keeps a line that could not be read, but for its end.
func asWritten(tokens []syntax.Token) []row {
	var rows []row
	for part := range strings.SplitSeq(strings.TrimSuffix(syntax.Print(tokens), "\n"), "\n") {
		rows = append(rows, row{text: strings.TrimRight(part, syntax.Blanks)})
	}
	return rows
}

// statementRows lays out a statement: one blank between its tokens, none inside
// brackets nor before a comma.
func statementRows(line *syntax.Line, lead string) []row {
	_, keeps := line.Stmt.(*syntax.Scene) // a scene's number is no quantity: 31A
	var rows []row
	var text strings.Builder
	text.WriteString(lead)
	var last, before syntax.Token // the last token that is no blank, and the last of all
	begun := false
	end := func(c string) {
		r := row{text: strings.TrimRight(text.String(), " "), comment: c}
		if !begun { // a comment alone inside a broken statement
			r = row{text: r.text + strings.Repeat(" ", max(0, text.Len()-len(r.text))) + c}
		}
		rows = append(rows, r)
		text.Reset()
		text.WriteString(lead + continuation[len(indent):])
		begun = false
	}
	note := ""
	for _, t := range line.Tokens {
		switch t.Type {
		case syntax.TokSpace:
		case syntax.TokComment:
			note = strings.TrimRight(t.Value, syntax.Blanks)
		case syntax.TokEOL:
			end(note)
			note = ""
		default:
			if begun && gap(last, t) && !(keeps && before.Type != syntax.TokSpace) {
				text.WriteByte(' ')
			}
			switch {
			case t.Type == syntax.TokQuantity && keeps:
				text.WriteString(oneBlank(t.Value))
			case t.Type == syntax.TokQuantity:
				text.WriteString(quantity(t.Value))
			default:
				text.WriteString(t.Value)
			}
			last, begun = t, true
		}
		before = t
	}
	if begun || note != "" {
		end(note)
	}
	return rows
}

// gap reports whether a blank stands between two tokens.
func gap(left, right syntax.Token) bool {
	switch {
	case left.Type == syntax.TokPunct && left.Value == "(":
		return false
	case right.Type == syntax.TokPunct && (right.Value == ")" || right.Value == ","):
		return false
	}
	return true
}

// quantity writes a number, one blank, and its unit; marks stand close: 8'6",
// 45°.
func quantity(text string) string {
	n := strings.IndexFunc(text, func(r rune) bool { return !strings.ContainsRune("+-.0123456789", r) })
	if n < 0 {
		return text
	}
	number := text[:n]
	unit := oneBlank(text[n:])
	if strings.ContainsAny(unit, "'\"′″’”½¼¾⅛⅜⅝⅞/") && !strings.HasSuffix(unit, "/s") && !strings.Contains(unit, "/m") && !strings.Contains(unit, "/h") {
		return feet(text)
	}
	if strings.HasPrefix(unit, "°") {
		return number + unit
	}
	return number + " " + unit
}

// feet writes feet and inches close to each other, and one blank before a
// fraction.
func feet(text string) string {
	text = oneBlank(text)
	for _, foot := range []string{"'", "′", "’"} {
		text = strings.Replace(text, foot+" ", foot, 1)
	}
	return text
}

// oneBlank leaves one blank where there are any, and none at the ends.
func oneBlank(text string) string {
	return strings.Join(strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(syntax.Blanks, r) }), " ")
}

// comment is the text of a comment that stands alone.
func comment(tokens []syntax.Token) string {
	for _, t := range tokens {
		if t.Type == syntax.TokComment {
			return strings.TrimRight(t.Value, syntax.Blanks)
		}
	}
	return ""
}

// same reports whether rows hold the tokens they were made from: a statement
// that would come out as another is left as it was written.
func same(tokens []syntax.Token, rows []row) bool {
	var text strings.Builder
	for _, r := range rows {
		text.WriteString(r.text + " " + r.comment + "\n")
	}
	got := words(syntax.Lex("", text.String()))
	want := words(tokens)
	if len(got) != len(want) {
		return false
	}
	for i := range got {
		if got[i].Type != want[i].Type || bare(got[i].Value) != bare(want[i].Value) {
			return false
		}
	}
	return true
}

func words(tokens []syntax.Token) []syntax.Token {
	var out []syntax.Token
	for _, t := range tokens {
		if t.Type != syntax.TokSpace && t.Type != syntax.TokEOL {
			out = append(out, t)
		}
	}
	return out
}

// bare is a text without its blanks.
func bare(text string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune(syntax.Blanks, r) {
			return -1
		}
		return r
	}, text)
}
