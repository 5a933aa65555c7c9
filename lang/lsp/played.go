package lsp

import (
	"strings"

	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/source"
	"longhand/lang/syntax"
	"longhand/lang/units"
)

// played is a line as it was last worked out, with the tracks it is in: those of
// the take, or of its pickup.
type played struct {
	action *plan.Action
	tracks *motion.Tracks
	at     source.Span // where the line is now
}

// lines are the lines of this document that were worked out and have not changed
// since, in the order of the text.
func (s *Snapshot) played() []played {
	var out []played
	add := func(list []*plan.Action, t *motion.Tracks) {
		if t == nil {
			return
		}
		for _, a := range list {
			if at, ok := s.shifts.forward(a.Span); ok && at.File == s.File.Source {
				out = append(out, played{a, t, at})
			}
		}
	}
	if s.Whole == nil {
		return nil
	}
	add(s.Whole.Plan.Actions, s.Whole.Tracks)
	for _, shot := range s.Whole.Pickups {
		add(shot.Pickup.Actions, shot.Tracks)
	}
	return out
}

// playedAt is the line at a place, if it was worked out.
func (s *Snapshot) playedAt(offset int) (played, bool) {
	for _, p := range s.played() {
		if p.at.Start <= offset && offset <= p.at.End {
			return p, true
		}
	}
	return played{}, false
}

// thing finds what has a name, in the plan that was worked out; nil without one.
func (s *Snapshot) thing(p *plan.Plan, name string) plan.Thing {
	if p == nil {
		return nil
	}
	for _, t := range p.Things() {
		if t.ID().Name == name {
			return t
		}
	}
	return nil
}

// begins is the moment at which the one whose line a line is begins it: of a line
// that was worked out its start, of another the end of the last one before it
// that was.
func (s *Snapshot) begins(line *syntax.Line, who string) (*motion.Tracks, units.Seconds, bool) {
	span := line.Span(s.File.Source)
	if p, ok := s.playedAt(span.Start); ok {
		return p.tracks, p.tracks.Clock.Of(p.action).Start, true
	}
	var found *motion.Tracks
	var at units.Seconds
	for _, p := range s.played() {
		if p.at.Start < span.Start && p.action.Who() == who && (p.action.Pickup == nil || s.sameSection(p.at.Start, line)) {
			found = p.tracks
			if i := p.tracks.Clock.Of(p.action); i.Open {
				at = i.Start
			} else {
				at = i.End
			}
		}
	}
	return found, at, found != nil
}

func (s *Snapshot) sameSection(offset int, line *syntax.Line) bool {
	l := s.lineAt(offset)
	return l != nil && l.Section == line.Section
}

// holds reports whether a line holds some words, whatever their case and blanks.
func holds(line, words string) bool {
	return strings.Contains(strings.ToLower(oneLine(line)), strings.ToLower(oneLine(words)))
}
