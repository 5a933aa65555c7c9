package lsp

import (
	"strings"

	"longhand/lang/source"
	"longhand/lang/syntax"
)

// skimmed is what a look at the first word of each line tells of a text: enough
// to know which plans a change is about, without reading the text in full.
type skimmed struct {
	plan bool     // it is a plan by itself, not part of others
	uses []string // the files it uses, as written
	// drawings are the files it takes walls from.
	drawings []string
}

func skim(text string) skimmed {
	var s skimmed
	for line := range strings.Lines(text) {
		line = strings.Trim(line, syntax.Blanks+"\n")
		word, rest := line, ""
		if i := strings.IndexAny(line, syntax.Blanks+`"`); i >= 0 {
			word, rest = line[:i], line[i:]
		}
		switch word {
		case "take", "look", "beat", "pickup":
			s.plan = true
		case "use":
			s.uses = append(s.uses, quoted(rest)...)
		case "plan":
			s.drawings = append(s.drawings, quoted(rest)...)
		}
	}
	return s
}

// quoted is the first text in quotes, if there is one.
func quoted(line string) []string {
	for _, t := range syntax.Lex("", line) {
		if t.Type == syntax.TokString {
			return []string{(&syntax.String{Raw: t.Value}).Value()}
		}
	}
	return nil
}

// document is a text that is open in the editor.
type document struct {
	uri     string
	name    string
	version int
	src     *source.File
	skimmed skimmed
}
