package bind

import (
	"strings"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// Codes of what is wrong with what a line waits for or leans on.
const (
	// CodeNoSuchLine says that a line leans on one that is not there.
	CodeNoSuchLine diag.Code = "no-such-line"
	// CodeNoSuchCue says that a line waits for what never happens. It is shared
	// with package check, which explains it: in a plan without mistakes the clock
	// finds it out; for one with mistakes no clock is worked out, and Bind does.
	CodeNoSuchCue diag.Code = "no-such-cue"
)

// wait is an event somebody waits for, to be matched with a line once all are
// bound.
type wait struct {
	event  *plan.Event
	pickup *plan.Pickup
}

func (l *line) event(e *syntax.Event) *plan.Event {
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
		out.Subject = l.find(e.Who, "only people, vehicles, rigs and cameras go anywhere", travellers...)
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
	l.waits = append(l.waits, wait{out, l.pickup})
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

// travellers are who can reach a place and leave it: a camera does on its rig.
var travellers = append(append([]plan.Kind(nil), movers...), plan.KindCamera)

// mistaken reports whether the text of the plan has any mistake.
func (b *binder) mistaken(files []*syntax.File) bool {
	if len(b.found) > 0 || b.blind {
		return true
	}
	for _, f := range files {
		for _, ln := range f.Lines {
			if ln.Bad {
				return true
			}
		}
	}
	return false
}

// matchEvents finds out whether every event waited for happens in some line. It
// gives those that go with the subject the benefit of the doubt: a rider reaches
// what the van does.
func (b *binder) matchEvents() {
	for _, w := range b.waits {
		lines := b.plan.Actions
		if w.pickup != nil {
			lines = w.pickup.Actions
		}
		e := w.event
		who := []plan.Thing{e.Subject}
		if e.Kind != plan.Says && e.Carrier == nil {
			who = together(e.Subject, lines)
		}
		if happens(e, who, lines) || b.wasDropped(e, who) {
			continue
		}
		d := b.report(CodeNoSuchCue, e.Span, "%s", missing(e, e.Subject.ID().Name))
		b.whatThereIs(d, e, lines)
	}
}

// together is a thing and all that may go with it at some time: what it rides,
// rigs with their cameras and operators, and so on.
func together(t plan.Thing, lines []*plan.Action) []plan.Thing {
	links := map[plan.Thing][]plan.Thing{}
	follows := func(who, what plan.Thing) { links[who] = append(links[who], what) }
	operates := func(p *plan.Person, r *plan.Rig) { // one carries the other, as the rig goes
		if p != nil {
			follows(p, r)
			follows(r, p)
		}
	}
	for _, act := range lines {
		switch d := act.Deed.(type) {
		case *plan.Ride:
			follows(act.Subject, d.Carrier)
		case *plan.Board:
			follows(act.Subject, d.Carrier)
		case *plan.Mount:
			follows(act.Subject, d.Rig)
			operates(d.With, d.Rig)
		case *plan.Handoff:
			follows(d.Camera, d.From)
			follows(d.Camera, d.To)
			follows(d.To, d.From) // and the operator with the camera
			operates(d.With, d.To)
			operates(d.Weight, d.From)
		}
	}
	out, seen := []plan.Thing{t}, map[plan.Thing]bool{t: true}
	for i := 0; i < len(out); i++ {
		for _, next := range links[out[i]] {
			if !seen[next] {
				seen[next] = true
				out = append(out, next)
			}
		}
	}
	return out
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
