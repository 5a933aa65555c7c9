package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
)

var twoMoves = &Rule{
	Entry: diag.Entry{
		Code:     "two-moves",
		Title:    "somebody is told to do two things at once",
		Severity: diag.Error,
		At:       []string{"beat"},
		Explain: `Two lines of one subject use the same part of it at the same time: feet that
walk to one place while they still walk to another, a voice with two lines, a
lens that pans twice. A camera, its rig and its operator share their feet.

A line without a cue waits for the subject's line before it; this finding comes
from a line with a cue, or a stated time, that comes too soon. To mend it: let it
wait (take the cue away), cue it later, or end the first move sooner.`,
		Bad: `take "Two at once"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (6, 6)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  mina walks to M3 starting +2 s
`,
		Good: `take "One after the other"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (6, 6)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  mina walks to M3
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, o := range p.Clock.Overlaps {
			span := o.Second.Span
			if o.Second.Timing.Start != nil {
				span = o.Second.Timing.Start.Span
			}
			p.Report(span, "%s begins at %s, %s before the end of: %s",
				clock.Describe(o.Second), o.SecondStarts.Clock(), o.By(), clock.Describe(o.First)).
				Relate(o.First.Span, "this goes on until %s", o.FirstEnds.Clock()).
				Note("both use the same %s", o.Faculty)
		}
	},
}
