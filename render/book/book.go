package book

import (
	"context"
	"fmt"
	"runtime"
	"strings"
	"sync"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/render/flow"
	"longhand/render/frames"
	"longhand/render/pdf"
	"longhand/render/sheets"
)

// maker is a book in the making.
type maker struct {
	r      *compile.Result
	p      *plan.Plan
	o      Options
	sheets *sheets.Book
	frames *frames.Drawer
	spans  []*plan.Beat // in order of time
	past   *past        // nil without an earlier revision

	mu   sync.Mutex
	rows map[string]bool // every row of every table, for a later revision

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
	asked   bool // it was asked for, and no earlier revision has it to compare with
}

// Make makes the book's pages.
func Make(ctx context.Context, r *compile.Result, o Options) (*pdf.Document, error) {
	m, err := newMaker(ctx, r, o)
	if err != nil {
		return nil, err
	}
	if o.Before != nil {
		older := o
		older.Before, older.OnlyChanged, older.Sheets, older.Rehearsal = nil, false, nil, nil
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

func newMaker(ctx context.Context, r *compile.Result, o Options) (*maker, error) {
	if err := usable(r); err != nil {
		return nil, err
	}
	m := &maker{r: r, p: r.Plan, o: o, sheets: o.Sheets, frames: frames.New(r), rows: map[string]bool{}}
	if m.sheets == nil {
		b, err := sheets.Breakdown(ctx, r)
		if err != nil {
			return nil, err
		}
		m.sheets = b
	}
	for _, s := range r.Tracks.Clock.Spans() {
		if s.Beat != nil {
			m.spans = append(m.spans, s.Beat)
		}
	}
	return m, nil
}

// make makes the body: once to count the pages, once more, where pages tell their
// number themselves, to number them.
func (m *maker) make(ctx context.Context) error {
	sections := m.sections()
	drawn := make([][]leaf, len(sections))
	page := make([]int, len(sections))
	pass := func() error {
		var wait sync.WaitGroup
		free := make(chan struct{}, runtime.GOMAXPROCS(0))
		for i := range sections {
			wait.Add(1)
			go func() {
				defer wait.Done()
				free <- struct{}{}
				defer func() { <-free }()
				if ctx.Err() == nil && (m.pages == 0 || sections[i].numbered) {
					drawn[i] = sections[i].draw(page[i])
				}
			}()
		}
		wait.Wait()
		m.body = nil
		for i := range sections {
			page[i] = m.front + len(m.body) + 1
			m.add(drawn[i])
		}
		return ctx.Err()
	}
	if err := pass(); err != nil {
		return err
	}
	cover, contents := m.cover(), m.contents()
	m.front = len(cover) + len(contents)
	m.pages = m.front + len(m.body)
	for i := range page {
		page[i] += m.front
	}
	if err := pass(); err != nil {
		return err
	}
	m.mark()
	return nil
}

// add appends leaves; their own links and headings count from the first of them.
func (m *maker) add(leaves []leaf) {
	at := len(m.body)
	for _, l := range leaves {
		entries := append([]flow.Entry(nil), l.Entries...)
		for i := range entries {
			entries[i].Page += at
		}
		links := append([]flow.Link(nil), l.Links...)
		for i := range links {
			links[i].Page += at
		}
		l.Entries, l.Links = entries, links
		m.body = append(m.body, l)
	}
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

// kept is the front and the pages that changed or were asked for; links to others
// go.
func (m *maker) kept(pages []pdf.Page, front int) []pdf.Page {
	moved := map[int]int{}
	var out []pdf.Page
	for i, p := range pages {
		if i < front || m.body[i-front].changed || m.body[i-front].asked {
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

// named is the take's title, or what stands for it where the plan gives none.
func (m *maker) named() string {
	if t := strings.TrimSpace(m.p.Take.Title); t != "" {
		return t
	}
	return "Untitled take"
}

func (m *maker) title() string {
	t := m.named()
	if m.o.For != "" {
		t += ", " + strings.ToLower(m.o.For.Title())
	}
	return t
}
