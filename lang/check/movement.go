package check

import (
	"math"
	"strings"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/units"
)

type metres = units.Metres

// foundOn files a finding about a line over a stretch of the take; a nil line
// is blamed on the beat of that time.
func (p *Pass) foundOn(a *plan.Action, who plan.Thing, from, to units.Seconds, format string, args ...any) *diag.Diagnostic {
	var span source.Span
	beat := p.BeatAt(from)
	switch {
	case a != nil:
		span = a.Span
		if a.Beat != nil {
			beat = a.Beat
		}
	case who != nil:
		span = who.ID().Decl
	case beat != nil:
		span = beat.Span
	}
	d := p.Report(span, format, args...)
	if beat != nil {
		d.Beat = beat.Title
	}
	if who != nil {
		d.Subject = who.ID().Name
	}
	d.Frames = []diag.Frames{p.stretch(from, to)}
	d.Worst = d.Frames[0].From
	return d
}

// stretch is the frames from a time to another, at least one.
func (p *Pass) stretch(from, to units.Seconds) diag.Frames {
	last := units.Frame(p.Tracks.Frames - 1)
	f := diag.Frames{From: p.Tracks.Rate.At(from), To: p.Tracks.Rate.At(to)}
	f.From = max(0, min(f.From, last))
	f.To = max(f.From, min(f.To, last))
	return f
}

// nameOf is a thing's name for people; "it" for none.
func nameOf(t plan.Thing) string {
	if t == nil {
		return "it"
	}
	return t.ID().Name
}

// spot prints a place on the floor: "(3.2, -1)", in the plan's own system.
func (p *Pass) spot(v geom.Vec) string {
	if p.Plan.Take.Units == units.Feet {
		return "(" + p.Length(units.Metres(v.X)) + ", " + p.Length(units.Metres(v.Y)) + ")"
	}
	return "(" + units.Number(v.X, 2) + ", " + units.Number(v.Y, 2) + ")"
}

// atMost writes a speed for a fix, rounded down so that it keeps the limit.
func (p *Pass) atMost(v float64) string {
	if p.Plan.Take.Units == units.Feet {
		return units.Number(math.Floor(v/float64(units.Foot)*100+1e-9)/100, 2) + " ft/s"
	}
	return units.Number(math.Floor(v*100+1e-9)/100, 2) + " m/s"
}

// atLeast writes a time for a fix, rounded up so that it is enough.
func atLeast(s float64) string { return units.Number(math.Ceil(s*10-1e-9)/10, 1) + " s" }

// replaced is an edit of one span.
func replaced(span source.Span, text string) diag.Edit { return diag.Edit{Span: span, Text: text} }

// personOf is a thing as a person; nil where it is none.
func personOf(t plan.Thing) *plan.Person {
	who, _ := t.(*plan.Person)
	return who
}

func vec(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }

// startPhrase is the span of a line's cue, with its first word.
func startPhrase(m *plan.Moment) (source.Span, bool) {
	if span, ok := withWord(m.Span, "starting"); ok {
		return span, true
	}
	return withWord(m.Span, "when")
}

// arrival is the cue for the end of the move that something makes at a time;
// false where it ends on no mark.
func arrival(t *motion.Track, at units.Seconds) (cue string, ok bool) {
	s := t.Segment(at)
	if s.Kind != motion.Moving || s.Action == nil {
		return "", false
	}
	m, ok := s.Action.Deed.(*plan.Move)
	if !ok || m.Path.To == nil || !m.Path.To.Exact() {
		return "", false
	}
	return " when " + s.Action.Who() + " reaches " + m.Path.To.Text, true
}

// endOf is the empty span after the last word of a span.
func endOf(s source.Span) source.Span {
	s.Start += len(strings.TrimRight(s.Text(), " \t\r\n"))
	s.End = s.Start
	return s
}

// lastWord is where a word last stands by itself in a text; -1 where it doesn't.
func lastWord(text, word string) int {
	for end := len(text); ; {
		i := strings.LastIndex(text[:end], word)
		if i < 0 {
			return -1
		}
		after := i + len(word)
		if (i == 0 || text[i-1] == ' ') && (after == len(text) || strings.ContainsRune(" ,", rune(text[after]))) {
			return i
		}
		end = i
	}
}
