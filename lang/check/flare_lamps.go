package check

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// lamps looks for lamps that stand in the set and shine at a camera.
func (p *Pass) lamps(camera int) {
	cam := &p.Stage.Scene.Cameras[camera]
	placed := map[*plan.Lamp]int{}
	for _, at := range p.Plan.Set.Placed {
		if at.Lamp == nil {
			continue
		}
		placed[at.Lamp]++
		name := at.Lamp.Name
		if n := placed[at.Lamp]; n > 1 {
			name = fmt.Sprintf("%s %d", name, n)
		}
		body, ok := p.Stage.Scene.Body(name)
		if !ok {
			continue
		}
		s := &shine{camera: camera, thing: at.Lamp, span: at.Span, soft: at.Aims == nil,
			share: map[units.Frame]float64{}, off: map[units.Frame]float64{},
			bright: func(units.Seconds) string { return "a lamp of " + at.Lamp.Power.String() }}
		s.box = func(f units.Frame) (sight.Box, bool) { return p.Sight.Box(camera, body, f) }
		var near []sight.Frames
		off := map[units.Frame]float64{}
		for _, r := range cam.Rolls {
			for f := r.From; f <= r.To; f++ {
				v, pose := cam.At(f), p.Stage.Scene.Bodies[body].At(f)
				if pose.Height <= 0 || !shinesAt(pose, v, at.Aims != nil) {
					continue
				}
				if m, in := p.Sight.Moment(camera, body, f); in && m.Share > 0 {
					// A lamp that must not be seen is found as such.
					if at.Lamp.Seen && m.Share >= leastShare {
						s.add(f, m.Share, 0)
					}
					continue
				}
				if d := offFrame(cam, v, pose); d > 0 && d <= flareOff {
					off[f] = d
					near = append(near, sight.Frames{From: f, To: f})
				}
			}
		}
		for _, r := range p.open(camera, body, near) {
			for f := r.From; f <= r.To; f++ {
				s.add(f, 0, off[f])
			}
		}
		p.tellShine(s)
	}
}

// shinesAt says whether a lamp that points somewhere has the lens in its beam.
func shinesAt(lamp sight.Pose, v sight.View, aimed bool) bool {
	if !aimed {
		return true
	}
	dx, dy := v.X-lamp.X, v.Y-lamp.Y
	d := math.Hypot(dx, dy)
	sin, cos := math.Sincos(lamp.Heading)
	return d > 0 && (dx*cos+dy*sin)/d >= math.Cos(flareTurned*math.Pi/180)
}

// offFrame is how many degrees the middle of a body is off the edge of the
// frame; 0 within it, 180 behind the lens.
func offFrame(cam *sight.Camera, v sight.View, b sight.Pose) float64 {
	view := optics.View{Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Roll: units.FromRadians(v.Roll)}
	ahead, right, up := view.Axes()
	dx, dy, dz := b.X-v.X, b.Y-v.Y, b.Z+b.Height/2-v.Z
	dot := func(x, y, z float64) float64 { return dx*x + dy*y + dz*z }
	z, x, y := dot(ahead.X, ahead.Y, ahead.Z), dot(right.X, right.Y, right.Z), dot(up.X, up.Y, up.Z)
	if z <= 0 || !(v.Focal > 0) {
		return 180
	}
	tx, ty := cam.Width/(2*v.Focal), cam.Height/(2*v.Focal)
	cx, cy := math.Max(-tx, math.Min(tx, x/z)), math.Max(-ty, math.Min(ty, y/z))
	if cx == x/z && cy == y/z {
		return 0
	}
	n := math.Sqrt((x*x + y*y + z*z) * (cx*cx + cy*cy + 1))
	return math.Acos(math.Min(1, (x*cx+y*cy+z)/n)) * 180 / math.Pi
}

// open is those of the frames in which a lens, turned to a body out of its
// frame, would see enough of it.
func (p *Pass) open(camera, body int, frames []sight.Frames) []diag.Frames {
	if len(frames) == 0 {
		return nil
	}
	scene := *p.Stage.Scene
	scene.Mirrors, scene.Glows = nil, nil
	cam := scene.Cameras[camera]
	const wide = 40 // millimetres before a lens of 10: a frame that holds all of a lamp
	turned := sight.Camera{Name: cam.Name, Width: wide, Height: wide, Own: cam.Own, Rolls: frames}
	for f := range units.Frame(scene.Frames) {
		v, b := cam.At(f), scene.Bodies[body].At(f)
		dx, dy, dz := b.X-v.X, b.Y-v.Y, b.Z+b.Height/2-v.Z
		turned.Track = append(turned.Track, sight.View{X: v.X, Y: v.Y, Z: v.Z, Focal: 10,
			Pan: math.Atan2(dy, dx), Tilt: math.Atan2(dz, math.Hypot(dx, dy))})
	}
	scene.Cameras = []sight.Camera{turned}
	seen, err := sight.See(p.Ctx, &scene, sight.Options{})
	if err != nil {
		return nil // cancelled
	}
	var out []diag.Frames
	for _, r := range seen.Of(0, body) {
		for _, s := range r.Showing(flareOpen) {
			out = append(out, diag.Frames{From: s.From, To: s.To})
		}
	}
	return tidy(out)
}
