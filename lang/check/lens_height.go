package check

import (
	"longhand/lang/diag"
	"longhand/lang/motion"
)

var lensHeight = &Rule{
	Entry: diag.Entry{
		Code:     "lens-height",
		Title:    "a lens higher or lower than its rig takes it",
		Severity: diag.Error,
		At:       these(going, "beat on", "beat sits", "beat handoff", "beat hides"),
		Explain: `A line puts the lens, or lets it rise or sink, to a height that the rig's class
doesn't get to. "longhand kit" lists the heights of each class.

To mend it: another height, or another rig; a longer arm, where it is one.`,
		Bad: `take "Up"
  rate 24 fps
set "Hall"
  mark C1 (0, 0)
  mark M1 (0, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at C1
  A on legs with ida up 2.6 m
  A takes w35 T4
  A sees mina
`,
		Good: `take "Up"
  rate 24 fps
set "Hall"
  mark C1 (0, 0)
  mark M1 (0, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at C1
  A on legs with ida up 1.7 m
  A takes w35 T4
  A sees mina
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, d := range p.demands() {
			if !d.Over() {
				continue
			}
			word, off := "above the highest", d.Peak-d.Limit
			switch d.Quantity {
			case motion.LensHigh:
			case motion.LensLow:
				word, off = "below the lowest", d.Limit-d.Peak
			default:
				continue
			}
			f := p.foundOn(d.Action, d.Subject, d.From, d.To, "the lens of %s is at %s at %s, %s %s it goes to, %s",
				nameOf(d.Subject), p.amount(d.Quantity, d.Peak), d.At.Clock(), p.Length(metres(off)), word, p.amount(d.Quantity, d.Limit))
			f.Note("the limit is of %s", d.Source)
		}
	},
}
