package sheets

import (
	"math"

	"longhand/lang/plan"
	"longhand/lang/units"
)

func word(s string) Cell { return Cell{Text: s} }

// number is a value rounded once, for machines, with what is printed for it.
func number(v float64, decimals int, text string) Cell {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return Cell{Text: text}
	}
	k := math.Pow(10, float64(decimals))
	v = math.Round(v*k)/k + 0 // never -0
	return Cell{Text: text, Value: &v}
}

func count(n int) Cell { return number(float64(n), 0, units.Number(float64(n), 0)) }

func (m *maker) length(v units.Metres) Cell {
	if math.IsInf(float64(v), 1) {
		return word("infinity")
	}
	return number(float64(v), 3, m.metres(v))
}

// metres prints a length of the floor: to a centimetre, or to a half inch.
func (m *maker) metres(v units.Metres) string {
	if math.IsInf(float64(v), 1) {
		return "infinity"
	}
	if m.sys == units.Metric {
		return units.Number(float64(v), 2) + " m"
	}
	return v.Text(m.sys)
}

func (m *maker) speed(v units.MetresPerSecond) Cell { return number(float64(v), 3, v.Text(m.sys)) }

func seconds(s units.Seconds) Cell { return number(float64(s), 2, s.String()) }

// farSlack is slack that nobody has to mind: it is not printed.
const farSlack units.Seconds = 120

// slack is how much something may slip; endless slack is no number.
func slack(s units.Seconds) Cell {
	if math.IsInf(float64(s), 1) {
		return word("")
	}
	text := ""
	if s < farSlack {
		text = s.String()
	}
	return number(float64(s), 2, text)
}

func (m *maker) kilograms(kg units.Kilograms) Cell {
	if kg <= 0 {
		return word("not given")
	}
	text := kg.String()
	if m.sys == units.Feet {
		text = units.Number(float64(kg/units.Pound), 1) + " lb"
	}
	return number(float64(kg), 2, text)
}

func percent(p float64) Cell { return number(p, 2, share(p)) }

// share prints a part of a whole with two figures that say something.
func share(p float64) string {
	if p >= 0.1 || p <= 0 {
		return units.Percent(p).String()
	}
	if p < 1e-4 {
		return "under 0.0001 %"
	}
	return units.Number(p, 1-int(math.Floor(math.Log10(p)))) + " %"
}

// table is a table being filled.
func table(key, title string, columns ...[]Column) *Table {
	t := &Table{Key: key, Title: title}
	for _, c := range columns {
		t.Columns = append(t.Columns, c...)
	}
	return t
}

// add puts a row in; groups of cells stay together as their columns do.
func (t *Table) add(a *plan.Action, cells ...[]Cell) {
	r := Row{Action: a}
	for _, c := range cells {
		r.Cells = append(r.Cells, c...)
	}
	t.Rows = append(t.Rows, r)
}

func (t *Table) note(s string) {
	for _, n := range t.Notes {
		if n == s {
			return
		}
	}
	t.Notes = append(t.Notes, s)
}

func cells(c ...Cell) []Cell { return c }

func col(key, title, about string) []Column { return []Column{{Key: key, Title: title, About: about}} }

func measure(key, title, unit, about string) []Column {
	return []Column{{Key: key, Title: title, Unit: unit, About: about}}
}

func group(key, title, about string) []Column {
	return []Column{{Key: key, Title: title, About: about, Group: true}}
}
