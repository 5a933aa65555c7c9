package check

import (
	"longhand/lang/diag"
	"longhand/lang/motion"
)

var noWay = &Rule{
	Entry: diag.Entry{
		Code:     "no-way",
		Title:    "a move that can't be made",
		Severity: diag.Error,
		At:       going,
		Explain: `A line asks for a way that doesn't exist: a figure of eight that begins in the
middle of one of its rounds, a camera on no rig told to follow, two that each keep their distance to
the other.

To mend it: the finding says what is missing.`,
		Bad: `take "Nothing to stand on"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (10, 0)
people
  performer mina
beat "Eight"
  mina stands at M1
  mina walks eight round M1, M3 at 1 m
`,
		Good: `take "Something to go round"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
  mark M3 (10, 0)
people
  performer mina
beat "Eight"
  mina stands at M1
  mina walks eight round M2, M3 at 1 m
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, x := range p.Tracks.Problems {
			switch x.Kind {
			case motion.NoWay:
				saidSo(p.lineProblem(x, "%s can't go this way: %s", nameOf(x.Subject), x.Note), "")
			case motion.NoBase:
				saidSo(p.lineProblem(x, "%s is on no rig that could move it", nameOf(x.Subject)), x.Note)
			case motion.Circular:
				saidSo(p.lineProblem(x, "%s and %s each wait to see where the other goes", nameOf(x.Subject), nameOf(x.Other)), x.Note)
			}
		}
	},
}
