package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
)

var overLength = &Rule{
	Entry: diag.Entry{
		Code:     "over-length",
		Title:    "a beat has more in it than its stated length",
		Severity: diag.Error,
		At:       []string{"beat header"},
		Explain: `The beat says how long it lasts ("for 8 s"), and what is in it takes longer.
The next beat would begin while this one is still going on.

To mend it: give the beat more time, take lines out of it, or let its moves go
faster, within what people and rigs can do.`,
		Bad: `take "Too full"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across" for 5 s
  mina walks from M1 to M2 at 1.2 m/s
`,
		Good: `take "Room enough"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across" for 12 s
  mina walks from M1 to M2 at 1.2 m/s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, o := range p.Clock.Overruns {
			p.Report(o.Beat.ForSpan, "beat %q is to last %s, and what is in it takes %s: %s too long", o.Beat.Title, o.Limit, o.Measured, o.By()).
				Relate(o.Last.Span, "%s ends last", clock.Describe(o.Last)).
				Beat = o.Beat.Title
		}
	},
}
