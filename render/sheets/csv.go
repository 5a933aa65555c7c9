package sheets

import (
	"bytes"
	"encoding/csv"
	"strconv"
)

// sourceKey is the column, in CSV and JSON, of the line of the plan that a row
// comes from.
const sourceKey = "source"

// CSV writes a table: a row of column keys, then a row a row. In a column with a
// unit there is the number in that unit, or words where there is none. Lines end
// as RFC 4180 has it.
func (t *Table) CSV() ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	head := make([]string, 0, len(t.Columns)+1)
	for _, c := range t.Columns {
		head = append(head, c.Key)
	}
	if err := w.Write(append(head, sourceKey)); err != nil {
		return nil, err
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		rec := make([]string, 0, len(r.Cells)+1)
		for k, c := range r.Cells {
			rec = append(rec, machine(t.Columns[k], c))
		}
		if err := w.Write(append(rec, r.source())); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return b.Bytes(), w.Error()
}

// machine is a cell as other programs get it.
func machine(c Column, v Cell) string {
	if c.Unit != "" && v.Value != nil {
		return strconv.FormatFloat(*v.Value, 'f', -1, 64)
	}
	return v.Text
}

// ColumnsCSV lists every column of every table with its unit and what it says.
func (b *Book) ColumnsCSV() ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if err := w.Write([]string{"department", "table", "key", "title", "unit", "about"}); err != nil {
		return nil, err
	}
	for _, s := range b.Sheets {
		for _, t := range s.Tables {
			for _, c := range t.Columns {
				if err := w.Write([]string{string(s.Department), t.Key, c.Key, c.Title, c.Unit, c.About}); err != nil {
					return nil, err
				}
			}
			if err := w.Write([]string{string(s.Department), t.Key, sourceKey, "source", "", "file and line of the plan; empty where a row comes from no one line"}); err != nil {
				return nil, err
			}
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}
