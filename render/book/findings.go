package book

import (
	"fmt"
	"sort"
	"strings"

	"longhand/lang/check"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/scene"
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
		for _, i := range m.gravest() {
			d := &m.r.Findings[i]
			says := m.says(d, told)
			t.Rows = append(t.Rows, flow.Row{
				Cells:   []string{fmt.Sprint(i + 1), d.Severity.String(), m.when(d), says, string(d.Code)},
				Changed: m.row("findings", []string{d.Severity.String(), m.when(d), says, string(d.Code)}),
			})
		}
		f.Table(t)
		m.pictures(f)
	}
	m.accepted(f)
	return texts("Findings", "findings", f.Pages(nil))
}

// accepted are the findings that the plan accepts, of the take and of pickups.
func (m *maker) accepted(f *flow.Flow) {
	t := flow.Table{ID: "accepted", Title: "accepted findings", Size: 8, Columns: []flow.Column{{Head: "How", Width: 18}, {Head: "When", Width: 30}, {Head: "What"}, {Head: "Because"}}}
	add := func(where string, list []check.Accepted) {
		for i := range list {
			a := &list[i]
			how, because := "allowed", ""
			if a.PaintOut != nil {
				how, because = "paint out", a.PaintOut.Because
			} else if a.Allow != nil {
				because = a.Allow.Because
			}
			t.Rows = append(t.Rows, flow.Row{Cells: []string{how, where + m.when(&a.Finding), a.Finding.Message, because}})
		}
	}
	add("", m.r.Accepted)
	for _, s := range m.r.Pickups {
		add("pickup "+s.Pickup.Title+"\n", s.Accepted)
	}
	if len(t.Rows) > 0 {
		f.Heading(1, "Accepted by the plan")
		f.Table(t)
	}
}

// gravest is the findings by number, the gravest first.
func (m *maker) gravest() []int {
	out := make([]int, len(m.r.Findings))
	for i := range out {
		out[i] = i
	}
	sort.SliceStable(out, func(a, b int) bool { return m.r.Findings[out[a]].Severity > m.r.Findings[out[b]].Severity })
	return out
}

// mostPictures is how many findings are shown as the lens has them.
const mostPictures = 24

// pictures are the worst frames of what a camera finds out, two a row.
func (m *maker) pictures(f *flow.Flow) {
	const across, gutter, size = 2, 5.0, 8.0
	wide := (f.Width() - gutter*(across-1)) / across
	var row []scene.Item
	high, n := 0.0, 0
	flush := func() {
		if len(row) > 0 {
			f.Figure(f.Width(), high, row)
			f.Space(2)
		}
		row, high = nil, 0
	}
	for _, i := range m.gravest() {
		d := &m.r.Findings[i]
		camera, ok := m.cameraOf(d)
		if !ok || n >= mostPictures {
			continue
		}
		ct := m.r.Tracks.Camera(camera)
		if ct == nil || ct.Frame.Width <= 0 {
			continue
		}
		at := float64(n%across) * (wide + gutter)
		h := wide * float64(ct.Frame.Height/ct.Frame.Width)
		g := m.frames.Found(camera, d.Worst, scene.BoxAt(at, 0, wide, h), sight.Box{Left: d.Box[0], Bottom: d.Box[1], Right: d.Box[2], Top: d.Box[3]})
		if g == nil {
			continue
		}
		g.ID = "" // a frame may be shown for two findings
		if n == 0 {
			f.Heading(1, "The worst frames")
		}
		text := fmt.Sprintf("%d  %s %s, %s at %s, frame %d", i+1, d.Code, d.Subject, d.Camera, m.r.Tracks.Rate.Time(d.Worst).Clock(), d.Worst)
		row = append(row, g, &scene.Text{At: scene.Pt(at, h+4), Text: fonts.Regular.Fit(size, wide, text), Size: size})
		high = max(high, h+6)
		if n++; n%across == 0 {
			flush()
		}
	}
	flush()
}

// cameraOf is the camera that finds something out; false where none does, or it is
// of a pickup, which has frames of its own.
func (m *maker) cameraOf(d *diag.Diagnostic) (*plan.Camera, bool) {
	if d.Camera == "" || len(d.Frames) == 0 || d.Box == [4]float64{} || int(d.Worst) >= m.r.Tracks.Frames {
		return nil, false
	}
	if d.Pickup != "" {
		return nil, false
	}
	for _, c := range m.p.Kit.Cameras {
		if c.Name == d.Camera {
			return c, true
		}
	}
	return nil, false
}

// says is a finding's message, its advice where it was not told before, and what
// would mend it.
func (m *maker) says(d *diag.Diagnostic, told map[string]bool) string {
	lines := []string{sentence(strings.TrimPrefix(d.Message, fmt.Sprintf("in pickup %q, ", d.Pickup)))}
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
		if d.Pickup != "" {
			return "pickup " + d.Pickup
		}
		if d.Beat != "" {
			return d.Beat
		}
		return "the text"
	}
	rate := m.r.Tracks.Rate
	var lines []string
	if d.Pickup != "" {
		lines = append(lines, "pickup "+d.Pickup)
	}
	for i, f := range d.Frames {
		if i == most {
			lines = append(lines, fmt.Sprintf("and %d more", len(d.Frames)-most))
			break
		}
		from, to := rate.Time(f.From).Clock(), rate.Time(f.To).Clock()
		if from != to {
			from += " to " + to
		}
		lines = append(lines, from)
	}
	return strings.Join(lines, "\n")
}
