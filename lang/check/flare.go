package check

import (
	"fmt"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/source"
	"longhand/lang/units"
)

// What counts as a bright area in or near the frame (common practice, no source).
const (
	flareOff                = 15.0 // degrees off the frame's edge
	flareOpen               = 0.2  // of it that the lens can see, where it is out of frame
	flareShare              = 0.05 // per cent of the frame, where it is in it
	flareOver               = 4.0  // stops brighter than middle grey
	flareNits    units.Nits = 500  // where the plan gives no sensitivity or no stop
	flareTurned             = 60.0 // degrees off its axis within which a lamp shines at the lens
	flareGrowing            = 1.5  // times its share at first
)

var flare = &Rule{
	Entry: diag.Entry{
		Code:     "flare",
		Title:    "a bright opening or a lamp shines into the lens",
		Severity: diag.Warning,
		At:       []string{"set glow", "set place"},
		Explain: `Something bright is in frame, or near it, and faces the lens: a "glow" such as a
window or a bright doorway, or a lamp that stands in the set. Its light spreads
between the glasses of the lens: blacks go grey, and spots or a veil wander
through the picture as the camera moves.

A glow counts when it is 4 stops or more above middle grey as the lens is set
(brightness of middle grey = 12.5 · N²/(S·t), ISO 2720: N the stop, S the
sensitivity, t the time the shutter is open), or above 500 cd/m2 where the plan
gives no sensitivity or stop. A lamp counts when the lens is within 60 degrees of
where it aims; one without an aim shines all round. Each counts from a twentieth
of a per cent of the frame on, or out of frame within 15 degrees of its edge when
the lens can see a fifth of it. These limits are common practice. The finding
says how the bright part grows over the move.

In frame, or near it on a zoom, it is a warning; near a prime's frame, or a lamp
in frame without an aim, it is a note. A zoom has three or four times the glass
of a prime and is worse in every case.

To mend it: flag the lamp or the opening from outside the frame, add a shade to
the lens on that side, turn the lamp, hang cloth or gel on the window to bring it
down, take a prime, or change the angle. Where it is wanted, say so: "allow flare
in A because ...".`,
		Bad: `take "Into the window"
  rate 24 fps
  sensitivity 800
set "Hall"
  wall north (0, 8) (10, 8) high 4 m
  glow dusk on north 4 m to 7 m high 1 m to 3 m 3000 cd/m2
  mark M1 (5, 4)
  mark M2 (5, 2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "At the window"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (5, -3)
  A on legs with ida
  A takes w35 T2.8
  A sees mina
`,
		Good: `take "Gel on the window"
  rate 24 fps
  sensitivity 800
set "Hall"
  wall north (0, 8) (10, 8) high 4 m
  glow dusk on north 4 m to 7 m high 1 m to 3 m 20 cd/m2
  mark M1 (5, 4)
  mark M2 (5, 2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "At the window"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (5, -3)
  A on legs with ida
  A takes w35 T2.8
  A sees mina
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for camera := range p.Stage.Cameras {
			p.glows(camera)
			p.lamps(camera)
		}
	},
}

// shine is something bright before one camera, frame by frame.
type shine struct {
	camera int
	thing  plan.Thing
	span   source.Span // of what puts it there
	in     []diag.Frames
	near   []diag.Frames
	share  map[units.Frame]float64 // per cent of the frame
	off    map[units.Frame]float64 // degrees from the frame's edge
	box    func(f units.Frame) (sight.Box, bool)
	bright func(t units.Seconds) string
	soft   bool // a lamp that shines all round: no more than a note in frame
}

func (s *shine) add(f units.Frame, share, off float64) {
	one := diag.Frames{From: f, To: f}
	if off > 0 {
		s.near = append(s.near, one)
	} else {
		s.in = append(s.in, one)
	}
	s.share[f], s.off[f] = share, off
}

func (p *Pass) tellShine(s *shine) {
	all := tidy(append(append([]diag.Frames(nil), s.in...), s.near...))
	if len(all) == 0 {
		return
	}
	p.tell([]part{{thing: s.thing, frames: all}}, telling{rule: p.rule, camera: p.cameraAt(s.camera), say: func(parts []part) {
		p.sayShine(s, parts[0].frames)
	}})
}

func (p *Pass) sayShine(s *shine, frames []diag.Frames) {
	name, camera := s.thing.ID().Name, p.cameraAt(s.camera)
	in := meet(tidy(s.in), frames)
	worst := frames[0].From
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			if s.share[f] > s.share[worst] || s.share[worst] == 0 && s.off[f] < s.off[worst] {
				worst = f
			}
		}
	}
	d := p.Report(s.span, "")
	d.Frames, d.Subject, d.Camera, d.Worst = frames, name, camera.Name, worst
	d.Share = units.Percent(s.share[worst])
	p.inBeat(d)
	switch {
	case len(in) == 0:
		d.Message = fmt.Sprintf("%s shines into %s's lens from just out of frame %s, down to %s off its edge", name, camera.Name, p.when(frames), units.Degrees(s.off[worst]))
	default:
		d.Message = fmt.Sprintf("%s shines into %s's lens %s, up to %s of the frame", name, camera.Name, p.when(frames), share(s.share[worst]))
		if first := s.share[in[0].From]; worst > in[0].From && s.share[worst] > flareGrowing*first {
			d.Message += fmt.Sprintf(", growing from %s", share(first))
		}
	}
	if s.box != nil && len(in) > 0 {
		if b, ok := s.box(worst); ok {
			d.Box = [4]float64{b.Left, b.Bottom, b.Right, b.Top}
			d.Message += ", " + where(b)
		}
	}
	at := p.Tracks.Rate.Time(worst)
	zoom := false
	if track := p.Tracks.Camera(camera); track != nil {
		lens := track.Lens(at)
		zoom = lens != nil && lens.Zoom()
	}
	if zoom {
		d.Message += ", on a zoom"
		d.Note("a zoom has several times the glass of a prime: it flares sooner and more")
	}
	if !zoom && (len(in) == 0 || s.soft) {
		d.Severity = diag.Note
	}
	d.Note("%s", s.bright(at))
	if len(in) > 0 && s.soft {
		d.Note("it has no aim, so it is taken to shine all round")
	}
	p.relateCamera(d, camera, at)
}
