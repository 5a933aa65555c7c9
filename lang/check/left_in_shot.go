package check

import "longhand/lang/diag"

var leftInShot = &Rule{
	Entry: diag.Entry{
		Code:     codeLeft,
		Title:    "a rig that was left behind is in frame",
		Severity: diag.Error,
		At:       these(beingThere, bodies...),
		Explain: `A rig gave its camera away, in a handoff or by a change of rigs, and a later
frame sees it: where it stands, or on its way out.

This is what a handoff costs. The rig that has done its part has to be gone, or
behind something, before the lens comes round again. The finding says when it was
left and where, and by which frame it has to be out of sight.

Every frame is looked at, as for "gear-in-shot"; the same sizes are used.

To mend it: give it a line that takes it away ("cart drives to hideaway by +9 s"),
hand the camera over somewhere that is not looked at later, let the lens come
round later or stay off it, or send it to visual effects with "paint out".`,
		Bad: `take "Taken off"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark C1 (0, -4)
kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w35 35 mm stops T2 to T22 weighs 1.2 kg
  rig legs sticks
  rig vest body-rig carries 3 kg to 14 kg
people
  performer mina
  crew ida
beat "Off the legs"
  legs stands at C1
  ida stands at (0.85, -4)
  A on legs with ida up 1.5 m
  A takes w35 T4
  A sees mina
  mina stands at M1
  handoff A from legs to vest starting +2 s
beat "Round her"
  A circles mina 170 deg left at 4 m in 22 s
`,
		Good: `take "Taken off"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark C1 (0, -4)
kit
  camera A sensor 24.9 mm x 14 mm weighs 2.6 kg
  lens w35 35 mm stops T2 to T22 weighs 1.2 kg
  rig legs sticks
  rig vest body-rig carries 3 kg to 14 kg
people
  performer mina
  crew ida
beat "Off the legs"
  legs stands at C1
  ida stands at (0.85, -4)
  A on legs with ida up 1.5 m
  A takes w35 T4
  A sees mina
  mina stands at M1
  handoff A from legs to vest starting +2 s
beat "Round her"
  A circles mina 60 deg left at 4 m in 8 s
`,
	},
	Needs:   Seen,
	Watches: watchesForbidden,
	Run:     func(p *Pass) { p.expose(p.rule) },
}
