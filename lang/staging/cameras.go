package staging

import (
	"slices"
	"sort"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// A camera with its lens is a box about its pupil for everybody else (common
// practice, no source): as long as a body and a prime, its middle a little
// behind the pupil.
const (
	cameraLong   = 0.4
	cameraWide   = 0.2
	cameraHigh   = 0.25
	cameraBehind = 0.15
)

func (b *builder) cameras() {
	first := len(b.stage.Scene.Bodies)
	for _, c := range b.tracks.Cameras {
		b.add(c.Camera, sight.Body{Name: c.Camera.Name, Kind: "camera", Of: c.Camera.Name, Polygon: box(cameraLong, cameraWide)})
	}
	for i, c := range b.tracks.Cameras {
		b.camera(c, first+i)
	}
}

// camera adds what a camera sees by; the body that others see of it is there.
func (b *builder) camera(c *motion.CameraTrack, bodyAt int) {
	scene := b.stage.Scene
	out := sight.Camera{Name: c.Camera.Name, Width: float64(c.Frame.Width), Height: float64(c.Frame.Height), Own: b.own(c)}
	if scene.Aspect == 0 && c.Frame.Height > 0 {
		scene.Aspect = c.Frame.Aspect()
	}
	i := len(scene.Cameras)
	scene.Cameras = append(scene.Cameras, out)
	b.stage.Cameras = append(b.stage.Cameras, c.Camera)
	b.later = append(b.later, func() { b.film(c, &scene.Cameras[i], &scene.Bodies[bodyAt]) })
}

// film says where a lens and the camera about it are at every frame, and when it
// rolls.
func (b *builder) film(c *motion.CameraTrack, out *sight.Camera, box *sight.Body) {
	views, poses := make([]sight.View, len(b.times)), b.room.track(len(b.times))
	lens := true
	for f, v := range b.tracks.Views(c) {
		t := b.times[f]
		lens = lens && v.Focal > 0
		views[f] = sight.View{
			X: v.X, Y: v.Y, Z: v.Z, Pan: v.Pan, Tilt: v.Tilt, Roll: v.Roll, Focal: v.Focal, Focus: v.Focus,
		}
		behind := cameraBehind
		if c.Hold(t).Hide != nil {
			// However it turns, it stays behind the wall: its hole is what shows.
			behind = (cameraLong + cameraWide) / 2
		}
		p := geom.Vec{X: v.X, Y: v.Y}.Sub(geom.Polar(behind, v.Pan))
		poses[f] = sight.Pose{X: p.X, Y: p.Y, Z: max(0, v.Z-cameraHigh/2), Heading: v.Pan, Height: cameraHigh}
	}
	box.Track = settle(poses)
	if same(views) {
		views = slices.Clone(views[:1])
	}
	out.Track = views
	if lens && out.Width > 0 && out.Height > 0 {
		for _, r := range c.Rolls {
			if f, ok := b.between(r.From, r.To); ok {
				out.Rolls = append(out.Rolls, f)
			}
		}
	}
}

func same(track []sight.View) bool {
	for i := 1; i < len(track); i++ {
		if track[i] != track[0] {
			return false
		}
	}
	return len(track) > 0
}

// between is the frames taken from one time on and before another.
func (b *builder) between(from, to units.Seconds) (sight.Frames, bool) {
	f := sight.Frames{From: max(0, b.tracks.Rate.From(from)), To: min(b.tracks.Rate.From(to)-1, units.Frame(b.tracks.Frames-1))}
	return f, f.From <= f.To
}

// own lists what a camera leaves out of its own view. It is no more than cannot
// be in shot: the camera itself, whoever holds it and what they wear, the post
// or legs right under it, the platform its operator stands on, the plug of its
// own lens hole. The deck of a cart, a crane's base and its arm are in shot like
// anything else when the lens looks at them.
func (b *builder) own(c *motion.CameraTrack) []sight.Own {
	scene := b.stage.Scene
	all := sight.Frames{From: 0, To: units.Frame(b.tracks.Frames - 1)}
	var out []sight.Own
	for _, i := range b.stage.Body(c.Camera) {
		out = append(out, sight.Own{Body: scene.Bodies[i].Name, Frames: all})
	}
	for k, h := range c.Holds {
		// While it changes hands it is both giver's and taker's.
		until := h.End
		if k+1 < len(c.Holds) {
			until = c.Holds[k+1].Taken
		}
		during, ok := b.between(h.Start, until)
		if k == 0 {
			during.From = 0
		}
		if k == len(c.Holds)-1 {
			during.To, ok = all.To, true
		}
		if !ok || during.From > during.To {
			continue
		}
		add := func(i int) { out = append(out, sight.Own{Body: scene.Bodies[i].Name, Frames: during}) }
		if h.Operator != nil {
			for _, i := range b.stage.Body(h.Operator) {
				add(i)
			}
		}
		if h.Rig != nil {
			for _, i := range b.stage.Body(h.Rig) {
				if ownPart(h.Rig, scene.Bodies[i].Name) {
					add(i)
				}
			}
		}
		if h.Hide != nil {
			hide := Hide{Camera: c.Camera, Action: h.Action, Hole: h.Hide.Hole, Card: h.Hide.Card, Plugs: b.stage.Body(h.Hide.Hole)}
			for _, i := range hide.Plugs {
				add(i)
			}
			b.stage.Hides = append(b.stage.Hides, hide)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].From < out[j].From })
	return out
}

// ownPart says whether a part of a rig is so close under its camera that the
// camera cannot see it.
func ownPart(r *plan.Rig, bodyName string) bool {
	class, err := body.ParseClass(r.Class)
	if err != nil {
		return true
	}
	part := bodyName[len(r.Name):]
	switch {
	case class == body.Crane || class == body.Jib:
		return part == " platform"
	case body.RigOf(class).Crewing == body.Ridden:
		return part == " post"
	}
	return true
}

// holes fills every hole for everybody but its own camera: each plug is a body,
// which can be seen, and can be one camera's own.
func (b *builder) holes() {
	for _, p := range b.stage.Pieces {
		if p.Hole != nil {
			b.add(p.Hole, Plug(p))
		}
	}
}

// Plug is the body that fills a piece of a hole.
func Plug(p solid.Piece) sight.Body {
	var mid geom.Vec
	for _, v := range p.Polygon {
		mid = mid.Add(v.Mul(1 / float64(len(p.Polygon))))
	}
	local := make([]geom.Vec, len(p.Polygon))
	for i, v := range p.Polygon {
		local[i] = v.Sub(mid)
	}
	return sight.Body{
		Name: p.Name, Kind: "hole", Of: p.Name, Polygon: local,
		Track: []sight.Pose{{X: mid.X, Y: mid.Y, Z: p.Z[0], Height: p.Z[1] - p.Z[0]}},
	}
}
