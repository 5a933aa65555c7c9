package check

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// whyLost says where a lost subject is or what covers it.
func (p *Pass) whyLost(camera int, track *motion.CameraTrack, c subject, f units.Frame) (string, plan.Thing) {
	if c.glass != nil {
		return p.whyNotInGlass(camera, track, c, f)
	}
	if _, in := p.views().of(camera, sight.NoMirror, c.bodies, f); in {
		body, ok := p.main(camera, c.bodies, f)
		if !ok {
			return "hidden", nil
		}
		list := p.covering(camera, body, f)
		if len(list) == 0 {
			return "hidden", nil
		}
		d, _ := p.Stage.Scene.Distance(camera, body, f)
		said := fmt.Sprintf("hidden behind %s", what(list[0].Name, list[0].Kind))
		if len(list) > 1 && list[0].Share < 0.9 && list[1].Share > 0.05 {
			said += " and " + what(list[1].Name, list[1].Kind)
		}
		return fmt.Sprintf("%s; %s is %s away", said, c.thing.ID().Name, p.away(d)), p.thing(list[0].Name, list[0].Kind)
	}
	return "out of frame, " + p.outsideAt(camera, p.Stage.Scene.Bodies[c.bodies[0]].At(f), f), nil
}

// outsideAt says on which side of the frame a body or an image is.
func (p *Pass) outsideAt(camera int, pose sight.Pose, f units.Frame) string {
	cam := &p.Stage.Scene.Cameras[camera]
	v := cam.At(f)
	if pose.Height <= 0 {
		return "not there"
	}
	to := geom.Vec{X: pose.X - v.X, Y: pose.Y - v.Y}
	off := geom.AngleDiff(v.Pan, to.Angle())
	half := math.Atan(cam.Width / (2 * math.Max(v.Focal, 1)))
	switch {
	case math.Abs(off) > math.Pi/2:
		return "behind the lens"
	case off > half*0.9:
		return "to the left"
	case off < -half*0.9:
		return "to the right"
	case math.Atan2(pose.Z+pose.Height/2-v.Z, to.Len()) > v.Tilt:
		return "above"
	}
	return "below"
}

func longest(runs []diag.Frames) diag.Frames {
	best := runs[0]
	for _, r := range runs[1:] {
		if r.To-r.From > best.To-best.From {
			best = r
		}
	}
	return best
}
