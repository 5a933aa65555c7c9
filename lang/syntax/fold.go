package syntax

import (
	"longhand/lang/units"
)

// folder hears what is wrong with the optional phrases of one line; the first
// complaint is kept, since a line gets one syntax error at most.
type folder struct {
	at      Spanned
	message string
	notes   []string
}

func (f *folder) complain(at Spanned, message string, notes ...string) {
	if f.at == nil {
		f.at, f.message, f.notes = at, message, notes
	}
}

func (f *folder) twice(at Spanned, word string) {
	f.complain(at, "`"+word+"` is said twice on this line", "leave one of the two away")
}

func (f *folder) foreign(at Spanned, word string) {
	f.complain(at, "`"+word+"` does not belong on this line")
}

// once puts what a phrase says in its field, unless the field is taken.
func once[T any](f *folder, field **T, said *T, at Spanned, word string) {
	if said == nil {
		return
	}
	if *field != nil {
		f.twice(at, word)
		return
	}
	*field = said
}

// turnOn sets a switch, unless it is set.
func turnOn(f *folder, field *bool, said bool, at Spanned, word string) {
	if !said {
		return
	}
	if *field {
		f.twice(at, word)
	}
	*field = true
}

// takes is told of each phrase that is no timing, and reports whether it was
// the statement's own.
type takes func(p *Phrase) bool

// fold sorts the phrases into the timing and what the statement takes for its
// own.
func (t *Timed) fold(f *folder, own takes) {
	for _, p := range t.Phrases {
		if own != nil && own(p) {
			continue
		}
		switch {
		case t.Timing.fold(f, p):
		case p.isBare(units.Duration):
			f.complain(p, "`in` or `for` is missing before `"+p.Word()+"`")
		case p.isBare(units.Speed):
			f.complain(p, "`at` is missing before `"+p.Word()+"`")
		default:
			f.foreign(p, p.Word())
		}
	}
}

// isBare reports whether a phrase is an amount of a dimension and no more.
func (p *Phrase) isBare(d units.Dimension) bool {
	return p.Measure != nil && p.Measure.Dir() == "" && p.Measure.Amount.Dimension() == d
}

// fold puts a phrase in its place; false if it has nothing to do with timing.
func (t *Timing) fold(f *folder, p *Phrase) bool {
	switch {
	case p.Starting != nil:
		once(f, &t.Starting, p.Starting, p, "starting")
	case p.When != nil:
		once(f, &t.When, p.When, p, "when")
	case p.In != nil:
		once(f, &t.In, p.In, p, "in")
	case p.For != nil:
		once(f, &t.For, p.For, p, "for")
	case p.At != nil && p.At.Is(units.Speed):
		once(f, &t.Speed, p.At.Amount, p, "at")
	case p.By != nil:
		once(f, &t.By, p.By, p, "by")
	case p.Until != nil:
		once(f, &t.Until, p.Until, p, "until")
	case p.With != nil && p.With.Crew != nil:
		f.complain(p, "`with "+p.With.Crew.Text+"` does not belong on this line: `with` stands alone here, and starts the line together with the one before")
	case p.With != nil:
		once(f, &t.With, p.With, p, "with")
	default:
		return false
	}
	return true
}

// Is reports whether a goal is an amount of a dimension.
func (g *Goal) Is(d units.Dimension) bool {
	return g != nil && g.Amount != nil && g.Amount.Dimension() == d
}

// Word is the word a phrase begins with.
func (p *Phrase) Word() string {
	switch {
	case p.From != nil:
		return "from"
	case p.Via != nil:
		return "via"
	case p.To != nil:
		return "to"
	case p.Round != nil:
		return "round"
	case p.Eight != nil:
		return "eight"
	case p.Shape != "":
		return p.Shape
	case p.Facing != nil:
		return "facing"
	case p.Backwards:
		return "backwards"
	case p.Starting != nil:
		return "starting"
	case p.When != nil:
		return "when"
	case p.In != nil:
		return "in"
	case p.For != nil:
		return "for"
	case p.At != nil:
		return "at"
	case p.By != nil:
		return "by"
	case p.Until != nil:
		return "until"
	case p.With != nil:
		return "with"
	case p.Over != nil:
		return "over"
	case p.Card != nil:
		return "card"
	case p.Weight != nil:
		return "weight"
	case p.Fifty:
		return "fifty-fifty"
	case p.Size != "":
		return p.Size
	case p.Stop != nil:
		return p.Stop.Text
	case p.Measure != nil && p.Measure.Before != "":
		return p.Measure.Before
	case p.Measure != nil:
		return p.Measure.Amount.Text
	}
	return ""
}
