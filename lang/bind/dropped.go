package bind

import (
	"slices"
	"strings"

	"longhand/lang/plan"
	"longhand/lang/syntax"
)

// droppedLine is a line of a beat that is left out because of a mistake. What
// others wait for may be in it, and then they are not to blame.
type droppedLine struct {
	tokens  []syntax.Token // those with a meaning
	section *syntax.Section
}

func (b *binder) drop(ln *syntax.Line) {
	if said := meaningful(ln); len(said) > 0 {
		b.dropped = append(b.dropped, droppedLine{said, ln.Section})
	}
}

// about reports whether the line tells what somebody does, or a camera that is
// handed over.
func (d droppedLine) about(who string) bool {
	first := d.tokens[0].Value
	return first == who || len(d.tokens) > 1 && first == "handoff" && d.tokens[1].Value == who
}

// does reports whether the line's verb is one of some, or none that is known;
// no verbs stand for any.
func (d droppedLine) does(verbs ...string) bool {
	if len(verbs) == 0 || len(d.tokens) < 2 || d.tokens[0].Value == "handoff" {
		return true
	}
	verb := d.tokens[1].Value
	return slices.Contains(verbs, verb) || !slices.Contains(syntax.Verbs(), verb)
}

// names reports whether a name, or what may be meant by it, is on the line.
func (d droppedLine) names(b *binder, name string) bool {
	for _, t := range d.tokens[1:] {
		if !syntax.IsNameToken(t) {
			continue
		}
		if _, near := distanceOf(t.Value, name); t.Value == name || near && b.names[t.Value] == nil && !b.lost[t.Value] {
			return true
		}
	}
	return false
}

// wasDropped reports whether a line that is left out may be the one waited for.
func (b *binder) wasDropped(e *plan.Event, who []plan.Thing) bool {
	for _, t := range who {
		name := t.ID().Name
		for _, d := range b.dropped {
			if d.about(name) && b.mayBring(d, e) {
				return true
			}
		}
	}
	// A line that would have put the subject aboard counts, too.
	return e.Kind != plan.Says && b.mayHave(e.Subject.ID().Name, nil, "rides", "boards", "on")
}

func (b *binder) mayBring(d droppedLine, e *plan.Event) bool {
	switch {
	case e.Kind == plan.Says:
		return d.quotes(e.Text)
	case e.Carrier != nil:
		return d.does("leaves") && d.names(b, e.Carrier.ID().Name)
	}
	return d.does("walks", "runs", "drives", "moves", "leaves", "stands", "waits") && (e.Place.Mark == nil || d.names(b, e.Place.Mark.Name))
}

// quotes reports whether a string on the line holds a text.
func (d droppedLine) quotes(text string) bool {
	for _, t := range d.tokens {
		if strings.HasPrefix(t.Value, `"`) {
			if partOf(t.Value, text) {
				return true
			}
		}
	}
	return false
}

// mayHave reports whether a line that is left out may have had somebody do one
// of some things; a nil section stands for any.
func (b *binder) mayHave(who string, section *syntax.Section, verbs ...string) bool {
	for _, d := range b.dropped {
		if d.about(who) && (section == nil || d.section == section) && d.does(verbs...) {
			return true
		}
	}
	return false
}
