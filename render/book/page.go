package book

import (
	"fmt"
	"strings"

	"longhand/lang/safety"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/frames"
	"longhand/render/scene"
)

// The page: room to bind at the left, a running head, two lines of foot.
var margins = flow.Margins{Top: 20, Right: 12, Bottom: 21, Left: 18}

const (
	headSize = 8.0
	footSize = scene.Smallest
)

func styles() scene.Styles {
	return append(frames.Styles(), scene.Styles{
		{Class: "book-rule", Style: scene.Style{Stroke: scene.Black, Width: 0.25}},
		{Class: "book-heavy", Style: scene.Style{Stroke: scene.Black, Width: 0.7}},
		{Class: "book-quiet", Style: scene.Style{Fill: scene.Grey(0.3)}},
		{Class: "book-frame", Style: scene.Style{Stroke: scene.Black, Width: 0.3, Fill: scene.White}},
		{Class: "book-alternate", Style: scene.Style{Stroke: scene.Black, Width: 0.3, Fill: scene.Grey(0.85)}},
		{Class: "book-solid", Style: scene.Style{Fill: scene.Black}},
		{Class: "book-white", Style: scene.Style{Stroke: scene.White, Width: 0.7}},
		{Class: "book-curve", Style: scene.Style{Stroke: scene.Black, Width: 0.4}},
		{Class: "book-limit", Style: scene.Style{Stroke: scene.Black, Width: 0.3, Dash: []float64{2, 1}}},
		{Class: "book-grid", Style: scene.Style{Stroke: scene.Grey(0.6), Width: 0.13}},
		changeRule,
	}...)
}

var changeRule = scene.Rule{Class: "book-changed", Style: scene.Style{Stroke: scene.Black, Width: 1.2}}

// options are a flow's: upright, or on its side for wide tables.
func (m *maker) options(wide bool) flow.Options {
	paper := m.o.paper()
	if wide {
		paper = paper.Landscape()
	}
	return flow.Options{Paper: paper, Margins: margins, Title: m.title(), Styles: styles(), Size: 9}
}

// furnish adds what stands in a text page's margins.
func (m *maker) furnish(s *scene.Sheet, number int, section string, changed bool) {
	t := m.p.Take
	left, right := margins.Left, s.Width-margins.Right
	g := &scene.Group{ID: scene.ID("furniture"), Title: "running head and page number"}
	add := func(x, y, size float64, anchor scene.Anchor, face fonts.Face, width float64, text string) {
		if text = face.Fit(size, width, fonts.Clean(text)); text != "" {
			g.Add(&scene.Text{Class: "book-quiet", At: scene.Pt(x, y), Text: text, Size: size, Anchor: anchor, Face: face})
		}
	}
	if section != "" {
		name := m.named()
		if t.Scene != "" {
			name = "scene " + t.Scene + "  " + name
		}
		if m.o.For != "" {
			name += "  for " + strings.ToLower(m.o.For.Title())
		}
		section = fonts.Bold.Fit(headSize, (right-left)/3, fonts.Clean(section))
		third := (right-left-fonts.Bold.Width(headSize, section))/2 - 3 // what is left at either side
		add(left, 12, headSize, scene.Start, fonts.Regular, third, name)
		add((left+right)/2, 12, headSize, scene.Middle, fonts.Bold, right-left, section)
		if rev := strings.TrimSpace(t.Revision + "  " + t.RevisionDate); rev != "" {
			add(right, 12, headSize, scene.End, fonts.Regular, third, "revision "+rev)
		}
		g.Add(scene.Line("book-rule", scene.Pt(left, 14), scene.Pt(right, 14)))
	}
	page := fmt.Sprintf("page %d of %d", number, m.pages)
	y := s.Height - 12
	g.Add(scene.Line("book-rule", scene.Pt(left, y-4), scene.Pt(right, y-4)))
	wide := right - left - fonts.Regular.Width(headSize, page) - 8
	for i, line := range fonts.Regular.Wrap(footSize, wide, safety.General) {
		if i == 3 {
			break
		}
		add(left, y-0.6+float64(i)*fonts.LineHeight(footSize), footSize, scene.Start, fonts.Regular, wide, line)
	}
	add(right, y-0.6, headSize, scene.End, fonts.Bold, 40, page)
	s.Add(g)
	if changed {
		changeBar(s)
	}
}

// changeBar marks a page as different from the earlier revision.
func changeBar(s *scene.Sheet) {
	known := false
	for _, r := range s.Styles {
		known = known || r.Class == changeRule.Class
	}
	if !known {
		s.Styles = append(s.Styles, changeRule)
	}
	s.Add(scene.Line("book-changed", scene.Pt(4, 20), scene.Pt(4, s.Height-20)))
}
