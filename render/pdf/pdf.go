// Package pdf writes sheets as the pages of one PDF: vector drawings to scale,
// text that can be selected and searched, fonts embedded and cut to what is
// used, bookmarks, page labels, links between pages, layers and attached files.
//
// The same pages give the same bytes: dates come from the caller, never from a
// clock. It is the only package that imports a PDF library. It may import
// render/scene and render/fonts.
package pdf

import (
	"bytes"
	"fmt"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"longhand/render/fonts"
	"longhand/render/scene"
)

// Document is what becomes one file.
type Document struct {
	Title    string
	Subject  string
	Author   string
	Language string    // as in RFC 5646, such as "en"; empty for "en"
	Created  time.Time // put into the file as it is; the zero time is written as 1970
	Pages    []Page
	Files    []File
	// Layer names the layer a group belongs to, which a reader can switch off;
	// empty for none of its own. Groups inside a group with a layer share it.
	// Nil for a file without layers.
	Layer func(*scene.Group) string
}

// Page is one sheet with what leads to it and from it.
type Page struct {
	Sheet     *scene.Sheet
	Label     string // the page number a reader shows; empty for the plain count
	Bookmarks []Bookmark
	Links     []Link
}

// Bookmark is an entry of the outline. A level may be at most one more than
// that of the entry before; deeper ones are raised.
type Bookmark struct {
	Level int
	Text  string
	Y     float64 // mm from the top of the page
}

// Link makes a part of a page lead to another page.
type Link struct {
	Box  scene.Box
	Page int // index in Document.Pages
	Y    float64
}

// File is attached to the document as a whole, such as the plan's own text.
type File struct {
	Name    string
	Desc    string
	Content []byte
}

const family = "go"

// Write gives the document as a PDF file.
func Write(d *Document) ([]byte, error) {
	if len(d.Pages) == 0 {
		return nil, fmt.Errorf("a document needs at least one page")
	}
	for i, p := range d.Pages {
		if p.Sheet == nil || !(p.Sheet.Width > 0) || !(p.Sheet.Height > 0) {
			return nil, fmt.Errorf("page %d has no sheet with a width and a height", i+1)
		}
	}
	w := &writer{doc: d, layers: map[string]int{}}
	w.open()
	for _, p := range d.Pages {
		w.page(p)
	}
	w.bookmarks()
	var buf bytes.Buffer
	if err := w.f.Output(&buf); err != nil {
		return nil, fmt.Errorf("writing the pdf: %w", err)
	}
	return amend(buf.Bytes(), d)
}

type writer struct {
	doc    *Document
	f      *fpdf.Fpdf
	links  []int
	layers map[string]int
}

func (w *writer) open() {
	d := w.doc
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: size(d.Pages[0].Sheet)})
	w.f = f
	created := d.Created
	if created.IsZero() {
		created = time.Unix(0, 0)
	}
	f.SetCatalogSort(true)
	f.SetCreationDate(created.UTC())
	f.SetModificationDate(created.UTC())
	f.SetProducer("longhand", true)
	f.SetTitle(plain(d.Title), true)
	if d.Subject != "" {
		f.SetSubject(plain(d.Subject), true)
	}
	if d.Author != "" {
		f.SetAuthor(plain(d.Author), true)
	}
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	used := map[fonts.Face]bool{}
	for _, p := range d.Pages {
		for _, t := range p.Sheet.Texts() {
			used[t.Face] = true
		}
	}
	if len(used) == 0 {
		used[fonts.Regular] = true // bookmarks are encoded by the font in use
	}
	for _, face := range fonts.Faces() {
		if used[face] {
			// A copy, since the library writes into it while it cuts the font.
			f.AddUTF8FontFromBytes(family+face.String(), "", bytes.Clone(face.TTF()))
			f.SetFont(family+face.String(), "", 10)
		}
	}
	for range d.Pages {
		w.links = append(w.links, f.AddLink())
	}
}

func size(s *scene.Sheet) fpdf.SizeType { return fpdf.SizeType{Wd: s.Width, Ht: s.Height} }

func (w *writer) page(p Page) {
	f := w.f
	f.AddPageFormat("P", size(p.Sheet))
	f.SetLink(w.links[f.PageNo()-1], 0, f.PageNo())
	f.RawWriteStr("4 M") // the miter limit of SVG, so that corners are the same
	p.Sheet.Paint(newPainter(w))
	for _, l := range p.Links {
		if l.Page < 0 || l.Page >= len(w.doc.Pages) {
			f.SetError(fmt.Errorf("a link on page %d leads to page %d of %d", f.PageNo(), l.Page+1, len(w.doc.Pages)))
			return
		}
		to := w.links[l.Page]
		if l.Y != 0 {
			to = f.AddLink()
			f.SetLink(to, l.Y, l.Page+1)
		}
		f.Link(l.Box.Min.X, l.Box.Min.Y, l.Box.Width(), l.Box.Height(), to)
	}
}

// bookmarks come last: the library measures all their places from the bottom of
// the last page, whatever the size of their own, which is made up for here.
func (w *writer) bookmarks() {
	last := w.doc.Pages[len(w.doc.Pages)-1].Sheet.Height
	deepest := 0
	for i, p := range w.doc.Pages {
		w.f.SetPage(i + 1)
		for _, b := range p.Bookmarks {
			level := max(0, min(b.Level, deepest))
			deepest = level + 1
			y := b.Y + last - p.Sheet.Height
			if y == -1 { // which the library takes for "here"
				y = -1.001
			}
			w.f.Bookmark(plain(b.Text), level, y)
		}
	}
	w.f.SetPage(len(w.doc.Pages))
}

// plain is text the library can encode: one line of the basic plane.
func plain(text string) string {
	out := []rune(fonts.Clean(text))
	for i, r := range out {
		if r > 0xFFFF {
			out[i] = '\uFFFD'
		}
	}
	return string(out)
}
