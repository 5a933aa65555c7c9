package bind

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// Codes of what is wrong with a quantity.
const (
	CodeWrongUnit  diag.Code = "wrong-unit"
	CodeOutOfRange diag.Code = "out-of-range"
	CodeNoDefault  diag.Code = "no-default"
)

// limits are the least and the most that makes sense. Open leaves out the least
// itself: a length above 0.
type limits struct {
	low, high float64
	open      bool
}

var (
	aboveZero  = limits{0, math.Inf(1), true}
	fullTurn   = limits{0, 360, true}
	manyTurns  = limits{0, 36000, true}
	percentage = limits{0, 100, false}
	// site is the farthest anything in a plan lies or reaches, in metres.
	site = limits{0, 10000, true}
	// sitePoint is the same for coordinates.
	sitePoint = limits{-10000, 10000, false}
	// day is the longest anything lasts, in seconds.
	day     = limits{0, 86400, true}
	travels = limits{0, 60, true} // m/s
)

func (r limits) hold(v float64) bool {
	return v <= r.high && (v > r.low || !r.open && v == r.low)
}

// quantity converts a quantity that follows a word. What is not given is 0 and
// not ok; so is what is wrong, which is reported.
func (l *line) quantity(q *syntax.Quantity, want units.Dimension, word string, lim limits) (v float64, ok bool) {
	if q == nil {
		return 0, false
	}
	v, err := units.Parse(q.Text, want)
	if err != nil {
		if got := q.Dimension(); got != units.NoDimension && got != want {
			l.errorf(CodeWrongUnit, l.at(q), "`%s` is %s; %s takes %s such as %s", tidy(q.Text), got, quoted(word), want, want.Example())
		} else {
			l.errorf(CodeWrongUnit, l.at(q), "%s", err)
		}
		return 0, false
	}
	if !lim.hold(v) {
		l.outOfRange(q, quoted(word), want, lim)
		return 0, false
	}
	return v, true
}

func quoted(word string) string {
	if word == "" {
		return "this"
	}
	return "`" + word + "`"
}

// outOfRange reports an amount outside of its limits, with them.
func (l *line) outOfRange(at syntax.Spanned, what string, d units.Dimension, lim limits) *diag.Diagnostic {
	low, high := l.show(lim.low, d), l.show(lim.high, d)
	written := tidy(l.at(at).Text())
	rule := ""
	switch {
	case math.IsInf(lim.high, 1) && lim.open:
		rule = "it must be more than " + low
	case math.IsInf(lim.high, 1):
		rule = "it must be at least " + low
	case lim.open:
		rule = "it must be more than " + low + " and at most " + high
	default:
		rule = "it must be from " + low + " to " + high
	}
	return l.errorf(CodeOutOfRange, l.at(at), "%s is %s; %s", what, written, rule)
}

// show prints an amount of a dimension, in the plan's own system.
func (l *line) show(v float64, d units.Dimension) string {
	switch d {
	case units.Length:
		if v != 0 && math.Abs(v) < 0.1 { // too fine for feet and inches
			return units.Metres(v).Text(units.Metric)
		}
		return units.Metres(v).Text(l.system)
	case units.Duration:
		return units.Number(v, 3) + " s"
	case units.Speed:
		return units.MetresPerSecond(v).Text(l.system)
	case units.Angle:
		return units.Number(v, 2) + " deg"
	case units.NoDimension:
		return units.Number(v, 3)
	}
	unit := ""
	for _, u := range units.Table {
		if u.Dimension == d && u.Factor == 1 {
			unit = u.Text
			break
		}
	}
	return units.Number(v, 3) + " " + unit
}

// size is a length by a length; of two that are wrong the first is told.
func (l *line) size(s *syntax.Size, word string, lim limits) (length, width units.Metres) {
	if s == nil {
		return 0, 0
	}
	v, ok := l.quantity(s.Length, units.Length, word, lim)
	if ok {
		width = l.length(s.Width, word, lim)
	}
	return units.Metres(v), width
}

// The methods below give a quantity as the type that is meant; 0 for one that is
// not given or wrong.

func (l *line) length(q *syntax.Quantity, word string, lim limits) units.Metres {
	v, _ := l.quantity(q, units.Length, word, lim)
	return units.Metres(v)
}

func (l *line) speed(q *syntax.Quantity, word string) units.MetresPerSecond {
	v, _ := l.quantity(q, units.Speed, word, travels)
	return units.MetresPerSecond(v)
}

func (l *line) mass(q *syntax.Quantity, word string, lim limits) units.Kilograms {
	v, _ := l.quantity(q, units.Mass, word, lim)
	return units.Kilograms(v)
}

func (l *line) angle(q *syntax.Quantity, word string, lim limits) (units.Degrees, bool) {
	v, ok := l.quantity(q, units.Angle, word, lim)
	return units.Degrees(v), ok
}

// number is a bare number; whole demands one without a fraction.
func (l *line) number(n *syntax.Number, word string, lim limits, whole bool) (float64, bool) {
	if n == nil {
		return 0, false
	}
	v, err := n.Value()
	switch {
	case err != nil:
		l.errorf(CodeOutOfRange, l.at(n), "`%s` is no number that could be meant", n.Text)
		return 0, false
	case whole && v != math.Trunc(v):
		l.errorf(CodeOutOfRange, l.at(n), "%s is %s; it must be a whole number", quoted(word), n.Text)
		return 0, false
	case !lim.hold(v):
		l.outOfRange(n, quoted(word), units.NoDimension, lim)
		return 0, false
	}
	return v, true
}

func (l *line) whole(n *syntax.Number, word string, low, high int) int {
	v, _ := l.number(n, word, limits{float64(low), float64(high), false}, true)
	return int(v)
}

// seconds converts a duration: in seconds, minutes, frames, counts or bars.
func (l *line) seconds(q *syntax.Quantity, word string, lim limits) (units.Seconds, bool) {
	if q == nil {
		return 0, false
	}
	if got := q.Dimension(); got != units.Duration && got != units.NoDimension {
		l.errorf(CodeWrongUnit, l.at(q), "`%s` is %s; %s takes %s such as %s", tidy(q.Text), got, quoted(word), units.Duration, units.Duration.Example())
		return 0, false
	}
	span, err := q.TimeSpan()
	if err != nil {
		l.errorf(CodeWrongUnit, l.at(q), "%s", err)
		return 0, false
	}
	t := float64(span.Seconds)
	if span.Frames != 0 {
		if r := l.plan.Take.Rate.PerSecond(); r > 0 {
			t += span.Frames / r
		}
	}
	if span.Counts != 0 || span.Bars != 0 {
		tempo := l.tempo(q)
		if tempo == nil {
			return 0, false
		}
		t += (span.Counts + span.Bars*float64(tempo.In)) * 60 / tempo.BPM
	}
	if !lim.hold(t) {
		l.outOfRange(q, quoted(word), units.Duration, lim)
		return 0, false
	}
	return units.Seconds(t), true
}

// tempo is the take's, or nil where there is none, which is reported once.
func (l *line) tempo(at syntax.Spanned) *plan.Tempo {
	if t := l.plan.Take.Tempo; t != nil {
		return t
	}
	l.bad = true
	switch {
	case l.hasLostSetting("tempo"):
	case l.noTempo != nil:
		l.noTempo.Relate(l.at(at), "and here")
	default:
		l.noTempo = l.errorf(CodeNoDefault, l.at(at), "`%s` needs a tempo, and the take has none", tidy(l.at(at).Text())).
			Note("say it in the take: tempo 96 bpm in 4")
	}
	return nil
}

// need reports something that is not given and has no default.
func (l *line) need(given bool, at syntax.Spanned, format string, args ...any) bool {
	if !given {
		l.errorf(CodeNoDefault, l.at(at), "%s", fmt.Sprintf(format, args...))
	}
	return given
}
