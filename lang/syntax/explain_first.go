package syntax

import (
	"fmt"
	"strings"
)

// kind finds what statement a line is from its first words.
func (p *parser) kind(words []Token) (*Kind, *complaint) {
	if word, starts := p.startsSection(words); starts && word == words[0].Value {
		return head(word), nil
	}
	section := ""
	if p.at != nil {
		section = p.at.Word
	}
	first := words[0].Value
	if k := find(section, first, false); k != nil {
		return k, nil
	}
	if verb := verbOf(words); verb != "" && inBeat(section) && !IsSectionWord(first) {
		return find(section, verb, true), nil
	}
	return nil, p.unknown(section, words)
}

// startsSection reports whether a line begins a section, and which. A header
// with a slip in its word still begins its section, so that the lines below it
// are read as what they are.
func (p *parser) startsSection(words []Token) (string, bool) {
	if len(words) == 0 {
		return "", false
	}
	first := words[0].Value
	inBeats := p.at != nil && inBeat(p.at.Word)
	if IsSectionWord(first) {
		return first, !(inBeats && verbOf(words) != "" && len(words) > 2)
	}
	section := ""
	if p.at != nil {
		section = p.at.Word
	}
	if words[0].Type != TokName || find(section, first, false) != nil || inBeats && verbOf(words) != "" {
		return "", false
	}
	near := Nearest(first, SectionWords)
	if near == "" || Nearest(first, lineWords(section)) != near {
		return "", false
	}
	if inBeats && near != "people" && !inBeat(near) { // Jake "Good evening": a name, and a verb left out
		return "", false
	}
	titled := strings.Contains(head(near).Usage, "STRING")
	has := len(words) > 1 && (words[1].Type == TokString || words[1].Type == TokOpenText)
	return near, titled && has || !titled && len(words) == 1
}

func inBeat(section string) bool { return section == "beat" || section == "pickup" }

// verbOf is the second word of a line if it says what the first one does.
func verbOf(words []Token) string {
	if len(words) < 2 || !IsNameToken(words[0]) {
		return ""
	}
	for _, k := range byWord()[words[1].Value] {
		if k.Verb {
			return words[1].Value
		}
	}
	return ""
}

// unknown says why no statement begins like this.
func (p *parser) unknown(section string, words []Token) *complaint {
	first := words[0].Value
	c := &complaint{code: CodeWord, span: spanOf(p.file.Source, words[:1])}
	if bad := p.badToken(words[:1]); bad != nil {
		return bad
	}
	if near, starts := p.startsSection(words); starts {
		c.message, c.fix = fmt.Sprintf("no section is called `%s`; did you mean `%s`?", first, near), near
		return c
	}
	switch {
	case IsSectionWord(first):
		return &complaint{code: CodeReserved, span: c.span,
			message: fmt.Sprintf("`%s` begins a section and cannot be a name", first)}
	case words[0].Type == TokKeyword:
		c.code = CodeSyntax
		c.message = fmt.Sprintf("a line does not begin with `%s`", first)
		c.notes = []string{"a statement goes on on the next line only after a comma, or inside brackets"}
		return c
	case !IsNameToken(words[0]):
		c.code = CodeSyntax
		c.message = fmt.Sprintf("a line begins with a word, not with `%s`", first)
		return c
	}
	near := meantBy(first, lineWords(section))
	if other := elsewhere(section, words); other != nil && (near == "" || !other.Verb || inBeat(section)) {
		c.code = CodeSection
		if other.Verb {
			first += " " + words[1].Value
			c.span = spanOf(p.file.Source, words[:2])
		}
		c.message = misplaced(other, first, section)
		c.notes = []string{"written: " + other.Usage}
		return c
	}
	if near != "" && !(inBeat(section) && len(words) > 1 && meantBy(words[1].Value, Verbs()) != "") {
		c.message, c.fix = fmt.Sprintf("no line of %s begins with `%s`; did you mean `%s`?", sectionName(section), first, near), near
		return c
	}
	if inBeat(section) {
		return p.unknownVerb(c, words)
	}
	c.message = fmt.Sprintf("no line of %s begins with `%s`", sectionName(section), first)
	c.notes = []string{fmt.Sprintf("%s has: %s", sectionName(section), strings.Join(lineKinds(section), ", "))}
	return c
}

// unknownVerb is about a line of a beat whose second word is no verb.
func (p *parser) unknownVerb(c *complaint, words []Token) *complaint {
	first := words[0].Value
	if len(words) == 1 {
		c.message = fmt.Sprintf("`%s` alone says nothing: after a name comes what they do", first)
		c.notes = []string{"for example: mina walks to M1"}
		return c
	}
	second := words[1].Value
	c.span = spanOf(p.file.Source, words[1:2])
	if bad := p.badToken(words[1:2]); bad != nil {
		return bad
	}
	if second == "," {
		c.code = CodeSyntax
		c.message = "a line is about one subject; write a line for each"
		return c
	}
	if near := meantBy(second, Verbs()); near != "" {
		c.message, c.fix = fmt.Sprintf("`%s` is nothing that `%s` can do; did you mean `%s`?", second, first, near), near
		return c
	}
	c.message = fmt.Sprintf("`%s` is nothing that `%s` can do", second, first)
	c.notes = []string{"after a name comes one of: " + strings.Join(Verbs(), ", ")}
	return c
}

// elsewhere is the kind that a line's first words have in another section.
func elsewhere(section string, words []Token) *Kind {
	if verb := verbOf(words); verb != "" && !inBeat(section) {
		return find("beat", verb, true)
	}
	for _, k := range byWord()[words[0].Value] {
		if !k.Verb && !k.Head {
			return k
		}
	}
	return nil
}

func misplaced(k *Kind, first, section string) string {
	what := "`" + first + "`"
	if section == "" {
		return fmt.Sprintf("%s belongs in %s, and no section has begun", what, sectionName(k.Section))
	}
	return fmt.Sprintf("%s belongs in %s, not in %s", what, sectionName(k.Section), sectionName(section))
}

// sectionName says a section in words.
func sectionName(section string) string {
	switch section {
	case "":
		return "the top of a plan"
	case "beat":
		return "a beat"
	case "pickup":
		return "a pickup"
	}
	return "the `" + section + "` section"
}

func lineKinds(section string) []string {
	words := lineWords(section)
	return words[:len(words)-len(SectionWords)]
}
