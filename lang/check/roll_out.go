package check

import "longhand/lang/diag"

var rollOut = &Rule{
	Entry: diag.Entry{
		Code:     "roll-out",
		Title:    "a camera rolls for longer than its record lasts",
		Severity: diag.Error,
		Explain: `The take says how long a camera can roll ("record 16 min", or a load of film),
and a camera of the plan rolls for longer without a rest.

Film runs at frames per foot by its gauge: 16 for 35mm-4perf, 64/3 for
35mm-3perf, 32 for 35mm-2perf, 40 for 16mm; 1000 ft of 35mm-4perf at 24 fps are
11 minutes and 7 seconds, less what is lost to lacing up and to the end.

To mend it: shorten the take, take a longer load, or rest the camera while
another one has the picture.`,
		Bad: `take "Long"
  rate 24 fps
  record 8 s
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (6, -9)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "Long"
  rate 24 fps
  record 4 min
set "Yard"
  mark M1 (0, 0)
  mark M2 (12, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig legs sticks
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (6, -9)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, r := range p.Clock.RollOuts {
			p.Report(p.Plan.Take.Record.Span, "camera %s rolls from %s to %s, %s longer than the %s it can record", r.Camera.Name, r.From.Clock(), r.To.Clock(), r.By(), r.Limit).
				Relate(r.Camera.Decl, "camera %s", r.Camera.Name).
				Camera = r.Camera.Name
		}
	},
}
