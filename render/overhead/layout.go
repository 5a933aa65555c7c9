package overhead

import (
	"longhand/render/scene"
)

// Millimetres of the sheet that every layout keeps.
const (
	margin    = 8.0  // of the sheet's edge: what printers can't reach, and a thumb
	padding   = 2.0  // between a frame and what is in it
	stripHigh = 13.0 // under the drawing: scale bar, arrow, signs
	titleHigh = 48.0
)

// layout is where things are on a sheet.
type layout struct {
	paper   scene.Paper // as it lies
	drawing scene.Box   // the plan
	strip   scene.Box   // scale bar, arrow, signs
	title   scene.Box   // title block
	key     []scene.Box // columns of the list, in reading order
}

// layoutOf lays out a sheet. Lying, the list stands at the right with the title
// block under it, where it shows when sheets are pinned or bound at the left;
// upright, both lie below the drawing.
func layoutOf(p scene.Paper, turn Turn) layout {
	large := p.Width*p.Height > scene.A4.Width*scene.A4.Height*1.2
	if turn == Landscape {
		p = p.Landscape()
		l := layout{paper: p}
		in := scene.BoxAt(margin, margin, p.Width-2*margin, p.Height-2*margin)
		column := 82.0
		if large {
			column = 100
		}
		x := in.Max.X - column
		l.title = scene.Box{Min: scene.Pt(x, in.Max.Y-titleHigh), Max: in.Max}
		l.key = []scene.Box{{Min: scene.Pt(x, in.Min.Y), Max: scene.Pt(in.Max.X, l.title.Min.Y)}}
		l.strip = scene.Box{Min: scene.Pt(in.Min.X, in.Max.Y-stripHigh), Max: scene.Pt(x, in.Max.Y)}
		l.drawing = scene.Box{Min: in.Min, Max: scene.Pt(x, l.strip.Min.Y)}
		return l
	}
	l := layout{paper: p}
	in := scene.BoxAt(margin, margin, p.Width-2*margin, p.Height-2*margin)
	high := in.Height() * 0.38
	y := in.Max.Y - high
	columns := 2
	if large {
		columns = 3
	}
	title := 78.0
	l.title = scene.Box{Min: scene.Pt(in.Max.X-title, in.Max.Y-titleHigh), Max: in.Max}
	w := (in.Width()) / float64(columns)
	for i := range columns {
		b := scene.BoxAt(in.Min.X+float64(i)*w, y, w, high)
		if b.Max.X > l.title.Min.X+1e-6 {
			b.Max.Y = l.title.Min.Y
		}
		l.key = append(l.key, b)
	}
	l.strip = scene.Box{Min: scene.Pt(in.Min.X, y-stripHigh), Max: scene.Pt(in.Max.X, y)}
	l.drawing = scene.Box{Min: in.Min, Max: scene.Pt(in.Max.X, l.strip.Min.Y)}
	return l
}
