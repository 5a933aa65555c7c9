package diag

import (
	"encoding/json"
	"io"
)

// WriteGitLab prints a code quality report.
func WriteGitLab(w io.Writer, list []Diagnostic) error {
	words := [...]string{Note: "info", Warning: "minor", Error: "major"}
	prints := Fingerprints(list)
	out := []object{}
	for i := range list {
		d := &list[i]
		line := 1
		if d.Span.Valid() {
			line = d.Span.StartPos().Line
		}
		out = append(out, object{
			"description": d.Message, "check_name": string(d.Code), "fingerprint": prints[i], "severity": words[d.Severity],
			"location": object{"path": fileName(d.Span), "lines": object{"begin": line}},
		})
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}
