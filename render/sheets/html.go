package sheets

import (
	"html"
	"regexp"
	"strings"
)

// HTML writes the book as one page that needs nothing else: no script, no picture,
// no network. It prints on A4, a department a section; on a narrow screen each row
// becomes a block.
func (b *Book) HTML() []byte {
	w := &page{}
	title := b.Title
	if len(b.Sheets) == 1 {
		title = b.heading(&b.Sheets[0])
	}
	w.raw("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta name=\"color-scheme\" content=\"light dark\">\n<title>")
	w.text(title)
	w.raw("</title>\n<style>\n" + style + "</style>\n</head>\n<body>\n")
	if len(b.Sheets) > 1 {
		w.raw("<nav aria-label=\"departments\"><ul>")
		for _, s := range b.Sheets {
			w.raw("<li><a href=\"#" + string(s.Department) + "\">")
			w.text(s.Title)
			w.raw("</a></li>")
		}
		w.raw("</ul></nav>\n")
	}
	w.raw("<main>\n")
	for i := range b.Sheets {
		w.sheet(b, &b.Sheets[i])
	}
	w.raw("</main>\n</body>\n</html>\n")
	return []byte(w.String())
}

type page struct{ strings.Builder }

func (w *page) raw(s string)  { w.WriteString(s) }
func (w *page) text(s string) { w.WriteString(html.EscapeString(s)) }

// element writes text between tags.
func (w *page) element(tag, attributes, s string) {
	w.raw("<" + tag + attributes + ">")
	w.text(s)
	w.raw("</" + tag + ">")
}

func (w *page) sheet(b *Book, s *Sheet) {
	id := string(s.Department)
	w.raw("<section class=\"sheet\" id=\"" + id + "\" aria-labelledby=\"" + id + "-title\">\n<header>")
	w.element("h1", " id=\""+id+"-title\"", s.Title)
	w.element("p", " class=\"take\"", b.Title)
	w.element("p", " class=\"line\"", b.line())
	for _, l := range s.Says {
		w.element("p", " class=\"take\"", sentence(l))
	}
	w.raw("</header>\n")
	for i := range s.Tables {
		w.table(id, &s.Tables[i])
	}
	w.raw("<footer>")
	if len(s.Cautions) > 0 {
		w.raw("<h2>Mind</h2>\n<ul>")
		for _, c := range s.Cautions {
			w.element("li", "", sentence(c))
		}
		w.raw("</ul>\n")
	}
	w.element("p", " class=\"safety\"", b.Safety)
	w.raw("</footer>\n</section>\n")
}

func (w *page) table(sheet string, t *Table) {
	w.raw("<section class=\"table\" id=\"" + sheet + "-")
	w.text(t.Key)
	w.raw("\">")
	w.element("h2", "", t.Title)
	t, rest := t.Near()
	if len(t.Rows) == 0 {
		w.element("p", " class=\"empty\"", t.Empty)
	} else {
		if t.Chart != nil {
			w.raw(t.Chart.svg())
		}
		w.rows(t)
	}
	if rest != "" {
		w.element("p", " class=\"note\"", sentence(rest))
	}
	for _, n := range t.Notes {
		w.element("p", " class=\"note\"", sentence(n))
	}
	w.raw("</section>\n")
}

func (w *page) rows(t *Table) {
	p := t.printed()
	class := ""
	switch {
	case len(p.columns) > wideTable:
		class = " class=\"wide\""
	case t.Columns[0].Key == "item":
		class = " class=\"facts\""
	}
	w.raw("\n<table" + class + ">\n<thead><tr>")
	for _, c := range p.columns {
		w.element("th", " scope=\"col\""+t.class(c), t.Columns[c].Title)
	}
	across := len(p.columns)
	if t.Spread != nil {
		across++
		w.raw("<th scope=\"col\">" + t.Spread.head() + "</th>")
	}
	w.raw("</tr></thead>\n<tbody>\n")
	for i := range t.Rows {
		if h, ok := t.heading(p, i); ok && h != "" {
			w.raw("<tr class=\"group\">")
			w.element("th", " scope=\"rowgroup\" colspan=\""+itoa(across)+"\"", h)
			w.raw("</tr>\n")
		}
		w.raw("<tr>")
		for _, c := range p.columns {
			v := t.Rows[i].Cells[c].Text
			if v == "" {
				w.raw("<td" + t.class(c) + "></td>")
				continue
			}
			w.raw("<td" + t.class(c) + " data-c=\"")
			w.text(t.Columns[c].Title)
			w.raw("\">")
			w.text(together(v))
			w.raw("</td>")
		}
		if t.Spread != nil {
			w.raw("<td>" + t.Spread.bar(t, i) + "</td>")
		}
		w.raw("</tr>\n")
	}
	w.raw("</tbody>\n</table>\n")
}

var (
	quantity = regexp.MustCompile(`(\d) (m|mm|s|min|kg|W|A|V|cd|lx|fc|%|K|fps|m/s|ft/s|ft²|m²|km/h|N·m)([^\pL]|$)`)
	offset   = regexp.MustCompile(`(\pL[\pL\d-]*) \+ \(([^()]*), ([^()]*)\)`)
)

// together keeps numbers with their units, and places told from a mark, on one
// line.
func together(s string) string {
	s = quantity.ReplaceAllString(s, "$1\u00a0$2$3")
	return offset.ReplaceAllString(s, "$1\u00a0+\u00a0($2,\u00a0$3)")
}

// wideTable is how many columns make a table a wide one, set smaller.
const wideTable = 11

// class is how a column is set: times, frames, numbers, words.
func (t *Table) class(column int) string {
	switch t.Columns[column].Key {
	case "clock", "until", "timecode":
		return " class=\"t\""
	case "frame":
		return " class=\"n f\""
	}
	if t.numeric(column) {
		return " class=\"n\""
	}
	return ""
}
