package book

import (
	"fmt"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/render/flow"
	"longhand/render/frames"
	"longhand/render/overhead"
	"longhand/render/scene"
	"longhand/render/timeline"
)

// section is a part of the body that can be drawn by itself.
type section struct {
	numbered bool                  // its pages tell their own numbers
	draw     func(page int) []leaf // the first of which is this one
}

func (m *maker) sections() []section {
	all := []section{{true, m.take}}
	for i, b := range m.spans {
		all = append(all, section{true, m.beat(i, b)})
	}
	if len(m.r.Pickups) > 0 {
		all = append(all, section{true, m.pickups()})
	}
	all = append(all, section{false, m.findings})
	if m.o.Rehearsal != nil {
		all = append(all, section{false, m.rehearsal})
	}
	for i := range m.sheets.Sheets {
		s := &m.sheets.Sheets[i]
		if m.o.For == "" || s.Department == m.o.For {
			all = append(all, section{false, m.department(s)})
		}
	}
	return append(all, section{false, m.cautions})
}

// texts are pages of text.
func texts(section, key string, pages []flow.Page) []leaf {
	out := make([]leaf, len(pages))
	for i, p := range pages {
		out[i] = leaf{Page: p, section: section, key: key}
	}
	return out
}

// drawings are sheets that are pages by themselves, the first under a heading.
func drawings(key string, all []*scene.Sheet, level int, heading string) []leaf {
	out := make([]leaf, len(all))
	for i, s := range all {
		out[i] = leaf{Page: flow.Page{Sheet: s}, key: key}
		if i == 0 && heading != "" {
			out[i].Entries = []flow.Entry{{Level: level, Text: heading}}
		}
	}
	return out
}

// join puts leaves one after another; headings count from the first of all.
func join(parts ...[]leaf) []leaf {
	var out []leaf
	for _, p := range parts {
		at := len(out)
		for _, l := range p {
			for i := range l.Entries {
				l.Entries[i].Page += at
			}
			for i := range l.Links {
				l.Links[i].Page += at
			}
			out = append(out, l)
		}
	}
	return out
}

func (m *maker) overhead(page int) overhead.Options {
	return overhead.Options{Paper: m.o.paper(), Department: m.o.For, Page: page, Pages: m.pages, Colour: m.o.Colour}
}

// take is the whole take: from above, and along its time.
func (m *maker) take(page int) []leaf {
	above := drawings("take", overhead.Take(m.r, m.overhead(page)), 0, "The whole take from above")
	along := timeline.Sheets(m.r, timeline.Options{Paper: m.o.paper(), Page: page + len(above), Pages: m.pages})
	return join(above, drawings("timeline", along, 0, "The take along its time"))
}

// framed is whether a department gets the frames.
func (m *maker) framed() bool {
	switch m.o.For {
	case "", departments.Camera, departments.Script, departments.Effects, departments.Art, departments.Ads:
		return true
	}
	return false
}

// beat is one beat: overhead, frames, running order.
func (m *maker) beat(i int, b *plan.Beat) func(page int) []leaf {
	var order []leaf // tells no number: made once
	return func(page int) []leaf {
		heading := fmt.Sprintf("Beat %d  %s", i+1, b.Title)
		above := drawings("overhead "+b.Title, overhead.Beat(m.r, b, m.overhead(page)), 0, heading)
		if len(above) > 0 {
			heading = ""
		}
		var seen []leaf
		if m.framed() {
			o := frames.Options{Paper: m.o.paper(), Page: page + len(above), Pages: m.pages}
			if m.pages == 0 {
				seen = make([]leaf, m.frames.Count(b, o)) // to be drawn once they are counted
			} else {
				seen = drawings("frames "+b.Title, m.frames.Sheet(b, o), 1, lensHeading)
			}
		}
		if order == nil {
			order = texts(fmt.Sprintf("Beat %d  %s", i+1, b.Title), "order "+b.Title, m.order(i, b, heading))
		}
		again := make([]leaf, len(order))
		copy(again, order)
		for k := range again {
			again[k].Entries = append([]flow.Entry(nil), order[k].Entries...)
		}
		return join(above, seen, again)
	}
}
