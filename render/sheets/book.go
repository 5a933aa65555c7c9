package sheets

import (
	"cmp"
	"math"
	"slices"

	"longhand/lang/departments"
	"longhand/lang/plan"
)

// Schema is the version of the form in which sheets are written as JSON. It goes
// up when a key is taken away or changes its meaning, not when one is added.
const Schema = 1

// Book is the whole breakdown.
type Book struct {
	Title    string
	Scene    string
	Set      string
	Revision string
	Date     string // of the shoot; "" where the plan gives none
	Rate     string // "24"
	Length   string // of the take: "2:41.3, 3871 frames"
	Units    string // "m" or "ft": how lengths are printed
	Open     string // what was found and is not accepted: "2 errors"; "" for nothing
	Sheets   []Sheet
	Safety   string // for the foot of every page

	name string // of its files; "" for a breakdown's
}

// Sheet is what one department gets, or a rehearsal's (see Rehearsal).
type Sheet struct {
	Department departments.Name
	Title      string
	Says       []string // what it comes to, in sentences without a full stop; most have none
	Tables     []Table
	Cautions   []string // sentences without a full stop
}

// Table is rows of one kind.
type Table struct {
	Key     string // short name, unique on its sheet
	Title   string
	Columns []Column
	Rows    []Row
	Notes   []string // sentences beneath, without a full stop
	Empty   string   // what to say where there are no rows
	Chart   *Chart   // nil for most
	Spread  *Spread  // nil for most
}

// Column is a column of a table.
type Column struct {
	Key   string // of CSV and JSON, and for good
	Title string // as printed
	Unit  string // of the numbers in CSV, JSON and the workbook; "" for words
	About string // what it says, in a few words
	Quiet bool   // not printed: for other programs only
	Group bool   // printed as a heading where it changes
}

// Row is a thing to do, or to know.
type Row struct {
	Cells []Cell // as many as there are columns
	// Action is the line it comes from; nil where it comes from no one line.
	Action *plan.Action
}

// Cell is one value: a text as printed and, in a column with a unit, the number
// in that unit.
type Cell struct {
	Text  string
	Value *float64 // nil for words, and where there is no number
}

// Chart is a quantity over the take's time, straight between points.
type Chart struct {
	Title string
	Unit  string
	Marks []Mark   // what happens when, below the curve
	Lines []Series // each in order of time
	Limit float64  // 0 for none
	End   float64  // seconds
}

// Series is one curve.
type Series struct {
	Name   string
	Points [][2]float64 // seconds, value
}

// Mark is a moment with a name.
type Mark struct {
	At   float64
	Name string
}

// Spread says that the rows of a table can be drawn as bars along one scale.
type Spread struct {
	Title             string
	Low, Middle, High string  // keys of the columns with the ends of a bar and its middle
	From, To, Step    float64 // the scale, which has 0 in it, and the way between its ticks
}

// For is the sheet of a department.
func (b *Book) For(d departments.Name) (Sheet, bool) {
	for _, s := range b.Sheets {
		if s.Department == d {
			return s, true
		}
	}
	return Sheet{}, false
}

// Table is a table by its key.
func (s *Sheet) Table(key string) (Table, bool) {
	for _, t := range s.Tables {
		if t.Key == key {
			return t, true
		}
	}
	return Table{}, false
}

// Column is the place of a column by its key; -1 where there is none.
func (t *Table) Column(key string) int {
	for i, c := range t.Columns {
		if c.Key == key {
			return i
		}
	}
	return -1
}

// Text is what a row says in a column, by its key.
func (t *Table) Text(row int, key string) string {
	if i := t.Column(key); i >= 0 {
		return t.Rows[row].Cells[i].Text
	}
	return ""
}

// Value is the number there; false where there is none.
func (t *Table) Value(row int, key string) (float64, bool) {
	if i := t.Column(key); i >= 0 && t.Rows[row].Cells[i].Value != nil {
		return *t.Rows[row].Cells[i].Value, true
	}
	return 0, false
}

// Least is the rows' places by the numbers in a column, the least first and those
// without one last.
func (t *Table) Least(key string) []int {
	out := make([]int, len(t.Rows))
	for i := range out {
		out[i] = i
	}
	value := func(i int) float64 {
		if v, ok := t.Value(i, key); ok {
			return v
		}
		return math.Inf(1)
	}
	slices.SortStableFunc(out, func(a, b int) int { return cmp.Compare(value(a), value(b)) })
	return out
}

// inOrder is the rows in another order.
func (t *Table) inOrder(places []int) []Row {
	out := make([]Row, len(places))
	for i, k := range places {
		out[i] = t.Rows[k]
	}
	return out
}
