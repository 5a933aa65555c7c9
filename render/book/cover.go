package book

import (
	"fmt"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// cover is the take at a glance.
func (m *maker) cover() []flow.Page {
	t := m.p.Take
	f := flow.New(m.options(false))
	if t.Scene != "" {
		f.Block(fonts.Regular, 13, 0, "scene "+t.Scene)
	}
	f.Block(fonts.Bold, 27, 0, m.named())
	sub := []string{}
	if m.p.Set.Title != "" {
		sub = append(sub, m.p.Set.Title)
	}
	if m.o.For != "" {
		sub = append(sub, "for "+strings.ToLower(m.o.For.Title()))
	}
	if len(sub) > 0 {
		f.Block(fonts.Regular, 13, 0, strings.Join(sub, ", "))
	}
	if rev := strings.TrimSpace(t.Revision + "  " + t.RevisionDate); rev != "" {
		f.Block(fonts.Bold, 11, 0, "revision "+rev)
	}
	f.Space(4)
	m.strip(f)
	f.Space(4)
	f.Table(flow.Table{ID: "facts", Title: "the take at a glance", Size: 9, Columns: []flow.Column{{Head: "The take at a glance", Width: 38, Face: fonts.Bold}, {}}, Rows: m.facts()})
	f.Space(4)
	f.Table(flow.Table{ID: "beats", Title: "the beats", Size: 8, Columns: []flow.Column{{Head: "Beat", Right: true}, {Head: "Title"}, {Head: "Begins", Right: true}, {Head: "Frame", Right: true}, {Head: "Length", Right: true}, {Head: "Waits for"}}, Rows: m.beatRows()})
	return f.Pages(nil)
}

// strip is the beats along the take's length.
func (m *maker) strip(f *flow.Flow) {
	const high, size = 9.0, 9.0
	length := float64(m.r.Tracks.Length())
	if length <= 0 {
		return
	}
	k := f.Width() / length
	var items []scene.Item
	for i, s := range m.r.Tracks.Clock.Spans() {
		if s.To <= s.From {
			continue
		}
		class := "book-frame"
		if i%2 == 1 {
			class = "book-alternate"
		}
		box := scene.BoxAt(float64(s.From)*k, 0, float64(s.To-s.From)*k, high)
		items = append(items, &scene.Rect{Class: class, Box: box})
		if text := fmt.Sprint(i + 1); fonts.Bold.Width(size, text) < box.Width()-0.6 {
			items = append(items, &scene.Text{At: box.Center(), Text: text, Size: size, Face: fonts.Bold, Anchor: scene.Middle, Level: scene.Center})
		}
	}
	end := m.r.Tracks.Length().Clock()
	items = append(items,
		&scene.Text{Class: "book-quiet", At: scene.Pt(0, high+3.6), Text: "0:00.0", Size: 8},
		&scene.Text{Class: "book-quiet", At: scene.Pt(f.Width(), high+3.6), Text: end, Size: 8, Anchor: scene.End})
	f.Figure(f.Width(), high+5, items)
}

// facts are what everybody asks first.
func (m *maker) facts() []flow.Row {
	var rows []flow.Row
	row := func(name, value string) {
		if value != "" {
			rows = append(rows, flow.Row{Cells: []string{name, value}})
		}
	}
	row("length", m.sheets.Length+" at "+m.sheets.Rate+" fps")
	if t := m.p.Take; t.Aspect > 0 {
		row("frame", units.Number(t.Aspect, 2)+":1")
	}
	row("beats", fmt.Sprint(len(m.p.Beats)))
	var cameras []string
	for _, c := range m.p.Kit.Cameras {
		cameras = append(cameras, m.cameraLine(c))
	}
	row("cameras", strings.Join(cameras, "\n"))
	var cast, crew []string
	for _, p := range m.p.People {
		who := p.Name
		if p.Role != "" {
			who += " (" + p.Role + ")"
		}
		if p.Crew {
			crew = append(crew, who)
		} else {
			cast = append(cast, who)
		}
	}
	row("performers", strings.Join(cast, ", "))
	row("crew in the plan", strings.Join(crew, ", "))
	for _, s := range m.sheets.Sheets {
		if s.Department != departments.Ads {
			continue
		}
		for i := range s.Tables {
			if s.Tables[i].Key != "day" {
				continue
			}
			for _, r := range s.Tables[i].Rows {
				if name := r.Cells[0].Text; name != "take" && name != "which is" && name != "sun" {
					row(name, r.Cells[1].Text)
				}
			}
			for _, n := range s.Tables[i].Notes {
				row("light", n)
			}
		}
	}
	row("open findings", m.open())
	if m.o.Rehearsal != nil {
		row("rehearsed", strings.Join(m.o.Rehearsal.Sheets[0].Says, "\n"))
	}
	if n := len(m.r.Accepted); n > 0 {
		row("accepted", fmt.Sprintf("%d by the plan's paint outs and allows", n))
	}
	return rows
}

// cameraLine is what a camera is on, has before it and is held by, over the take.
func (m *maker) cameraLine(c *plan.Camera) string {
	s := c.Name
	ct := m.r.Tracks.Camera(c)
	if ct == nil {
		return s + ", not used"
	}
	var on, glass []string
	seen := map[string]bool{}
	once := func(list *[]string, s string) {
		if s != "" && !seen[s] {
			seen[s] = true
			*list = append(*list, s)
		}
	}
	for _, h := range ct.Holds {
		switch {
		case h.Hide != nil && h.Hide.Hole != nil:
			once(&on, "behind "+h.Hide.Hole.Name)
		case h.Rig != nil && h.Operator != nil:
			once(&on, h.Rig.Name+" with "+h.Operator.Name)
		case h.Rig != nil:
			once(&on, h.Rig.Name)
		}
	}
	for _, k := range ct.Fits {
		if k.Lens == nil {
			continue
		}
		g := k.Lens.Name + " " + k.Focal.String()
		if k.Stop > 0 {
			g += " " + k.Stop.String()
		}
		once(&glass, g)
	}
	if len(on) > 0 {
		s += ": " + strings.Join(on, ", then ")
	}
	if len(glass) > 0 {
		s += "; " + strings.Join(glass, ", ")
	}
	return s
}

// open is how much is wrong, by severity.
func (m *maker) open() string {
	n := map[diag.Severity]int{}
	for i := range m.r.Findings {
		n[m.r.Findings[i].Severity]++
	}
	if len(m.r.Findings) == 0 {
		return "none"
	}
	part := func(n int, one, many string) string {
		if n == 1 {
			return "1 " + one
		}
		return fmt.Sprintf("%d %s", n, many)
	}
	return part(n[diag.Error], "error", "errors") + ", " + part(n[diag.Warning], "warning", "warnings") + ", " + part(n[diag.Note], "note", "notes")
}

func (m *maker) beatRows() []flow.Row {
	var rows []flow.Row
	rate := m.r.Tracks.Rate
	for i, s := range m.r.Tracks.Clock.Spans() {
		if s.Beat == nil {
			continue
		}
		rows = append(rows, flow.Row{Cells: []string{
			fmt.Sprint(i + 1), s.Beat.Title, s.From.Clock(), fmt.Sprint(rate.From(s.From)), (s.To - s.From).String(), m.r.Tracks.Clock.BeatWords(s.Beat),
		}})
	}
	return rows
}

// everywhere are headings that come in every beat or section: bookmarks lead to
// them, and a list of them says nothing.
var everywhere = map[string]bool{lensHeading: true, orderHeading: true, emptyHeading: true, cautionsIn: true}

const (
	lensHeading  = "What the lens sees"
	orderHeading = "Running order"
	emptyHeading = "Not in this plan"
	cautionsIn   = "Cautions for this department"
)

// contents lists the body.
func (m *maker) contents() []flow.Page {
	var entries []flow.Entry
	for _, l := range m.body {
		for _, e := range l.Entries {
			if !everywhere[e.Text] {
				entries = append(entries, e)
			}
		}
	}
	number := func(page int) string { return fmt.Sprint(m.front + page + 1) }
	o := m.options(false)
	out := flow.Contents(o, "Contents", entries, 1, number)
	o.Size = 8 // a little smaller where that saves a page
	if tight := flow.Contents(o, "Contents", entries, 1, number); len(tight) < len(out) {
		return tight
	}
	return out
}
