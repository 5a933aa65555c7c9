package book

import (
	"slices"
	"strings"

	"longhand/lang/departments"
	"longhand/render/flow"
	"longhand/render/scene"
	"longhand/render/sheets"
)

// table finds a table of a department, with the rows that are wanted.
func (m *maker) table(d departments.Name, key string, want func(*sheets.Row) bool) *sheets.Table {
	for i := range m.sheets.Sheets {
		s := &m.sheets.Sheets[i]
		if s.Department != d {
			continue
		}
		for k := range s.Tables {
			if s.Tables[k].Key != key {
				continue
			}
			t := s.Tables[k]
			t.Rows = nil
			for j := range s.Tables[k].Rows {
				if r := &s.Tables[k].Rows[j]; want(r) {
					t.Rows = append(t.Rows, *r)
				}
			}
			return &t
		}
	}
	return nil
}

// notCompared stands for the key of a table that an earlier revision has not.
const notCompared = ""

// print sets a table as people get it: without the columns for other programs and
// those that say nothing, with a heading for each group if grouped.
func (m *maker) print(f *flow.Flow, t *sheets.Table, key string, grouped bool) {
	group := -1
	var columns []int
	for i, c := range t.Columns {
		switch {
		case c.Quiet:
		case c.Group && group < 0:
			group = i
		case speaks(t, i):
			columns = append(columns, i)
		}
	}
	if len(columns) == 0 {
		return
	}
	out := flow.Table{ID: scene.ID("table", t.Key), Title: t.Title, Size: scene.Smallest + 0.5}
	for _, i := range columns {
		out.Columns = append(out.Columns, flow.Column{Head: t.Columns[i].Title, Right: t.Columns[i].Unit != ""})
	}
	last := "\x00"
	for j := range t.Rows {
		r := &t.Rows[j]
		if grouped && group >= 0 {
			if g := r.Cells[group].Text; g != last {
				last = g
				if g != "" {
					out.Rows = append(out.Rows, flow.Row{Group: g})
				}
			}
		}
		cells := make([]string, len(columns))
		for k, i := range columns {
			cells[k] = r.Cells[i].Text
		}
		row := flow.Row{Cells: cells}
		row.Changed = key != notCompared && m.row(key, cells)
		out.Rows = append(out.Rows, row)
	}
	for _, n := range t.Notes {
		if about(n, t, columns) {
			continue
		}
		out.Notes = append(out.Notes, sentence(n))
	}
	f.Table(out)
}

// about is whether a note explains a column that is not among those printed.
func about(note string, t *sheets.Table, printed []int) bool {
	for i, c := range t.Columns {
		if strings.HasPrefix(note, c.Title+": ") {
			return !slices.Contains(printed, i)
		}
	}
	return false
}

// speaks is whether a column has anything in it.
func speaks(t *sheets.Table, column int) bool {
	for i := range t.Rows {
		if t.Rows[i].Cells[column].Text != "" {
			return true
		}
	}
	return false
}

// sentence ends a text with a full stop.
func sentence(s string) string {
	s = capital(strings.TrimSpace(s))
	if s == "" || strings.HasSuffix(s, ".") {
		return s
	}
	return s + "."
}
