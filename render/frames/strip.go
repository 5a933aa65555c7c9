package frames

import (
	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// The strip, in millimetres.
const (
	stripWide   = 160.0
	stripMargin = 2.0
)

// Strip draws what a camera sees at the start, in the middle and at the end of what
// it rolls of a beat, side by side for a page of text; of all there is, such as a
// pickup, where beat is nil. It is nil where the camera doesn't roll.
func Strip(r *compile.Result, beat *plan.Beat, camera *plan.Camera) *scene.Sheet {
	d := New(r)
	if d == nil {
		return nil
	}
	rows := d.Rows(beat)
	if beat == nil {
		rows = d.rows(0, units.Frame(d.scene.Frames-1))
	}
	for _, row := range rows {
		if row.Camera != camera {
			continue
		}
		c := d.scene.Cameras[d.camera(camera)]
		wide := (stripWide - 2*stripMargin - 2*gutter) / 3
		high := wide * c.Height / c.Width
		s := &scene.Sheet{Width: stripWide, Height: 2*stripMargin + high + 1.4 + 3*fonts.LineHeight(capSize), Styles: Styles(), Title: r.Plan.Take.Title,
			Desc: "what the lens sees at the start, in the middle and at the end"}
		s.Add(&scene.Rect{Class: "frame-paper", Box: s.Box()})
		for i, m := range row.Moments {
			at := scene.Pt(stripMargin+float64(i)*(wide+gutter), stripMargin)
			if g := d.Draw(camera, m.Frame, scene.BoxAt(at.X, at.Y, wide, high)); g != nil {
				s.Add(g)
			}
			lines := d.CaptionItems(camera, m, scene.Pt(at.X, at.Y+high+1.4), wide)
			s.Add(lines[:min(3, len(lines))]...)
		}
		return s.Spare()
	}
	return nil
}
