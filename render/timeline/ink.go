package timeline

import (
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// halo keeps the lines of beats off the letters, in millimetres.
const halo = 0.35

// rows draws packed items, the first row's top at y.
func (d *drawing) rows(to interface{ Add(...scene.Item) }, w window, y float64, items []placed) {
	for i := range items {
		p := &items[i]
		row := y + float64(p.row)*rowHigh()
		base := row + fonts.Regular.Ascent(textSize)
		for _, it := range d.bar(w, p, row+textHigh()+0.1) {
			to.Add(it)
		}
		if p.text != "" {
			to.Add(&scene.Text{Class: "text", At: scene.Pt(p.tx, base), Text: p.text, Size: textSize, Face: p.face, Halo: halo})
		}
	}
}

// adder lets a group be added to without its result.
type adder struct{ g *scene.Group }

func (a adder) Add(items ...scene.Item) { a.g.Add(items...) }

// bar is how long an item lasts, its top at y.
func (d *drawing) bar(w window, p *placed, y float64) []scene.Item {
	var out []scene.Item
	mid := y + barHigh/2
	if p.hold > p.to { // an open line: a tick, and a thin line as long as it holds
		end := w.x(min(p.hold, w.to))
		if end > p.x0 {
			out = append(out, scene.Line("bar-hold", scene.Pt(p.x0, mid), scene.Pt(end, mid)))
		}
		if p.hold <= w.to && end > p.x0 {
			out = append(out, scene.Line("bar-hold", scene.Pt(end, mid-0.4), scene.Pt(end, mid+0.4)))
		}
	}
	if p.x1-p.x0 > 0.05 {
		out = append(out, &scene.Rect{Class: p.bar, Box: scene.BoxAt(p.x0, y, p.x1-p.x0, barHigh)})
		if p.bar == "bar-hand" {
			out = append(out, scene.Line("bar-cross", scene.Pt(p.x0, y), scene.Pt(p.x1, y+barHigh)), scene.Line("bar-cross", scene.Pt(p.x0, y+barHigh), scene.Pt(p.x1, y)))
		}
	}
	if p.from {
		out = append(out, scene.Line("bar-edge", scene.Pt(p.x0, y-0.2), scene.Pt(p.x0, y+barHigh+0.2)))
	}
	if p.slack > 0 && !p.past {
		end := w.x(min(p.to+p.slack, w.to))
		out = append(out, scene.Line("slack", scene.Pt(p.x1, mid), scene.Pt(end, mid)), scene.Line("bar-hold", scene.Pt(end, mid-0.4), scene.Pt(end, mid+0.4)))
	}
	return out
}

// lane draws a lane, its top at y.
func (d *drawing) lane(s *scene.Sheet, w window, l *lane, y float64, groups [][]placed, rows []int) *scene.Group {
	g := &scene.Group{ID: scene.ID("lane", l.name, l.under), Class: "lane", Title: l.name}
	at := y + fonts.Bold.Ascent(9)
	g.Add(&scene.Text{Class: "text", At: scene.Pt(d.margin, at), Text: fonts.Bold.Fit(9, names-1, fonts.Clean(l.name)), Size: 9, Face: fonts.Bold})
	high := 0.0
	for k := range l.groups {
		high += d.groupHigh(&l.groups[k], rows[k])
	}
	if l.under != "" && high > fonts.LineHeight(9)+textHigh() {
		g.Add(&scene.Text{Class: "quiet", At: scene.Pt(d.margin, at+fonts.LineHeight(8)), Text: fonts.Regular.Fit(textSize, names-1, fonts.Clean(l.under)), Size: textSize})
	}
	for k := range l.groups {
		gr := &l.groups[k]
		h := d.groupHigh(gr, rows[k])
		if h == 0 {
			continue
		}
		if gr.name != "" {
			g.Add(&scene.Text{Class: "quiet", At: scene.Pt(w.left-kinds, y+fonts.Regular.Ascent(textSize)), Text: fonts.Regular.Fit(textSize, kinds-1, fonts.Clean(gr.name)), Size: textSize})
		}
		if gr.curve != nil {
			d.curve(g, w, gr, y)
		} else {
			d.rows(adder{g}, w, y, groups[k])
		}
		y += h
	}
	return g
}

// curve draws a level over time as an area.
func (d *drawing) curve(g *scene.Group, w window, gr *group, y float64) {
	low, high := y+curveH-0.8, y+0.8
	level := func(v units.Percent) float64 { return low + (high-low)*float64(v)/100 }
	times := []units.Seconds{w.from}
	for _, k := range gr.curve.Knots() {
		if k > w.from && k < w.to {
			times = append(times, k)
		}
	}
	times = append(times, w.to)
	var line []scene.Point
	for i, t := range times {
		if i > 0 { // a step has a level before it and one after
			before := gr.curve.At(t - 1e-7)
			line = append(line, scene.Pt(w.x(t), level(before)))
		}
		line = append(line, scene.Pt(w.x(t), level(gr.curve.At(t))))
	}
	area := append([]scene.Point{scene.Pt(w.left, low)}, line...)
	area = append(area, scene.Pt(w.right(), low))
	g.Add(&scene.Polygon{Class: "level", Points: area},
		scene.Line("level-grid", scene.Pt(w.left, high), scene.Pt(w.right(), high)),
		scene.Line("level-grid", scene.Pt(w.left, level(50)), scene.Pt(w.right(), level(50))),
		scene.Line("lane-rule", scene.Pt(w.left, low), scene.Pt(w.right(), low)),
		&scene.Polyline{Class: "level-line", Points: line})
}
