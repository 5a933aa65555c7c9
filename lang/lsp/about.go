package lsp

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"longhand/lang/body"
	"longhand/lang/compile"
	"longhand/lang/diag"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// entries are all findings, explained.
var entries = sync.OnceValue(compile.Catalog)

// code puts text between marks that keep it as it is.
func code(text string) string { return "```longhand\n" + text + "\n```" }

var capitals = regexp.MustCompile(`[A-Z]{2,}|\bT\b`)

// aboutStatement is a statement's meaning, its example, and what the capitals of
// its usage stand for.
func aboutStatement(k *syntax.Kind) string {
	var b strings.Builder
	b.WriteString(k.Means)
	if k.Doc != "" {
		b.WriteString("\n\n" + k.Doc)
	}
	b.WriteString("\n\n" + code(k.Example))
	told := []string{}
	for _, w := range capitals.FindAllString(k.Usage, -1) {
		if text, ok := syntax.Notation[w]; ok && !slices.Contains(told, w) && w != "NAME" && w != "STRING" && w != "NUMBER" {
			told = append(told, w)
			fmt.Fprintf(&b, "\n- `%s`: %s", w, text)
		}
	}
	return b.String()
}

// aboutFinding explains a code.
func aboutFinding(c diag.Code) string {
	for _, e := range entries() {
		if e.Code == c {
			return fmt.Sprintf("**%s** (%s): %s\n\n%s", e.Code, e.Severity, e.Title, strings.TrimSpace(e.Explain))
		}
	}
	return ""
}

// aboutSize says what a size shows.
func aboutSize(word string) string {
	size, err := body.ParseSize(word)
	if err != nil {
		return ""
	}
	const stature = 1.75 // of the person that the heights are said for
	h := size.FrameHeight(stature)
	if size == body.Wide {
		return fmt.Sprintf("`wide`: the frame is %s high or more at somebody of %s", h.Text(units.Metric), units.Metres(stature).Text(units.Metric))
	}
	return fmt.Sprintf("`%s`: the frame is %s high at somebody of %s", word, h.Text(units.Metric), units.Metres(stature).Text(units.Metric))
}

// aboutClass lists what is taken for granted about a class of rig.
func aboutClass(word string) string { return defaultsOf("rig "+word, units.Metric) }

// defaultsOf lists what is taken for granted about a thing; `longhand kit` has the
// sources.
func defaultsOf(word string, system units.System) string {
	var b strings.Builder
	for _, d := range compile.Defaults(system) {
		if subject, what, ok := strings.Cut(d.Name, ", "); ok && subject == word {
			fmt.Fprintf(&b, "\n- %s: %s", what, d.Value)
		}
	}
	if b.Len() == 0 {
		return ""
	}
	return "taken for granted of a " + strings.TrimPrefix(word, "rig ") + " where the plan says nothing; `longhand kit` has the sources:\n" + b.String()
}

// foundAt lists the codes of what can be found at a statement.
func foundAt(k *syntax.Kind) string {
	var codes []string
	for _, e := range compile.FoundAt(k) {
		codes = append(codes, "`"+string(e.Code)+"`")
	}
	if len(codes) == 0 {
		return ""
	}
	return "what can be found here: " + strings.Join(codes, ", ")
}
