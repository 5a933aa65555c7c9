package diag

import (
	"sort"
	"strings"
)

// Apply makes the edits of a fix to texts by file name and returns the new
// texts of the files that change; false where edits overlap or lie outside.
func (f Fix) Apply(texts map[string]string) (map[string]string, bool) {
	byFile := map[string][]Edit{}
	for _, e := range f.Edits {
		if !e.Span.Valid() {
			return nil, false
		}
		name := e.Span.File.Name
		byFile[name] = append(byFile[name], e)
	}
	out := map[string]string{}
	for name, edits := range byFile {
		text, ok := texts[name]
		if !ok {
			return nil, false
		}
		sort.SliceStable(edits, func(i, j int) bool { return edits[i].Span.Start < edits[j].Span.Start })
		var b strings.Builder
		at := 0
		for _, e := range edits {
			if e.Span.Start < at || e.Span.End < e.Span.Start || e.Span.End > len(text) {
				return nil, false
			}
			b.WriteString(text[at:e.Span.Start])
			b.WriteString(e.Text)
			at = e.Span.End
		}
		b.WriteString(text[at:])
		out[name] = b.String()
	}
	return out, len(out) > 0
}
