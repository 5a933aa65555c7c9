package sheets

import (
	"strings"
)

// Markdown writes a sheet with a table a table.
func (b *Book) Markdown(s *Sheet) []byte {
	var w strings.Builder
	w.WriteString("# " + inline(b.heading(s)) + "\n\n")
	w.WriteString(inline(b.line()) + "\n")
	for _, l := range s.Says {
		w.WriteString("\n**" + inline(sentence(l)) + "**\n")
	}
	for i := range s.Tables {
		markdownTable(&w, &s.Tables[i])
	}
	if len(s.Cautions) > 0 {
		w.WriteString("\n## Mind\n\n")
		for _, c := range s.Cautions {
			w.WriteString("- " + inline(sentence(c)) + "\n")
		}
	}
	w.WriteString("\n" + inline(b.Safety) + "\n")
	return []byte(w.String())
}

func markdownTable(w *strings.Builder, t *Table) {
	w.WriteString("\n## " + inline(t.Title) + "\n\n")
	t, rest := t.Near()
	if len(t.Rows) == 0 {
		w.WriteString(inline(t.Empty) + "\n")
	} else {
		p := t.printed()
		columns := p.columns
		if p.group >= 0 {
			columns = append([]int{p.group}, columns...)
		}
		head, rule := "|", "|"
		for _, c := range columns {
			head += " " + cellText(t.Columns[c].Title) + " |"
			if t.numeric(c) {
				rule += " ---: |"
			} else {
				rule += " --- |"
			}
		}
		w.WriteString(head + "\n" + rule + "\n")
		for i := range t.Rows {
			w.WriteString("|")
			for _, c := range columns {
				w.WriteString(" " + cellText(t.Rows[i].Cells[c].Text) + " |")
			}
			w.WriteString("\n")
		}
	}
	if rest != "" {
		w.WriteString("\n" + inline(sentence(rest)) + "\n")
	}
	for _, n := range t.Notes {
		w.WriteString("\n" + inline(sentence(n)) + "\n")
	}
}

// inline keeps text from being taken for markup.
func inline(s string) string {
	return strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "[", `\[`, "#", `\#`).Replace(s)
}

func cellText(s string) string {
	s = inline(s)
	s = strings.ReplaceAll(s, "|", `\|`)
	return strings.Join(strings.Fields(s), " ")
}

// sentence makes a note a sentence.
func sentence(s string) string {
	r := []rune(s)
	if len(r) == 0 {
		return ""
	}
	return strings.ToUpper(string(r[0])) + string(r[1:]) + "."
}

// heading is a sheet's title with the take's.
func (b *Book) heading(s *Sheet) string { return s.Title + ": " + b.Title }

// line is what stands under a sheet's title.
func (b *Book) line() string {
	var out []string
	add := func(word, v string) {
		if v != "" {
			out = append(out, strings.TrimSpace(word+" "+v))
		}
	}
	add("scene", b.Scene)
	add("", b.Set)
	add("revision", b.Revision)
	add("shoot", b.Date)
	add("take", b.Length+" at "+b.Rate+" fps")
	add("open findings:", b.Open)
	return strings.Join(out, " · ")
}
