package check

import (
	"math"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/units"
)

// distanceIn finds the length in a line that says how far a camera keeps from
// its target: "by 2.4 m", "at 2 m", "left 1.5 m".
func distanceIn(a *plan.Action) (source.Span, units.Metres, bool) {
	var words []string
	switch a.Deed.(type) {
	case *plan.Keep:
		words = []string{" by "}
	case *plan.Circle:
		words = []string{" at "}
	case *plan.Beside:
		words = []string{" left ", " right "}
	default:
		return source.Span{}, 0, false
	}
	text := a.Span.Text()
	for _, word := range words {
		for from := 0; ; {
			i := strings.Index(text[from:], word)
			if i < 0 {
				break
			}
			at := from + i + len(word)
			from = at
			for n := len(text) - at; n > 0; n-- {
				if at+n < len(text) && text[at+n] != ' ' && text[at+n] != ',' {
					continue
				}
				if l, err := units.ParseLength(text[at : at+n]); err == nil {
					return source.Span{File: a.Span.File, Start: a.Span.Start + at, End: a.Span.Start + at + n}, l, true
				}
			}
		}
	}
	return source.Span{}, 0, false
}

// keepsWith says whether a line keeps a camera with a thing.
func keepsWith(a *plan.Action, thing plan.Thing) bool {
	switch d := a.Deed.(type) {
	case *plan.Keep:
		return d.Target.Thing == thing
	case *plan.Circle:
		return d.Target.Thing == thing
	case *plan.Beside:
		return d.Target.Thing == thing
	}
	return false
}

// lengthText writes a length for a fix: to a tenth of a metre or to an inch, up
// or down.
func (p *Pass) lengthText(m float64, up bool) string {
	step := 0.1
	if p.Plan.Take.Units == units.Feet {
		step = 0.0254
	}
	n := math.Floor(m/step + 1e-6)
	if up {
		n = math.Ceil(m/step - 1e-6)
	}
	return p.Length(units.Metres(n * step))
}

// offerDistance offers to keep a camera farther from, or nearer to, its target.
func (p *Pass) offerDistance(d *diag.Diagnostic, a *plan.Action, s subject, by float64) {
	thing := s.thing
	// The distance kept is to the subject itself, not to its reflection.
	if a == nil || s.glass != nil || !keepsWith(a, thing) {
		return
	}
	span, now, ok := distanceIn(a)
	if to := float64(now) + by; ok && to > 0.3 {
		text := p.lengthText(to, by > 0)
		d.Fix("keep "+text+" from "+nameOf(thing), replaced(span, text))
	}
}
