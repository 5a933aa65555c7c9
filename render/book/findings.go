package book

import (
	"fmt"
	"strings"

	"longhand/lang/diag"
	"longhand/render/flow"
	"longhand/render/fonts"
)

// findings are what was found and is open, then what the plan accepts.
func (m *maker) findings(int) []leaf {
	f := flow.New(m.options(false))
	f.Heading(0, "Findings")
	if len(m.r.Findings) == 0 {
		f.Paragraph(fonts.Regular, "Nothing was found that the plan does not accept.")
	} else {
		f.Paragraph(fonts.Regular, capital(m.open())+". The numbers are those on the timeline.")
		f.Space(2)
		t := flow.Table{ID: "findings", Title: "findings", Size: 8, Columns: []flow.Column{{Head: "No.", Right: true}, {Head: "Weight"}, {Head: "When", Width: 30}, {Head: "What, and what would help"}, {Head: "Code", Width: 26}}}
		told := map[string]bool{}
		for i := range m.r.Findings {
			d := &m.r.Findings[i]
			says := m.says(d, told)
			t.Rows = append(t.Rows, flow.Row{
				Cells:   []string{fmt.Sprint(i + 1), d.Severity.String(), m.when(d), says, string(d.Code)},
				Changed: m.row("findings", []string{d.Severity.String(), m.when(d), says, string(d.Code)}),
			})
		}
		f.Table(t)
	}
	if len(m.r.Accepted) > 0 {
		f.Heading(1, "Accepted by the plan")
		t := flow.Table{ID: "accepted", Title: "accepted findings", Size: 8, Columns: []flow.Column{{Head: "How", Width: 18}, {Head: "When", Width: 30}, {Head: "What"}, {Head: "Because"}}}
		for i := range m.r.Accepted {
			a := &m.r.Accepted[i]
			how, because := "allowed", ""
			if a.PaintOut != nil {
				how, because = "paint out", a.PaintOut.Because
			} else if a.Allow != nil {
				because = a.Allow.Because
			}
			t.Rows = append(t.Rows, flow.Row{Cells: []string{how, m.when(&a.Finding), a.Finding.Message, because}})
		}
		f.Table(t)
	}
	return texts("Findings", "findings", f.Pages(nil))
}

// says is a finding's message, its advice where it was not told before, and what
// would mend it.
func (m *maker) says(d *diag.Diagnostic, told map[string]bool) string {
	lines := []string{sentence(d.Message)}
	for _, n := range d.Notes {
		if !told[n] {
			told[n] = true
			lines = append(lines, sentence(n))
		}
	}
	for _, x := range d.Fixes {
		lines = append(lines, sentence("to mend it: "+x.Title))
	}
	return strings.Join(lines, "\n")
}

// most is how many stretches of a finding are told.
const most = 4

func (m *maker) when(d *diag.Diagnostic) string {
	if len(d.Frames) == 0 {
		if d.Beat != "" {
			return d.Beat
		}
		return "the text"
	}
	rate := m.r.Tracks.Rate
	var lines []string
	for i, f := range d.Frames {
		if i == most {
			lines = append(lines, fmt.Sprintf("and %d more", len(d.Frames)-most))
			break
		}
		lines = append(lines, fmt.Sprintf("%s to %s", rate.Time(f.From).Clock(), rate.Time(f.To+1).Clock()))
	}
	return strings.Join(lines, "\n")
}
