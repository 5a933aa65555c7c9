package scout

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// cut is the scene at some frames only, numbered from 0, without cameras.
type cut struct {
	scene   sight.Scene
	frames  []units.Frame // of the take
	targets [][]int       // bodies of each thing to be seen
	others  []sight.Camera
}

// sampled picks so many frames, evenly, of those asked about; all of them where
// there are no more.
func (a *Ask) sampled(most int) []units.Frame {
	n := int(a.Frames.To-a.Frames.From) + 1
	if n <= most {
		most = n
	}
	out := make([]units.Frame, most)
	for i := range out {
		out[i] = a.Frames.From + units.Frame((2*i+1)*n/(2*most))
	}
	return out
}

// cut cuts the take to frames. A wall's pieces are those of a set, so that a hole
// may be cut into it.
func (a *Ask) cut(frames []units.Frame) *cut {
	base := a.Stage.Scene
	c := &cut{frames: frames, scene: sight.Scene{Rate: base.Rate, Frames: len(frames), Aspect: a.Frame.Aspect()}}
	c.scene.Solids = solids(base.Solids, frames)
	at := map[plan.Thing][]int{}
	gone := map[string]bool{}
	for i := range base.Bodies {
		b := base.Bodies[i]
		if t, ok := a.Stage.Things[i].(*plan.Camera); ok && t == a.Except {
			gone[b.Name] = true
			continue
		}
		b.Track = atFrames(b.Track, frames)
		at[a.Stage.Things[i]] = append(at[a.Stage.Things[i]], len(c.scene.Bodies))
		c.scene.Bodies = append(c.scene.Bodies, b)
	}
	for _, t := range a.Sees {
		c.targets = append(c.targets, at[t])
	}
	for i := range base.Cameras {
		cam := base.Cameras[i]
		if a.Stage.Cameras[i] == a.Except {
			continue
		}
		cam.Track = atFrames(cam.Track, frames)
		cam.Rolls = runs(cam.Rolls, frames)
		var own []sight.Own
		for _, o := range cam.Own {
			for _, r := range runs([]sight.Frames{o.Frames}, frames) {
				if !gone[o.Body] {
					own = append(own, sight.Own{Body: o.Body, Frames: r})
				}
			}
		}
		cam.Own = own
		if len(cam.Rolls) > 0 {
			c.others = append(c.others, cam)
		}
	}
	return c
}

// runs is which of the frames kept lie in runs of the take's.
func runs(list []sight.Frames, frames []units.Frame) []sight.Frames {
	var out []sight.Frames
	for k, f := range frames {
		in := false
		for _, r := range list {
			in = in || r.From <= f && f <= r.To
		}
		switch n := len(out); {
		case !in:
		case n > 0 && out[n-1].To == units.Frame(k-1):
			out[n-1].To = units.Frame(k)
		default:
			out = append(out, sight.Frames{From: units.Frame(k), To: units.Frame(k)})
		}
	}
	return out
}

// atFrames is a track at the frames kept; one of a single place stays.
func atFrames[T any](track []T, frames []units.Frame) []T {
	if len(track) <= 1 {
		return track
	}
	out := make([]T, len(frames))
	for k, f := range frames {
		out[k] = track[f]
	}
	return out
}

func solids(list []sight.Solid, frames []units.Frame) []sight.Solid {
	out := make([]sight.Solid, len(list))
	for i, s := range list {
		if s.Shut != nil {
			s.Shut = append([]sight.Frames{}, runs(s.Shut, frames)...)
		}
		out[i] = s
	}
	return out
}

// holed is the cut with a hole in a wall, and the pieces that fill the hole.
func (a *Ask) holed(c *cut, hole *plan.Hole) (*cut, []solid.Piece) {
	set := a.Plan.Set
	set.Holes = append(append([]*plan.Hole(nil), set.Holes...), hole)
	shut := map[string][]sight.Frames{}
	for i := range c.scene.Solids {
		if s := &c.scene.Solids[i]; s.Shut != nil {
			shut[s.Name] = s.Shut
		}
	}
	out := *c
	out.scene.Solids = nil
	var plugs []solid.Piece
	for _, p := range solid.Of(&set) {
		switch {
		case p.Hole == hole:
			plugs = append(plugs, p)
			continue
		case p.Glass, p.Hole != nil:
			continue
		}
		s := sight.Solid{Name: p.Name, Kind: string(p.Thing.Kind()), Polygon: p.Polygon, Z: p.Z}
		if p.Door != nil {
			s.Shut = shut[p.Door.Name]
			if s.Shut == nil {
				s.Shut = []sight.Frames{}
			}
		}
		out.scene.Solids = append(out.scene.Solids, s)
	}
	return &out, plugs
}

// aim turns a lens at a place to its targets at a frame, as a line that sees them
// would: to the middle of the bearings they span, with their heads a third of the
// frame's height below its top, what has no head in the middle.
func (a *Ask) aim(c *cut, from geom.Vec3, k units.Frame) sight.View {
	v := sight.View{X: from.X, Y: from.Y, Z: from.Z, Focal: float64(a.Focal)}
	ref, low, high := 0.0, math.Inf(1), math.Inf(-1)
	down, up := math.Inf(1), math.Inf(-1)
	lower := 0.0
	any := false
	for i, bodies := range c.targets {
		for _, b := range bodies[:1] {
			body := &c.scene.Bodies[b]
			p := body.At(k)
			d := geom.Vec{X: p.X - from.X, Y: p.Y - from.Y}
			dist := d.Len()
			if dist < 1e-6 {
				continue
			}
			if !any {
				ref, any = d.Angle(), true
			}
			half := math.Asin(min(1, reach(body)/dist))
			off := geom.AngleDiff(ref, d.Angle())
			low, high = min(low, off-half), max(high, off+half)
			z := p.Z + p.Height/2
			if _, ok := a.Sees[i].(*plan.Person); ok {
				const head = 0.93 // of the height: the middle of a head
				z = p.Z + head*p.Height
				lower = math.Atan(float64(a.Frame.Height) / 6 / float64(a.Focal))
			}
			e := math.Atan2(z-from.Z, dist)
			down, up = min(down, e), max(up, e)
		}
	}
	if any {
		v.Pan = ref + (low+high)/2
		v.Tilt = (down+up)/2 - lower
	}
	return v
}

func reach(b *sight.Body) float64 {
	r := b.Radius
	for _, p := range b.Polygon {
		r = max(r, p.Len())
	}
	return r
}
