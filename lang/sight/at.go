package sight

import (
	"math"

	"longhand/lang/units"
)

// At is every body in a camera's frame at one frame, by body, then what it sees
// of them in mirrors: what See found, and where in the frame and how far away
// they are. The camera need not roll.
func At(s *Scene, camera int, f units.Frame) []Sighting {
	return newStage(s).at(camera, f)
}

// At is At for the report's own scene.
func (r *Report) At(camera int, f units.Frame) []Sighting { return r.stage.at(camera, f) }

// Box is the bounds of what a camera shows of a body at a frame; false where
// nothing shows.
func (r *Report) Box(camera, body int, f units.Frame) (Box, bool) {
	l := r.stage.glance()
	defer r.stage.glanced(l)
	if !l.frame(camera, f) {
		return Box{}, false
	}
	return l.box(body)
}

// Distance is how far a body's middle is from a lens at a frame: on the floor,
// and along the optical axis, in metres.
func (s *Scene) Distance(camera, body int, f units.Frame) (floor, depth float64) {
	v, p := s.Cameras[camera].At(f), s.Bodies[body].At(f)
	dx, dy, dz := p.X-v.X, p.Y-v.Y, p.Z+p.Height/2-v.Z
	st, ct := math.Sincos(v.Tilt)
	sp, cp := math.Sincos(v.Pan)
	return math.Hypot(dx, dy), (dx*cp+dy*sp)*ct + dz*st
}

func (st *stage) at(camera int, f units.Frame) []Sighting {
	l := st.glance()
	defer st.glanced(l)
	if !l.frame(camera, f) {
		return nil
	}
	var out []Sighting
	add := func(body, mirror int, s area, box *Box) {
		if s.whole <= 0 {
			return
		}
		sg := Sighting{Body: body, Mirror: mirror, Visible: min(1, s.open/s.whole), Share: min(100, 100*s.open/l.eye.area)}
		sg.Distance, sg.Depth = st.scene.Distance(camera, body, f)
		if s.open > 0 {
			sg.Box = box.clamped()
		}
		out = append(out, sg)
	}
	for i := l.nset; i < l.n; i++ {
		box := noBox
		l.cover.box = &box
		add(int(l.items[i].ref), NoMirror, l.measure(&l.items[i]), &box)
	}
	l.cover.box = nil
	box := noBox
	l.cover.box = &box
	l.mirrors(camera, f, func(row int, s area) {
		n := len(st.shapes)
		add(row%n, row/n-1, s, &box)
		box = noBox
	})
	return out
}

var noBox = Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

// clamped takes off the rounding by which a box sticks out of the frame.
func (b Box) clamped() Box {
	in := func(v float64) float64 { return max(0, min(1, v)) }
	return Box{in(b.Left), in(b.Bottom), in(b.Right), in(b.Top)}
}
