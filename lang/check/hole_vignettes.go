package check

import (
	"fmt"
	"math"
	"regexp"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/units"
)

var holeVignettes = &Rule{
	Entry: diag.Entry{
		Code:     "hole-vignettes",
		Title:    "a lens hole too small for its lens",
		Severity: diag.Error,
		At:       []string{"set hole"},
		Explain: `The edge of the hole cuts into the hidden camera's picture: dark corners, or
more, when the lens turns.

A lens takes in light over an opening f/N across (the focal length over the
stop), not at a point. On the way through the wall its field grows: in a wall z
away the hole has to be at least f/N + z·w/f wide for a frame w wide, and likewise
for its height; this is similar triangles. Here z is to the far face of the wall,
and the lens may be turned: at every frame each corner of the frame is followed
to that face. 5 mm more than the least is asked for, since no hole is cut and no
camera set to the millimetre; less than that is a warning. The lens's opening is
30 mm behind the wall. Without a stop in the plan, T2.8 is taken.

To mend it: cut the hole as wide as the finding says, stop down, thin the wall
round the hole or bevel it from behind, take a longer lens, or let it turn less.`,
		Bad: `take "Dark corners"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (12, 8) high 3 m thick 50 mm
  hole pigeon on racks at 5 m up 1.45 m wide 50 mm
  mark M1 (4, 3)
  mark M2 (6, 3)
kit
  camera B sensor 24.9 mm x 14 mm
  lens w28 28 mm stops T2 to T22
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  B hides behind pigeon
  B takes w28 T2.8
  B sees mina
`,
		Good: `take "Wide enough"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (12, 8) high 3 m thick 50 mm
  hole pigeon on racks at 5 m up 1.45 m wide 130 mm
  mark M1 (4, 3)
  mark M2 (6, 3)
kit
  camera B sensor 24.9 mm x 14 mm
  lens w28 28 mm stops T2 to T22
people
  performer mina
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  B hides behind pigeon
  B takes w28 T2.8
  B sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesNothing,
	Run: func(p *Pass) {
		for _, o := range p.hideouts() {
			p.vignettes(&o)
		}
	},
}

func (p *Pass) vignettes(o *hideout) {
	wide := o.Hole.Wide.Millimetres()
	need := map[units.Frame]units.Millimetres{}
	var cutOff, tight []diag.Frames
	for _, r := range o.rolls {
		for f := r.From; f <= r.To; f++ {
			n := p.holeNeeded(o, f)
			need[f] = n
			one := diag.Frames{From: f, To: f}
			switch {
			case n > wide:
				cutOff = append(cutOff, one)
			case n+optics.HoleMargin > wide:
				tight = append(tight, one)
			}
		}
	}
	frames, severity := cutOff, diag.Error
	if len(frames) == 0 {
		frames, severity = tight, diag.Warning
	}
	if len(frames) == 0 {
		return
	}
	p.tell([]part{{thing: o.Hole, frames: tidy(frames)}}, telling{rule: p.rule, camera: o.Camera, say: func(parts []part) {
		p.sayVignettes(o, parts[0].frames, need, severity)
	}})
}

func (p *Pass) sayVignettes(o *hideout, frames []diag.Frames, need map[units.Frame]units.Millimetres, severity diag.Severity) {
	worst := frames[0].From
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			if need[f] > need[worst] {
				worst = f
			}
		}
	}
	wide := o.Hole.Wide.Millimetres()
	least := need[worst]
	d := p.Report(o.Hole.Decl, "")
	d.Severity = severity
	d.Frames, d.Subject, d.Camera, d.Worst = frames, o.Hole.Name, o.Camera.Name, worst
	p.inBeat(d)
	d.Relate(o.Action.Span, "%s looks through it", o.Camera.Name)
	at := p.Tracks.Rate.Time(worst)
	stop, said := o.stop(at)
	view := o.track.At(at)
	if math.IsInf(float64(least), 1) {
		d.Message = fmt.Sprintf("%s turns so far that it looks past its hole %s, %s", o.Camera.Name, o.Hole.Name, p.when(frames))
		return
	}
	enough := units.Millimetres(math.Ceil(float64(least+optics.HoleMargin) - 1e-9))
	switch severity {
	case diag.Error:
		d.Message = fmt.Sprintf("the hole %s cuts into %s's frame %s: it is %s wide, and at frame %s the lens needs %s", o.Hole.Name, o.Camera.Name, p.when(frames), wide, itoa(worst), least)
	default:
		d.Message = fmt.Sprintf("the hole %s is only just wide enough for %s, %s: %s, where %s is the least and %s more is wise", o.Hole.Name, o.Camera.Name, p.when(frames), wide, least, optics.HoleMargin)
	}
	guess := ""
	if !said {
		guess = ", taken since the plan gives no stop"
	}
	d.Note("%s across at %s and %s%s, %s to the wall's far face; the frame is %s x %s", optics.Pupil(units.Millimetres(view.Focal), stop),
		units.Millimetres(view.Focal), stop, guess, units.Metres(p.toFace(o, worst)).Millimetres(), o.track.Frame.Width, o.track.Frame.Height)
	if !o.Hole.Wall.ThickGiven {
		d.Note("the wall %s is taken to be %s thick; where the hole goes through less, a flat's skin of 12 mm, say so: thick 12 mm", o.Hole.Wall.Name, units.Metres(o.thick).Millimetres())
	}
	d.Note("%s wide would do", enough)
	if e, ok := widened(o, enough); ok {
		d.Fix("cut the hole "+enough.String()+" wide", e)
	}
}

var wideWord = regexp.MustCompile(`\bwide\s+([0-9.]+\s*(?:mm|cm|m|in|ft)\b|[0-9]+'[0-9.½]*"?|[0-9.]+")`)

// widened is the edit of the hole's width.
func widened(o *hideout, to units.Millimetres) (diag.Edit, bool) {
	m := wideWord.FindStringSubmatchIndex(o.Hole.Decl.Text())
	if m == nil {
		return diag.Edit{}, false
	}
	at := o.Hole.Decl
	at.Start, at.End = at.Start+m[2], at.Start+m[3]
	return diag.Edit{Span: at, Text: to.String()}, true
}

// toFace is how far the wall's far face is from the lens, square to it, metres.
func (p *Pass) toFace(o *hideout, f units.Frame) float64 {
	v := p.Stage.Scene.Cameras[o.scene].At(f)
	return o.centre.Sub(geom.Vec{X: v.X, Y: v.Y}).Dot(o.into) + o.thick/2
}

// holeNeeded is how wide the hole has to be at a frame for nothing to be cut
// off: each corner of the frame followed from the rim of the lens's opening to
// the wall's far face. It is infinite where a corner never gets there.
func (p *Pass) holeNeeded(o *hideout, f units.Frame) units.Millimetres {
	cam := &p.Stage.Scene.Cameras[o.scene]
	v := cam.At(f)
	stop, _ := o.stop(p.Tracks.Rate.Time(f))
	view := optics.View{
		At:  geom.Vec3{X: v.X, Y: v.Y, Z: v.Z},
		Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Roll: units.FromRadians(v.Roll), Focal: units.Millimetres(v.Focal),
	}
	pupil := float64(optics.Pupil(view.Focal, stop).Metres()) / 2
	face := p.toFace(o, f)
	across := o.into.Left()
	from := geom.Vec{X: v.X, Y: v.Y}.Sub(o.centre).Dot(across)
	rise := v.Z - float64(o.Hole.Up)
	half := 0.0
	for _, x := range []float64{-1, 1} {
		for _, y := range []float64{-1, 1} {
			ray := view.Ray(units.Millimetres(x*cam.Width/2), units.Millimetres(y*cam.Height/2))
			ahead := ray.Floor().Dot(o.into)
			if ahead < 1e-6 {
				return units.Millimetres(math.Inf(1))
			}
			k := face / ahead
			half = math.Max(half, math.Max(math.Abs(from+k*ray.Floor().Dot(across)), math.Abs(rise+k*ray.Z))+pupil)
		}
	}
	return units.Metres(2 * half).Millimetres()
}
