package highlight

import (
	_ "embed"
	"fmt"
	"strings"

	"longhand/lang/syntax"
)

// emacsFaces are the faces of Emacs's own themes.
var emacsFaces = map[Role]string{
	Number: "font-lock-constant-face", Stop: "font-lock-constant-face", Section: "font-lock-preprocessor-face",
	Statement: "font-lock-keyword-face", Verb: "font-lock-function-name-face", Join: "font-lock-builtin-face",
	Option: "font-lock-type-face", Class: "font-lock-type-face", Declared: "font-lock-variable-name-face",
	Wrong: "font-lock-warning-face",
}

//go:embed longhand-mode.el.in
var emacsMode string

// emacsLisp is the mode; comments and texts are told by its syntax table.
func emacsLisp() []byte {
	d := emacs{}
	var keywords strings.Builder
	for _, r := range rules() {
		match, caught := flat(r, d, false)
		var faces []string
		for i, role := range caught {
			face := emacsFaces[role]
			if role == Name && r.Start {
				face = "default" // so that no rule below takes it for the word of a statement
			}
			if face != "" {
				faces = append(faces, fmt.Sprintf("(%d '%s nil t)", i+1, face))
			}
		}
		if len(faces) > 0 {
			fmt.Fprintf(&keywords, "   (list \"%s\"\n         %s)\n", match, quoted(faces))
		}
	}
	inches := written(seq{number, opt{seq{set(footMarks), either{many{blank}, opt{literal("-")}}, digit}}, inchTail}, d)
	return []byte(strings.NewReplacer(
		"@MADE@", madeBy, "@KEYWORDS@", strings.TrimRight(keywords.String(), "\n"),
		"@INCHES@", inches, "@SECTIONS@", `"`+strings.Join(syntax.SectionWords, `" "`)+`"`,
	).Replace(emacsMode))
}

func quoted(faces []string) string {
	for i, f := range faces {
		faces[i] = "'" + f
	}
	return strings.Join(faces, "\n         ")
}
