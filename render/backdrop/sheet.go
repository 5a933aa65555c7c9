package backdrop

import (
	"fmt"

	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

const (
	border = 10.0 // mm round the drawing
	head   = 14.0 // for the title
	foot   = 16.0 // for the key
)

// Sheet is an empty sheet of A3 with a title, a line under it, and the box that the
// drawing goes into.
func Sheet(styles scene.Styles, title, line, desc string) (*scene.Sheet, scene.Box) {
	paper := scene.A3.Landscape()
	s := &scene.Sheet{Width: paper.Width, Height: paper.Height, Styles: append(base(), styles...), Title: title, Desc: desc}
	box := scene.BoxAt(border, border+head, paper.Width-2*border, paper.Height-2*border-head-foot)
	s.Add(&scene.Rect{Class: "paper", Box: s.Box()}, &scene.Rect{Class: "frame", Box: box})
	g := &scene.Group{ID: "title", Title: "title"}
	y := border + fonts.Bold.CapHeight(14)
	g.Add(&scene.Text{Class: "ink", At: scene.Pt(border, y), Text: fonts.Bold.Fit(14, box.Width(), title), Size: 14, Face: fonts.Bold})
	g.Add(&scene.Text{Class: "ink", At: scene.Pt(border, y+6), Text: fonts.Regular.Fit(8, box.Width(), line), Size: 8})
	s.Add(g)
	return s, box
}

// Floor is the layer of what lies on the floor, cut off at the box.
func Floor(box scene.Box, title string, items ...scene.Item) *scene.Group {
	return &scene.Group{ID: "floor", Title: title, Clip: [][]scene.Point{box.Corners()}, Items: items}
}

// Entry explains something drawn; Draw draws it 10 mm wide about a height.
type Entry struct {
	Text string
	Draw func(x, y float64) []scene.Item
}

// Stroke is an entry for a line of a class.
func Stroke(class, text string) Entry {
	return Entry{text, func(x, y float64) []scene.Item {
		return []scene.Item{scene.Line(class, scene.Pt(x, y), scene.Pt(x+10, y))}
	}}
}

// Key explains the drawing under its box, with the scale and a remark.
func Key(box scene.Box, v scene.View, sys units.System, remark string, entries ...Entry) *scene.Group {
	g := &scene.Group{ID: "key", Class: "key", Title: "key"}
	x, y := box.Min.X, box.Max.Y+6
	for _, e := range entries {
		g.Add(e.Draw(x, y)...)
		g.Add(&scene.Text{Class: "ink", At: scene.Pt(x+12, y), Text: e.Text, Size: 7.5, Level: scene.Center})
		x += 18 + fonts.Regular.Width(7.5, e.Text)
	}
	g.Add(scaleBar(v, sys, box.Max.X, y)...)
	g.Add(&scene.Text{Class: "quiet", At: scene.Pt(box.Min.X, y+7), Size: 7, Text: remark + "; a plan on paper, no survey: tape and measure on the day"})
	return g
}

// scaleBar is a bar of whole metres, or feet, that ends at x.
func scaleBar(v scene.View, sys units.System, x, y float64) []scene.Item {
	unit, name := 1.0, "m"
	if sys == units.Feet {
		unit, name = float64(units.Foot), "ft"
	}
	count := 1.0
	for _, c := range []float64{1, 2, 5, 10, 20, 50, 100, 200, 500} {
		if count = c; v.Length(c*unit) >= 30 {
			break
		}
	}
	w := v.Length(count * unit)
	left := x - w
	return []scene.Item{
		&scene.Rect{Class: "bar-dark", Box: scene.BoxAt(left, y-0.8, w/2, 1.6)},
		&scene.Rect{Class: "bar", Box: scene.BoxAt(left+w/2, y-0.8, w/2, 1.6)},
		&scene.Text{Class: "ink", At: scene.Pt(left-2, y), Text: fmt.Sprintf("%s %s, 1:%s on A3", units.Number(count, 0), name, units.Number(v.Scale, 0)), Size: 7.5, Anchor: scene.End, Level: scene.Center},
	}
}

// base are the classes that every such drawing has.
func base() scene.Styles {
	both := func(class string, stroke, inside scene.Paint, width float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: stroke, Fill: inside, Width: width}}
	}
	line := func(class string, p scene.Paint, width float64, dash ...float64) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Stroke: p, Width: width, Dash: dash}}
	}
	fill := func(class string, p scene.Paint) scene.Rule {
		return scene.Rule{Class: class, Style: scene.Style{Fill: p}}
	}
	return scene.Styles{
		both("paper", scene.None, scene.White, 0.1), line("frame", scene.Black, 0.35),
		fill("ink", scene.Black), fill("quiet", scene.Grey(0.3)),
		both("stands", scene.Grey(0.55), scene.Grey(0.72), 0.18), both("low", scene.Grey(0.5), scene.White, 0.18),
		line("hangs", scene.Grey(0.6), 0.18, 1.6, 1), line("quiet-mark", scene.Grey(0.55), 0.18),
		both("bar", scene.Black, scene.White, 0.18), both("bar-dark", scene.Black, scene.Black, 0.18), line("leader", scene.Grey(0.4), 0.13),
		{Class: "set"}, {Class: "marks"}, {Class: "names"}, {Class: "key"},
	}
}
