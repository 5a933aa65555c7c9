package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
)

var modernInShot = &Rule{
	Entry: diag.Entry{
		Code:     "modern-in-shot",
		Title:    "something out of its period is in frame",
		Severity: diag.Error,
		At:       []string{"beat sees", "set place", "kit lamp", "kit wash", "look never"},
		Explain: `The look says "never modern in frame", and a lamp that the kit calls "modern" is in
a camera's frame. It counts although the lamp "may be seen": seen it may be, but
not in this period. A modern lamp that must not be seen at all is told of as gear
in shot.

Every frame is looked at, as for everything else that must not be in frame. Of
the lamps that hang on a grid, the places are those of an even spread.

To mend it: an old lamp, or an old lampshade round the new one (then don't call it
modern); another place for it; another angle; or send it to visual effects with
"paint out".`,
		Bad: `take "1931"
  rate 24 fps
set "Hall"
  mark M1 (0, 5)
  mark L1 (1.5, 6)
  mark L2 (1.5, 9)
  place strip at L1 up 1.6 m aims L2
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  lamp strip 40 W modern seen
people
  performer mina
  crew ida
look
  never modern in frame
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
		Good: `take "1931"
  rate 24 fps
set "Hall"
  mark M1 (0, 5)
  mark L1 (5, 6)
  mark L2 (5, 9)
  place strip at L1 up 1.6 m aims L2
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  lamp strip 40 W modern seen
people
  performer mina
  crew ida
look
  never modern in frame
beat "Stand"
  mina stands at M1 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
`,
	},
	Needs: Seen,
	Watches: func(p *Pass, _ *plan.Camera, thing plan.Thing) bool {
		lamp, ok := thing.(*plan.Lamp)
		return ok && lamp.Modern && p.Plan.Look.NeverModern != nil
	},
	Run: func(p *Pass) {
		if p.Plan.Look.NeverModern == nil {
			return
		}
		for _, g := range p.views().glimpses {
			lamp, ok := g.thing.(*plan.Lamp)
			if !ok || !lamp.Modern || !lamp.Seen {
				continue
			}
			camera, mirror := g.camera, g.mirror
			p.tell([]part{g.part}, telling{rule: p.rule, camera: p.cameraAt(camera), say: func(parts []part) {
				p.sayModern(camera, mirror, parts)
			}})
		}
		for _, h := range p.hungInFrame(func(l *plan.Lamp) bool { return l.Modern }) {
			d := p.sayHung(h)
			d.Message = "the lamps of " + h.unit.Name + ", which are modern, hang in " + p.cameraAt(h.camera).Name + "'s frame " + p.hungWhere(h)
			d.Relate(*p.Plan.Look.NeverModern, "the look: never modern in frame")
		}
	},
}

func (p *Pass) sayModern(camera, mirror int, parts []part) {
	cam := p.cameraAt(camera)
	worst := p.peak(camera, mirror, parts)
	at := p.Tracks.Rate.Time(worst.Frame)
	thing := parts[0].thing
	d := p.Report(p.placed(thing, at), "")
	box, distance := p.show(d, camera, mirror, parts, worst)
	in := ""
	if mirror != sight.NoMirror {
		in = " in the mirror " + p.Stage.Scene.Mirrors[mirror].Name
	}
	d.Message = thing.ID().Name + ", which is modern, is in " + cam.Name + "'s frame" + in + " " + p.when(d.Frames) + ": " + p.seenAs(camera, parts, worst, box, distance)
	d.Relate(*p.Plan.Look.NeverModern, "the look: never modern in frame")
	p.relateCamera(d, cam, at)
	behind := ""
	if mirror == sight.NoMirror {
		behind = backing(p.behind(camera, parts, worst.Frame))
	}
	p.offerPaintOut(d, thing, cam, where(box)+", "+share(worst.Share)+" of the frame", behind)
}
