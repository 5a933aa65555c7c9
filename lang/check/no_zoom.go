package check

import (
	"longhand/lang/diag"
	"longhand/lang/units"
)

var noZoom = &Rule{
	Entry: diag.Entry{
		Code:     "no-zoom",
		Title:    "a lens zooms while it rolls, and the look never zooms",
		Severity: diag.Error,
		At:       []string{"beat takes", "look never"},
		Explain: `The look says "never zoom", and a line changes the focal length of the lens while
the camera rolls. The picture grows or shrinks without anybody going anywhere,
and in a take without a cut there is no hiding it.

A zoom may be used all the same as a lens of one focal length, and set anew while
the camera rests.

To mend it: take the focal length out of the line, go nearer or farther with the
camera, or rest the camera while the lens is set.`,
		Bad: `take "Zoom"
  rate 24 fps
set "Hall"
  mark M1 (0, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens z 24 mm to 70 mm stops T2.8 to T22
  rig legs sticks
people
  performer mina
  crew ida
look
  never zoom
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes z 24 mm T4
  A sees mina
  A takes z 50 mm T4 starting +4 s
`,
		Good: `take "Zoom"
  rate 24 fps
set "Hall"
  mark M1 (0, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens z 24 mm to 70 mm stops T2.8 to T22
  rig legs sticks
people
  performer mina
  crew ida
look
  never zoom
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes z 50 mm T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesNothing,
	Run: func(p *Pass) {
		if p.Plan.Look.NeverZoom == nil {
			return
		}
		for camera, c := range p.Stage.Cameras {
			track := p.Tracks.Camera(c)
			if track == nil {
				continue
			}
			for _, z := range p.zooms(track) {
				frames := meet([]diag.Frames{z.Frames}, p.rolling(camera))
				if len(frames) == 0 {
					continue
				}
				a := z.fit.Action
				d := p.Report(a.Span, "%s zooms from %s to %s %s, while it rolls, and the look never zooms",
					c.Name, units.Millimetres(z.from), z.fit.Focal, p.when(frames))
				p.found(d, c, z.fit.Lens.Name, frames, frames[0].From)
				d.Relate(*p.Plan.Look.NeverZoom, "the look: never zoom")
				d.Fix("leave the lens as it is", diag.Edit{Span: wholeLine(a.Span)})
			}
		}
	},
}
