package highlight

// madeBy stands at the top of every file made here.
const madeBy = "Made from the statement table. Change lang/highlight or lang/syntax, then run: go generate ./lang/highlight"

// Files are the grammars, by their path from the top of the checkout.
func Files() map[string][]byte {
	grammar := textMate()
	return map[string][]byte{
		"editors/textmate/longhand.tmLanguage.json":        grammar,
		"editors/vscode/syntaxes/longhand.tmLanguage.json": grammar,
		"editors/vscode/snippets/longhand.json":            snippets(),
		"editors/sublime/Longhand.sublime-syntax":          sublime(),
		"editors/vim/syntax/longhand.vim":                  vimSyntax(),
		"editors/vim/indent/longhand.vim":                  vimIndent(),
		"editors/emacs/longhand-mode.el":                   emacsLisp(),
		"editors/chroma/longhand.xml":                      chroma(),
		"editors/kate/longhand.xml":                        kate(),
	}
}
