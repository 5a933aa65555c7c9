package overhead

import (
	"math"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/scene"
)

// The small drawing, in millimetres but for the last.
const (
	smallWide  = 160.0
	smallHigh  = 95.0 // at most
	smallLeast = 34.0
	smallStrip = 9.0 // under it, for the scale bar
	smallSet   = 18  // metres
)

// Small draws a beat for a page of text: what is on the floor at the scale that
// fits, its names and a scale bar, and neither numbers nor list nor title block. It
// is nil where the plan could not be worked out.
func Small(r *compile.Result, beat *plan.Beat, o Options) *scene.Sheet {
	m := from(r)
	if m == nil || beat == nil {
		return nil
	}
	s := m.spanOf(beat)
	e, set := m.happening(s, beat, true), m.setExtent()
	if e.any { // and whoever only stands about
		for _, b := range m.tracks.Bodies {
			around := float64(b.Radius)
			if b.Length > 0 {
				around = math.Hypot(float64(b.Length), float64(b.Width)) / 2
			}
			m.each(s, func(t units.Seconds) { e.add(b.At(t).Point(), around) })
		}
	}
	whole := set
	for _, g := range m.plan.Set.Grids {
		for _, p := range g.Polygon {
			whole.add(p, 0)
		}
	}
	for _, l := range m.plan.Set.Placed {
		whole.add(l.At.Point, 0.3)
	}
	// A set that is small enough is shown with all that stands in it.
	if size := whole.size(); !e.any || size.X <= smallSet && size.Y <= smallSet {
		e.join(whole)
	}
	if !e.any {
		e.add(e.low, 2)
	}
	most := scene.BoxAt(0, 0, smallWide, smallHigh)
	scale := o.Scale
	if scale <= 0 {
		scale = fit(e, most, smallScales(m.plan.Take.Units))
	}
	high := min(smallHigh, max(smallLeast, e.size().Y*1000/scale+2*room))
	box := scene.BoxAt(0, 0, smallWide, high)
	d := &drawing{material: m, o: o, beat: beat, span: s, box: box, view: centred(e, set, box, scale), bare: true}
	d.draw()
	d.settle()
	sheet := &scene.Sheet{Width: smallWide, Height: high + smallStrip, Styles: styles(o.Colour), Title: m.plan.Take.Title,
		Desc: "Floor plan at " + scaleText(scale, m.plan.Take.Units)}
	plan := &scene.Group{ID: "plan", Title: "floor plan", Clip: [][]scene.Point{box.Corners()}}
	for _, g := range d.layers {
		plan.Add(g)
	}
	bar, _ := d.scaleBar(scene.Pt(4, high+3.6))
	bar.Items = bar.Items[:len(bar.Items)-1] // without the ratio, which no screen keeps
	sheet.Add(&scene.Rect{Class: "paper", Box: sheet.Box()}, plan, &scene.Rect{Class: "border", Box: box.Grow(-0.25)}, bar)
	return sheet.Spare()
}

// smallScales has steps between the usual ones: nobody measures on these drawings.
func smallScales(s units.System) []float64 {
	if s == units.Feet {
		return imperial
	}
	return []float64{30, 40, 50, 60, 75, 90, 100, 125, 150, 175, 200, 250, 300, 400, 500, 1000, 2000, 5000, 10000}
}
