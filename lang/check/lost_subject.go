package check

import (
	"fmt"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/units"
)

// A subject is lost where no more than lostVisible of what is in frame of it
// shows, for longer than lostFor; for longer than lostLong it is an error
// (common practice, no source).
const (
	lostVisible               = 0.1
	lostFor     units.Seconds = 0.5
	lostLong    units.Seconds = 1
)

var lostSubject = &Rule{
	Entry: diag.Entry{
		Code:     "lost-subject",
		Title:    "what a camera is to see is hidden or out of frame",
		Severity: diag.Error,
		At:       these(inTheWay, "beat sees", "set mirror"),
		Explain: `A line says whom a camera sees ("A sees mina, otto"), and for a while it does
not: something nearer covers them, or they are outside the frame.

Every frame from the end of the pan to them is looked at. Somebody counts as lost
when out of frame, or when more than 90 % of what is in frame of them is hidden.
For longer than half a second that is a warning, for longer than a second an
error; somebody who walks past in front does not count. Before a subject shows
for the first time, the camera is taken to wait for it: that is a note. One that
never shows while the line holds is an error.

Of somebody whom the camera sees in a mirror ("A sees mina in glass") the
reflection is looked at: what lies within the edges of the glass from where the
lens is, and is hidden neither before the glass nor beyond it.

To mend it: move the mark or the camera until the line between them is free, look
at the finding for what stands in it; raise the lens; cue who stands in the way
later; choose a wider lens when two are to be seen; for a reflection, hang the
mirror where the way from lens to glass to subject meets it; or end the line with
another "sees" when the subject is to be let go.`,
		Bad: `take "Behind the pillar"
  rate 24 fps
set "Hall"
  wall screen (2, 3) (5, 3) high 2.4 m
  mark M1 (0, 5)
  mark M2 (8, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w28 28 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (4, -3)
  A on legs with ida
  A takes w28 T4
  A sees mina
`,
		Good: `take "Before the screen"
  rate 24 fps
set "Hall"
  wall screen (2, 3) (5, 3) high 2.4 m
  mark M1 (0, 2)
  mark M2 (8, 2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w28 28 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  legs stands at (4, -3)
  A on legs with ida
  A takes w28 T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesSubjects,
	Run: func(p *Pass) {
		for camera := range p.Stage.Cameras {
			track := p.Tracks.Camera(p.cameraAt(camera))
			if track == nil {
				continue
			}
			for k := range track.Aims {
				p.lost(camera, track, k)
			}
		}
	},
}

// lost looks for the targets of one aim.
func (p *Pass) lost(camera int, track *motion.CameraTrack, k int) {
	aim := &track.Aims[k]
	end := p.Tracks.Length() + 1
	if k+1 < len(track.Aims) {
		end = track.Aims[k+1].Start
	}
	span := diag.Frames{From: p.Tracks.Rate.From(aim.Done), To: p.Tracks.Rate.From(end) - 1}
	frames := meet(p.rolling(camera), []diag.Frames{span})
	if len(frames) == 0 || aim.See == nil {
		return
	}
	for _, target := range aim.See.Targets {
		s, ok := p.subject(target)
		if !ok {
			continue
		}
		gone := p.gone(camera, s, frames)
		before, rest := waiting(gone, frames)
		if len(before) > 0 && len(rest) > 0 || len(before) > 0 && count(before) < count(frames) {
			p.sayWaiting(camera, aim, s, before)
		} else {
			rest = gone
		}
		if len(rest) == 0 {
			continue
		}
		p.tell([]part{{s.thing, s.bodies, rest}}, telling{rule: p.rule, camera: track.Camera, say: func(parts []part) {
			p.sayLost(camera, track, aim, s, parts[0], count(gone) == count(frames))
		}})
	}
}

// gone is the frames in which next to nothing of the bodies shows.
func (p *Pass) gone(camera int, s subject, frames []diag.Frames) []diag.Frames {
	var out []diag.Frames
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			if m, in := p.seenAt(camera, s, f); !in || m.Visible <= lostVisible {
				if n := len(out); n > 0 && out[n-1].To == f-1 {
					out[n-1].To = f
				} else {
					out = append(out, diag.Frames{From: f, To: f})
				}
			}
		}
	}
	return out
}

// waiting parts what is gone before the first frame that shows it from the rest.
func waiting(gone, frames []diag.Frames) (before, rest []diag.Frames) {
	shown := minus(frames, gone)
	if len(shown) == 0 {
		return nil, gone
	}
	first := shown[0].From
	return meet(gone, []diag.Frames{{From: 0, To: first - 1}}), minus(gone, []diag.Frames{{From: 0, To: first - 1}})
}

func (p *Pass) sayWaiting(camera int, aim *motion.Aim, s subject, before []diag.Frames) {
	if p.Tracks.Rate.Duration(count(before)) <= lostFor {
		return
	}
	name := p.cameraAt(camera).Name
	d := p.Report(aim.Action.Span, "%s waits for %s: it shows first at %s (frame %s)", name, s.called(),
		p.Tracks.Rate.Time(bounds(before).To+1).Clock(), itoa(bounds(before).To+1))
	d.Severity = diag.Note
	d.Frames, d.Subject, d.Camera, d.Worst = before, nameOf(s.thing), name, before[0].From
	p.inBeat(d)
}

// inBeat puts a finding in the beat of its first frame.
func (p *Pass) inBeat(d *diag.Diagnostic) {
	if b := p.BeatAt(p.Tracks.Rate.Time(d.Frames[0].From)); b != nil {
		d.Beat = b.Title
	}
}

func (p *Pass) sayLost(camera int, track *motion.CameraTrack, aim *motion.Aim, s subject, c part, never bool) {
	long := p.Tracks.Rate.Duration(count(c.frames))
	if long <= lostFor {
		return
	}
	middle := longest(c.frames)
	worst := (middle.From + middle.To) / 2
	at := p.Tracks.Rate.Time(worst)
	name := c.thing.ID().Name
	why, by := p.whyLost(camera, track, s, worst)
	d := p.Report(aim.Action.Span, "%s loses %s %s, for %s: %s", track.Camera.Name, s.called(), p.when(c.frames), long, why)
	if never {
		d.Message = fmt.Sprintf("%s never sees %s, %s: %s", track.Camera.Name, s.called(), p.when(c.frames), why)
	}
	if long <= lostLong {
		d.Severity = diag.Warning
	}
	d.Frames, d.Subject, d.Camera, d.Worst = c.frames, name, track.Camera.Name, worst
	p.inBeat(d)
	if a := p.putThere(c.thing, at); a != nil {
		d.Relate(a.Span, "%s is there: %s", name, clock.Describe(a))
	}
	if by != nil && by != c.thing {
		if a := p.putThere(by, at); a != nil {
			d.Relate(a.Span, "%s stands in the way: %s", by.ID().Name, clock.Describe(a))
		} else if by.ID().Decl.Valid() {
			d.Relate(by.ID().Decl, "%s stands in the way", by.ID().Name)
		}
	}
	if a := p.putThere(track.Camera, at); a != nil {
		d.Relate(a.Span, "%s is there: %s", track.Camera.Name, clock.Describe(a))
	}
	p.relateGlass(d, s)
	p.noteEdit(d, track.Camera)
	d.Note("somebody counts as lost when out of frame or more than %s hidden, for longer than %s", units.Percent(100*(1-lostVisible)), lostFor)
}
