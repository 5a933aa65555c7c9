package flow

import (
	"longhand/render/fonts"
	"longhand/render/scene"
)

// Entries collects the headings of pages, in order.
func Entries(pages []Page) []Entry {
	var out []Entry
	for _, p := range pages {
		out = append(out, p.Entries...)
	}
	return out
}

// Contents sets a table of contents. Number tells the page number to print for
// the page with an index; links lead to the same index. Entries deeper than the
// given level are left out.
func Contents(o Options, title string, entries []Entry, deepest int, number func(page int) string) []Page {
	f := New(o)
	f.Heading(0, title)
	for _, e := range entries {
		if e.Level <= deepest {
			f.entry(e, number(e.Page))
		}
	}
	pages := f.Pages(nil)
	for i := range pages {
		pages[i].Entries = nil // it is not listed in itself
	}
	return pages
}

// entry prints a line of contents: the heading, a row of dots, the number.
func (f *Flow) entry(e Entry, number string) {
	size, face := f.o.size(), fonts.Regular
	if e.Level == 0 {
		face = fonts.Bold
		f.Space(1.5)
	}
	step := fonts.LineHeight(size) * 1.15
	f.need(step)
	left, right := f.o.Margins.Left+4*float64(max(0, e.Level)), f.o.Margins.Left+f.Width()
	numberWidth := face.Width(size, number)
	text := face.Fit(size, right-left-numberWidth-6, fonts.Clean(e.Text))
	f.text(left, f.y, face, size, scene.Start, text)
	f.text(right, f.y, face, size, scene.End, number)
	y := f.y + face.Ascent(size)
	from, to := left+face.Width(size, text)+2, right-numberWidth-2
	if to > from {
		f.sheet().Add(scene.Line("flow-dots", scene.Pt(from, y), scene.Pt(to, y)))
	}
	p := f.page()
	p.Links = append(p.Links, Link{Box: scene.BoxAt(left, f.y, right-left, step), Page: e.Page, Y: e.Y})
	f.advance(step)
}
