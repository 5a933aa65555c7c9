package book

import (
	"context"
	"fmt"
	"strings"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/render/flow"
	"longhand/render/frames"
	"longhand/render/overhead"
	"longhand/render/pdf"
	"longhand/render/scene"
	"longhand/render/sheets"
	"longhand/render/timeline"
)

// maker is a book in the making.
type maker struct {
	r      *compile.Result
	p      *plan.Plan
	o      Options
	sheets *sheets.Book
	frames *frames.Drawer
	spans  []*plan.Beat    // in order of time
	past   *past           // nil without an earlier revision
	rows   map[string]bool // every row of every table, for a later revision

	body  []leaf
	front int // pages before the body
	pages int // in all; 0 while they are counted
}

// leaf is a page of the body.
type leaf struct {
	flow.Page
	section string // running head; "" for a drawing, which has a title block
	key     string // what it shows, to find it in an earlier revision
	changed bool
}

// Make makes the book's pages.
func Make(ctx context.Context, r *compile.Result, o Options) (*pdf.Document, error) {
	m, err := newMaker(ctx, r, o)
	if err != nil {
		return nil, err
	}
	if o.Before != nil {
		older := o
		older.Before, older.OnlyChanged = nil, false
		b, err := newMaker(ctx, o.Before, older)
		if err != nil {
			return nil, fmt.Errorf("the earlier revision: %w", err)
		}
		if err := b.make(ctx); err != nil {
			return nil, err
		}
		m.past = b.remembered()
	}
	if err := m.make(ctx); err != nil {
		return nil, err
	}
	return m.document(), nil
}

// make makes the body: once to count the pages, once to number them.
func (m *maker) make(ctx context.Context) error {
	if err := m.fill(ctx); err != nil {
		return err
	}
	m.front = len(m.cover()) + len(m.contents())
	m.pages = m.front + len(m.body)
	return m.fill(ctx)
}

func newMaker(ctx context.Context, r *compile.Result, o Options) (*maker, error) {
	if err := usable(r); err != nil {
		return nil, err
	}
	b, err := sheets.Breakdown(ctx, r)
	if err != nil {
		return nil, err
	}
	m := &maker{r: r, p: r.Plan, o: o, sheets: b, frames: frames.New(r), rows: map[string]bool{}}
	for _, s := range r.Tracks.Clock.Spans() {
		if s.Beat != nil {
			m.spans = append(m.spans, s.Beat)
		}
	}
	return m, nil
}

// fill makes the body anew.
func (m *maker) fill(ctx context.Context) error {
	m.body = nil
	m.take()
	for i, b := range m.spans {
		if err := ctx.Err(); err != nil {
			return err
		}
		m.beat(i, b)
	}
	m.findings()
	m.departments()
	m.cautions()
	m.mark()
	return ctx.Err()
}

// next is the number of the next page, from 1.
func (m *maker) next() int { return m.front + len(m.body) + 1 }

// add appends pages; their own links and headings count from 0.
func (m *maker) add(section, key string, pages []flow.Page) {
	at := len(m.body)
	for _, p := range pages {
		for i := range p.Entries {
			p.Entries[i].Page += at
		}
		for i := range p.Links {
			p.Links[i].Page += at
		}
		m.body = append(m.body, leaf{Page: p, section: section, key: key})
	}
}

// drawn appends sheets that are pages by themselves, the first under a heading.
func (m *maker) drawn(key string, all []*scene.Sheet, level int, heading string) {
	for i, s := range all {
		p := flow.Page{Sheet: s}
		if i == 0 && heading != "" {
			p.Entries = []flow.Entry{{Level: level, Text: heading}}
		}
		m.add("", key, []flow.Page{p})
	}
}

func (m *maker) overhead() overhead.Options {
	return overhead.Options{Paper: m.o.paper(), Department: noted(m.o.For), Page: m.next(), Pages: m.pages, Colour: m.o.Colour}
}

// noted is what a plan's notes, and drawings, call a department.
func noted(d sheets.Department) string {
	switch d {
	case sheets.Effects:
		return "effects"
	case sheets.Ads:
		return "directors"
	}
	return string(d)
}

// take is the whole take: from above, and along its time.
func (m *maker) take() {
	m.drawn("take", overhead.Take(m.r, m.overhead()), 0, "The whole take from above")
	m.drawn("timeline", timeline.Sheets(m.r, timeline.Options{Paper: m.o.paper(), Page: m.next(), Pages: m.pages}), 0, "The take along its time")
}

// framed is whether a department gets the frames.
func (m *maker) framed() bool {
	switch m.o.For {
	case "", sheets.Camera, sheets.Script, sheets.Effects, sheets.Art, sheets.Ads:
		return true
	}
	return false
}

// beat is one beat: overhead, frames, running order.
func (m *maker) beat(i int, b *plan.Beat) {
	heading := fmt.Sprintf("Beat %d  %s", i+1, b.Title)
	at := len(m.body)
	m.drawn("overhead "+b.Title, overhead.Beat(m.r, b, m.overhead()), 0, heading)
	if len(m.body) > at {
		heading = ""
	}
	if m.framed() {
		sub := lensHeading
		if heading != "" {
			sub = heading
		}
		level := 1
		if heading != "" {
			level = 0
		}
		before := len(m.body)
		m.drawn("frames "+b.Title, m.frames.Sheet(b, frames.Options{Paper: m.o.paper(), Page: m.next(), Pages: m.pages}), level, sub)
		if len(m.body) > before {
			heading = ""
		}
	}
	m.add(fmt.Sprintf("Beat %d  %s", i+1, b.Title), "order "+b.Title, m.order(i, b, heading))
}

// document puts cover, contents and body together.
func (m *maker) document() *pdf.Document {
	d := &pdf.Document{
		Title: m.title(), Subject: "scene " + m.p.Take.Scene, Created: created(m.r),
	}
	if m.p.Take.Scene == "" {
		d.Subject = "one take"
	}
	for _, f := range m.r.Files {
		if f == nil || f.Source == nil {
			continue
		}
		name := f.Source.Name
		name = name[strings.LastIndexByte(name, '/')+1:]
		d.Files = append(d.Files, pdf.File{Name: name, Desc: "the plan's own text", Content: []byte(f.Source.Text)})
	}
	front := append(m.cover(), m.contents()...)
	for i := range front {
		m.furnish(front[i].Sheet, i+1, "", false)
		p := pdf.Page{Sheet: front[i].Sheet, Label: fmt.Sprint(i + 1)}
		if i == 0 {
			p.Bookmarks = []pdf.Bookmark{{Text: "Cover"}}
		}
		for _, l := range front[i].Links {
			p.Links = append(p.Links, pdf.Link{Box: l.Box, Page: l.Page + m.front, Y: l.Y})
		}
		d.Pages = append(d.Pages, p)
	}
	for i := range m.body {
		l := &m.body[i]
		if l.section != "" {
			m.furnish(l.Sheet, m.front+i+1, l.section, l.changed)
		} else if l.changed {
			changeBar(l.Sheet)
		}
		p := pdf.Page{Sheet: l.Sheet, Label: fmt.Sprint(m.front + i + 1)}
		for _, e := range l.Entries {
			p.Bookmarks = append(p.Bookmarks, pdf.Bookmark{Level: e.Level, Text: e.Text, Y: e.Y})
		}
		for _, k := range l.Links {
			p.Links = append(p.Links, pdf.Link{Box: k.Box, Page: k.Page + m.front, Y: k.Y})
		}
		d.Pages = append(d.Pages, p)
	}
	if m.o.OnlyChanged && m.past != nil {
		d.Pages = m.kept(d.Pages, len(front))
	}
	return d
}

// kept is the front and the pages that changed; links to others go.
func (m *maker) kept(pages []pdf.Page, front int) []pdf.Page {
	moved := map[int]int{}
	var out []pdf.Page
	for i, p := range pages {
		if i < front || m.body[i-front].changed {
			moved[i] = len(out)
			out = append(out, p)
		}
	}
	for i := range out {
		var links []pdf.Link
		for _, l := range out[i].Links {
			if to, ok := moved[l.Page]; ok {
				l.Page = to
				links = append(links, l)
			}
		}
		out[i].Links = links
	}
	return out
}

func (m *maker) title() string {
	t := m.p.Take.Title
	if m.o.For != "" {
		t += ", " + strings.ToLower(m.o.For.Title())
	}
	return t
}
