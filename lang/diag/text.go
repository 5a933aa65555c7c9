package diag

import (
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"

	"longhand/lang/source"
)

// Paint colours parts of a text for a terminal; the zero Paint leaves it plain.
type Paint struct{ On bool }

func (p Paint) severity(s Severity, text string) string {
	return p.wrap([...]string{"36", "33;1", "31;1"}[s], text)
}

func (p Paint) dim(text string) string { return p.wrap("2", text) }

func (p Paint) wrap(code, text string) string {
	if !p.On {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

// WriteText prints findings for people: place, code and message, the line with
// the part to change underlined, then related places, notes and fixes.
func WriteText(w io.Writer, list []Diagnostic, paint Paint) error {
	var b strings.Builder
	for i := range list {
		d := &list[i]
		if d.Span.Valid() {
			fmt.Fprintf(&b, "%s: ", place(d.Span))
		}
		fmt.Fprintf(&b, "%s: %s\n", paint.severity(d.Severity, d.Severity.String()+" "+string(d.Code)), d.Message)
		snippet(&b, d.Span, paint)
		for _, r := range d.Related {
			fmt.Fprintf(&b, "  %s %s\n", paint.dim("see "+place(r.Span)+":"), r.Message)
		}
		for _, n := range d.Notes {
			fmt.Fprintf(&b, "  %s %s\n", paint.dim("note:"), n)
		}
		for _, f := range d.Fixes {
			fmt.Fprintf(&b, "  %s %s\n", paint.dim("fix:"), f.Title)
		}
		if _, err := io.WriteString(w, b.String()); err != nil {
			return err
		}
		b.Reset()
	}
	return nil
}

// WriteShort prints a line a finding, as editors and other tools read it:
// file:line:column: severity: message [code].
func WriteShort(w io.Writer, list []Diagnostic) error {
	for i := range list {
		d := &list[i]
		at := "-:1:1"
		if d.Span.Valid() {
			at = place(d.Span)
		}
		if _, err := fmt.Fprintf(w, "%s: %s: %s [%s]\n", at, d.Severity, d.Message, d.Code); err != nil {
			return err
		}
	}
	return nil
}

func place(s source.Span) string {
	if !s.Valid() {
		return "-:1:1"
	}
	p := s.StartPos()
	return fmt.Sprintf("%s:%d:%d", s.File.Name, p.Line, p.Column)
}

func snippet(b *strings.Builder, s source.Span, paint Paint) {
	if !s.Valid() {
		return
	}
	start, end := s.StartPos(), s.EndPos()
	line := strings.Map(printable, s.File.Line(start.Line))
	if strings.TrimSpace(line) == "" {
		return
	}
	number := fmt.Sprintf("%5d", start.Line)
	lead, under := "", 1
	if n := utf8.RuneCountInString(line); start.Column <= n+1 {
		// Tabs keep their width under the line, so the marks stand where they
		// should whatever the terminal makes of a tab.
		for _, r := range string([]rune(line)[:start.Column-1]) {
			if r == '\t' {
				lead += "\t"
			} else {
				lead += " "
			}
		}
		last := n + 1
		if end.Line == start.Line {
			last = end.Column
		}
		under = max(1, last-start.Column)
	}
	fmt.Fprintf(b, "%s %s\n", paint.dim(number+" |"), line)
	fmt.Fprintf(b, "%s %s%s\n", paint.dim("      |"), lead, strings.Repeat("^", under))
}

// printable keeps what a terminal would take for a command out of it.
func printable(r rune) rune {
	if r == utf8.RuneError || r != '\t' && unicode.IsControl(r) {
		return '·'
	}
	return r
}

// Summary counts findings in words: "2 errors, 1 warning"; "nothing found".
func Summary(list []Diagnostic) string {
	var n [3]int
	for i := range list {
		n[list[i].Severity]++
	}
	var parts []string
	for s := Error; s >= Note; s-- {
		switch n[s] {
		case 0:
		case 1:
			parts = append(parts, "1 "+s.String())
		default:
			parts = append(parts, fmt.Sprintf("%d %ss", n[s], s))
		}
	}
	if len(parts) == 0 {
		return "nothing found"
	}
	return strings.Join(parts, ", ")
}
