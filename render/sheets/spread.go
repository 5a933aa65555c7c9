package sheets

import (
	"fmt"
	"html"
	"math"
	"strings"

	"longhand/lang/units"
)

// Part is where a value is along the scale, 0 to 1; beyond tells that it is off
// its far end.
func (s *Spread) Part(v float64) (part float64, beyond bool) {
	return min(max((v-s.From)/(s.To-s.From), 0), 1), v > s.To
}

// Ticks are the round values along the scale.
func (s *Spread) Ticks() []float64 {
	var out []float64
	for k := math.Ceil(s.From/s.Step - 1e-9); k*s.Step <= s.To+1e-9; k++ {
		out = append(out, k*s.Step+0) // never -0
	}
	return out
}

// Bar is a row's bar: both ends and the middle. An end without a number has no
// end; ok is false for a row without a bar.
func (t *Table) Bar(row int) (low, middle, high float64, ok bool) {
	at := func(key string) float64 {
		if v, ok := t.Value(row, key); ok {
			return v
		}
		return math.Inf(1)
	}
	low, middle, high = at(t.Spread.Low), at(t.Spread.Middle), at(t.Spread.High)
	return low, middle, high, low < float64(farSlack)
}

// Near is a table with a spread as people get it: with the rows that have a bar,
// and what to say of the others; "" where there are none. Any other table is as it
// is.
func (t *Table) Near() (near *Table, rest string) {
	if t.Spread == nil || len(t.Rows) == 0 {
		return t, ""
	}
	c := *t
	c.Rows = nil
	for i := range t.Rows {
		if _, _, _, ok := t.Bar(i); ok {
			c.Rows = append(c.Rows, t.Rows[i])
		}
	}
	switch n := len(t.Rows) - len(c.Rows); {
	case n == 0:
		return &c, ""
	case len(c.Rows) == 0:
		c.Empty = "None has less than 2 minutes to spare."
		return &c, ""
	case n == 1:
		return &c, "1 more has over 2 minutes to spare"
	default:
		return &c, fmt.Sprintf("%d more have over 2 minutes to spare", n)
	}
}

// spreadOver gives a table bars, on a scale that shows how those near 0 stand to
// it.
func spreadOver(t *Table, title, low, middle, high string) {
	s := &Spread{Title: title, Low: low, Middle: middle, High: high}
	t.Spread = s
	// What has much to spare runs off the scale, where there is something that
	// has little.
	for _, much := range []float64{15, float64(farSlack)} {
		for i := range t.Rows {
			if a, _, z, ok := t.Bar(i); ok && a < much {
				s.From, s.To = min(s.From, max(a, -much)), max(s.To, min(z, much))
			}
		}
		if s.To > s.From {
			break
		}
	}
	if s.To <= s.From { // nothing to draw, or all on one spot
		s.To = 1
	}
	s.Step = tick((s.To - s.From) / 6)
	s.From, s.To = math.Floor(s.From/s.Step+1e-9)*s.Step+0, math.Ceil(s.To/s.Step-1e-9)*s.Step
}

// The size of a bar's drawing on a page of HTML, in its own units.
const (
	barWide, barHigh = 220.0, 14.0
	barEdge          = 10.0 // at either side
)

func (s *Spread) x(v float64) float64 {
	part, _ := s.Part(v)
	return barEdge + part*(barWide-2*barEdge)
}

func (s *Spread) drawing(inside string) string {
	return `<svg viewBox="0 0 ` + at(barWide) + " " + at(barHigh) + `" style="width:15rem;margin:0" aria-hidden="true">` + inside + "</svg>"
}

// head is the title of the column of bars, with the scale.
func (s *Spread) head() string {
	var b strings.Builder
	for _, v := range s.Ticks() {
		b.WriteString(`<text x="` + at(s.x(v)) + `" y="11" text-anchor="middle">` + units.Number(v, 1) + "</text>")
	}
	return html.EscapeString(s.Title) + s.drawing(b.String())
}

// bar is a row's: outlined where there is something to spare, filled where there
// is less than nothing, the middle marked; an arrow where it runs off the scale.
func (s *Spread) bar(t *Table, row int) string {
	low, middle, high, ok := t.Bar(row)
	if !ok {
		return ""
	}
	var b strings.Builder
	path := func(class, d string) { b.WriteString(`<path class="` + class + `" d="` + d + `"/>`) }
	zero := at(s.x(0))
	path("axis", "M"+zero+" 0V"+at(barHigh))
	_, gone := s.Part(low)
	_, beyond := s.Part(high)
	if !gone {
		box := func(from, to float64, fill string) {
			if to > from {
				b.WriteString(`<rect x="` + at(s.x(from)) + `" y="3" width="` + at(s.x(to)-s.x(from)) + `" height="8" stroke="currentColor" fill="` + fill + `"/>`)
			}
		}
		box(max(low, 0), max(high, 0), "none")
		box(min(low, 0), min(high, 0), "currentColor")
		if _, off := s.Part(middle); !off {
			path("curve", "M"+at(s.x(middle))+" 1V13")
		}
	}
	if beyond {
		path("curve", "M"+at(barWide-7)+" 3L"+at(barWide-1)+" 7L"+at(barWide-7)+" 11")
	}
	return s.drawing(b.String())
}
