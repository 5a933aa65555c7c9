package clock

import (
	"longhand/lang/plan"
)

// hitKind is where in a line, or a beat, an event happens.
type hitKind uint8

const (
	hitStart hitKind = iota
	hitEnd
	hitStop // a place on the way
	hitWord // in the middle of a spoken line
	hitBeatStart
	hitBeatEnd
)

// hit is what brings an event about.
type hit struct {
	kind  hitKind
	act   int
	scope int
	stop  int
	frac  float64 // hitWord: how much of the line has been spoken
}

// find looks for what brings an event about: in the same beat, then in earlier
// beats, the latest first, then in later ones, the earliest first. Where the
// subject itself has no such line, those of what carries it will do: a rider
// reaches what the van reaches, a camera what its rig or operator does.
func (g *Graph) find(e *plan.Event, from context) (hit, bool) {
	switch e.Kind {
	case plan.BeatStarts, plan.BeatEnds:
		for s := range g.scopes {
			if g.scopes[s].beat != nil && g.scopes[s].beat == e.Beat {
				kind := hitBeatStart
				if e.Kind == plan.BeatEnds {
					kind = hitBeatEnd
				}
				return hit{kind: kind, scope: s, act: -1}, true
			}
		}
		return hit{}, false
	case plan.CueFires:
		return g.search(from, func(a int) (hit, bool) {
			c, ok := g.acts[a].Deed.(*plan.Cue)
			return hit{kind: hitStart, act: a}, ok && c.Name == e.Cue
		})
	}
	if e.Subject == nil {
		return hit{}, false
	}
	h, ok := g.search(from, func(a int) (hit, bool) { return g.bringsAbout(a, e, e.Subject) })
	if ok || e.Kind == plan.Says || e.Carrier != nil {
		return h, ok
	}
	for _, carrier := range g.carriers(e.Subject)[1:] {
		h, ok := g.search(from, func(a int) (hit, bool) { return g.bringsAbout(a, e, carrier) })
		if ok {
			return h, true
		}
	}
	return hit{}, false
}

// search tries lines in the order in which a reader would look.
func (g *Graph) search(from context, try func(a int) (hit, bool)) (hit, bool) {
	within := func(s int, latest bool) (hit, bool) {
		acts := g.scopes[s].acts
		for i := range acts {
			a := acts[i]
			if latest {
				a = acts[len(acts)-1-i]
			}
			if a == from.act {
				continue
			}
			if h, ok := try(a); ok {
				h.scope = s
				return h, true
			}
		}
		return hit{}, false
	}
	own := from.scope >= 0
	if own && !from.header {
		if h, ok := within(from.scope, false); ok {
			return h, true
		}
	}
	for s := from.scope - 1; s >= 0; s-- {
		if h, ok := within(s, true); ok {
			return h, true
		}
	}
	for s := from.scope + 1; s < len(g.scopes); s++ {
		if h, ok := within(s, false); ok {
			return h, true
		}
	}
	if own && from.header {
		return within(from.scope, false)
	}
	return hit{}, false
}

// bringsAbout says whether, and where in it, a line is the event of a subject.
func (g *Graph) bringsAbout(a int, e *plan.Event, subject plan.Thing) (hit, bool) {
	act := g.acts[a]
	if act.Subject != subject {
		return hit{}, false
	}
	switch e.Kind {
	case plan.Reaches:
		return reaches(a, act, e.Place)
	case plan.Leaves:
		switch d := act.Deed.(type) {
		case *plan.Leave:
			if e.Carrier != nil && d.Carrier == e.Carrier {
				return hit{kind: hitStart, act: a}, true
			}
		case *plan.Move:
			if e.Carrier == nil && e.Place != nil && samePlace(g.origins[act], e.Place) {
				return hit{kind: hitStart, act: a}, true
			}
		}
	case plan.Says:
		if d, ok := act.Deed.(*plan.Say); ok {
			through, of, found := partOf(d.Text, e.Text)
			switch {
			case !found:
			case through == of:
				return hit{kind: hitEnd, act: a}, true
			default:
				return hit{kind: hitWord, act: a, frac: float64(through) / float64(of)}, true
			}
		}
	}
	return hit{}, false
}

func reaches(a int, act *plan.Action, place *plan.Place) (hit, bool) {
	switch d := act.Deed.(type) {
	case *plan.Move:
		for i := range d.Path.Via {
			if samePlace(&d.Path.Via[i], place) {
				return hit{kind: hitStop, act: a, stop: i}, true
			}
		}
		if samePlace(d.Path.To, place) {
			return hit{kind: hitEnd, act: a}, true
		}
	case *plan.Leave:
		if samePlace(d.To, place) {
			return hit{kind: hitEnd, act: a}, true
		}
	}
	return hit{}, false
}

// samePlace compares places as a reader would: the same mark, the same words,
// or the same point on the floor.
func samePlace(a, b *plan.Place) bool {
	switch {
	case a == nil || b == nil:
		return false
	case a.Exact() && b.Exact():
		return a.Mark == b.Mark
	case a.Text != "" && a.Text == b.Text:
		return true
	}
	return a.Before == 0 && b.Before == 0 && a.Point == b.Point
}
