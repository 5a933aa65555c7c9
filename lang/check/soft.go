package check

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// What softness counts: longer than softFor; and of those whom the lens doesn't
// follow, a blur of more than softTwice circles for longer than softOtherFor, for
// a little of it passes (common practice, no source).
const (
	softFor      units.Seconds = 1
	softOtherFor units.Seconds = 2
	softTwice                  = 2.0
)

// faceAhead is how far ahead of the middle of a body, towards the lens, the face
// is that has to be sharp, as motion focuses on it.
const faceAhead = 0.1

var soft = &Rule{
	Entry: diag.Entry{
		Code:     "soft",
		Title:    "somebody the camera sees is out of focus",
		Severity: diag.Warning,
		At:       []string{"beat sees"},
		Explain: `A line says whom a camera sees, and somebody of them is outside of the depth of
field for too long to pass: two seconds, or one for the first one named.

Focus follows the first one named, unless a line racks it to another. So it is
mostly the second of two who goes soft, when they are not at the same distance.
They count from twice the blur that is still taken for sharp; after "racks to"
only the one racked to counts, as the others are soft on purpose.

Depth of field is from s(H-f)/(H+s-2f) to s(H-f)/(H-s), with the hyperfocal
distance H = f²/(N·c)+f: f the focal length, N the stop, s the focus. The circle
that still counts as sharp, c, is the diagonal of the frame on the sensor, after
squeeze, / 1500. A T-stop is taken for an f-number. Distances are along the optical axis.

To mend it: stop down and bring more light, bring the two to the same distance,
take a wider lens or more distance, rack from one to the other, or see only the
one who matters.`,
		Bad: `take "Two depths"
  rate 24 fps
set "Hall"
  mark M1 (-0.4, 2.5)
  mark M2 (0.8, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  performer otto
  crew ida
beat "Talk"
  mina stands at M1 in 5 s
  otto stands at M2 in 5 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T2
  A sees mina, otto
`,
		Good: `take "Two depths"
  rate 24 fps
set "Hall"
  mark M1 (-0.4, 2.5)
  mark M2 (0.8, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  performer otto
  crew ida
beat "Talk"
  mina stands at M1 in 5 s
  otto stands at M2 in 5 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T8
  A sees mina, otto
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for _, l := range p.lookings() {
			p.soft(l)
		}
	},
}

// lens is a camera's lens at a frame, as depth of field takes it; false where
// the stop or the lens isn't known.
func (p *Pass) lens(track *motion.CameraTrack, v sight.View, f units.Frame) (optics.Focus, bool) {
	stop := track.Stop(p.Tracks.Rate.Time(f))
	return optics.Focus{
		Focal: units.Millimetres(v.Focal), Stop: stop,
		Circle: track.Frame.Circle(),
	}, stop > 0 && v.Focal > 0 && track.Frame.Width > 0
}

// blurred is the blur of a person's face at a frame, in circles of confusion;
// false where nothing says.
func (p *Pass) blurred(l *looking, s subject, f units.Frame) (circles, depth float64, ok bool) {
	v := p.Stage.Scene.Cameras[l.camera].At(f)
	lens, ok := p.lens(l.track, v, f)
	fr := p.framing(l.camera, s, f)
	if !ok || !fr.headIn() || math.IsInf(v.Focus, 0) || v.Focus <= 0 {
		return 0, 0, false
	}
	depth = math.Max(fr.depth-faceAhead, leastDepth)
	return float64(lens.Blur(units.Metres(v.Focus), units.Metres(depth)) / lens.Circle), depth, true
}

func (p *Pass) soft(l looking) {
	for i, t := range l.aim.See.Targets {
		s, ok := p.subject(t)
		if !ok || s.person() == nil {
			continue
		}
		most, long := softTwice, softOtherFor
		if i == 0 {
			most, long = 1, softFor
		}
		racks := p.racksIn(&l)
		bad := framesWhere(l.frames, func(f units.Frame) bool {
			if holds(racks, f) {
				return false
			}
			circles, _, ok := p.blurred(&l, s, f)
			return ok && circles > most && p.shows(l.camera, s, f)
		})
		if bad = p.longer(bad, long); len(bad) == 0 {
			continue
		}
		p.saySoft(&l, s, i == 0, bad)
	}
}

// racksIn is the frames of an aim in which a line has racked the focus away from
// what it follows by itself.
func (p *Pass) racksIn(l *looking) []diag.Frames {
	for _, a := range p.Plan.Actions {
		if _, ok := a.Deed.(*plan.Rack); ok && a.Subject == plan.Thing(l.track.Camera) {
			if start := p.Clock.Of(a).Start; start >= l.aim.Start {
				return meet(l.frames, []diag.Frames{{From: p.Tracks.Rate.At(start), To: bounds(l.frames).To}})
			}
		}
	}
	return nil
}

func (p *Pass) saySoft(l *looking, s subject, first bool, bad []diag.Frames) {
	who := s.person()
	worst, circles := worstOf(bad, func(f units.Frame) float64 { c, _, _ := p.blurred(l, s, f); return c })
	_, depth, _ := p.blurred(l, s, worst)
	v := p.Stage.Scene.Cameras[l.camera].At(worst)
	lens, _ := p.lens(l.track, v, worst)
	near, far := lens.Limits(units.Metres(v.Focus))
	side, off := "behind", depth-float64(far)
	if depth < float64(near) {
		side, off = "in front of", float64(near)-depth
	}
	d := p.Report(l.aim.Action.Span, "%s is soft in %s's frame %s: the face is %s away, %s %s the depth of field, %s to %s",
		s.called(), l.track.Camera.Name, p.when(bad), p.away(depth), p.away(off), side, p.away(float64(near)), p.farText(far))
	p.found(d, l.track.Camera, who.Name, bad, worst)
	d.Note("focus is at %s, %s at T%s, circle %s (the frame's diagonal / %d); the blur is %s times that",
		p.away(v.Focus), lens.Focal, units.Number(float64(lens.Stop), 1), circleText(lens.Circle), optics.CircleParts, units.Number(circles, 1))
	if !first {
		d.Note("focus follows %s, the first one named", l.aim.See.Targets[0].Name())
	}
	p.offerStop(d, l, s, first, bad)
}

// offerStop offers the stop at which somebody is sharp enough over all of the
// frames.
func (p *Pass) offerStop(d *diag.Diagnostic, l *looking, s subject, first bool, bad []diag.Frames) {
	fit := l.track.Fit(p.Tracks.Rate.Time(bad[0].From))
	if fit == nil || fit.Action == nil || fit.Stop <= 0 {
		return
	}
	// The blur goes with the inverse of the stop.
	most := softTwice
	if first {
		most = 1
	}
	_, circles := worstOf(l.frames, func(f units.Frame) float64 { c, _, _ := p.blurred(l, s, f); return c })
	needs := optics.FullStopUp(fit.Stop * units.Stop(circles/most))
	p.offerTheStop(d, fit, needs)
}

// offerTheStop offers to stop a lens down, where it goes so far.
func (p *Pass) offerTheStop(d *diag.Diagnostic, fit *motion.Fit, needs units.Stop) {
	if c := fit.Lens.Closest; c > 0 && needs > c || needs > 22 {
		d.Note("no stop of this lens does it: it would take T%s", units.Number(float64(needs), 1))
		return
	}
	stops := 2 * math.Log2(float64(needs/fit.Stop))
	d.Note("T%s does it, and takes %s more light", units.Number(float64(needs), 1), stopsText(stops))
	fixStop(d, fit, needs, fmt.Sprintf("stop down to %s, with %s more light", stopText(needs), stopsText(stops)))
}

// fixStop offers another stop for the one that a line gives a lens, if it does.
func fixStop(d *diag.Diagnostic, fit *motion.Fit, stop units.Stop, title string) {
	i := lastWord(fit.Action.Span.Text(), stopText(fit.Stop))
	if i < 0 {
		return
	}
	span := fit.Action.Span
	span.Start += i
	span.End = span.Start + len(stopText(fit.Stop))
	d.Fix(title, replaced(span, stopText(stop)))
}

func stopText(s units.Stop) string { return "T" + units.Number(float64(s), 1) }

// stopsText prints a number of stops: "1 stop", "2.5 stops".
func stopsText(n float64) string {
	s := units.Number(n, 1)
	if s == "1" {
		return s + " stop"
	}
	return s + " stops"
}

// farText prints a far limit.
func (p *Pass) farText(m units.Metres) string {
	if math.IsInf(float64(m), 0) {
		return "infinity"
	}
	return p.away(float64(m))
}

func circleText(c units.Millimetres) string { return units.Number(float64(c), 3) + " mm" }
