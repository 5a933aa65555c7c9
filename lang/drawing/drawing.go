// Package drawing reads floor plans somebody else has drawn: SVG and DXF, as far
// as walls, blocks, platforms and pillars are to be had from them.
//
// What a shape stands for is said by its layer or group: one named `wall`,
// `block`, `platform` or `pillar`, which may go on with a name and heights, as in
// `wall street 3 m` or `platform stage 0.2 m to 0.6 m`. Everything else is left
// out, and said to be.
//
// It reads texts, not files, and knows nothing of plans but the kinds of their
// parts; it may import geom, units, syntax and plan.
package drawing

import (
	"fmt"
	"path"
	"strings"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Drawing is what a floor plan holds, in metres, y up the paper.
type Drawing struct {
	Shapes  []Shape
	LeftOut []LeftOut // in the order of the drawing
	// Unitless says that the drawing doesn't say what it is measured in (a DXF
	// without units, an SVG with a viewBox and no size), and that millimetres were
	// taken.
	Unitless bool
}

// Shape is a part of the set.
type Shape struct {
	Kind   plan.Kind // KindWall, KindBlock, KindPlatform or KindPillar
	Name   string
	Layer  string // as the drawing has it
	Points []geom.Vec
	Round  units.Metres // diameter of a pillar, whose centre is the one point
	High   *plan.Range  // nil where the layer does not say
	Thick  units.Metres // 0 where the layer does not say
}

// LeftOut is something that was not taken, with the reason.
type LeftOut struct {
	What  string // "layer `furniture`", "`bench-3`"
	Count int    // of shapes
	Why   string
}

// MaxShapes is how many shapes a drawing may hold that are to be read.
const MaxShapes = 20000

// Known reports whether a file's name is that of a drawing that can be read.
func Known(name string) bool {
	switch strings.ToLower(path.Ext(name)) {
	case ".svg", ".dxf":
		return true
	}
	return false
}

// Read takes the shapes from the text of a drawing, whose name says its format;
// scale is 50 for 1:50. The error says why nothing can be had from the text.
func Read(name, text string, scale int) (*Drawing, error) {
	if scale < 1 {
		return nil, fmt.Errorf("a drawing to scale 1:%d cannot be", scale)
	}
	var sheet *sheet
	var err error
	switch strings.ToLower(path.Ext(name)) {
	case ".svg":
		sheet, err = readSVG(text, float64(scale))
	case ".dxf":
		sheet, err = readDXF(text, float64(scale))
	default:
		return nil, fmt.Errorf("its name has to end in .svg or .dxf, to say what it is")
	}
	if err != nil {
		return nil, err
	}
	return sheet.sort(float64(scale) / 1000)
}

// sheet is a drawing as its file has it, in millimetres, y up.
type sheet struct {
	items    []item
	odd      []LeftOut // what the format has and we don't read
	unitless bool
}

// item is a line or outline on the sheet.
type item struct {
	layers []string // of the groups it is in, the outermost first
	name   string   // "" where it has none
	points []geom.Vec
	closed bool
	radius float64 // of a circle about the one point
}

// leave counts something that was left out.
func leave(list []LeftOut, what, why string) []LeftOut {
	for i := range list {
		if list[i].What == what && list[i].Why == why {
			list[i].Count++
			return list
		}
	}
	return append(list, LeftOut{what, 1, why})
}

// Bounds are the lower left and upper right corner of all that was taken.
func (d *Drawing) Bounds() (low, high geom.Vec) {
	var all []geom.Vec
	for _, s := range d.Shapes {
		r := geom.Vec{X: float64(s.Round) / 2, Y: float64(s.Round) / 2}
		for _, p := range s.Points {
			all = append(all, p.Sub(r), p.Add(r))
		}
	}
	return geom.Bounds(all)
}
