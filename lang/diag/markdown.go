package diag

import (
	"fmt"
	"io"
	"strings"
)

// WriteMarkdown prints findings as a table.
func WriteMarkdown(w io.Writer, list []Diagnostic) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", Summary(list))
	if len(list) > 0 {
		b.WriteString("\n| where | what | finding |\n| --- | --- | --- |\n")
	}
	for i := range list {
		d := &list[i]
		at := ""
		if d.Span.Valid() {
			at = fmt.Sprintf("%s:%d", d.Span.File.Name, d.Span.StartPos().Line)
		}
		fmt.Fprintf(&b, "| %s | %s %s | %s |\n", cell(at), d.Severity, d.Code, cell(d.Message))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// cell keeps a text from breaking its table.
func cell(s string) string {
	return strings.NewReplacer("|", `\|`, "\n", " ", "<", "&lt;").Replace(s)
}
