package check

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// eye is a lens at a frame: where it is, the directions of its frame, and how wide
// and high that is at one metre.
type eye struct {
	sight.View
	at               geom.Vec3
	ahead, right, up geom.Vec3
	wide, high       float64 // 0 without a lens
}

func eyeOf(cam *sight.Camera, v sight.View) eye {
	sp, cp := math.Sincos(v.Pan)
	st, ct := math.Sincos(v.Tilt)
	e := eye{
		View:  v,
		at:    geom.Vec3{X: v.X, Y: v.Y, Z: v.Z},
		ahead: geom.Vec3{X: cp * ct, Y: sp * ct, Z: st},
		right: geom.Vec3{X: sp, Y: -cp},
		up:    geom.Vec3{X: -cp * st, Y: -sp * st, Z: ct},
	}
	if v.Focal > 0 {
		e.wide, e.high = cam.Width/v.Focal, cam.Height/v.Focal
	}
	return e
}

// eye is a camera's lens at a frame.
func (p *Pass) eye(camera int, f units.Frame) *eye {
	list := p.known().eyes[camera].get(func() []eye {
		cam := &p.Stage.Scene.Cameras[camera]
		list := make([]eye, len(cam.Track))
		for i, v := range cam.Track {
			list[i] = eyeOf(cam, v)
		}
		return list
	})
	if len(list) == 1 {
		return &list[0]
	}
	return &list[f]
}

// leastDepth is how near, in metres along the axis, something still counts as in
// front of the lens.
const leastDepth = 0.05

// holds says whether a direction, or the way to a point, is in the frame.
func (e *eye) holds(to geom.Vec3) bool {
	z := to.Dot(e.ahead)
	return z > 0 && math.Abs(to.Dot(e.right)) <= z*e.wide/2 && math.Abs(to.Dot(e.up)) <= z*e.high/2
}

// across is where a body's middle lies across the frame, in parts of its width
// from the left; false for what is behind the lens.
func (e *eye) across(pose sight.Pose) (float64, bool) {
	d := geom.Vec3{X: pose.X, Y: pose.Y, Z: pose.Z + pose.Height/2}.Sub(e.at)
	depth := d.Dot(e.ahead)
	if depth < leastDepth || e.wide <= 0 {
		return 0, false
	}
	return 0.5 + d.Dot(e.right)/(depth*e.wide), true
}
