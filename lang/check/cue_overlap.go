package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

var cueOverlap = &Rule{
	Entry: diag.Entry{
		Code:     "cue-overlap",
		Title:    "two light cues move the same lamps at once",
		Severity: diag.Warning,
		At:       []string{"beat cue"},
		Explain: `A light cue begins while an earlier one is still moving the same wash or lamp. The
later one takes over from wherever the level is by then; the earlier one never
gets to its level.

On the day the board does whatever it was told last, and what that is depends on
how late the cue was called: the light changes differently from try to try.

Two cues that take the lamps to the same level don't count.

To mend it: call the later cue when the earlier is done ("when cue dusk plus 6 s"),
make the earlier one shorter, or put both into one cue.`,
		Bad: `take "Two boards"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 12
  mark M1 (4, 4)
kit
  lamp globe 500 W
  wash hall globe x 6 on flies
people
  performer mina
beat "Evening"
  mina stands at M1 in 12 s
  cue dusk hall 60 % over 8 s
  cue night hall 10 % over 4 s starting +5 s
`,
		Good: `take "Two boards"
  rate 24 fps
set "Hall"
  grid flies (0, 0) (8, 0) (8, 8) (0, 8) high 5 m points 12
  mark M1 (4, 4)
kit
  lamp globe 500 W
  wash hall globe x 6 on flies
people
  performer mina
beat "Evening"
  mina stands at M1 in 12 s
  cue dusk hall 60 % over 5 s
  cue night hall 10 % over 4 s starting +5 s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, o := range p.lighting().Overlaps {
			was, is := levelIn(o.Earlier, o.Unit.Wash, o.Unit.Lamp), levelIn(o.Later, o.Unit.Wash, o.Unit.Lamp)
			if was == is {
				continue
			}
			first, second := cueName(o.Earlier), cueName(o.Later)
			d := p.Report(o.Later.Span, "cue %s begins at %s, %s before cue %s is done with %s: it takes over at %s, on the way to %s",
				second, o.From.Clock(), o.To-o.From, first, o.Unit.Name, o.Level, was)
			if o.From == o.To {
				d.Message = "cue " + second + " and cue " + first + " both set " + o.Unit.Name + " at " + o.From.Clock() + ": to " + is.String() + " and to " + was.String()
			}
			d.Relate(o.Earlier.Span, "cue %s, %s", first, p.Clock.Words(o.Earlier))
			d.Subject = o.Unit.Name
			if o.Later.Beat != nil {
				d.Beat = o.Later.Beat.Title
			}
			d.Note("cue %s: %s", second, p.Clock.Words(o.Later))
			p.offerLater(d, o.Earlier, o.Later)
		}
	},
}

// offerLater offers to begin a cue when another is done, where it begins at a
// stated time of its beat.
func (p *Pass) offerLater(d *diag.Diagnostic, first, second *plan.Action) {
	s := second.Timing.Start
	if s == nil || s.Kind != plan.SinceBeat || !s.Span.Valid() || second.Beat == nil || second.Beat != first.Beat {
		return
	}
	done := p.Clock.Of(first).End - p.Clock.Beats[second.Beat.Index].Start
	text := "+" + atLeast(float64(done))
	if i := lastWord(s.Span.Text(), "starting"); i >= 0 {
		text = "starting " + text
	}
	d.Fix("begin cue "+cueName(second)+" when cue "+cueName(first)+" is done", replaced(s.Span, text))
}

func levelIn(a *plan.Action, w *plan.Wash, l *plan.Lamp) units.Percent {
	for _, v := range a.Deed.(*plan.Cue).Levels {
		if w != nil && v.Wash == w || w == nil && v.Lamp == l {
			return v.Per
		}
	}
	return 0
}

func cueName(a *plan.Action) string {
	if c, ok := a.Deed.(*plan.Cue); ok && c.Name != "" {
		return c.Name
	}
	return clock.Describe(a)
}
