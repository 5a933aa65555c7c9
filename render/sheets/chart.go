package sheets

import (
	"html"
	"math"
	"strconv"
	"strings"

	"longhand/lang/units"
)

// The chart's size and margins, in its own units.
const (
	chartWide, chartHigh = 880.0, 180.0
	chartLeft            = 50.0
	chartRight           = 10.0
	chartTop             = 16.0
	chartBottom          = 34.0
)

// svg draws the chart for a page of HTML: curves over a scale of time, the limit
// dashed, the beats numbered below.
func (c *Chart) svg() string {
	top := c.Limit
	for _, l := range c.Lines {
		for _, p := range l.Points {
			top = math.Max(top, p[1])
		}
	}
	if top <= 0 || c.End <= 0 {
		return ""
	}
	top *= 1.1
	x := func(s float64) float64 { return chartLeft + s/c.End*(chartWide-chartLeft-chartRight) }
	y := func(v float64) float64 { return chartHigh - chartBottom - v/top*(chartHigh-chartTop-chartBottom) }
	var b strings.Builder
	text := func(px, py float64, anchor, s string) {
		b.WriteString(`<text x="` + at(px) + `" y="` + at(py) + `" text-anchor="` + anchor + `">` + html.EscapeString(s) + `</text>`)
	}
	line := func(class string, x1, y1, x2, y2 float64) {
		b.WriteString(`<path class="` + class + `" d="M` + at(x1) + " " + at(y1) + "L" + at(x2) + " " + at(y2) + `"/>`)
	}
	b.WriteString("\n<svg viewBox=\"0 0 " + at(chartWide) + " " + at(chartHigh) + "\" role=\"img\"><title>" + html.EscapeString(c.Title) + "</title>")
	step := tick(top / 4)
	for v := 0.0; v <= top; v += step {
		line("axis", chartLeft-4, y(v), chartLeft, y(v))
		text(chartLeft-7, y(v)+4, "end", units.Number(v, 2))
	}
	text(2, chartTop-4, "start", c.Unit)
	line("axis", chartLeft, chartTop, chartLeft, y(0))
	line("axis", chartLeft, y(0), chartWide-chartRight, y(0))
	step = timeTick(c.End / 8)
	for s := 0.0; s <= c.End; s += step {
		line("axis", x(s), y(0), x(s), y(0)+4)
		text(x(s), y(0)+15, "middle", units.Seconds(s).Clock())
	}
	for i, m := range c.Marks {
		end := c.End
		if i+1 < len(c.Marks) {
			end = c.Marks[i+1].At
		}
		line("axis", x(m.At), y(0)+18, x(m.At), chartHigh-2)
		text((x(m.At)+x(end))/2, chartHigh-4, "middle", m.Name)
	}
	if c.Limit > 0 {
		line("limit", chartLeft, y(c.Limit), chartWide-chartRight, y(c.Limit))
		text(chartWide-chartRight, y(c.Limit)-4, "end", "lasting load to "+units.Number(c.Limit, 1)+" "+c.Unit)
	}
	for _, l := range c.Lines {
		d := ""
		for i, p := range l.Points {
			d += map[bool]string{true: "M", false: "L"}[i == 0] + at(x(p[0])) + " " + at(y(p[1]))
		}
		b.WriteString(`<path class="curve" d="` + d + `"/>`)
		if n := len(l.Points); n > 0 && len(c.Lines) > 1 {
			text(x(l.Points[n-1][0]), y(l.Points[n-1][1])-4, "end", l.Name)
		}
	}
	b.WriteString("</svg>\n")
	return b.String()
}

// tick is a round step of at least v: 1, 2, 2.5 or 5 times a power of ten.
func tick(v float64) float64 {
	k := math.Pow(10, math.Floor(math.Log10(v)))
	for _, m := range []float64{1, 2, 2.5, 5} {
		if m*k >= v {
			return m * k
		}
	}
	return 10 * k
}

// timeTick is a round step of at least v seconds.
func timeTick(v float64) float64 {
	for _, s := range []float64{1, 2, 5, 10, 15, 30, 60, 120, 300} {
		if s >= v {
			return s
		}
	}
	return 600 * math.Ceil(v/600)
}

// at prints a coordinate.
func at(v float64) string {
	return strconv.FormatFloat(math.Round(v*100)/100+0, 'f', -1, 64)
}

func itoa(n int) string { return strconv.Itoa(n) }
