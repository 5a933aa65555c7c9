package bind

import (
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// CodeNoSuchLine says that a line waits for, or leans on, a line that is not
// there.
const CodeNoSuchLine diag.Code = "no-such-line"

// wait is an event somebody waits for, to be matched with a line once all are
// bound; drop takes it out of the plan again.
type wait struct {
	event  *plan.Event
	line   *line
	pickup *plan.Pickup
	drop   func()
}

func (l *line) event(e *syntax.Event, drop func()) *plan.Event {
	out := &plan.Event{Span: l.at(e)}
	switch {
	case e.Cue != nil:
		out.Kind, out.Cue = plan.CueFires, e.Cue.Text
		if !l.cueCalled(e.Cue) {
			return nil
		}
		return out
	case e.Beat != nil:
		out.Kind = plan.BeatStarts
		if e.Edge == "ends" {
			out.Kind = plan.BeatEnds
		}
		if out.Beat = l.beatCalled(e.Beat); out.Beat == nil {
			return nil
		}
		return out
	case e.Line != nil:
		out.Kind, out.Text = plan.Says, e.Line.Value()
		out.Subject = l.find(e.Who, "only a person says something", people...)
		if out.Subject != nil && len(strings.Fields(out.Text)) == 0 {
			l.errorf(CodeNoDefault, l.at(e.Line), "what `%s` says is empty; quote a part of the line to wait for", e.Who.Text)
			return nil
		}
	default:
		out.Kind = plan.Reaches
		out.Subject = l.find(e.Who, "only people, vehicles and rigs go anywhere", movers...)
		if e.Verb == "leaves" {
			out.Kind = plan.Leaves
			out.Carrier = l.carrierIn(e.Place)
		}
		if out.Carrier == nil {
			out.Place = l.place(e.Place)
		}
	}
	if out.Subject == nil || out.Kind != plan.Says && out.Place == nil && out.Carrier == nil {
		return nil
	}
	l.waits = append(l.waits, wait{out, l, l.pickup, drop})
	return out
}

// carrierIn is the vehicle or rig a place names, if it names one.
func (l *line) carrierIn(p *syntax.Place) plan.Thing {
	if p.Name == nil || p.Offset != nil || p.Plus != nil {
		return nil
	}
	if t := l.names[p.Name.Text]; t != nil && isOf(t, carriers) {
		return t
	}
	return nil
}

// matchEvents finds out whether every event waited for happens in some line.
func (b *binder) matchEvents() {
	for _, w := range b.waits {
		lines := b.plan.Actions
		if w.pickup != nil {
			lines = w.pickup.Actions
		}
		e := w.event
		if happens(e, lines) {
			continue
		}
		w.drop()
		who := e.Subject.ID().Name
		if b.wasDropped(e) {
			continue
		}
		d := b.report(CodeNoSuchLine, e.Span, "%s", missing(e, who))
		b.whatThereIs(d, e, lines)
	}
}

func missing(e *plan.Event, who string) string {
	switch e.Kind {
	case plan.Reaches:
		return "no line takes `" + who + "` to " + e.Place.Text
	case plan.Leaves:
		if e.Carrier != nil {
			return "no line says that `" + who + "` leaves `" + e.Carrier.ID().Name + "`"
		}
		return "no line has `" + who + "` start from " + e.Place.Text
	}
	return "no line of `" + who + "` holds " + quote(e.Text)
}

// whatThereIs notes what the subject does do.
func (b *binder) whatThereIs(d *diag.Diagnostic, e *plan.Event, lines []*plan.Action) {
	var has []string
	seen := map[string]bool{}
	add := func(text string) {
		if !seen[text] {
			seen[text] = true
			has = append(has, text)
		}
	}
	for _, act := range lines {
		if act.Subject != e.Subject {
			continue
		}
		switch deed := act.Deed.(type) {
		case *plan.Say:
			if e.Kind == plan.Says {
				add(quote(deed.Text))
			}
		case *plan.Move:
			for _, stop := range deed.Path.Stops() {
				if e.Kind == plan.Reaches {
					add(stop.Text)
				}
			}
		}
	}
	switch {
	case len(has) == 0 || len(has) > listed:
	case e.Kind == plan.Says:
		d.Note("`%s` says %s", e.Subject.ID().Name, and(has))
	default:
		d.Note("`%s` goes to %s", e.Subject.ID().Name, and(has))
	}
}

// happens reports whether one of the lines makes the event happen. The part of a
// spoken line is looked for whatever its case and blanks; what is found takes
// its place in the event, letter for letter.
func happens(e *plan.Event, lines []*plan.Action) bool {
	there := false // the subject has been at the place it leaves
	for _, act := range lines {
		if act.Subject != e.Subject {
			continue
		}
		switch deed := act.Deed.(type) {
		case *plan.Say:
			if e.Kind != plan.Says {
				continue
			}
			if part, ok := partOf(deed.Text, e.Text); ok {
				e.Text = part
				return true
			}
		case *plan.Move:
			if e.Kind == plan.Leaves && e.Place != nil {
				if there || deed.Path.From != nil && samePlace(deed.Path.From, e.Place) {
					return true
				}
			}
			stops := deed.Path.Stops()
			for i := range stops {
				if samePlace(&stops[i], e.Place) {
					if e.Kind == plan.Reaches {
						return true
					}
					there = there || i == len(stops)-1
				}
			}
		case *plan.Stand:
			there = there || samePlace(deed.At, e.Place)
		case *plan.Leave:
			if e.Kind == plan.Leaves && e.Carrier != nil && deed.Carrier == e.Carrier {
				return true
			}
			if samePlace(deed.To, e.Place) {
				if e.Kind == plan.Reaches {
					return true
				}
				there = true
			}
		case *plan.Ride, *plan.Board:
			if e.Kind == plan.Leaves && there {
				return true
			}
		}
	}
	return false
}

// samePlace reports whether two places are told the same, or are the same point.
func samePlace(p, q *plan.Place) bool {
	if p == nil || q == nil {
		return false
	}
	return p.Text == q.Text || p.Before == q.Before && p.Point.Dist(q.Point) < nothing
}

// partOf finds a part of a spoken line, whatever its case and blanks.
func partOf(whole, part string) (string, bool) {
	if strings.Contains(whole, part) {
		return part, true
	}
	fold := func(s string) string { return strings.ToLower(tidy(s)) }
	want := fold(part)
	for i := range whole {
		if i > 0 && whole[i-1] != ' ' || !strings.HasPrefix(fold(whole[i:]), want) {
			continue
		}
		for j := i + 1; j <= len(whole); j++ {
			if fold(whole[i:j]) == want {
				return whole[i:j], true
			}
		}
	}
	return "", false
}
