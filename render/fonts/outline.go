package fonts

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Pen receives the outline of letters: x in millimetres along the baseline from
// the start of the line, y in millimetres above it. Contours are closed and
// fill by the nonzero rule.
type Pen interface {
	Move(x, y float64)
	Line(x, y float64)
	Quad(cx, cy, x, y float64)
	Cubic(c1x, c1y, c2x, c2y, x, y float64)
	Close()
}

// Outline draws a line of text with a pen.
func (f Face) Outline(points float64, text string, pen Pen) {
	g := table(f)
	var b sfnt.Buffer
	k := points * MMPerPoint / g.em
	shift := 0.0
	for _, r := range text {
		index := g.index(&b, r)
		segments, err := g.font.LoadGlyph(&b, index, fixed.Int26_6(g.em), nil)
		if err == nil { // a glyph without an outline leaves its gap
			trace(segments, shift, k, pen)
		}
		shift += g.advances[index] * k
	}
}

// trace gives one glyph, in font units with y down, to the pen.
func trace(segments sfnt.Segments, shift, k float64, pen Pen) {
	at := func(p fixed.Point26_6) (x, y float64) { return shift + float64(p.X)*k, -float64(p.Y) * k }
	open := false
	for _, s := range segments {
		x0, y0 := at(s.Args[0])
		x1, y1 := at(s.Args[1])
		x2, y2 := at(s.Args[2])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if open {
				pen.Close()
			}
			open = true
			pen.Move(x0, y0)
		case sfnt.SegmentOpLineTo:
			pen.Line(x0, y0)
		case sfnt.SegmentOpQuadTo:
			pen.Quad(x0, y0, x1, y1)
		case sfnt.SegmentOpCubeTo:
			pen.Cubic(x0, y0, x1, y1, x2, y2)
		}
	}
	if open {
		pen.Close()
	}
}
