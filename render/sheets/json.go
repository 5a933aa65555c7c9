package sheets

import (
	"bytes"
	"encoding/json"

	"longhand/lang/departments"
)

type jsonBook struct {
	Schema   int         `json:"schema"`
	Title    string      `json:"title"`
	Scene    string      `json:"scene,omitempty"`
	Set      string      `json:"set,omitempty"`
	Revision string      `json:"revision,omitempty"`
	Date     string      `json:"date,omitempty"`
	Rate     string      `json:"rate"`
	Length   string      `json:"length"`
	Units    string      `json:"units"`
	Open     string      `json:"open,omitempty"`
	Safety   string      `json:"safety"`
	Sheets   []jsonSheet `json:"sheets"`
}

type jsonSheet struct {
	Department departments.Name `json:"department"`
	Title      string           `json:"title"`
	Says       []string         `json:"says,omitempty"`
	Tables     []jsonTable      `json:"tables"`
	Cautions   []string         `json:"cautions"`
}

type jsonTable struct {
	Key     string       `json:"key"`
	Title   string       `json:"title"`
	Columns []jsonColumn `json:"columns"`
	Rows    []jsonRow    `json:"rows"`
	Empty   string       `json:"empty,omitempty"`
	Notes   []string     `json:"notes,omitempty"`
	Chart   *jsonChart   `json:"chart,omitempty"`
}

type jsonColumn struct {
	Key   string `json:"key"`
	Title string `json:"title"`
	Unit  string `json:"unit,omitempty"`
	About string `json:"about"`
}

type jsonChart struct {
	Title string       `json:"title"`
	Unit  string       `json:"unit"`
	Limit float64      `json:"limit,omitempty"`
	Lines []jsonSeries `json:"lines"`
}

type jsonSeries struct {
	Name   string       `json:"name"`
	Points [][2]float64 `json:"points"`
}

// jsonRow is a row as an object whose keys stay in the order of the columns.
type jsonRow struct {
	columns []Column
	row     *Row
}

func (r jsonRow) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	put := func(key string, v any) error {
		k, err := text(key)
		if err != nil {
			return err
		}
		data, err := text(v)
		if err != nil {
			return err
		}
		if b.Len() > 1 {
			b.WriteByte(',')
		}
		b.Write(k)
		b.WriteByte(':')
		b.Write(data)
		return nil
	}
	for i, c := range r.row.Cells {
		var v any = c.Text
		switch {
		case r.columns[i].Unit != "" && c.Value != nil:
			v = *c.Value
		case r.columns[i].Unit != "" && c.Text == "":
			v = nil
		}
		if err := put(r.columns[i].Key, v); err != nil {
			return nil, err
		}
	}
	if s := r.row.source(); s != "" {
		if err := put(sourceKey, s); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// text is a value as JSON with < and > as they are.
func text(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return nil, err
	}
	return bytes.TrimRight(b.Bytes(), "\n"), nil
}

// JSON writes the book as one document of version Schema, which JSONSchema
// describes. In a column with a unit
// there is a number in that unit, null, or words where there is no number.
func (b *Book) JSON() ([]byte, error) {
	out := jsonBook{
		Schema: Schema, Title: b.Title, Scene: b.Scene, Set: b.Set, Revision: b.Revision, Date: b.Date, Rate: b.Rate,
		Length: b.Length, Units: b.Units, Open: b.Open, Safety: b.Safety, Sheets: []jsonSheet{},
	}
	for _, s := range b.Sheets {
		js := jsonSheet{Department: s.Department, Title: s.Title, Says: s.Says, Tables: []jsonTable{}, Cautions: append([]string{}, s.Cautions...)}
		for _, t := range s.Tables {
			js.Tables = append(js.Tables, t.json())
		}
		out.Sheets = append(out.Sheets, js)
	}
	var buf bytes.Buffer
	e := json.NewEncoder(&buf)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(out); err != nil {
		return nil, err
	}
	return buf.Bytes(), nil
}

func (t *Table) json() jsonTable {
	jt := jsonTable{Key: t.Key, Title: t.Title, Columns: []jsonColumn{}, Rows: []jsonRow{}, Notes: t.Notes}
	if len(t.Rows) == 0 {
		jt.Empty = t.Empty
	}
	for _, c := range t.Columns {
		jt.Columns = append(jt.Columns, jsonColumn{c.Key, c.Title, c.Unit, c.About})
	}
	for i := range t.Rows {
		jt.Rows = append(jt.Rows, jsonRow{t.Columns, &t.Rows[i]})
	}
	if t.Chart != nil {
		jc := &jsonChart{Title: t.Chart.Title, Unit: t.Chart.Unit, Limit: t.Chart.Limit}
		for _, l := range t.Chart.Lines {
			jc.Lines = append(jc.Lines, jsonSeries(l))
		}
		jt.Chart = jc
	}
	return jt
}
