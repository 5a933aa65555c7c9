package highlight

import (
	_ "embed"
	"strings"

	"longhand/lang/syntax"
)

//go:embed indent.vim.in
var indentVim string

// vimIndent is the indent file, which sets lines in as the formatter does.
func vimIndent() []byte {
	return []byte(strings.NewReplacer(
		"@MADE@", madeBy, "@SECTIONS@", strings.Join(syntax.SectionWords, "|"),
		"@KEYS@", "0=~"+strings.Join(syntax.SectionWords, ",0=~"),
	).Replace(indentVim))
}
