package sheets

import (
	"bytes"
	"fmt"
	"io"
)

// RehearsalText writes a book of Rehearsal for a terminal: of each table the rows
// that tell most, as many as told.
func (b *Book) RehearsalText(w io.Writer, most int) error {
	x := &told{sheet: &b.Sheets[0], most: most}
	x.p("%s, played %s times (seed %s)", b.Title, x.item("playings"), x.item("seed"))
	if asked := x.item("asked for"); asked != "" {
		x.p(", of %s", asked)
	}
	x.p("\n\n")
	for _, line := range x.sheet.Says {
		x.p("%s\n", line)
	}
	if t := x.table(FlawsTable); len(t.Rows) > 0 {
		x.rows(t, "", func(i int) { x.p("  %7s  %s\n", t.Text(i, "clock"), t.Text(i, "what")) })
	}
	breaks := x.table(BreaksTable)
	x.rows(breaks, fmt.Sprintf("%9s %9s %9s  what, and by how much when it does", "first", "at all", "about at"), func(i int) {
		x.p("  %9s %9s %9s  %s\n", breaks.Text(i, "first"), breaks.Text(i, "all"), breaks.Text(i, "clock"), Breaking(breaks, i))
	})
	cues, rest := x.table(CuesTable).Near()
	cues.Rows = cues.inOrder(cues.Least("spare_5"))
	x.rows(cues, fmt.Sprintf("%8s %8s %8s %8s  line, tightest first; seconds", "planned", "5 %", "50 %", "95 %"), func(i int) {
		x.p("  %8s %8s %8s %8s  %s %s (%s)\n", cues.Text(i, "planned"), cues.Text(i, "spare_5"), cues.Text(i, "spare_50"), cues.Text(i, "spare_95"), cues.Text(i, "clock"), Going(cues, i), cues.Text(i, "cue"))
	})
	if rest != "" {
		x.p("  %s\n", rest)
	}
	if len(breaks.Rows) > 0 {
		t := x.table(ChangesTable)
		x.rows(t, "", func(i int) {
			x.p("  %s points, to %s: %s\n", t.Text(i, "gain"), t.Text(i, "chance"), t.Text(i, "change"))
		})
	}
	x.p("\n%s\n", People)
	_, err := w.Write(x.Bytes())
	return err
}

// told is a sheet being written for a terminal.
type told struct {
	bytes.Buffer
	sheet *Sheet
	most  int
}

func (x *told) p(format string, args ...any) { fmt.Fprintf(x, format, args...) }

func (x *told) table(key string) *Table {
	t, _ := x.sheet.Table(key)
	return &t
}

// item is what the table of how it was played says to something.
func (x *told) item(name string) string {
	for _, r := range x.table(PlayedTable).Rows {
		if r.Cells[0].Text == name {
			return r.Cells[1].Text
		}
	}
	return ""
}

// rows writes a table's first rows.
func (x *told) rows(t *Table, head string, write func(row int)) {
	x.p("\n%s\n", t.Title)
	if len(t.Rows) == 0 {
		x.p("  %s\n", t.Empty)
		return
	}
	if head != "" {
		x.p("  %s\n", head)
	}
	for i := range t.Rows {
		if i == x.most {
			x.p("  and %d more\n", len(t.Rows)-i)
			break
		}
		write(i)
	}
}
