package check

import (
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// hideout is a camera behind its lens hole, for as long as it is there.
type hideout struct {
	staging.Hide
	scene  int // the camera's index in the scene
	track  *motion.CameraTrack
	frames []diag.Frames // in which it is there
	rolls  []diag.Frames // and rolls
	centre geom.Vec      // of the hole, in the middle of the wall
	into   geom.Vec      // from the lens to the hole, level
	thick  float64       // of the wall, metres
}

// hideouts lists the hidden cameras.
func (p *Pass) hideouts() []hideout {
	var out []hideout
	for _, h := range p.Stage.Hides {
		if h.Hole == nil || h.Hole.Wall == nil {
			continue
		}
		scene, ok := p.Stage.Scene.Camera(h.Camera.Name)
		track := p.Tracks.Camera(h.Camera)
		if !ok || track == nil {
			continue
		}
		o := hideout{Hide: h, scene: scene, track: track, thick: float64(h.Hole.Wall.Thick)}
		if o.thick <= 0 {
			o.thick = solid.WallThick
		}
		for _, held := range p.holders() {
			if held.camera == h.Camera && held.thing == plan.Thing(h.Hole) {
				o.frames = tidy(append(o.frames, held.frames...))
			}
		}
		if len(o.frames) == 0 {
			continue
		}
		o.rolls = meet(p.rolling(scene), o.frames)
		o.centre, _ = plan.On{Wall: h.Hole.Wall, From: h.Hole.Along, To: h.Hole.Along}.Ends()
		v := p.Stage.Scene.Cameras[scene].At(o.frames[0].From)
		o.into = o.centre.Sub(geom.Vec{X: v.X, Y: v.Y}).Unit()
		out = append(out, o)
	}
	return out
}

// stop is what the hidden lens is set to at a time, and whether the plan says.
func (o *hideout) stop(t units.Seconds) (units.Stop, bool) {
	if s := o.track.Stop(t); s > 0 {
		return s, true
	}
	return hiddenStop, false
}

// hiddenStop is the stop taken for a hidden lens where the plan gives none
// (common practice, no source).
const hiddenStop units.Stop = 2.8
