package check

import (
	"fmt"
	"strings"

	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/source"
)

var noSpotter = &Rule{
	Entry: diag.Entry{
		Code:     "no-spotter",
		Title:    "an operator walks backwards without a spotter",
		Severity: diag.Error,
		At:       these(going),
		Explain: `Somebody with a camera goes backwards for 2 m or more, or faster than 0.8 m/s, and
no line gives them a spotter all the while: one of the crew with a hand on their
back who sees where they are going, and who may stop the take. A worn rig hides
its wearer's own feet (common practice, no source). A spotter who is more than 3 m
away is none: they have to be there before the first step back.

To mend it: "jon spots ida", from before the first step back, and let jon stand
behind ida by then.`,
		Bad: `take "Backwards"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  performer mina
  crew ida
  crew jon
beat "Along"
  mina walks from M1 to M2 at 0.8 m/s
  A on arms with ida
  A takes w35 T4
  A sees mina
  A leads mina by 2 m
`,
		Good: `take "Backwards"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  performer mina
  crew ida
  crew jon
beat "Along"
  mina walks from M1 to M2 at 0.8 m/s
  A on arms with ida
  A takes w35 T4
  A sees mina
  A leads mina by 2 m
  jon spots ida
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		type key struct {
			who    plan.Thing
			action *plan.Action
		}
		var order []key
		all := map[key]*motion.Backing{}
		for _, b := range p.Tracks.Backing {
			b := b
			if personOf(b.Who) == nil || b.Camera == nil || b.Spotter != nil && b.Away <= spotReach {
				continue
			}
			if b.Length <= body.BackSpotterDistance && (b.Peak <= body.BackSpotterSpeed+slowSlop || b.Length < shuffle) {
				continue
			}
			k := key{b.Who, b.Action}
			if was, ok := all[k]; ok { // one line, one finding
				was.Length += b.Length
				was.Peak = max(was.Peak, b.Peak)
				was.To = b.To
				was.Away = max(was.Away, b.Away)
				continue
			}
			all[k] = &b
			order = append(order, k)
		}
		for _, k := range order {
			b := all[k]
			why := "nobody spots all of it"
			if b.Spotter != nil {
				why = fmt.Sprintf("%s, who spots, is up to %s away", b.Spotter.Name, p.Length(b.Away))
			}
			d := p.foundOn(b.Action, b.Who, b.From, b.To, "%s walks %s backwards with %s, at up to %s, and %s",
				nameOf(b.Who), p.Length(b.Length), b.Camera.Name, p.Speed(b.Peak), why)
			d.Camera = b.Camera.Name
			d.Note("a spotter from %s on, and always above %s, %s", p.Length(body.BackSpotterDistance), p.Speed(body.BackSpotterSpeed), body.Practice)
			d.Note("%s", safety.Worn.Caution())
			if b.Spotter == nil {
				p.nameASpotter(d, b)
			} else {
				d.Note("%s has to be within %s before the first step back", b.Spotter.Name, p.Length(spotReach))
			}
		}
	},
}

// shuffle is a way backwards so short that its pace doesn't matter, m; slowSlop
// keeps a pace at the limit from being over it; spotReach is how far off a spotter
// may be, two strides more than an arm, as they swing round in a turn (common practice, no source).
const (
	shuffle   = 1.0
	slowSlop  = 0.01
	spotReach = 3.0
)

// nameASpotter offers one of the crew who has nothing else to do in the take.
func (p *Pass) nameASpotter(d *diag.Diagnostic, b *motion.Backing) {
	if b.Action == nil || !b.Action.Span.Valid() {
		return
	}
	busy := map[plan.Thing]bool{}
	for _, a := range p.Plan.Actions {
		busy[a.Subject] = true
		switch deed := a.Deed.(type) {
		case *plan.Mount:
			busy[thingOf(deed.With)] = true
		case *plan.Handoff:
			busy[thingOf(deed.With)], busy[thingOf(deed.Weight)] = true, true
		}
	}
	for _, who := range p.Plan.People {
		if !who.Crew || busy[who] {
			continue
		}
		end := lineEnd(b.Action.Span)
		d.Fix("let "+who.Name+" spot", replaced(end, "\n"+indent(b.Action.Span)+who.Name+" spots "+nameOf(b.Who)))
		return
	}
}

func thingOf(who *plan.Person) plan.Thing {
	if who == nil {
		return nil
	}
	return who
}

// lineEnd is the end of the line that a span ends on; indent the blanks its
// first line begins with.
func lineEnd(s source.Span) source.Span {
	i := len(s.File.Text)
	if n := strings.IndexByte(s.File.Text[s.End:], '\n'); n >= 0 {
		i = s.End + n
	}
	return source.Span{File: s.File, Start: i, End: i}
}

func indent(s source.Span) string {
	line := s.File.Line(s.StartPos().Line)
	return line[:len(line)-len(strings.TrimLeft(line, " \t"))]
}
