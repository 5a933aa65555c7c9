package highlight

import (
	"encoding/xml"
	"fmt"
	"strings"
)

// chromaTypes are the kinds of token chroma's styles know.
var chromaTypes = map[Role]string{
	Plain: "TextWhitespace", Comment: "CommentSingle", Text: "LiteralStringDouble", Escape: "LiteralStringEscape",
	Number: "LiteralNumber", Stop: "LiteralNumberFloat", Section: "KeywordNamespace", Statement: "KeywordReserved",
	Verb: "NameFunction", Join: "OperatorWord", Option: "NameConstant", Class: "KeywordType",
	Declared: "NameClass", Name: "NameVariable", Mark: "Punctuation", Wrong: "Error",
}

// chroma is the lexer of the printer of that name, for pages made with it.
func chroma() []byte {
	d := perl{escape: `\u%04x`, alphabet: letters, inWord: inWords}
	var b strings.Builder
	fmt.Fprintf(&b, `<!-- %s -->
<lexer>
  <config>
    <name>Longhand</name>
    <alias>longhand</alias>
    <alias>take</alias>
    <filename>*.take</filename>
    <mime_type>text/x-longhand</mime_type>
  </config>
  <rules>
    <state name="root">
`, madeBy)
	one := func(match string, r Role) {
		fmt.Fprintf(&b, "      <rule pattern=%s><token type=\"%s\"/></rule>\n", quoteXML(match), chromaTypes[r])
	}
	one(`#[^\n]*`, Comment)
	fmt.Fprintf(&b, "      <rule pattern=%s><token type=\"%s\"/><push state=\"text\"/></rule>\n", quoteXML(`"`), chromaTypes[Text])
	for _, r := range rules() {
		if len(r.Parts) == 1 && !r.Start {
			match, caught := flat(r, d, true)
			one(match, caught[0])
			continue
		}
		match, caught := chromaGroups(r, d)
		fmt.Fprintf(&b, "      <rule pattern=%s><bygroups>", quoteXML(match))
		for _, role := range caught {
			fmt.Fprintf(&b, "<token type=\"%s\"/>", chromaTypes[role])
		}
		b.WriteString("</bygroups></rule>\n")
	}
	one(`\n|[^\S\n]+`, Plain) // a line's end by itself, so that the next line is read from its start
	one(`.`, Wrong)
	b.WriteString("    </state>\n    <state name=\"text\">\n")
	one(`\\.`, Escape)
	fmt.Fprintf(&b, "      <rule pattern=%s><token type=\"%s\"/><pop depth=\"1\"/></rule>\n", quoteXML(`"`), chromaTypes[Text])
	fmt.Fprintf(&b, "      <rule pattern=%s><token type=\"%s\"/><pop depth=\"1\"/></rule>\n", quoteXML(`\n`), chromaTypes[Plain])
	one(`[^"\\\n]+|\\`, Text)
	b.WriteString("    </state>\n  </rules>\n</lexer>\n")
	return []byte(b.String())
}

// chromaGroups is a rule of which every character is in a group, blanks too.
func chromaGroups(r rule, d dialect) (match string, caught []Role) {
	var b strings.Builder
	if r.Start {
		b.WriteString("^" + d.capture(written(blank, d)+d.repeat()))
		caught = append(caught, Plain)
	}
	for i, p := range r.Parts {
		text := d.capture(written(p.Pattern, d))
		if i > 0 {
			text = d.capture(written(blank, d)+d.many()) + text
			caught = append(caught, Plain)
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

func quoteXML(text string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(text)); err != nil {
		panic(err) // a strings.Builder takes everything
	}
	return `"` + b.String() + `"`
}
