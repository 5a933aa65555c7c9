package highlight

import (
	"fmt"
	"strings"
)

// kateStyles are the default styles of Kate's schemes.
var kateStyles = map[Role]string{
	Plain: "dsNormal", Comment: "dsComment", Text: "dsString", Escape: "dsSpecialChar", Number: "dsDecVal",
	Stop: "dsFloat", Section: "dsControlFlow", Statement: "dsKeyword", Verb: "dsFunction", Join: "dsOperator",
	Option: "dsConstant", Class: "dsDataType", Declared: "dsVariable", Name: "dsNormal", Mark: "dsNormal", Wrong: "dsError",
}

// katePerl spells letters as pandoc, which reads the same file with an engine of
// its own, knows them.
var katePerl = perl{escape: `\x{%04x}`, alphabet: plainLetters, inWord: plainInWords}

// kate is the syntax definition for Kate and what shares its engine. Where a
// rule has more than one part, each part after the first has a context of its
// own, which is left when something else stands there.
func kate() []byte {
	var main, chains, styles strings.Builder
	for i, r := range rules() {
		next := "#stay"
		if len(r.Parts) > 1 {
			next = fmt.Sprintf("rule%d-2", i+1)
		}
		match := written(r.Parts[0].Pattern, katePerl)
		if must := required(r); must != "" {
			match += katePerl.ahead(must, true)
		}
		start := ""
		if r.Start {
			start = ` firstNonSpace="true"`
		}
		fmt.Fprintf(&main, "        <RegExpr String=%s attribute=\"%v\" context=\"%s\"%s/>\n", quoteXML(match), r.Parts[0].Role, next, start)
		kateChain(&chains, i, r)
	}
	for _, r := range append([]Role{Plain}, roles()...) {
		fmt.Fprintf(&styles, "      <itemData name=\"%v\" defStyleNum=\"%s\" spellChecking=\"%t\"/>\n", r, kateStyles[r], r == Comment || r == Text)
	}
	return []byte(fmt.Sprintf(`<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE language>
<!-- %s -->
<language name="Longhand" section="Other" version="1" kateversion="5.0" extensions="*.take" mimetype="text/x-longhand" casesensitive="true">
  <highlighting>
    <contexts>
      <context name="main" attribute="Plain" lineEndContext="#stay">
        <RegExpr String="#.*$" attribute="Comment" context="#stay"/>
        <DetectChar char="&quot;" attribute="Text" context="text"/>
%s      </context>
      <context name="text" attribute="Text" lineEndContext="#pop">
        <RegExpr String="\\." attribute="Escape" context="#stay"/>
        <DetectChar char="&quot;" attribute="Text" context="#pop"/>
      </context>
%s    </contexts>
    <itemDatas>
%s    </itemDatas>
  </highlighting>
  <general>
    <comments><comment name="singleLine" start="#"/></comments>
    <keywords casesensitive="true" additionalDeliminator="'&quot;" weakDeliminator="-"/>
  </general>
</language>
`, madeBy, main.String(), chains.String(), styles.String()))
}

// required is what must follow a rule's first part.
func required(r rule) string {
	var b strings.Builder
	for _, p := range r.Parts[1:] {
		if !p.Optional {
			b.WriteString(written(seq{many{blank}, p.Pattern}, katePerl))
		}
	}
	if r.Ahead != nil {
		b.WriteString(written(r.Ahead, katePerl))
	}
	return b.String()
}

// kateChain writes the contexts of a rule's parts after the first.
func kateChain(b *strings.Builder, i int, r rule) {
	for at := 1; at < len(r.Parts); at++ {
		fmt.Fprintf(b, "      <context name=\"rule%d-%d\" attribute=\"Plain\" lineEndContext=\"#pop\" fallthrough=\"true\" fallthroughContext=\"#pop\">\n", i+1, at+1)
		fmt.Fprintf(b, "        <RegExpr String=%s attribute=\"Plain\" context=\"#stay\"/>\n", quoteXML(written(many{blank}, katePerl)))
		for j := at; j < len(r.Parts); j++ { // parts between may be missing
			next := "#pop"
			if j+1 < len(r.Parts) {
				next = fmt.Sprintf("#pop!rule%d-%d", i+1, j+2)
			}
			fmt.Fprintf(b, "        <RegExpr String=%s attribute=\"%v\" context=\"%s\"/>\n", quoteXML(written(r.Parts[j].Pattern, katePerl)), r.Parts[j].Role, next)
			if !r.Parts[j].Optional {
				break
			}
		}
		b.WriteString("      </context>\n")
	}
}
