package clock

import (
	"fmt"
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"

	"longhand/lang/plan"
)

// miss reports an event that nothing brings about, with what there is instead.
// An event whose own names did not resolve has been reported by who bound it.
func (b *builder) miss(m *plan.Moment, a *plan.Action, bt *plan.Beat) {
	e := m.Event
	switch {
	case e == nil:
		return
	case e.Kind == plan.CueFires:
	case e.Kind == plan.BeatStarts || e.Kind == plan.BeatEnds:
		if e.Beat == nil {
			return
		}
	case e.Subject == nil, e.Kind != plan.Says && e.Place == nil && e.Carrier == nil:
		return
	}
	b.g.unmatched = append(b.g.unmatched, Unmatched{Event: e, Moment: m, Action: a, Beat: bt, Suggest: b.g.suggest(e)})
}

// suggest lists what a subject does that the event could have meant, nearest in
// spelling first.
func (g *Graph) suggest(e *plan.Event) []string {
	var out []string
	add := func(s string) {
		if s != "" && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	wanted := e.Text
	switch e.Kind {
	case plan.CueFires:
		wanted = e.Cue
	case plan.Reaches, plan.Leaves:
		if e.Place != nil {
			wanted = e.Place.Text
		}
	}
	for _, a := range g.acts {
		if e.Kind == plan.CueFires {
			if c, ok := a.Deed.(*plan.Cue); ok {
				add(c.Name)
			}
			continue
		}
		if a.Subject != e.Subject {
			continue
		}
		switch d := a.Deed.(type) {
		case *plan.Say:
			if e.Kind == plan.Says {
				add(d.Text)
			}
		case *plan.Move:
			if e.Kind == plan.Reaches {
				for _, p := range d.Path.Stops() {
					add(p.Text)
				}
			}
			if from := g.origins[a]; e.Kind == plan.Leaves && from != nil {
				add(from.Text)
			}
		case *plan.Leave:
			if e.Kind == plan.Leaves {
				add(thing(d.Carrier))
			} else if e.Kind == plan.Reaches && d.To != nil {
				add(d.To.Text)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b string) int {
		return levenshtein.ComputeDistance(strings.ToLower(a), strings.ToLower(wanted)) -
			levenshtein.ComputeDistance(strings.ToLower(b), strings.ToLower(wanted))
	})
	return out
}

// mostSuggestions is how many of what there is instead are named in a message.
const mostSuggestions = 4

// String says it for people: "no line takes mina to M9; mina reaches M1, M2".
func (u Unmatched) String() string {
	e := u.Event
	if e == nil {
		return ""
	}
	who := thing(e.Subject)
	var what, instead, nothing string
	switch e.Kind {
	case plan.Reaches:
		what = fmt.Sprintf("no line takes %s to %s", who, placeName(e.Place))
		instead, nothing = who+" reaches ", who+" never moves to a place"
	case plan.Leaves:
		where := placeName(e.Place)
		if e.Carrier != nil {
			where = thing(e.Carrier)
		}
		what = fmt.Sprintf("no line takes %s away from %s", who, where)
		instead, nothing = who+" leaves ", who+" never leaves a place that is known"
	case plan.Says:
		what = fmt.Sprintf("no line of %s has the words %s", who, quoted(e.Text))
		instead, nothing = who+" says ", who+" says nothing"
	case plan.CueFires:
		what = fmt.Sprintf("no line is cue %s", e.Cue)
		instead, nothing = "there is ", "there are no cues"
	default:
		return "a pickup is on its own clock: no beat of the take happens on it"
	}
	if len(u.Suggest) == 0 {
		return what + "; " + nothing
	}
	list := slices.Clone(u.Suggest[:min(len(u.Suggest), mostSuggestions)])
	if e.Kind == plan.Says {
		for i := range list {
			list[i] = quoted(list[i])
		}
	}
	s := what + "; " + instead + strings.Join(list, ", ")
	if more := len(u.Suggest) - len(list); more > 0 {
		s += fmt.Sprintf(" and %d more", more)
	}
	return s
}
