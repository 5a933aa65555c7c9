package book

import (
	"context"
	"fmt"
	"sort"
	"strings"

	"longhand/lang/clock"
	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/timecode"
	"longhand/lang/units"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/pdf"
	"longhand/render/scene"
	"longhand/render/sheets"
)

// cardMargins are those of a card.
var cardMargins = flow.Margins{Top: 17, Right: 7, Bottom: 10, Left: 7}

// Cards makes a card or more, of A6, for everybody who does something: their own
// lines in order of time, each with the cue that starts it and where it leads. Of
// the options only Sheets counts.
func Cards(ctx context.Context, r *compile.Result, o Options) (*pdf.Document, error) {
	m, err := newMaker(ctx, r, Options{Sheets: o.Sheets})
	if err != nil {
		return nil, err
	}
	d := &pdf.Document{Title: m.named() + ", cards", Subject: "scene " + m.p.Take.Scene, Created: created(r)}
	if m.p.Take.Scene == "" {
		d.Subject = "one take"
	}
	rows := m.running()
	things := make([]plan.Thing, 0, len(m.p.People)+len(m.p.Kit.Vehicles))
	for _, crew := range []bool{false, true} {
		for _, p := range m.p.People {
			if p.Crew == crew {
				things = append(things, p)
			}
		}
	}
	for _, v := range m.p.Kit.Vehicles {
		things = append(things, v)
	}
	for _, k := range m.p.Kit.Rigs {
		things = append(things, k)
	}
	for _, who := range things {
		for i, p := range m.card(who, rows) {
			page := pdf.Page{Sheet: p.Sheet, Label: fmt.Sprint(len(d.Pages) + 1)}
			if i == 0 {
				page.Bookmarks = []pdf.Bookmark{{Text: who.ID().Name}}
			}
			d.Pages = append(d.Pages, page)
		}
	}
	if len(d.Pages) == 0 { // a file has a page, even of a take in which nobody does anything
		f := flow.New(m.cardOptions("cards"))
		f.Paragraph(fonts.Regular, "Nobody has a line in this take.")
		d.Pages = append(d.Pages, pdf.Page{Sheet: f.Pages(nil)[0].Sheet, Label: "1"})
	}
	return d, ctx.Err()
}

func (m *maker) cardOptions(who string) flow.Options {
	return flow.Options{Paper: scene.A6, Margins: cardMargins, Title: m.named() + ", card of " + who, Styles: styles(), Size: 8.5}
}

// lineRow is what the running order says of a line.
type lineRow struct{ does, cue, from, to string }

func (m *maker) running() map[*plan.Action]lineRow {
	out := map[*plan.Action]lineRow{}
	t := m.table(departments.Ads, "running", func(r *sheets.Row) bool { return r.Action != nil })
	if t == nil {
		return out
	}
	at := func(r *sheets.Row, key string) string {
		if i := t.Column(key); i >= 0 {
			return r.Cells[i].Text
		}
		return ""
	}
	for i := range t.Rows {
		r := &t.Rows[i]
		out[r.Action] = lineRow{at(r, "does"), at(r, "cue"), at(r, "from"), at(r, "to")}
	}
	return out
}

// card is what one person, or driver, has to do; nil where that is nothing.
func (m *maker) card(who plan.Thing, lines map[*plan.Action]lineRow) []flow.Page {
	mine := linesOf(who, m.p.Actions, m.r.Tracks)
	covered := 0 // lines in pickups
	for _, s := range m.r.Pickups {
		covered += len(linesOf(who, s.Pickup.Actions, s.Tracks))
	}
	if len(mine)+covered == 0 {
		return nil
	}
	name := who.ID().Name
	f := flow.New(m.cardOptions(name))
	if first := m.first(name); first != "" {
		f.Paragraph(fonts.Regular, "First position "+first+".")
		f.Space(1)
	}
	counted := m.p.Take.Tempo != nil
	t := flow.Table{ID: "card", Title: "lines of " + name, Size: 8, Columns: []flow.Column{{Head: "At", Width: 13.5, Right: true, Face: fonts.Bold}}}
	if counted {
		t.Columns = append(t.Columns, flow.Column{Head: "Bar", Right: true})
	}
	t.Columns = append(t.Columns, flow.Column{Head: "On cue", Width: 33}, flow.Column{Head: "Do"})
	var beat *plan.Beat
	add := func(a *plan.Action, c *clock.Clock) {
		i := c.Of(a)
		l, ok := lines[a]
		if !ok {
			l = lineRow{does: m.shortly(a), cue: c.Words(a)}
			if a.Pickup != nil {
				l.cue = strings.Replace(l.cue, "the beat", "the pickup", 1)
			}
		}
		do := l.does
		if a.Subject != who && a.Subject != nil {
			do = a.Who() + " " + do
		}
		if took := i.Length(); !i.Open && took >= 0.05 {
			do += ", in " + took.String()
			if counted {
				do += " (" + m.counts(took) + ")"
			}
		}
		cells := []string{i.Start.Clock()}
		if counted {
			bar := ""
			if a.Pickup == nil {
				bar = m.bar(i.Start)
			}
			cells = append(cells, bar)
		}
		t.Rows = append(t.Rows, flow.Row{Cells: append(cells, l.cue, do)})
	}
	for _, a := range mine {
		if a.Beat != beat {
			beat = a.Beat
			t.Rows = append(t.Rows, flow.Row{Group: fmt.Sprintf("%d  %s", m.number(beat), beat.Title)})
		}
		add(a, m.r.Tracks.Clock)
	}
	for _, s := range m.r.Pickups {
		for i, a := range linesOf(who, s.Pickup.Actions, s.Tracks) {
			if i == 0 {
				t.Rows = append(t.Rows, flow.Row{Group: "Pickup  " + s.Pickup.Title + ", from 0"})
			}
			add(a, s.Tracks.Clock)
		}
	}
	f.Table(t)
	return f.Pages(func(p *flow.Page, number, of int) { m.cardHead(p.Sheet, who, number, of) })
}

// linesOf are somebody's own lines, and those of a camera that they hold, in order
// of time.
func linesOf(who plan.Thing, actions []*plan.Action, t *motion.Tracks) []*plan.Action {
	var out []*plan.Action
	if t == nil {
		return nil
	}
	for _, a := range actions {
		if a.Subject == who || holds(who, a, t) {
			out = append(out, a)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return t.Clock.Of(out[i]).Start < t.Clock.Of(out[j]).Start })
	return out
}

// holds is whether a line is about a camera that a person has in hand then, or
// about its changing hands to or from them.
func holds(who plan.Thing, a *plan.Action, t *motion.Tracks) bool {
	p, ok := who.(*plan.Person)
	if !ok {
		return false
	}
	camera, _ := a.Subject.(*plan.Camera)
	h, handoff := a.Deed.(*plan.Handoff)
	if handoff {
		camera = h.Camera
		if h.Weight == p {
			return true
		}
	}
	ct := t.Camera(camera)
	if camera == nil || ct == nil {
		return false
	}
	i := t.Clock.Of(a)
	if ct.Operator(i.Start) == p {
		return true
	}
	return handoff && (ct.Operator(i.End) == p || ct.Operator(max(0, i.Start-0.01)) == p)
}

func (m *maker) number(b *plan.Beat) int {
	for i, s := range m.spans {
		if s == b {
			return i + 1
		}
	}
	return 0
}

// first is where somebody or something is as the take begins, as the sheet for the
// assistant directors says it.
func (m *maker) first(name string) string {
	t := m.table(departments.Ads, "first", func(*sheets.Row) bool { return true })
	if t == nil {
		return ""
	}
	for i := range t.Rows {
		if c := t.Rows[i].Cells; c[t.Column("who")].Text == name {
			return c[t.Column("where")].Text
		}
	}
	return ""
}

// shortly is a line that no running order tells: what a lens is told.
func (m *maker) shortly(a *plan.Action) string {
	text := a.Span.Text()
	if t := a.Timing.Span; t.Valid() && t.Start > a.Span.Start && t.Start-a.Span.Start <= len(text) {
		text = text[:t.Start-a.Span.Start]
	}
	if i := strings.IndexByte(text, '\n'); i >= 0 {
		text = text[:i]
	}
	return strings.TrimSpace(strings.TrimPrefix(text, a.Who()))
}

func (m *maker) tempo() timecode.Tempo {
	t := m.p.Take.Tempo
	return timecode.Tempo{BPM: t.BPM, In: t.In}
}

func (m *maker) bar(at units.Seconds) string {
	bar, count := m.tempo().Position(at)
	return fmt.Sprintf("%d.%s", bar, units.Number(count, 1))
}

func (m *maker) counts(s units.Seconds) string {
	n := float64(s) / float64(m.tempo().Beat())
	text := units.Number(n, 1)
	if text == "1" {
		return "1 count"
	}
	return text + " counts"
}

func (m *maker) cardHead(s *scene.Sheet, who plan.Thing, number, of int) {
	t := m.p.Take
	role := string(who.Kind())
	if p, ok := who.(*plan.Person); ok && p.Role != "" {
		role = p.Role
	}
	take := m.named()
	if t.Scene != "" {
		take = "scene " + t.Scene + "  " + take
	}
	left, right := cardMargins.Left, s.Width-cardMargins.Right
	count := fmt.Sprintf("card %d of %d", number, of)
	foot := strings.TrimSpace(t.Revision + "  " + t.RevisionDate)
	if foot != "" {
		foot = "revision " + foot + ".  "
	}
	foot += "Anyone can call stop."
	room := right - left
	s.Add(
		&scene.Text{At: scene.Pt(left, 9), Text: fonts.Bold.Fit(13, room*0.55, fonts.Clean(who.ID().Name)), Size: 13, Face: fonts.Bold},
		&scene.Text{At: scene.Pt(right, 9), Text: fonts.Regular.Fit(8.5, room*0.42, fonts.Clean(role)), Size: 8.5, Anchor: scene.End},
		&scene.Text{Class: "book-quiet", At: scene.Pt(left, 13), Text: fonts.Regular.Fit(7.5, room, fonts.Clean(take)), Size: 7.5},
		scene.Line("book-heavy", scene.Pt(left, 14.6), scene.Pt(right, 14.6)),
		&scene.Text{Class: "book-quiet", At: scene.Pt(left, s.Height-5), Text: fonts.Regular.Fit(7, room-24, foot), Size: 7},
		&scene.Text{Class: "book-quiet", At: scene.Pt(right, s.Height-5), Text: count, Size: 7, Anchor: scene.End})
}
