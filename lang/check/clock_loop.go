package check

import "longhand/lang/diag"

var clockLoop = &Rule{
	Entry: diag.Entry{
		Code:     "clock-loop",
		Title:    "cues that wait for each other",
		Severity: diag.Error,
		At:       []string{"beat"},
		Explain: `Each of the lines waits, by way of the others, for itself: nobody would ever
begin. The finding lists the way around.

To mend it: let one of them begin on something else, a stated time, the start of
its beat, or a cue from outside the circle.`,
		Bad: `take "After you"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (0, 3)
  mark M4 (6, 3)
people
  performer mina
  performer otto
beat "After you"
  mina walks from M1 to M2 when otto reaches M4
  otto walks from M3 to M4 when mina reaches M2
`,
		Good: `take "After you"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (0, 3)
  mark M4 (6, 3)
people
  performer mina
  performer otto
beat "After you"
  mina walks from M1 to M2
  otto walks from M3 to M4 when mina reaches M2
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, l := range p.Clock.Loops {
			first := l.Steps[0]
			span := p.stepSpan(first.Action, first.Beat)
			d := p.Report(span, "these wait for each other and never begin: %s", l)
			for _, s := range l.Steps[1:] {
				d.Relate(p.stepSpan(s.Action, s.Beat), "%s", s)
			}
		}
	},
}
