package check

import (
	"fmt"

	"longhand/lang/diag"
	"longhand/lang/lighting"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// hungFor is how long lamps on a grid have to be in frame, as their places are
// those of an even spread and not the real ones (common practice, no source).
const hungFor units.Seconds = 0.25

var gridInShot = &Rule{
	Entry: diag.Entry{
		Code:     "grid-in-shot",
		Title:    "a lens looks up into the lamps that hang",
		Severity: diag.Warning,
		At:       []string{"beat sees", "kit wash"},
		Explain: `The lamps of a wash hang in a camera's frame for longer than a quarter of a second,
with nothing of the set before them: the lens is low and looks up, or it rises to
where the grid is.

Where each lamp hangs the plan doesn't say; they are taken as spread evenly over
the grid, at its height. So this is a warning, to be looked at on the day. Lamps
that the kit calls "seen" don't count.

To mend it: tilt down, keep the lens lower, see tighter, leave that corner of the
grid empty, hang cloth below it; or mean it ("allow grid-in-shot in A because
...").`,
		Bad: `take "Up into the lamps"
  rate 24 fps
set "Hall"
  grid flies (-4, 6) (4, 6) (4, 14) (-4, 14) high 4 m points 16
  mark M1 (0, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W
  wash hall globe x 12 on flies
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida up 0.7 m
  A takes w24 T4
  A sees mina
`,
		Good: `take "Under the lamps"
  rate 24 fps
set "Hall"
  grid flies (-4, -2) (4, -2) (4, 3) (-4, 3) high 5 m points 16
  mark M1 (0, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
  lamp globe 500 W
  wash hall globe x 12 on flies
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida up 1.5 m
  A takes w24 T4
  A sees mina
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for _, h := range p.hungInFrame(func(l *plan.Lamp) bool { return !l.Seen && (!l.Modern || p.Plan.Look.NeverModern == nil) }) {
			d := p.sayHung(h)
			d.Message = "the lamps of " + h.unit.Name + " hang in " + p.cameraAt(h.camera).Name + "'s frame " + p.hungWhere(h)
		}
	},
}

// hungSeen is lamps of a wash in a camera's frame.
type hungSeen struct {
	camera int
	unit   *lighting.Unit
	frames []diag.Frames
	worst  units.Frame
	most   int // lamps, at the worst frame
}

// hungInFrame is the washes of lamps of a kind whose lamps a camera sees.
func (p *Pass) hungInFrame(kind func(*plan.Lamp) bool) []hungSeen {
	var out []hungSeen
	l := p.lighting()
	for camera := range p.Stage.Cameras {
		rolls := p.rolling(camera)
		for i := range l.Units {
			u := &l.Units[i]
			if u.Wash == nil || !kind(u.Lamp) {
				continue
			}
			frames := framesWhere(rolls, func(f units.Frame) bool { return p.hungSeen(camera, u, f, 1) > 0 })
			for _, r := range joined(p.longer(frames, hungFor), p.gap()) {
				h := hungSeen{camera: camera, unit: u, frames: meet(frames, []diag.Frames{r})}
				worst, most := worstOf(h.frames, func(f units.Frame) float64 { return float64(p.hungSeen(camera, u, f, u.Count)) })
				h.worst, h.most = worst, int(most)
				out = append(out, h)
			}
		}
	}
	return out
}

// hungSeen is how many of a wash's lamps a camera sees at a frame; it stops at
// enough.
func (p *Pass) hungSeen(camera int, u *lighting.Unit, f units.Frame, enough int) int {
	e := p.eye(camera, f)
	n := 0
	for _, at := range u.At {
		if e.holds(at.Sub(e.at)) && p.sightlines().blocked(e.at, at, f, false) == nil {
			if n++; n >= enough {
				break
			}
		}
	}
	return n
}

func (p *Pass) hungWhere(h hungSeen) string {
	return fmt.Sprintf("%s: up to %d of %d, on %s, %s up", p.when(h.frames), h.most, h.unit.Count, h.unit.Wash.Grid.Name, p.Length(lighting.Height(h.unit.Wash.Grid)))
}

// sayHung reports lamps of a wash in frame; the message is the rule's own.
func (p *Pass) sayHung(h hungSeen) *diag.Diagnostic {
	c := p.cameraAt(h.camera)
	span := h.unit.Wash.Decl
	at := p.Tracks.Rate.Time(h.worst)
	track := p.Tracks.Camera(c)
	if aim := track.Aim(at); aim != nil && aim.Action != nil {
		span = aim.Action.Span
	}
	d := p.Report(span, "")
	p.found(d, c, h.unit.Name, h.frames, h.worst)
	d.Relate(h.unit.Wash.Decl, "%s hangs on %s", h.unit.Name, h.unit.Wash.Grid.Name)
	p.relateCamera(d, c, at)
	d.Note("the lamps are taken as spread evenly over the grid; the plan doesn't say where each hangs")
	return d
}
