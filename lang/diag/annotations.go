package diag

import (
	"fmt"
	"io"
	"strings"
)

// annotationsEach is how many annotations of a kind a hosted job shows for one
// step; the rest would be dropped in silence, so the last says how many there
// are.
const annotationsEach = 10

// WriteGitHub prints workflow commands that annotate the lines of a change.
func WriteGitHub(w io.Writer, list []Diagnostic) error {
	words := [...]string{Note: "notice", Warning: "warning", Error: "error"}
	for s := Error; s >= Note; s-- {
		n := 0
		for i := range list {
			d := &list[i]
			if d.Severity != s {
				continue
			}
			n++
			if n > annotationsEach {
				continue
			}
			at := ""
			if d.Span.Valid() {
				a, b := d.Span.StartPos(), d.Span.EndPos()
				at = fmt.Sprintf(" file=%s,line=%d,col=%d,endLine=%d,endColumn=%d,title=%s",
					commandEscape(d.Span.File.Name, true), a.Line, a.Column, b.Line, b.Column, commandEscape(string(d.Code), true))
			}
			if _, err := fmt.Fprintf(w, "::%s%s::%s\n", words[s], at, commandEscape(d.Message, false)); err != nil {
				return err
			}
		}
		if n > annotationsEach {
			if _, err := fmt.Fprintf(w, "%d more of kind %s, not annotated\n", n-annotationsEach, s); err != nil {
				return err
			}
		}
	}
	return nil
}

func commandEscape(s string, property bool) string {
	s = strings.NewReplacer("%", "%25", "\r", "%0D", "\n", "%0A").Replace(s)
	if property {
		s = strings.NewReplacer(":", "%3A", ",", "%2C").Replace(s)
	}
	return s
}
