package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// moment is how long a framing may stray before it counts: one does not see it
// as a shot of its own (common practice, no source).
const moment units.Seconds = 0.5

var tooTight = &Rule{
	Entry: diag.Entry{
		Code:     "too-tight",
		Title:    "somebody is framed tighter than the look allows",
		Severity: diag.Error,
		At:       these(beingThere, "beat sees", "look never"),
		Explain: `The look says "never tighter than waist", or another size, and a camera shows
somebody tighter than that for longer than half a second.

Every performer whose head is in frame counts, the one the camera is told to see
and one who only comes by; of someone who is mostly hidden nothing is counted.

The size follows from the height of frame where the person is, along the optical
axis: height of the picture on the sensor times distance over focal length. It is
the size whose own height of frame is nearest, in proportion, and 5 % past the
border to the next size is still taken for the size: an operator's eye is no
ruler. "longhand kit" lists the sizes and where each cuts the body.

To mend it: keep the camera farther away ("leads mina by 2.6 m"), take a wider
lens, move the mark of the one who comes too near, or change the look.`,
		Bad: `take "Too near"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (8, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig stabilised gimbal
people
  performer mina
  crew ida
look
  never tighter than waist
beat "Along"
  mina walks from M1 to M2 at 0.7 m/s
  A on stabilised with ida
  A takes w35 T4
  A follows mina by 1.2 m
  A sees mina
`,
		Good: `take "Far enough"
  rate 24 fps
set "Hall"
  mark M1 (0, 0)
  mark M2 (8, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig stabilised gimbal
people
  performer mina
  crew ida
look
  never tighter than waist
beat "Along"
  mina walks from M1 to M2 at 0.7 m/s
  A on stabilised with ida
  A takes w35 T4
  A follows mina by 2 m
  A sees mina
`,
	},
	Needs: Seen,
	Watches: func(p *Pass, _ *plan.Camera, thing plan.Thing) bool {
		who := personOf(thing)
		return who != nil && !who.Crew && p.Plan.Look.Tightest != nil
	},
	Run: func(p *Pass) {
		if p.Plan.Look.Tightest == nil {
			return
		}
		limit, err := body.ParseSize(p.Plan.Look.Tightest.Size)
		if err != nil {
			return
		}
		for camera := range p.Stage.Cameras {
			for _, who := range p.performers() {
				p.tooTight(camera, p.directly(who), limit)
				for _, m := range p.Plan.Set.Mirrors {
					s := p.directly(who)
					s.glass = m
					p.tooTight(camera, s, limit)
				}
			}
		}
	},
}

func (p *Pass) tooTight(camera int, s subject, limit body.Size) {
	who := s.person()
	past := func(f units.Frame) (framed, float64) {
		fr := p.framing(camera, s, f)
		if !fr.headIn() {
			return fr, 0
		}
		return fr, -limit.Fit(units.Metres(fr.high), who.Height)
	}
	frames := framesWhere(p.rolling(camera), func(f units.Frame) bool {
		_, over := past(f)
		return over > 0 && p.shows(camera, s, f)
	})
	if frames = p.longer(frames, moment); len(frames) == 0 {
		return
	}
	p.tell([]part{{who, s.bodies, frames}}, telling{rule: p.rule, camera: p.cameraAt(camera), say: func(parts []part) {
		p.sayTooTight(camera, s, parts[0], limit, past)
	}})
}

func (p *Pass) sayTooTight(camera int, s subject, c part, limit body.Size, past func(units.Frame) (framed, float64)) {
	who := s.person()
	worst, over := worstOf(c.frames, func(f units.Frame) float64 { _, over := past(f); return over })
	fr, _ := past(worst)
	at := p.Tracks.Rate.Time(worst)
	cam := p.cameraAt(camera)
	track := p.Tracks.Camera(cam)
	span := cam.Decl
	line := p.putThere(cam, at)
	aim := track.Aim(at)
	switch {
	case line != nil:
		span = line.Span
	case aim != nil && aim.Action != nil:
		span = aim.Action.Span
	}
	least := fr.high * math.Exp2(over)
	d := p.Report(span, "%s frames %s at %s size %s, and the look is never tighter than %s: %s, and %s takes %s",
		cam.Name, s.called(), body.SizeOf(units.Metres(fr.high), who.Height), p.when(c.frames), limit, p.frameHigh(s, fr), limit, p.away(least))
	p.found(d, cam, who.Name, c.frames, worst)
	d.Relate(p.Plan.Look.Tightest.Span, "the look: never tighter than %s", limit)
	if aim != nil && aim.Action != nil && aim.Action.Span != span {
		d.Relate(aim.Action.Span, "%s looks there: %s", cam.Name, clock.Describe(aim.Action))
	}
	if a := p.putThere(who, at); a != nil {
		d.Relate(a.Span, "%s is there: %s", who.Name, clock.Describe(a))
	}
	needs := fr.depth * math.Exp2(over)
	d.Note("with this lens it takes %s from the lens to the face, %s more than there are", p.away(needs), p.away(needs-fr.depth))
	p.offerDistance(d, line, s, needs-fr.depth)
}
