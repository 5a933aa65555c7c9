package check

import (
	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// headCutFor is how long a head may be cut by the way (common practice, no
// source).
const headCutFor units.Seconds = 1

var headCut = &Rule{
	Entry: diag.Entry{
		Code:     "head-cut",
		Title:    "the upper edge of the frame cuts a head",
		Severity: diag.Note,
		At:       []string{"beat sees", "set mirror"},
		Explain: `Somebody whom a line says the camera sees is framed wider than a face, and the upper
edge of the frame cuts into the head for longer than a second. By the way the
head may wander 3 % of the frame's height out.

The edge of a mirror cuts in the same way: of somebody who is seen in one, the head
has to lie within the glass from where the lens is.

It happens to the taller of two at different distances, to one who rises, and to
one on a platform. A face or eyes are framed with the hair cut, and don't count.

To mend it: see both only from farther away, tilt up, raise the lens, or bring the
two to the same distance. This is advice, and common practice.`,
		Bad: `take "Cut off"
  rate 24 fps
set "Hall"
  mark M1 (-0.6, 1.5)
  mark M2 (1.4, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.9 m
  performer otto height 1.6 m
  crew ida
beat "Talk"
  mina stands at M1 in 5 s
  otto stands at M2 in 5 s
  legs stands at (0, 0)
  A on legs with ida up 0.8 m
  A takes w24 T11
  A sees mina, otto
`,
		Good: `take "Not cut off"
  rate 24 fps
set "Hall"
  mark M1 (-0.8, 4)
  mark M2 (1.4, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  rig legs sticks
people
  performer mina height 1.9 m
  performer otto height 1.6 m
  crew ida
beat "Talk"
  mina stands at M1 in 5 s
  otto stands at M2 in 5 s
  legs stands at (0, 0)
  A on legs with ida up 0.8 m
  A takes w24 T11
  A sees mina, otto
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for _, l := range p.lookings() {
			for _, s := range p.persons(&l) {
				p.headCut(l, s)
				if s.glass != nil {
					p.headPast(l, s)
				}
			}
		}
	},
}

func (p *Pass) headCut(l looking, s subject) {
	who := s.person()
	over := func(f units.Frame) float64 {
		fr := p.framing(l.camera, s, f)
		if fr.behind || fr.x < 0 || fr.x > 1 || !body.Face.TighterThan(body.SizeOf(units.Metres(fr.high), who.Height)) {
			return 0
		}
		return fr.top - 1
	}
	bad := framesWhere(minus(l.frames, p.unsteady(l.track)), func(f units.Frame) bool {
		return over(f) > body.HeadroomTolerance && p.shows(l.camera, s, f)
	})
	if bad = p.longer(bad, headCutFor); len(bad) == 0 {
		return
	}
	worst, most := worstOf(bad, over)
	fr := p.framing(l.camera, s, worst)
	d := p.Report(l.aim.Action.Span, "%s's frame cuts %s's head %s: its top is %s of the frame's height above the frame, %s from the lens",
		l.track.Camera.Name, s.called(), p.when(bad), units.Percent(100*most), p.away(fr.depth))
	p.found(d, l.track.Camera, who.Name, bad, worst)
	at := p.Tracks.Rate.Time(worst)
	for _, thing := range []plan.Thing{who, l.track.Camera} {
		if line := p.putThere(thing, at); line != nil {
			d.Relate(line.Span, "%s is there: %s", nameOf(thing), clock.Describe(line))
		}
	}
	d.Note("framed so, %s of free frame above the head is usual", units.Percent(100*body.SizeOf(units.Metres(fr.high), who.Height).Cut().Headroom))
}

// headPast reports a head that the edge of the mirror cuts, as the edge of the frame
// does.
func (p *Pass) headPast(l looking, s subject) {
	past := func(f units.Frame) float64 {
		by, _ := p.headPastGlass(l.camera, s, f)
		return by
	}
	bad := framesWhere(minus(l.frames, p.unsteady(l.track)), func(f units.Frame) bool {
		return past(f) > 0 && p.shows(l.camera, s, f)
	})
	if bad = p.longer(bad, headCutFor); len(bad) == 0 {
		return
	}
	worst, _ := worstOf(bad, past)
	by, side := p.headPastGlass(l.camera, s, worst)
	name := nameOf(s.thing)
	d := p.Report(l.aim.Action.Span, "the edge of %s cuts %s's head in %s's frame %s: from the lens, the head is %s %s the glass",
		s.glass.Name, name, l.track.Camera.Name, p.when(bad), p.away(by), side)
	p.found(d, l.track.Camera, name, bad, worst)
	at := p.Tracks.Rate.Time(worst)
	for _, thing := range []plan.Thing{s.thing, l.track.Camera} {
		if line := p.putThere(thing, at); line != nil {
			d.Relate(line.Span, "%s is there: %s", nameOf(thing), clock.Describe(line))
		}
	}
	p.relateGlass(d, s)
	d.Note("a glass that reaches so much farther shows the head, and so does one nearer to the lens or to %s", name)
}
