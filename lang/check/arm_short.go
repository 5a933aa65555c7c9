package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
)

var armShort = &Rule{
	Entry: diag.Entry{
		Code:     "arm-short",
		Title:    "an arm, a rail or a tripod asked to be where it can't",
		Severity: diag.Error,
		At:       these(going, "beat on", "kit rig"),
		Explain: `A camera on an arm, a rail or a tripod is told to follow, to lead, to circle or to
push, and the place that takes it to is out of the rig's reach: further out than
the arm is long, past the end of the rail, or anywhere at all for a tripod.

To mend it: put the base nearer, take a longer arm ("rig lift crane reach 8 m"),
or a rig that travels.`,
		Bad: `take "Past the rail"
  rate 24 fps
set "Hall"
  mark M1 (0, 4)
  mark M2 (6, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Along"
  mina walks from M1 to M2
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
  A follows mina by 4.5 m
`,
		Good: `take "On wheels"
  rate 24 fps
set "Hall"
  mark M1 (0, 4)
  mark M2 (6, 4)
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig wheels dolly
people
  performer mina
  crew ida
beat "Along"
  mina walks from M1 to M2
  wheels stands at C1
  A on wheels with ida
  A takes w35 T4
  A sees mina
  A follows mina by 4.5 m
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		const slop = 0.05 // m: nobody sees it
		for _, s := range p.Tracks.Armed {
			if s.Short <= slop {
				continue
			}
			d := p.foundOn(s.Action, s.Camera, s.At, s.At, "%s on %s can't get to where the line wants it at %s: %s short",
				s.Camera.Name, nameOfRig(s.Rig), s.At.Clock(), p.Length(s.Short))
			d.Camera = s.Camera.Name
			if s.Rig != nil {
				d.Relate(s.Rig.Decl, "rig %s, a %s", s.Rig.Name, s.Rig.Class)
			}
			if s.Action != nil {
				d.Note("in: %s", clock.Describe(s.Action))
			}
		}
	},
}
