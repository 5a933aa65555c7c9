package check

import (
	"fmt"
	"math"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// What makes a pan strobe (common practice, no source): it goes on for longer
// than strobeFor, and holds nobody, who would have to go by at less than heldPart
// of the pan's own speed. A pan from one subject to the next is a note, from
// strobeHard seconds a frame's width on and for longer than strobeAcross; the eye
// goes with it.
const (
	strobeFor    units.Seconds = 0.25
	strobeHard   units.Seconds = 3
	strobeAcross units.Seconds = 0.5
	heldPart                   = 0.5
)

var strobePan = &Rule{
	Entry: diag.Entry{
		Code:     "strobe-pan",
		Title:    "a pan so fast that the picture strobes",
		Severity: diag.Warning,
		At:       []string{"beat sees", "beat pans", "look pan"},
		Explain: `A pan takes the picture through the frame faster than the eye can join its steps:
edges judder, or seem to run backwards.

The frame's width is to take 7 seconds or more to go by, at 24 frames a second and
a half-open shutter; at more frames a second, less in proportion (the panning
tables of handbooks). "pan at least 9 s a frame" in the look sets another limit,
and breaking that is an error. A pan that holds somebody who moves doesn't count:
one looks at them, and the background may streak. Nor does a whip, through the
frame in less than a third of a second. A pan from one subject to another is a
note, and only when the frame's width goes by in 3 seconds or less for longer than
half a second; if the look has a limit, it is a warning by that.

A narrower shutter strobes sooner, a wider one later.

To mend it: pan slower ("in 12 s"), give the pan somebody to go with, take a
wider lens, or whip.`,
		Bad: `take "Along the wall"
  rate 24 fps
set "Hall"
  mark M1 (20, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Look"
  mina stands at M1 facing (0, 0) in 12 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A pans 60 deg left in 6 s
`,
		Good: `take "Along the wall"
  rate 24 fps
set "Hall"
  mark M1 (20, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "Look"
  mina stands at M1 facing (0, 0) in 24 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T4
  A pans 60 deg left in 22 s
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for camera, c := range p.Stage.Cameras {
			if track := p.Tracks.Camera(c); track != nil {
				p.strobes(camera, track)
			}
		}
	},
}

// turning is a pan from one frame to the next.
type turning struct {
	speed, limit units.DegreesPerSecond
	across       units.Degrees // the angle of view
	cause        *plan.Action
	swing        bool // told to pan by so much; otherwise it goes from one subject to another
}

func (p *Pass) strobes(camera int, track *motion.CameraTrack) {
	cam := &p.Stage.Scene.Cameras[camera]
	rule := p.Plan.Look.PanSeconds
	type key struct {
		cause *plan.Action
		swing bool
	}
	by := map[key][]diag.Frames{}
	var order []key
	swings := p.swings(track)
	at := func(f units.Frame) (turning, bool) {
		if f == 0 {
			return turning{}, false
		}
		was, now := cam.At(f-1), cam.At(f)
		turn := math.Abs(geom.AngleDiff(was.Pan, now.Pan)) * 180 / math.Pi * p.Tracks.Rate.PerSecond()
		if turn < 1 || now.Focal <= 0 {
			return turning{}, false
		}
		out := turning{speed: units.DegreesPerSecond(turn), across: optics.AngleOfView(units.Millimetres(cam.Width), units.Millimetres(now.Focal))}
		mid := p.Tracks.Rate.Time(f) - p.Tracks.Rate.Duration(1)/2
		out.cause, out.swing = p.turnsBy(track, swings, mid)
		seconds := optics.PanSeconds
		switch {
		case rule != nil:
			seconds = units.Seconds(rule.Limit)
		case !out.swing:
			seconds = strobeHard
		}
		out.limit = optics.PanLimit(out.across, seconds, p.Tracks.Rate)
		whip := out.speed >= units.DegreesPerSecond(float64(out.across)/float64(optics.WhipTime))
		return out, out.cause != nil && out.speed > out.limit*1.001 && !whip && !p.goesAlong(camera, track, f)
	}
	for _, r := range p.rolling(camera) {
		for f := r.From + 1; f <= r.To; f++ {
			t, ok := at(f)
			if !ok {
				continue
			}
			k := key{t.cause, t.swing}
			if _, known := by[k]; !known {
				order = append(order, k)
			}
			by[k] = append(by[k], diag.Frames{From: f, To: f})
		}
	}
	for _, k := range order {
		long := strobeFor
		if !k.swing {
			long = strobeAcross
		}
		frames := p.longer(tidy(by[k]), long)
		if len(frames) == 0 {
			continue
		}
		worst, _ := worstOf(frames, func(f units.Frame) float64 { t, _ := at(f); return float64(t.speed / max(t.limit, 1e-9)) })
		t, _ := at(worst)
		p.sayStrobe(camera, track, t, frames, worst)
	}
}

// swings are the lines that tell a camera to pan by so much.
func (p *Pass) swings(track *motion.CameraTrack) []*plan.Action {
	var out []*plan.Action
	for _, a := range p.Plan.Actions {
		if s, ok := a.Deed.(*plan.Swing); ok && a.Subject == plan.Thing(track.Camera) && (s.Turn == plan.Left || s.Turn == plan.Right) {
			out = append(out, a)
		}
	}
	return out
}

// turnsBy is the line that turns a lens at a time, of its swings or else of what
// it is to see, and whether it is told to pan by so much; nil where it goes with
// what it sees.
func (p *Pass) turnsBy(track *motion.CameraTrack, swings []*plan.Action, at units.Seconds) (*plan.Action, bool) {
	for _, a := range swings {
		if i := p.Clock.Of(a); i.Start <= at && at <= i.End {
			return a, true
		}
	}
	for k := range track.Aims {
		if aim := &track.Aims[k]; k > 0 && aim.Start <= at && at <= aim.Done {
			return aim.Action, false
		}
	}
	return nil, false
}

// goesAlong says whether somebody, or something that the camera sees, stays nearly in
// its place in the frame while the picture behind goes by.
func (p *Pass) goesAlong(camera int, track *motion.CameraTrack, f units.Frame) bool {
	aim := track.Aim(p.Tracks.Rate.Time(f))
	if aim == nil || aim.See == nil {
		return false
	}
	was, now := p.eye(camera, f-1), p.eye(camera, f)
	step := math.Abs(geom.AngleDiff(was.Pan, now.Pan)) / (2 * math.Atan(now.wide/2)) // of the frame's width
	for _, t := range aim.See.Targets {
		s, ok := p.subject(t)
		if !ok {
			continue
		}
		for _, b := range s.bodies {
			s.bodies = []int{b}
			before, in0 := p.poseOf(camera, s, f-1)
			after, in1 := p.poseOf(camera, s, f)
			if !in0 || !in1 {
				continue
			}
			x0, ok0 := was.across(before)
			x1, ok1 := now.across(after)
			if ok0 && ok1 && x1 > 0 && x1 < 1 && math.Abs(x1-x0) < heldPart*step {
				return true
			}
		}
	}
	return false
}

func (p *Pass) sayStrobe(camera int, track *motion.CameraTrack, t turning, frames []diag.Frames, worst units.Frame) {
	rule := p.Plan.Look.PanSeconds
	seconds := func(v units.DegreesPerSecond) units.Seconds { return units.Seconds(float64(t.across) / float64(v)) }
	source := "the rule of 7 seconds a frame's width at 24 fps"
	if rule != nil {
		source = "the look"
	} else if !t.swing {
		source = "3 seconds a frame's width at 24 fps, common practice"
	}
	d := p.Report(t.cause.Span, "%s pans at up to %s %s: the frame's width goes by in %s, and %s is the least, by %s",
		track.Camera.Name, t.speed, p.when(frames), seconds(t.speed), seconds(t.limit), source)
	switch {
	case t.swing && rule != nil:
		d.Severity = diag.Error
	case !t.swing && rule == nil:
		d.Severity = diag.Note
	}
	p.found(d, track.Camera, track.Camera.Name, frames, worst)
	if rule != nil {
		d.Relate(rule.Span, "the look: pan at least %s a frame", units.Seconds(rule.Limit))
	}
	step := optics.FrameStep(t.speed, t.across, p.Tracks.Rate)
	shutter := p.Plan.Take.Shutter
	d.Note("the picture moves by %s of its width from one frame to the next, and blurs over %s of that (shutter %s, %s fps); the lens sees %s across",
		units.Percent(100*step), units.Percent(100*float64(shutter)/360), shutter, p.Tracks.Rate, t.across)
	if shutter < optics.HalfOpen {
		d.Note("the limit is for a half-open shutter: one of %s strobes sooner", shutter)
	}
	if !t.swing {
		d.Note("in: %s; a line that moves somebody, with the camera going along, carries the eye over", clock.Describe(t.cause))
		return
	}
	i := p.Clock.Of(t.cause)
	needs := float64(i.Length()) * float64(t.speed/t.limit)
	d.Note("it takes %s so as not to strobe", units.Seconds(needs))
	if t.cause.Timing.In != nil {
		d.Fix(fmt.Sprintf("pan in %s", atLeast(needs)), replaced(t.cause.Timing.InSpan, atLeast(needs)))
	} else if t.cause.Timing.Until == nil && t.cause.Timing.At == nil {
		end := t.cause.Span
		end.Start = end.End
		d.Fix(fmt.Sprintf("pan in %s", atLeast(needs)), replaced(end, " in "+atLeast(needs)))
	}
}
