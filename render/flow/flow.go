// Package flow fills pages with headings, paragraphs, tables and drawings, one
// below the other, and starts a new page where one is full.
//
// The pages are scenes, so they can be printed, drawn, checked and compared like
// any drawing. Where things ended up is told, for contents, bookmarks and links.
// It knows nothing of plans and may import render/scene and render/fonts.
package flow

import (
	"longhand/render/fonts"
	"longhand/render/scene"
)

// Margins are the white edges of a page in millimetres.
type Margins struct{ Top, Right, Bottom, Left float64 }

// Options hold for all pages of a flow.
type Options struct {
	Paper   scene.Paper
	Margins Margins
	Title   string       // of each page's sheet, for reading aloud
	Size    float64      // of plain text in points; 0 for 9
	Styles  scene.Styles // of the drawings put in, besides the flow's own
}

func (o Options) size() float64 {
	if o.Size > 0 {
		return o.Size
	}
	return 9
}

// Styles are the rules of what a flow draws itself.
func Styles() scene.Styles {
	return scene.Styles{
		{Class: "flow-rule", Style: scene.Style{Stroke: scene.Grey(0.55), Width: 0.15}},
		{Class: "flow-heavy", Style: scene.Style{Stroke: scene.Black, Width: 0.4}},
		{Class: "flow-shade", Style: scene.Style{Fill: scene.Grey(0.92)}},
		{Class: "flow-bar", Style: scene.Style{Stroke: scene.Black, Width: 1, Cap: scene.Butt}},
		{Class: "flow-dots", Style: scene.Style{Stroke: scene.Grey(0.4), Width: 0.2, Dash: []float64{0.2, 1.2}}},
	}
}

// Entry is a heading and where it stands.
type Entry struct {
	Level int // 0 for the highest
	Text  string
	Page  int // index in the flow's pages
	Y     float64
}

// Link leads from a part of a page to another place.
type Link struct {
	Box  scene.Box
	Page int
	Y    float64
}

// Page is a finished page.
type Page struct {
	Sheet   *scene.Sheet
	Entries []Entry
	Links   []Link
}

// Flow is a run of pages being filled.
type Flow struct {
	o     Options
	pages []Page
	y     float64 // where the next thing goes, from the top of the page
	fresh bool    // nothing is on the page yet
	held  []held  // headings that wait for what follows them
}

// held is something that must not end a page.
type held struct {
	height float64
	draw   func(y float64)
}

// New starts a flow on a page of its own.
func New(o Options) *Flow {
	return &Flow{o: o}
}

// Width is the room between the margins, in millimetres.
func (f *Flow) Width() float64 {
	return f.o.Paper.Width - f.o.Margins.Left - f.o.Margins.Right
}

// height is the room between the margins from top to bottom.
func (f *Flow) height() float64 {
	return f.o.Paper.Height - f.o.Margins.Top - f.o.Margins.Bottom
}

func (f *Flow) bottom() float64 { return f.o.Paper.Height - f.o.Margins.Bottom }

// Left is what is free below on the page, in millimetres.
func (f *Flow) Left() float64 {
	if len(f.pages) == 0 {
		return f.height() - f.heldHeight()
	}
	return f.bottom() - f.y - f.heldHeight()
}

func (f *Flow) heldHeight() float64 {
	sum := 0.0
	for _, h := range f.held {
		sum += h.height
	}
	return sum
}

func (f *Flow) page() *Page { return &f.pages[len(f.pages)-1] }

func (f *Flow) sheet() *scene.Sheet { return f.page().Sheet }

// newPage starts a page.
func (f *Flow) newPage() {
	s := &scene.Sheet{
		Width: f.o.Paper.Width, Height: f.o.Paper.Height, Title: f.o.Title,
		Styles: append(Styles(), f.o.Styles...),
	}
	f.pages = append(f.pages, Page{Sheet: s})
	f.y, f.fresh = f.o.Margins.Top, true
}

// need makes sure that a height fits on the page together with the headings
// held back for it, and draws those. What is higher than a page starts one.
func (f *Flow) need(height float64) {
	if len(f.pages) == 0 || !f.fresh && f.y+f.heldHeight()+height > f.bottom()+1e-6 {
		f.newPage()
	}
	waiting := f.held
	f.held = nil
	for _, h := range waiting {
		if f.fresh { // a page does not start with the space above a heading
			h.height -= headSpace
			h.draw(f.y - headSpace)
		} else {
			h.draw(f.y)
		}
		f.advance(h.height)
	}
}

func (f *Flow) advance(by float64) {
	f.y += by
	f.fresh = false
}

// Space leaves room before what comes next, unless that starts a page.
func (f *Flow) Space(height float64) {
	if len(f.pages) > 0 && !f.fresh && len(f.held) == 0 {
		f.y += height
	}
}

// Break makes what comes next start a page.
func (f *Flow) Break() {
	if len(f.held) > 0 {
		f.need(0)
	}
	if len(f.pages) > 0 && !f.fresh {
		f.newPage()
	}
}

// Figure puts in a drawing of a size, which is kept whole; its items are placed
// relative to the drawing's own top left corner.
func (f *Flow) Figure(width, height float64, items []scene.Item) {
	f.need(height)
	f.sheet().Add(scene.Placed(items, scene.Pt(f.o.Margins.Left, f.y), 1)...)
	f.advance(height)
}

// Drawing puts in a sheet that is a page by itself, whatever its size; text goes
// on on the page after it. The heading becomes an entry and is not printed.
func (f *Flow) Drawing(s *scene.Sheet, level int, heading string) {
	if len(f.held) > 0 {
		f.need(0)
	}
	if len(f.pages) > 0 && f.fresh {
		f.pages = f.pages[:len(f.pages)-1]
	}
	p := Page{Sheet: s}
	if heading != "" {
		p.Entries = []Entry{{Level: level, Text: heading, Page: len(f.pages)}}
	}
	f.pages = append(f.pages, p)
	f.y, f.fresh = f.bottom()+1, false // full
}

// Pages ends the flow and gives its pages. Each is finished by furnish, if there
// is one, which may add what stands in the margins: page numbers, title blocks.
func (f *Flow) Pages(furnish func(p *Page, number, of int)) []Page {
	if len(f.held) > 0 {
		f.need(0)
	}
	if len(f.pages) > 1 && f.fresh {
		f.pages = f.pages[:len(f.pages)-1]
	}
	for i := range f.pages {
		if furnish != nil {
			furnish(&f.pages[i], i+1, len(f.pages))
		}
	}
	return f.pages
}

// text sets one line with its top at y.
func (f *Flow) text(x, y float64, face fonts.Face, size float64, anchor scene.Anchor, line string) {
	if line == "" {
		return
	}
	f.sheet().Add(&scene.Text{At: scene.Pt(x, y+face.Ascent(size)), Text: line, Size: size, Face: face, Anchor: anchor})
}
