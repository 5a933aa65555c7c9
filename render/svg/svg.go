// Package svg writes a scene as SVG.
//
// Width and height are in millimetres and one user unit is one millimetre, so a
// ruler on the print agrees with the drawing's scale. Every class of the
// sheet's styles becomes one CSS rule in one style block, where a reader can
// change how things look. It is the only package that imports an SVG library,
// and everything it passes on is escaped first.
//
// It may import render/scene and render/fonts.
package svg

import (
	"bytes"
	"encoding/xml"

	svgo "github.com/ajstarks/svgo/float"

	"longhand/render/scene"
)

// Options says how the file will be used; the zero value is a file of its own
// that names fonts and leaves it to the viewer to have them.
type Options struct {
	// Scope is put before every id and confines every style rule, for several
	// drawings in one HTML page. It must be a valid id; empty for none.
	Scope string
	// Inline leaves out the XML declaration, for use inside HTML.
	Inline bool
	// EmbedFonts carries the faces used inside the file, some 200 KB each.
	EmbedFonts bool
}

// Write gives the sheet as an SVG document.
func Write(s *scene.Sheet, o Options) []byte {
	var buf bytes.Buffer
	c := svgo.New(&buf)
	c.Decimals = 3
	w := writer{c: c, sheet: s, o: o, ids: s.UniqueIDs()}
	w.document()
	out := buf.Bytes()
	// The library opens with a declaration and a remark about itself.
	if i := bytes.Index(out, []byte("<svg")); i >= 0 {
		out = out[i:]
	}
	if !o.Inline {
		out = append([]byte(`<?xml version="1.0" encoding="UTF-8"?>`+"\n"), out...)
	}
	return out
}

type writer struct {
	c     *svgo.SVG
	sheet *scene.Sheet
	o     Options
	ids   map[*scene.Group]string
	clips int
}

func (w *writer) document() {
	width, height := scene.Round(w.sheet.Width), scene.Round(w.sheet.Height)
	// The role lets a screen reader walk through the groups; one that does not
	// know it takes the whole as one picture with a title.
	ns := []string{
		attr("viewBox", "0 0 "+scene.Number(width)+" "+scene.Number(height)),
		attr("role", "graphics-document img"),
		attr("aria-label", w.sheet.Title),
	}
	if w.o.Scope != "" {
		ns = append(ns, attr("id", w.o.Scope))
	}
	w.c.Startunit(width, height, "mm", ns...)
	w.c.Title(w.sheet.Title)
	if w.sheet.Desc != "" {
		w.c.Desc(w.sheet.Desc)
	}
	w.c.Style("text/css", "\n"+w.css()) // the library takes a lone text that starts with # for a link
	w.items(w.sheet.Items)
	w.c.End()
}

// id is a name in this document.
func (w *writer) id(name string) string {
	if w.o.Scope == "" {
		return name
	}
	return w.o.Scope + "-" + name
}

// attr is name="value" with the value escaped.
func attr(name, value string) string {
	return name + `="` + escape(value) + `"`
}

// escape makes text fit for an attribute; what XML cannot hold is replaced.
func escape(value string) string {
	var b bytes.Buffer
	_ = xml.EscapeText(&b, []byte(value)) // a buffer takes everything
	return b.String()
}
