package check

import "longhand/lang/diag"

var gearInShot = &Rule{
	Entry: diag.Entry{
		Code:     codeGear,
		Title:    "equipment that must not be seen is in frame",
		Severity: diag.Error,
		At:       these(these(beingThere, bodies...), "set place"),
		Explain: `A rig, a vehicle marked "gear", or a lamp that is not marked "seen" shows in a
rolling camera's frame: it may be one edge of it, for one frame.

Every frame of the take is looked at. Each thing stands in the plan as an upright
solid of its size and height; what walls, people and other things in front of it
hide is taken off, and what is left is given as a share of the frame. Doors count
as open from the moment they begin to open, until they are quite shut. What is
smaller than one picture element of a frame 4096 wide is not counted. Stretches
less than half a second from each other are one finding. The sizes used where the
plan gives none are listed by "longhand kit".

To mend it: park it where the camera does not look, behind something that hides
it, or have it gone before the first frame the finding names; let the lens stay
off it; mark a lamp that belongs in the picture as "seen"; or send it to visual
effects with "paint out".`,
		Bad: `take "The cart at the gate"
  rate 24 fps
set "Yard"
  wall shed (-6, 4) (-2, 4) high 2.6 m
  mark M1 (0, 0)
  mark M2 (3, 0)
  mark park (0.5, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig cart cart
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  cart stands at park
  legs stands at (1.5, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "The cart behind the shed"
  rate 24 fps
set "Yard"
  wall shed (-6, 4) (-2, 4) high 2.6 m
  mark M1 (0, 0)
  mark M2 (3, 0)
  mark park (-4, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig cart cart
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  cart stands at park
  legs stands at (1.5, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesForbidden,
	Run:     func(p *Pass) { p.expose(p.rule) },
}
