package overhead

import (
	"fmt"
	"strconv"
	"strings"

	"longhand/lang/departments"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// drawnFor says whom a sheet is drawn for.
func drawnFor(d departments.Name) string {
	if d == "" {
		return "everybody"
	}
	return strings.ToLower(d.Title())
}

// cell is a field of the title block.
type cell struct {
	caption, value string
	wide           float64 // of the row, 1 for all
	bold           bool
}

// part is what kind of stretch is drawn, with its number.
func (d *drawing) part() string {
	switch {
	case d.pickup != nil:
		return "pickup"
	case d.beat != nil:
		return "beat " + strconv.Itoa(d.order(d.beat))
	}
	return "take"
}

// called is the title of the stretch.
func (d *drawing) called() string {
	switch {
	case d.pickup != nil:
		return d.pickup.Title
	case d.beat != nil:
		return d.beat.Title
	}
	return "the whole take"
}

// titleBlock draws the block of a sheet: page is of pages.
func (d *drawing) titleBlock(box scene.Box, paper string, page, pages int) *scene.Group {
	t := d.plan.Take
	part, title := d.part(), d.called()
	if d.pickup != nil {
		part += ", on a clock of its own"
	}
	scn := "scene " + t.Scene
	if t.Scene == "" {
		scn = "take"
	}
	revision := t.Revision
	if t.RevisionDate != "" {
		if revision != "" {
			revision += ", "
		}
		revision += t.RevisionDate
	}
	if revision == "" {
		revision = "none"
	}
	end := d.lastOf(d.span)
	if d.beat == nil {
		end = d.span.to
	}
	rows := [][]cell{
		{{scn, t.Title, 1, true}},
		{{part, title, 1, true}},
		{{"in", d.moment(d.span.from), 0.37, false}, {"out", d.moment(end), 0.37, false}, {"length", (d.span.to - d.span.from).String(), 0.26, false}},
		{{"scale on " + paper, scaleText(d.view.Scale, t.Units), 0.5, false}, {"revision", revision, 0.5, false}},
		{{"drawn for", drawnFor(d.o.Department), 0.5, true}, {"set", d.plan.Set.Title, 0.5, false}},
		{{"page", fmt.Sprintf("%d of %d", page, pages), 0.26, false}, {"", "measure on the floor before anyone moves", 0.74, false}},
	}
	g := &scene.Group{ID: d.id("title-block"), Title: "title block", Desc: t.Title + ", " + title}
	g.Add(&scene.Rect{Class: "border", Box: box})
	h := box.Height() / float64(len(rows))
	for i, row := range rows {
		y := box.Min.Y + h*float64(i)
		if i > 0 {
			g.Add(scene.Line("rule", scene.Pt(box.Min.X, y), scene.Pt(box.Max.X, y)))
		}
		x := box.Min.X
		for k, c := range row {
			w := box.Width() * c.wide
			if k > 0 {
				g.Add(scene.Line("rule", scene.Pt(x, y), scene.Pt(x, y+h)))
			}
			face, size := fonts.Regular, 8.0
			if c.bold {
				face, size = fonts.Bold, 9.5
			}
			at := scene.Pt(x+1.2, y+h-1.4)
			if c.caption == "" {
				face, size = fonts.Regular, scene.Smallest
			} else {
				g.Add(&scene.Text{Class: "caption", At: scene.Pt(x+1.2, y+0.9+fonts.Regular.CapHeight(7)), Text: fonts.Regular.Fit(7, w-2, c.caption), Size: 7})
			}
			g.Add(&scene.Text{Class: "ink", At: at, Text: face.Fit(size, w-2, c.value), Size: size, Face: face})
			x += w
		}
	}
	return g
}
