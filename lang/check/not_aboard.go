package check

import (
	"longhand/lang/diag"
	"longhand/lang/motion"
)

var notAboard = &Rule{
	Entry: diag.Entry{
		Code:     "not-aboard",
		Title:    "somebody leaves what they don't ride, or boards from too far away",
		Severity: diag.Error,
		At:       []string{"beat leaves"},
		Explain: `A line lets somebody leave a vehicle or a rig that they aren't on at that moment,
or get on one that is further away than a step, 2.5 m.

To mend it: let them ride it first ("mina rides van"), or walk to where it stops
before they get on.`,
		Bad: `take "Off what"
  rate 24 fps
set "Yard"
  mark D0 (0, 0)
  mark M2 (6, 4)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
beat "Off"
  van stands at D0
  mina rides van at (0.4, 0.5)
  mina leaves van starting +1 s
  mina walks to M2
  mina leaves van
`,
		Good: `take "Off the van"
  rate 24 fps
set "Yard"
  mark D0 (0, 0)
  mark M2 (6, 4)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer mina
beat "Off"
  van stands at D0
  mina rides van at (0.4, 0.5)
  mina leaves van starting +1 s
  mina walks to M2
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, x := range p.Tracks.Problems {
			switch x.Kind {
			case motion.NotAboard:
				saidSo(p.lineProblem(x, "%s leaves %s at %s and is not on it", nameOf(x.Subject), nameOf(x.Other), p.Clock.Of(x.Action).Start.Clock()), "")
			case motion.TooFar:
				saidSo(p.lineProblem(x, "%s gets on %s and is too far from it", nameOf(x.Subject), nameOf(x.Other)), x.Note)
			}
		}
	},
}
