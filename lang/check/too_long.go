package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// MostFrames is how many frames of a take are looked at: close to six hours at
// 24 frames a second. A longer one is a slip of the text, and would fill the
// memory of the machine.
const MostFrames = 500_000

var tooLong = &Rule{
	Entry: diag.Entry{
		Code:     "too-long",
		Title:    "a take too long to be one",
		Severity: diag.Error,
		At:       []string{"beat"},
		Explain: `The clock comes to more than 500000 frames, close to six hours at 24 frames a
second. No roll lasts that long: it is nearly always a slip, minutes written for
seconds, or a pace that is far too slow. The clock is worked out, and what the
lenses see is not.

To mend it: look at the line the finding names, which takes longest.`,
		Bad: `take "For ever"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (9000, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 0.2 m/s
`,
		Good: `take "In time"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (9, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 0.2 m/s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		if p.Tracks == nil || p.Tracks.Frames <= MostFrames {
			return
		}
		var longest *plan.Action
		most := units.Seconds(-1)
		for _, a := range p.Plan.Actions {
			if l := p.Clock.Of(a).Length(); !p.Clock.Of(a).Open && l > most {
				longest, most = a, l
			}
		}
		if longest == nil {
			return
		}
		p.Report(longest.Span, "the take comes to %s, %d frames; at most %d are looked at, and this line alone takes %s",
			p.Tracks.Length().Clock(), p.Tracks.Frames, MostFrames, most.Clock())
	},
}
