package check

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/source"
)

var jump = &Rule{
	Entry: diag.Entry{
		Code:     "jump",
		Title:    "somebody is not where their next line begins",
		Severity: diag.Error,
		At:       beingThere,
		Explain: `A line says where its subject starts, or what it steps onto, and the lines before
have left it somewhere else. Nobody is in two places, and a take without a cut
can't skip the way between.

The finding says how far apart the two places are and how long the way takes at
the subject's usual pace. Half a pace, 0.3 m, counts as the same place.

To mend it: leave out "from" and let the move begin where the last one ended,
write the move that gets them there, or mend the place.`,
		Bad: `take "Elsewhere"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (6, 4)
  mark M4 (0, 4)
people
  performer mina
beat "Round"
  mina walks from M1 to M2
  mina walks from M3 to M4
`,
		Good: `take "Along"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (6, 4)
  mark M4 (0, 4)
people
  performer mina
beat "Round"
  mina walks from M1 to M2
  mina walks via M3 to M4
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, j := range p.Tracks.Jumps {
			from, to := j.From.Floor(), j.To.Floor()
			if up := j.To.Z - j.From.Z; from.Dist(to) < 0.05 {
				p.foundOn(j.Action, j.Subject, j.At, j.At, "%s is on a floor at %s and the line has it at %s, %s off, with no stairs on the way",
					nameOf(j.Subject), p.Length(metres(j.From.Z)), p.Length(metres(j.To.Z)), p.Length(metres(math.Abs(up)))).
					Note("a step of up to 0.4 m is climbed without stairs")
				continue
			}
			d := p.foundOn(j.Action, j.Subject, j.At, j.At, "%s is at %s at %s and the line begins at %s, %s away",
				nameOf(j.Subject), p.spot(from), j.At.Clock(), p.spot(to), p.Length(j.Gap))
			if j.Needs > 0 {
				d.Note("to get there takes %s at the usual pace", j.Needs)
			}
			p.startsWhereItIs(d, j.Action)
		}
	},
}

// startsWhereItIs offers to leave out the `from` of a move.
func (p *Pass) startsWhereItIs(d *diag.Diagnostic, a *plan.Action) {
	if a == nil {
		return
	}
	m, ok := a.Deed.(*plan.Move)
	if !ok || m.Path.From == nil || m.Path.To == nil {
		return
	}
	span, ok := withWord(m.Path.From.Span, "from")
	if !ok {
		return
	}
	d.Note("without it: %s, from where %s is", clock.Describe(a), a.Who())
	d.Fix("begin where "+a.Who()+" is", replaced(span, ""))
}

// withWord widens a span to the word before it and the blanks around that word;
// false where another word stands there.
func withWord(s source.Span, word string) (source.Span, bool) {
	if !s.Valid() {
		return s, false
	}
	blank := func(c byte) bool { return c == ' ' || c == '\t' }
	text := s.File.Text
	i := s.Start
	for i > 0 && blank(text[i-1]) {
		i--
	}
	if i < len(word) || text[i-len(word):i] != word {
		return s, false
	}
	i -= len(word)
	for i > 0 && blank(text[i-1]) {
		i--
	}
	return source.Span{File: s.File, Start: i, End: s.End}, true
}
