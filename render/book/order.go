package book

import (
	"fmt"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/sheets"
)

// order is who goes on what cue in a beat, with what the plan notes for it.
func (m *maker) order(i int, b *plan.Beat, heading string) []flow.Page {
	f := flow.New(m.options(false))
	if heading == "" {
		f.Heading(1, orderHeading)
	} else {
		f.Heading(0, heading)
	}
	c := m.r.Tracks.Clock
	span := c.Spans()[i]
	says := fmt.Sprintf("Beat %d, %s. From %s to %s, %s. %s.", i+1, b.Title, span.From.Clock(), span.To.Clock(), span.To-span.From, capital(c.BeatWords(b)))
	f.Paragraph(fonts.Regular, says)
	f.Space(1.5)
	t := m.table(departments.Ads, "running", func(r *sheets.Row) bool { return r.Action != nil && r.Action.Beat == b })
	if t == nil || len(t.Rows) == 0 {
		f.Paragraph(fonts.Regular, "Nobody goes in this beat.")
	} else {
		m.print(f, t, "order "+b.Title, false)
	}
	m.remarks(f, b)
	return f.Pages(nil)
}

// remarks are the plan's notes for a beat.
func (m *maker) remarks(f *flow.Flow, b *plan.Beat) {
	var rows []flow.Row
	for _, n := range m.p.Notes {
		if n.Beat == b && (m.o.For == "" || n.Department == m.o.For) {
			rows = append(rows, flow.Row{Cells: []string{n.Department.Noted(), n.Text}})
		}
	}
	for _, p := range m.p.PaintOuts {
		if p.Beat == b && p.Thing != nil {
			camera := ""
			if p.Camera != nil {
				camera = " from " + p.Camera.Name
			}
			rows = append(rows, flow.Row{Cells: []string{"paint out", p.Thing.ID().Name + camera + ": " + p.Because}})
		}
	}
	if len(rows) > 0 {
		f.Space(3)
		f.Table(flow.Table{ID: "notes", Title: "notes", Size: 8, Columns: []flow.Column{{Head: "For", Width: 24, Face: fonts.Bold}, {Head: "Note"}}, Rows: rows})
	}
}

// capital is a text with a first capital.
func capital(s string) string {
	if s == "" {
		return s
	}
	r := []rune(s)
	if r[0] >= 'a' && r[0] <= 'z' {
		r[0] -= 'a' - 'A'
	}
	return string(r)
}
