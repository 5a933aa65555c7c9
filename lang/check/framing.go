package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// Under shownEnough of a body's in-frame part, nobody is framed by it: an arm in
// the foreground is no shot of its owner (common practice, no source).
const shownEnough = 0.3

// looking is one aim of a rolling camera: from the end of the pan to it to the
// next aim's start.
type looking struct {
	camera int // in the scene
	track  *motion.CameraTrack
	aim    *motion.Aim
	frames []diag.Frames
}

// lookings is every aim that has frames, by camera and time.
func (p *Pass) lookings() []looking {
	var out []looking
	for camera, c := range p.Stage.Cameras {
		track := p.Tracks.Camera(c)
		if track == nil {
			continue
		}
		rolls := p.rolling(camera)
		for k := range track.Aims {
			aim := &track.Aims[k]
			end := p.Tracks.Length() + 1
			if k+1 < len(track.Aims) {
				end = track.Aims[k+1].Start
			}
			span := diag.Frames{From: p.Tracks.Rate.From(aim.Done), To: p.Tracks.Rate.From(end) - 1}
			if frames := meet(rolls, []diag.Frames{span}); len(frames) > 0 && aim.See != nil {
				out = append(out, looking{camera, track, aim, frames})
			}
		}
	}
	return out
}

// rolling is the frames a camera of the scene takes.
func (p *Pass) rolling(camera int) []diag.Frames {
	var out []diag.Frames
	for _, r := range p.Stage.Scene.Cameras[camera].Rolls {
		out = append(out, diag.Frames{From: r.From, To: r.To})
	}
	return tidy(out)
}

// unsteady is the frames in which a camera is on its way into a relation,
// changes hands or zooms, so that its framing is not yet what the plan asks for.
func (p *Pass) unsteady(track *motion.CameraTrack) []diag.Frames {
	var out []diag.Frames
	add := func(from, to units.Seconds) {
		out = append(out, diag.Frames{From: p.Tracks.Rate.At(from), To: p.Tracks.Rate.From(to)})
	}
	for _, j := range p.Tracks.Joins {
		if j.Camera == track.Camera {
			add(j.Start, j.Done)
		}
	}
	for _, h := range p.Tracks.Handoffs {
		if h.Camera == track.Camera {
			add(h.Start, h.End)
		}
	}
	for _, r := range p.zooms(track) {
		out = append(out, r.Frames)
	}
	return tidy(out)
}

// framed is how a lens frames a person at a frame.
type framed struct {
	depth  float64 // metres along the optical axis to the middle of the head
	high   float64 // metres: the height of the frame there
	x, y   float64 // of the head's middle, in parts of the frame from the left and from below
	top    float64 // of the head's top, in parts of the frame from below
	lower  float64 // where the lower edge of the frame cuts the body, of stature above its floor
	behind bool    // the lens: nothing else is filled in
}

// framing is how a camera frames a person, whether or not anything shows.
func (p *Pass) framing(camera int, s subject, f units.Frame) framed {
	pose, ok := p.poseOf(camera, s, f)
	if !ok {
		return framed{behind: true}
	}
	return p.eye(camera, f).framing(pose, float64(s.person().Height))
}

// framing is how a lens frames somebody of a stature who is somewhere.
func (e *eye) framing(pose sight.Pose, stature float64) framed {
	top := geom.Vec3{X: pose.X, Y: pose.Y, Z: pose.Z + pose.Height}.Sub(e.at)
	head := top
	head.Z -= (1 - body.ChinFraction) / 2 * stature
	d, dt := head.Dot(e.ahead), top.Dot(e.ahead)
	if d < leastDepth || dt < leastDepth || e.high <= 0 || pose.Height <= 0 {
		return framed{behind: true}
	}
	out := framed{
		depth: d, high: e.high * d,
		x: 0.5 + head.Dot(e.right)/(d*e.wide), y: 0.5 + head.Dot(e.up)/(d*e.high),
		top: 0.5 + top.Dot(e.up)/(dt*e.high),
	}
	// Down the lower edge of the frame, to the upright through the body.
	z := e.at.Z + math.Hypot(top.X, top.Y)*math.Tan(e.Tilt-math.Atan(e.high/2))
	out.lower = (z - pose.Z) / stature
	return out
}

// headIn says whether the middle of the head is in frame.
func (f *framed) headIn() bool {
	return !f.behind && f.x >= 0 && f.x <= 1 && f.y >= 0 && f.y <= 1
}

// when the frames of a run for which something holds.
func framesWhere(within []diag.Frames, holds func(units.Frame) bool) []diag.Frames {
	var out []diag.Frames
	for _, r := range within {
		for f := r.From; f <= r.To; f++ {
			if !holds(f) {
				continue
			}
			if n := len(out); n > 0 && out[n-1].To == f-1 {
				out[n-1].To = f
			} else {
				out = append(out, diag.Frames{From: f, To: f})
			}
		}
	}
	return out
}

// sampled is framesWhere for what takes long to find out: it is looked at every so
// many frames, and where it begins and ends to the frame.
func sampled(within []diag.Frames, every units.Frame, holds func(units.Frame) bool) []diag.Frames {
	var out []diag.Frames
	for _, r := range within {
		first := len(out)
		for f := r.From; ; f = min(f+every, r.To) {
			if holds(f) {
				if n := len(out); n > first && out[n-1].To >= f-every {
					out[n-1].To = f
				} else {
					out = append(out, diag.Frames{From: f, To: f})
				}
			}
			if f == r.To {
				break
			}
		}
		for i := first; i < len(out); i++ {
			if out[i].From > r.From {
				out[i].From = edge(out[i].From, max(r.From, out[i].From-every), holds)
			}
			if out[i].To < r.To {
				out[i].To = edge(out[i].To, min(r.To, out[i].To+every), holds)
			}
		}
	}
	return tidy(out)
}

// edge is the last frame, going from one where something holds to one where it
// doesn't, at which it holds.
func edge(in, out units.Frame, holds func(units.Frame) bool) units.Frame {
	if holds(out) {
		return out
	}
	for in-out > 1 || out-in > 1 {
		mid := (in + out) / 2
		if holds(mid) {
			in = mid
		} else {
			out = mid
		}
	}
	return in
}

// longer keeps the stretches that last longer than a time, those that are a
// frame or two apart being one.
func (p *Pass) longer(runs []diag.Frames, than units.Seconds) []diag.Frames {
	var out []diag.Frames
	for _, r := range joined(runs, 2) {
		if p.Tracks.Rate.Duration(int(r.To-r.From)+1) > than {
			out = append(out, r)
		}
	}
	return out
}

// shows says whether enough of a person's body shows for it to be a shot of them.
func (p *Pass) shows(camera int, s subject, f units.Frame) bool {
	m, in := p.seenAt(camera, s, f)
	return in && m.Visible >= shownEnough
}

// frameHigh says a framing in words: "the frame is 0.8 m high where mina is, 2.1 m away".
func (p *Pass) frameHigh(s subject, fr framed) string {
	if s.glass != nil {
		return "the frame is " + p.away(fr.high) + " high at the reflection of " + nameOf(s.thing) + ", which is " + p.away(fr.depth) + " from the lens by way of " + s.glass.Name
	}
	return "the frame is " + p.away(fr.high) + " high where " + nameOf(s.thing) + " is, " + p.away(fr.depth) + " from the lens"
}

// persons is the plan's performers that are in the scene.
func (p *Pass) performers() []*plan.Person {
	var out []*plan.Person
	for _, who := range p.Plan.People {
		if !who.Crew && !who.Bad && len(p.Stage.Body(who)) > 0 {
			out = append(out, who)
		}
	}
	return out
}

// worstOf is the frame, of some runs, at which a measure is most.
func worstOf(runs []diag.Frames, measure func(units.Frame) float64) (units.Frame, float64) {
	best, most := runs[0].From, math.Inf(-1)
	for _, r := range runs {
		for f := r.From; f <= r.To; f++ {
			if m := measure(f); m > most {
				best, most = f, m
			}
		}
	}
	return best, most
}

// found fills in what a finding about a camera's picture says for machines.
func (p *Pass) found(d *diag.Diagnostic, camera *plan.Camera, subject string, frames []diag.Frames, worst units.Frame) {
	d.Frames, d.Subject, d.Camera, d.Worst = frames, subject, camera.Name, worst
	p.inBeat(d)
}
