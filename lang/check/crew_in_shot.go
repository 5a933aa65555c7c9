package check

import "longhand/lang/diag"

var crewInShot = &Rule{
	Entry: diag.Entry{
		Code:     codeCrew,
		Title:    "somebody of the crew is in frame",
		Severity: diag.Error,
		At:       these(beingThere, bodies...),
		Explain: `One of the crew shows in a rolling camera's frame. An operator never shows in
the frame of the camera they hold; they do in every other camera's, and when
their rig and camera show with them, that is one finding, "camera-in-shot".

In a long take there is no cutting round it: a shoulder at the edge of frame for
a quarter of a second spoils ten minutes of work.

Every frame is looked at. A person is an upright cylinder 0.46 m across, as tall
as they stand, sit or kneel, moving as the plan has them move; what stands in
front of them is taken off.

To mend it: let them wait where the camera does not look, or leave before the
first frame the finding names; or send it to visual effects with "paint out".`,
		Bad: `take "Jon at the wall"
  rate 24 fps
set "Yard"
  wall shed (-6, 4) (-2, 4) high 2.6 m
  mark M1 (0, 0)
  mark M2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
  crew jon
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  jon stands at (-1.6, 3)
  legs stands at (1.5, -6)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "Jon behind the wall"
  rate 24 fps
set "Yard"
  wall shed (-6, 4) (-2, 4) high 2.6 m
  mark M1 (0, 0)
  mark M2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
  crew jon
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  jon stands at (-3.6, 5)
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
