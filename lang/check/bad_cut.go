package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/units"
)

// cutFor is how long a cut has to stand still for anyone to notice it (common
// practice, no source).
const cutFor units.Seconds = 2

// uprightPart is how much of their stature somebody has who stands.
const uprightPart = 0.97

var badCut = &Rule{
	Entry: diag.Entry{
		Code:     "bad-cut",
		Title:    "the frame cuts somebody at a joint",
		Severity: diag.Note,
		At:       []string{"beat sees"},
		Explain: `The lower edge of the frame cuts somebody who stands right at the knee (0.26 to
0.29 of their stature) or at the crotch (0.46 to 0.49) for longer than two
seconds. It looks as if the limb ended there; a hand's breadth above or below it
doesn't.

Counted are the people whom a line says the camera sees, while the camera is where
it is to be. This is advice, and common practice, no more.

To mend it: a little more or less distance, or a tilt.`,
		Bad: `take "At the knee"
  rate 24 fps
set "Hall"
  mark M1 (0, 4.2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 6 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "Above the knee"
  rate 24 fps
set "Hall"
  mark M1 (0, 3.6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Stand"
  mina stands at M1 in 6 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for _, l := range p.lookings() {
			for _, s := range p.persons(&l) {
				p.badCut(l, s)
			}
		}
	},
}

func (p *Pass) badCut(l looking, s subject) {
	who := s.person()
	stands := func(f units.Frame) bool {
		return p.Stage.Scene.Bodies[s.bodies[0]].At(f).Height >= uprightPart*float64(who.Height)
	}
	cut := func(f units.Frame) string {
		fr := p.framing(l.camera, s, f)
		if !fr.headIn() || !stands(f) {
			return ""
		}
		joint, _ := body.BadCut(fr.lower)
		return joint
	}
	frames := minus(l.frames, p.unsteady(l.track))
	for _, joint := range []string{"knee", "crotch"} {
		bad := framesWhere(frames, func(f units.Frame) bool { return cut(f) == joint && p.shows(l.camera, s, f) })
		if bad = p.longer(bad, cutFor); len(bad) == 0 {
			continue
		}
		worst := (bad[0].From + bad[0].To) / 2
		fr := p.framing(l.camera, s, worst)
		d := p.Report(l.aim.Action.Span, "%s's frame cuts %s at the %s %s, %s above the floor, %s of their height", l.track.Camera.Name, s.called(), joint, p.when(bad),
			p.away(fr.lower*float64(who.Height)), units.Number(fr.lower, 2))
		p.found(d, l.track.Camera, who.Name, bad, worst)
		if line := p.putThere(l.track.Camera, p.Tracks.Rate.Time(worst)); line != nil {
			d.Relate(line.Span, "%s is there: %s", l.track.Camera.Name, clock.Describe(line))
		}
		// A tenth of the frame's height up or down is clear of any joint's band.
		d.Note("%s nearer or farther is clear of it", p.away(math.Max(0.1, 0.08*fr.depth)))
	}
}
