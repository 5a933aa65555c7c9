package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
)

var late = &Rule{
	Entry: diag.Entry{
		Code:     "late",
		Title:    "a time that was promised is missed",
		Severity: diag.Error,
		At:       []string{"beat"},
		Explain: `A line says "by" when it has to be done, or "until" when it has to be over,
and it turns out that it cannot be: the way is too long for the pace, or
what it waits for comes too late.

On the floor this is the rig that is still rolling out of the way when the lens
comes round, or the performer who misses the light. One cue a second late, and
the take is lost.

What ends when follows from the length of the way and the pace: a way of length
L at pace v, speeding up and braking at a, takes L/v + v/a. To mend it: start
sooner, go faster within what the body or the rig can do, shorten the way, or
promise a later time.`,
		Bad: `take "Late"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s by +6 s
`,
		Good: `take "In time"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s by +12 s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, l := range p.Clock.Lates {
			span := l.Moment.Span
			what := "the beat"
			if l.Action != nil {
				what = clock.Describe(l.Action)
			}
			var d *diag.Diagnostic
			switch l.Kind {
			case clock.LateBefore:
				d = p.Report(span, "%s would have to begin %s before the take does", what, l.By())
			case clock.LateUntil:
				d = p.Report(span, "%s is still going on at %s, %s past the %s it is to last until", what, l.Measured.Clock(), l.By(), l.Limit.Clock())
			default:
				d = p.Report(span, "%s ends at %s, %s after %s", what, l.Measured.Clock(), l.By(), l.Limit.Clock())
			}
			if l.Action != nil {
				i := p.Clock.Of(l.Action)
				d.Note("it begins at %s (%s) and takes %s", i.Start.Clock(), p.Clock.Words(l.Action), i.Length())
			}
		}
	},
}
