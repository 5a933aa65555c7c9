package check

import (
	"fmt"
	"sort"

	"longhand/lang/diag"
	"longhand/lang/plan"
)

var mirrorShows = &Rule{
	Entry: diag.Entry{
		Code:     codeMirror,
		Title:    "a mirror shows what must not be seen",
		Severity: diag.Error,
		At:       these(these(beingThere, bodies...), "set mirror"),
		Explain: `A camera has a mirror in frame, and in it, for one frame or more, equipment, the
crew, another camera or itself.

Nobody thinks of it on the floor plan, and on the day it costs an hour: a mirror
throws the look back at the angle at which it comes in, so it shows what is as
far in front of it as it seems to be behind.

Every frame is looked at: everything there is, turned over across the mirror and
seen through it as through a window. The camera's own operator and rig count,
since they are what a mirror gives away. What stands in front of the mirror hides
it; what stands in front of what it shows hides that. A mirror shows on both
faces of its wall.

To mend it: turn or hang the mirror elsewhere (each degree turns what it shows by
two), let somebody stand before it, keep the lens off it, hang gear lower than
the mirror's edge shows, or send it to visual effects with "paint out", which
covers the mirrored picture too.`,
		Bad: `take "In the glass"
  rate 24 fps
set "Parlour"
  wall north (0, 6) (8, 6) high 3 m
  mirror glass on north 3 m to 5 m high 0.6 m to 2.4 m
  mark M1 (3, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w28 28 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "At the glass"
  mina stands at M1 for 3 s
  legs stands at (4, 0)
  A on legs with ida
  A takes w28 T4
  A sees mina
`,
		Good: `take "Off the glass"
  rate 24 fps
set "Parlour"
  wall north (0, 6) (8, 6) high 3 m
  mirror glass on north 3 m to 5 m high 0.6 m to 2.4 m
  mark M1 (3, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w28 28 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "At the glass"
  mina stands at M1 for 3 s
  legs stands at (7.4, 1)
  A on legs with ida
  A takes w28 T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesForbidden,
	Run: func(p *Pass) {
		for camera := range p.Stage.Cameras {
			for mirror := range p.Stage.Scene.Mirrors {
				p.mirrored(camera, mirror)
			}
		}
	},
}

// mirrored reports what one mirror shows one camera: each camera with whoever
// has it as one, everything else alone.
func (p *Pass) mirrored(camera, mirror int) {
	groups := map[*plan.Camera][]part{}
	var alone [][]part
	for _, g := range p.views().glimpses {
		if g.camera != camera || g.mirror != mirror || !forbidden(g.thing) {
			continue
		}
		left := g.frames
		for _, h := range p.holders() {
			if h.thing != g.thing {
				continue
			}
			if with := meet(left, h.frames); len(with) > 0 {
				groups[h.camera] = append(groups[h.camera], part{g.thing, g.bodies, with})
				left = minus(left, with)
			}
		}
		if len(left) > 0 {
			alone = append(alone, []part{{g.thing, g.bodies, left}})
		}
	}
	for _, c := range p.Plan.Kit.Cameras {
		if len(groups[c]) > 0 {
			alone = append(alone, groups[c])
		}
	}
	for _, parts := range alone {
		p.tell(parts, telling{rule: p.rule, camera: p.cameraAt(camera), say: func(parts []part) {
			p.sayMirrored(camera, mirror, parts)
		}})
	}
}

func (p *Pass) sayMirrored(camera, mirror int, parts []part) {
	seer := p.cameraAt(camera)
	glass := p.Stage.Scene.Mirrors[mirror].Name
	worst := p.peak(camera, mirror, parts)
	at := p.Tracks.Rate.Time(worst.Frame)
	lead := exposure{parts: parts}.lead()
	d := p.Report(p.placed(lead.thing, p.Tracks.Rate.Time(framesOf(parts)[0].From)), "")
	box, _ := p.show(d, camera, mirror, parts, worst)
	called := names(parts)
	sort.SliceStable(called, func(i, j int) bool { return called[i] == seer.Name && called[j] != seer.Name })
	verb := "shows"
	if len(called) > 1 {
		verb = "show"
	}
	d.Message = fmt.Sprintf("%s %s in the mirror %s, in %s's frame %s: up to %s of the frame, %s", things(called), verb, glass, seer.Name,
		p.when(d.Frames), share(worst.Share), where(box))
	for _, m := range p.Plan.Set.Mirrors {
		if m.Name == glass {
			d.Relate(m.Decl, "the mirror %s", glass)
		}
	}
	p.relateCamera(d, seer, at)
	d.Note("a mirror turned by a degree shows what is two degrees further round")
	name := lead.thing
	for _, c := range parts {
		if _, is := c.thing.(*plan.Camera); is && len(called) > 1 {
			name = c.thing
		}
	}
	if name != plan.Thing(seer) {
		p.offerPaintOut(d, name, seer, "in the mirror "+glass+", "+where(box)+", "+share(worst.Share)+" of the frame", "")
	}
}
