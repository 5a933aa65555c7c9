package book

import (
	"math"
	"sort"

	"longhand/lang/units"
	"longhand/render/flow"
	"longhand/render/fonts"
	"longhand/render/scene"
	"longhand/render/sheets"
)

const (
	chartHigh = 42.0
	chartLeft = 14.0
	chartFoot = 9.0
	chartText = scene.Smallest
)

// chart draws a quantity over the take's time.
func chart(f *flow.Flow, c *sheets.Chart) {
	most := c.Limit
	for _, l := range c.Lines {
		for _, p := range l.Points {
			most = math.Max(most, p[1])
		}
	}
	if most <= 0 || c.End <= 0 {
		return
	}
	most *= 1.15
	wide := f.Width()
	x := func(s float64) float64 { return chartLeft + s/c.End*(wide-chartLeft-1) }
	y := func(v float64) float64 { return 5 + (chartHigh-5-chartFoot)*(1-v/most) }
	var items []scene.Item
	text := func(px, py float64, a scene.Anchor, face fonts.Face, s string) {
		items = append(items, &scene.Text{At: scene.Pt(px, py), Text: s, Size: chartText, Anchor: a, Face: face})
	}
	text(0, 3, scene.Start, fonts.Bold, c.Title+", "+c.Unit)
	step := round125(most / 3)
	for v := 0.0; v <= most; v += step {
		items = append(items, scene.Line("book-grid", scene.Pt(chartLeft, y(v)), scene.Pt(wide-1, y(v))))
		text(chartLeft-1.5, y(v)+1, scene.End, fonts.Regular, units.Number(v, 2))
	}
	items = append(items, scene.Line("book-rule", scene.Pt(chartLeft, y(0)), scene.Pt(wide-1, y(0))))
	step = round125(c.End / 8)
	for s := 0.0; s <= c.End; s += step {
		items = append(items, scene.Line("book-rule", scene.Pt(x(s), y(0)), scene.Pt(x(s), y(0)+1)))
		label := units.Seconds(s).Clock()
		w := fonts.Regular.Width(chartText, label)
		text(math.Min(x(s)-w/2, wide-w), y(0)+4, scene.Start, fonts.Regular, label)
	}
	free := 0.0
	for _, k := range c.Marks {
		w := fonts.Bold.Width(chartText, k.Name)
		if x(k.At) >= free && x(k.At)+w <= wide {
			items = append(items, scene.Line("book-grid", scene.Pt(x(k.At), 5), scene.Pt(x(k.At), y(0))), scene.Line("book-grid", scene.Pt(x(k.At), y(0)+5), scene.Pt(x(k.At), y(0)+7.6)))
			text(x(k.At)+0.6, y(0)+7.6, scene.Start, fonts.Bold, k.Name)
			free = x(k.At) + w + 1.5
		}
	}
	if c.Limit > 0 {
		items = append(items, scene.Line("book-limit", scene.Pt(chartLeft, y(c.Limit)), scene.Pt(wide-1, y(c.Limit))))
		text(wide-1, y(c.Limit)-0.8, scene.End, fonts.Regular, "lasting load to "+units.Number(c.Limit, 1)+" "+c.Unit)
	}
	for _, l := range c.Lines {
		line := &scene.Polyline{Class: "book-curve"}
		for _, p := range l.Points {
			line.Points = append(line.Points, scene.Pt(x(p[0]), y(p[1])))
		}
		items = append(items, line)
	}
	// Each line's name stands at its end, over it or, where that is taken, under it.
	type named struct {
		name string
		y    float64
	}
	var ends []named
	for _, l := range c.Lines {
		if n := len(l.Points); n > 0 && len(c.Lines) > 1 {
			ends = append(ends, named{l.Name, y(l.Points[n-1][1])})
		}
	}
	sort.SliceStable(ends, func(i, j int) bool { return ends[i].y < ends[j].y })
	high := fonts.LineHeight(chartText)
	lowest := 0.0
	for _, e := range ends {
		at := math.Max(e.y-1, lowest+high)
		lowest = at
		items = append(items, &scene.Text{At: scene.Pt(wide-2, at), Text: e.name, Size: chartText, Face: fonts.Bold, Anchor: scene.End, Halo: 0.4})
	}
	f.Space(2)
	f.Figure(wide, chartHigh, items)
}

// round125 is a round step of at least v: 1, 2 or 5 times a power of ten.
func round125(v float64) float64 {
	k := math.Pow(10, math.Floor(math.Log10(v)))
	for _, m := range []float64{1, 2, 5} {
		if m*k >= v {
			return m * k
		}
	}
	return 10 * k
}
