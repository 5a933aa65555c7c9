package check

import (
	"math"

	"longhand/lang/diag"
	"longhand/lang/units"
)

// closeFor is how long the focus may be asked nearer than the lens goes (common
// practice, no source).
const closeFor units.Seconds = 0.5

var closeFocus = &Rule{
	Entry: diag.Entry{
		Code:     "close-focus",
		Title:    "focus asked nearer than the lens goes",
		Severity: diag.Error,
		At:       []string{"beat sees", "beat racks", "kit lens"},
		Explain: `The kit says how near a lens focuses ("close 0.4 m"), and for longer than half a
second what the focus is on is nearer than that. The ring stops, and the face
goes soft.

Focus is on the face of the first one the camera sees, or on what a line racks
to, measured along the optical axis from the lens.

To mend it: keep farther away, take a lens that focuses nearer, or see somebody
else.`,
		Bad: `take "Too near"
  rate 24 fps
set "Hall"
  mark M1 (0, 0.7)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22 close 0.8 m
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "Far enough"
  rate 24 fps
set "Hall"
  mark M1 (0, 1.2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22 close 0.8 m
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesNothing,
	Run: func(p *Pass) {
		for camera, c := range p.Stage.Cameras {
			track := p.Tracks.Camera(c)
			if track == nil {
				continue
			}
			cam := &p.Stage.Scene.Cameras[camera]
			for k := range track.Fits {
				fit := &track.Fits[k]
				close := float64(fit.Lens.Close)
				if close <= 0 {
					continue
				}
				until := p.Tracks.Length() + 1
				if k+1 < len(track.Fits) {
					until = track.Fits[k+1].At
				}
				span := diag.Frames{From: p.Tracks.Rate.From(fit.At), To: p.Tracks.Rate.From(until) - 1}
				const slop = 0.005 // m: nobody measures it
				bad := p.longer(framesWhere(meet([]diag.Frames{span}, p.rolling(camera)), func(f units.Frame) bool {
					return cam.At(f).Focus < close-slop
				}), closeFor)
				if len(bad) == 0 {
					continue
				}
				worst, _ := worstOf(bad, func(f units.Frame) float64 { return -cam.At(f).Focus })
				at := p.Tracks.Rate.Time(worst)
				focus := cam.At(worst).Focus
				by := p.putThere(c, at)
				aim := track.Aim(at)
				where := fit.Action.Span
				if aim != nil && aim.Action != nil {
					where = aim.Action.Span
				}
				d := p.Report(where, "the focus of %s is to be at %s %s, and %s focuses no nearer than %s", c.Name, p.away(focus), p.when(bad), fit.Lens.Name, p.away(close))
				p.found(d, c, fit.Lens.Name, bad, worst)
				d.Relate(fit.Lens.Decl, "lens %s", fit.Lens.Name)
				if by != nil && by.Span != where {
					d.Relate(by.Span, "%s is there", c.Name)
				}
				d.Note("it is %s too near at %s", p.away(close-focus), at.Clock())
				if aim != nil && aim.See != nil && len(aim.See.Targets) > 0 && !math.IsInf(focus, 0) {
					if s, ok := p.subject(aim.See.Targets[0]); ok {
						p.offerDistance(d, by, s, close-focus+0.05)
					}
				}
			}
		}
	},
}
