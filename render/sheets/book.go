package sheets

import (
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
}

// Sheet is what one department gets.
type Sheet struct {
	Department departments.Name
	Title      string
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
