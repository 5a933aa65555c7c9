package syntax

import (
	"fmt"
	"strings"
)

// kind finds what statement a line is from its first words.
func (p *parser) kind(words []Token) (*Kind, *complaint) {
	first := words[0].Value
	if IsSectionWord(first) {
		return head(first), nil
	}
	section := p.at.Word
	if k := find(section, first, false); k != nil {
		return k, nil
	}
	if section == "beat" || section == "pickup" {
		if len(words) > 1 {
			if k := find(section, words[1].Value, true); k != nil && IsNameToken(words[0]) {
				return k, nil
			}
		}
	}
	return nil, p.unknown(words)
}

func (p *parser) unknown(words []Token) *complaint {
	return &complaint{code: CodeWord, span: spanOf(p.file.Source, words[:1]),
		message: fmt.Sprintf("no statement begins with `%s`", words[0].Value)}
}

func (p *parser) explain(kind *Kind, words []Token, at Token) *complaint {
	c := &complaint{code: CodeSyntax, notes: []string{usageNote(kind)}}
	if at.Type == TokEOF {
		c.span = spanOf(p.file.Source, words[len(words)-1:])
		c.message = "the line ends too soon"
		return c
	}
	c.span = spanOf(p.file.Source, []Token{at})
	c.message = fmt.Sprintf("`%s` does not fit here", at.Value)
	return c
}

func usageNote(k *Kind) string { return "written: " + strings.ReplaceAll(k.Usage, " | ", " or ") }
