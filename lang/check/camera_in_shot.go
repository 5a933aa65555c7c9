package check

import "longhand/lang/diag"

var cameraInShot = &Rule{
	Entry: diag.Entry{
		Code:     codeCamera,
		Title:    "a camera sees another one",
		Severity: diag.Error,
		At:       these(beingThere, bodies...),
		Explain: `Two cameras roll, and one has the other in its frame: the body, whoever holds
it, or the rig it is on. They are one finding, which names all that shows.

With two cameras in one room this is the mistake to expect: what one lens leaves
out is where the other one stands. No camera may be in another's frame for a
single frame.

Every frame is looked at, against every other camera. A camera counts as a box
0.4 m long, 0.2 m wide and 0.25 m high about its lens; operator and rig as they
are elsewhere in the plan.

To mend it: move one of them behind something or out of the other's angle, or
have it gone by then: a camera that rests is seen all the same. Or send it to
visual effects with "paint out A from B", which takes whoever holds it and what it
is on along.`,
		Bad: `take "Face to face"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig legs-b sticks
people
  performer mina
  crew ida
  crew jon
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (1.5, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
  legs-b stands at (1.5, 6)
  B on legs-b with jon
  B takes w35 T4
  B sees mina
  B rolls
`,
		Good: `take "Side by side"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  rig legs-b sticks
people
  performer mina
  crew ida
  crew jon
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (0.6, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
  legs-b stands at (2.4, -6)
  B on legs-b with jon
  B takes w35 T4
  B sees mina
  B rolls
`,
	},
	Needs:   Seen,
	Watches: watchesForbidden,
	Run:     func(p *Pass) { p.expose(p.rule) },
}
