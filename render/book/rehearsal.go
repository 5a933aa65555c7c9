package book

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/units"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/scene"
	"longhand/render/sheets"
)

// Widths of columns of drawings, in millimetres.
const (
	shareWide  = 38.0
	spreadWide = 58.0
	cellEdge   = 2.0 // kept free at either side of a drawing
)

// mostBreaks is how many of what breaks a take are listed.
const mostBreaks = 40

// rehearsal is what came of a rehearsal. A department's booklet has the cues and
// the changes that concern it; the assistant directors get all.
func (m *maker) rehearsal(int) []leaf {
	f := flow.New(m.options(false))
	s := &m.o.Rehearsal.Sheets[0]
	table := func(key string) *sheets.Table {
		t, _ := s.Table(key)
		return &t
	}
	whole := m.o.For == "" || m.o.For == departments.Ads
	mine := func(t *sheets.Table) *sheets.Table {
		if whole {
			return t
		}
		c := *t
		c.Rows = nil
		for i := range t.Rows {
			if a := t.Rows[i].Action; a == nil || a.ConcernsDepartment(m.o.For) {
				c.Rows = append(c.Rows, t.Rows[i])
			}
		}
		return &c
	}
	f.Heading(0, s.Title)
	for _, line := range s.Says {
		f.Paragraph(fonts.Bold, sentence(line))
	}
	f.Paragraph(fonts.Regular, sentence(sheets.People))
	if t := table(sheets.FlawsTable); len(t.Rows) > 0 {
		f.Heading(1, t.Title)
		m.print(f, t, notCompared, false)
	}
	m.breaks(f, table(sheets.BreaksTable))
	m.cues(f, mine(table(sheets.CuesTable)), whole)
	if t := mine(table(sheets.ChangesTable)); len(t.Rows) > 0 {
		f.Heading(1, t.Title)
		m.print(f, t, notCompared, false)
	} else if len(table(sheets.BreaksTable).Rows) > 0 && whole {
		f.Heading(1, t.Title)
		f.Paragraph(fonts.Regular, t.Empty)
	}
	if whole {
		t := table(sheets.BeginsTable)
		f.Heading(1, t.Title)
		m.print(f, t, notCompared, false)
	}
	t := table(sheets.PlayedTable)
	f.Heading(1, t.Title)
	var played []string
	for i := range t.Rows {
		played = append(played, t.Text(i, "item")+": "+t.Text(i, "value"))
	}
	f.Paragraph(fonts.Regular, sentence(strings.Join(played, "; ")))
	for _, n := range table(sheets.HoldsTable).Notes {
		f.Block(fonts.Regular, scene.Smallest+0.5, 0, sentence(n))
	}
	out := texts(s.Title, "rehearsal", f.Pages(nil))
	for i := range out {
		out[i].asked = true
	}
	return out
}

// breaks is what breaks a take, with a bar for how often: filled for the playings
// in which it is the first to break, outlined for all in which it breaks.
func (m *maker) breaks(f *flow.Flow, t *sheets.Table) {
	f.Heading(1, t.Title)
	if len(t.Rows) == 0 {
		f.Paragraph(fonts.Regular, t.Empty)
		return
	}
	most := 0.0
	for i := range t.Rows {
		v, _ := t.Value(i, "all")
		most = math.Max(most, v)
	}
	end := 100.0
	for _, v := range []float64{50, 20, 10, 5} {
		if most <= v {
			end = v
		}
	}
	const at = 2 // the column of bars
	x := func(cell scene.Box, per float64) float64 {
		return cell.Min.X + cellEdge + per/end*(cell.Width()-2*cellEdge)
	}
	out := flow.Table{
		ID: "breaks", Title: t.Title, Size: scene.Smallest + 0.5,
		Columns: []flow.Column{{Head: "First", Right: true, Face: fonts.Bold}, {Head: "At all", Right: true}, {Head: "Of all playings\n ", Width: shareWide}, {Head: "What"}, {Head: "About at", Right: true}, {Head: "In"}},
		DrawHead: func(column int, cell scene.Box) []scene.Item {
			if column != at {
				return nil
			}
			return ticks(cell, []float64{0, end / 2, end}, func(v float64) float64 { return x(cell, v) }, " %")
		},
	}
	for i := range t.Rows {
		if i == mostBreaks {
			break
		}
		first, _ := t.Value(i, "first")
		all, _ := t.Value(i, "all")
		out.Rows = append(out.Rows, flow.Row{
			Cells: []string{t.Text(i, "first"), t.Text(i, "all"), "", sheets.Breaking(t, i), t.Text(i, "clock"), t.Text(i, "in")},
			Draw: func(column int, cell scene.Box) []scene.Item {
				if column != at {
					return nil
				}
				return []scene.Item{
					scene.Line("book-rule", scene.Pt(x(cell, 0), cell.Min.Y), scene.Pt(x(cell, 0), cell.Max.Y)),
					bar("book-frame", cell, x(cell, 0), x(cell, all)), bar("book-solid", cell, x(cell, 0), x(cell, first)),
				}
			},
		})
	}
	if n := len(t.Rows) - mostBreaks; n > 0 {
		out.Notes = append(out.Notes, fmt.Sprintf("And %d more.", n))
	}
	out.Notes = append(append(out.Notes, "Filled: it is the first thing to break. Outlined: it breaks."), notes(t)...)
	f.Table(out)
}

// cues is what each cue has to spare, in order of time, with a bar from 5 to 95 %.
func (m *maker) cues(f *flow.Flow, t *sheets.Table, whole bool) {
	f.Heading(1, t.Title)
	all := len(t.Rows)
	t, rest := t.Near()
	switch {
	case all == 0 && !whole:
		f.Paragraph(fonts.Regular, "No cue of this department's has anything stated that waits for it.")
		return
	case len(t.Rows) == 0:
		f.Paragraph(fonts.Regular, t.Empty)
		return
	}
	const at = 6 // the column of bars
	s := t.Spread
	x := func(cell scene.Box, v float64) float64 {
		part, _ := s.Part(v)
		return cell.Min.X + cellEdge + part*(cell.Width()-2*cellEdge)
	}
	out := flow.Table{
		ID: "cues", Title: t.Title, Size: scene.Smallest + 0.5,
		Columns: []flow.Column{{Head: "At", Right: true, Face: fonts.Bold}, {Head: "Line, and its cue"}, {Head: "Planned, s", Right: true}, {Head: "5 %", Right: true}, {Head: "50 %", Right: true}, {Head: "95 %", Right: true}, {Head: capital(s.Title) + "\n ", Width: spreadWide}},
		DrawHead: func(column int, cell scene.Box) []scene.Item {
			if column != at {
				return nil
			}
			return ticks(cell, s.Ticks(), func(v float64) float64 { return x(cell, v) }, "")
		},
	}
	broken := false
	for i := range t.Rows {
		broken = broken || t.Text(i, "short") != ""
	}
	if broken {
		out.Columns = append(out.Columns, flow.Column{Head: "Short", Right: true})
	}
	last := ""
	for i := range t.Rows {
		if b := t.Text(i, "beat"); b != last {
			last = b
			out.Rows = append(out.Rows, flow.Row{Group: b})
		}
		out.Rows = append(out.Rows, flow.Row{
			Cells: []string{t.Text(i, "clock"), sheets.Going(t, i) + "\n" + t.Text(i, "cue"), t.Text(i, "planned"), t.Text(i, "spare_5"), t.Text(i, "spare_50"), t.Text(i, "spare_95"), "", t.Text(i, "short")},
			Draw: func(column int, cell scene.Box) []scene.Item {
				if column != at {
					return nil
				}
				return spread(cell, t, i, func(v float64) float64 { return x(cell, v) })
			},
		})
	}
	if rest != "" {
		out.Notes = append(out.Notes, sentence(rest))
	}
	out.Notes = append(append(out.Notes, "The bar: from 5 to 95 %, a stroke at 50 %, filled below 0; an arrow where it goes on."), notes(t)...)
	f.Table(out)
}

// notes are a table's, in sentences.
func notes(t *sheets.Table) []string {
	out := make([]string, len(t.Notes))
	for i, n := range t.Notes {
		out[i] = sentence(n)
	}
	return out
}

// spread is a bar of what a cue has to spare, around 0.
func spread(cell scene.Box, t *sheets.Table, row int, x func(float64) float64) []scene.Item {
	var out []scene.Item
	for _, v := range t.Spread.Ticks() {
		if v != 0 {
			out = append(out, scene.Line("book-grid", scene.Pt(x(v), cell.Min.Y), scene.Pt(x(v), cell.Max.Y)))
		}
	}
	low, middle, high, ok := t.Bar(row)
	y := firstLine(cell)
	if _, gone := t.Spread.Part(low); ok && !gone {
		if high > 0 {
			out = append(out, bar("book-frame", cell, x(max(low, 0)), x(high)))
		}
		if low < 0 {
			out = append(out, bar("book-solid", cell, x(low), x(min(high, 0))))
		}
		if _, off := t.Spread.Part(middle); !off {
			class := "book-heavy"
			if middle < 0 { // it lies in what is filled
				class = "book-white"
			}
			out = append(out, scene.Line(class, scene.Pt(x(middle), y-barHalf-0.5), scene.Pt(x(middle), y+barHalf+0.5)))
		}
	}
	out = append(out, scene.Line("book-rule", scene.Pt(x(0), cell.Min.Y), scene.Pt(x(0), cell.Max.Y)))
	if _, beyond := t.Spread.Part(high); ok && beyond {
		tip := cell.Max.X - 0.3
		out = append(out, &scene.Polyline{Class: "book-rule", Points: []scene.Point{scene.Pt(tip-1.4, y-1), scene.Pt(tip, y), scene.Pt(tip-1.4, y+1)}})
	}
	return out
}

// barHalf is half the height of a bar, in millimetres.
const barHalf = 1.1

// firstLine is the height of the middle of a cell's first line.
func firstLine(cell scene.Box) float64 { return cell.Min.Y + min(cell.Height()/2, 2.3) }

func bar(class string, cell scene.Box, from, to float64) scene.Item {
	y := firstLine(cell)
	return &scene.Rect{Class: class, Box: scene.BoxAt(from, y-barHalf, max(to-from, 0), 2*barHalf)}
}

// ticks are the numbers of a scale at the foot of a head, those that have room.
func ticks(cell scene.Box, at []float64, x func(float64) float64, unit string) []scene.Item {
	const size = scene.Smallest
	var out []scene.Item
	free := cell.Min.X
	for _, v := range at {
		text := units.Number(v, 2) + unit
		half := fonts.Regular.Width(size, text) / 2
		from := min(max(x(v)-half, cell.Min.X+0.3), cell.Max.X-2*half-0.3)
		if from < free {
			continue
		}
		free = from + 2*half + 1
		out = append(out, &scene.Text{At: scene.Pt(from, cell.Max.Y-1), Text: text, Size: size})
	}
	return out
}
