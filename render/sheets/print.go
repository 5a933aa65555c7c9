package sheets

// printed is a table as people get it: without what is for other programs,
// without columns that say nothing, and with the column that makes headings apart.
type printed struct {
	columns []int // places in Table.Columns, in order
	group   int   // -1 for none
}

func (t *Table) printed() printed {
	p := printed{group: -1}
	for i, c := range t.Columns {
		switch {
		case c.Quiet:
		case c.Group && p.group < 0:
			p.group = i
		case len(t.Rows) == 0 || t.says(i):
			p.columns = append(p.columns, i)
		}
	}
	return p
}

// says reports whether a column has anything in it.
func (t *Table) says(column int) bool {
	for _, r := range t.Rows {
		if r.Cells[column].Text != "" {
			return true
		}
	}
	return false
}

// numeric reports whether a column is one of numbers, which stand to the right.
func (t *Table) numeric(column int) bool {
	return t.Columns[column].Unit != ""
}

// heading is the group of a row, where it differs from that of the row before.
func (t *Table) heading(p printed, row int) (string, bool) {
	if p.group < 0 {
		return "", false
	}
	text := t.Rows[row].Cells[p.group].Text
	return text, row == 0 || text != t.Rows[row-1].Cells[p.group].Text
}

// source is the line of the plan that a row comes from: "plan.take:12".
func (r *Row) source() string {
	if r.Action == nil || !r.Action.Span.Valid() {
		return ""
	}
	return sourceOf(r.Action)
}
