package check

import (
	"fmt"
	"math"

	"longhand/lang/diag"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/source"
	"longhand/lang/units"
)

// What counts as a bright area in or near the frame (common practice, no source).
const (
	flareOff                = 15.0 // degrees off the frame's edge
	flareOpen               = 0.2  // of it that the lens can see, where it is out of frame
	flareShare              = 0.05 // per cent of the frame, where it is in it
	flareOver               = 4.0  // stops brighter than middle grey
	flareNits    units.Nits = 500  // where the plan gives no sensitivity or no stop
	flareTurned             = 60.0 // degrees off its axis within which a lamp shines at the lens
	flareGrowing            = 1.5  // times its share at first
)

var flare = &Rule{
	Entry: diag.Entry{
		Code:     "flare",
		Title:    "a bright opening or a lamp shines into the lens",
		Severity: diag.Warning,
		Explain: `Something bright is in frame, or near it, and faces the lens: a "glow" such as a
window or a bright doorway, or a lamp that stands in the set. Its light spreads
between the glasses of the lens: blacks go grey, and spots or a veil wander
through the picture as the camera moves.

A glow counts when it is 4 stops or more above middle grey as the lens is set
(brightness of middle grey = 12.5 · N²/(S·t), ISO 2720: N the stop, S the
sensitivity, t the time the shutter is open), or above 500 cd/m2 where the plan
gives no sensitivity or stop. A lamp counts when the lens is within 60 degrees of
where it aims; one without an aim shines all round. Each counts from a twentieth
of a per cent of the frame on, or out of frame within 15 degrees of its edge when
the lens can see a fifth of it. These limits are common practice. The finding
says how the bright part grows over the move.

In frame, or near it on a zoom, it is a warning; near a prime's frame, or a lamp
in frame without an aim, it is a note. A zoom has three or four times the glass
of a prime and is worse in every case.

To mend it: flag the lamp or the opening from outside the frame, add a shade to
the lens on that side, turn the lamp, hang cloth or gel on the window to bring it
down, take a prime, or change the angle. Where it is wanted, say so: "allow flare
in A because ...".`,
		Bad: `take "Into the window"
  rate 24 fps
  sensitivity 800
set "Hall"
  wall north (0, 8) (10, 8) high 4 m
  glow dusk on north 4 m to 7 m high 1 m to 3 m 3000 cd/m2
  mark M1 (5, 4)
  mark M2 (5, 2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "At the window"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (5, -3)
  A on legs with ida
  A takes w35 T2.8
  A sees mina
`,
		Good: `take "Gel on the window"
  rate 24 fps
  sensitivity 800
set "Hall"
  wall north (0, 8) (10, 8) high 4 m
  glow dusk on north 4 m to 7 m high 1 m to 3 m 20 cd/m2
  mark M1 (5, 4)
  mark M2 (5, 2)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
beat "At the window"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (5, -3)
  A on legs with ida
  A takes w35 T2.8
  A sees mina
`,
	},
	Needs: Seen,
	Run: func(p *Pass) {
		for camera := range p.Stage.Cameras {
			p.glows(camera)
			p.lamps(camera)
		}
	},
}

// shine is something bright before one camera, frame by frame.
type shine struct {
	camera int
	thing  plan.Thing
	span   source.Span // of what puts it there
	in     []diag.Frames
	near   []diag.Frames
	share  map[units.Frame]float64 // per cent of the frame
	off    map[units.Frame]float64 // degrees from the frame's edge
	box    func(f units.Frame) (sight.Box, bool)
	bright func(t units.Seconds) string
	soft   bool // a lamp that shines all round: no more than a note in frame
}

func (s *shine) add(f units.Frame, share, off float64) {
	one := diag.Frames{From: f, To: f}
	if off > 0 {
		s.near = append(s.near, one)
	} else {
		s.in = append(s.in, one)
	}
	s.share[f], s.off[f] = share, off
}

// glows looks for bright openings before a camera.
func (p *Pass) glows(camera int) {
	shines := map[plan.Thing]*shine{}
	var order []*shine
	for _, g := range p.Sight.Glares {
		if g.Camera != camera {
			continue
		}
		glow := p.glow(p.Stage.Scene.Glows[g.Glow].Name)
		if glow == nil {
			continue
		}
		for i := range g.Share {
			f := g.From + units.Frame(i)
			in := g.Off[i] == 0 && g.Share[i] > 0
			switch {
			case g.Facing[i] <= 0, !p.blinds(camera, glow.Nits, f):
				continue
			case in && float64(g.Share[i]) < flareShare:
				continue
			case !in && (g.Off[i] == 0 || float64(g.Off[i]) > flareOff || float64(g.Open[i]) < flareOpen):
				continue
			}
			s := shines[glow]
			if s == nil {
				s = &shine{camera: camera, thing: glow, span: glow.Decl, share: map[units.Frame]float64{}, off: map[units.Frame]float64{}}
				s.bright = func(t units.Seconds) string { return p.brightness(camera, glow.Nits, t) }
				shines[glow] = s
				order = append(order, s)
			}
			s.add(f, float64(g.Share[i]), float64(g.Off[i]))
		}
	}
	for _, s := range order {
		p.tellShine(s)
	}
}

func (p *Pass) glow(name string) *plan.Glow {
	for _, g := range p.Plan.Set.Glows {
		if g.Name == name {
			return g
		}
	}
	return nil
}

// grey is how bright middle grey is for a camera at a time; 0 where the plan
// doesn't say enough.
func (p *Pass) grey(camera int, t units.Seconds) units.Nits {
	track := p.Tracks.Camera(p.cameraAt(camera))
	take := &p.Plan.Take
	open := units.Seconds(float64(take.Shutter) / 360 / take.Rate.PerSecond())
	if track == nil || take.Sensitivity <= 0 || track.Stop(t) <= 0 || !(open > 0) {
		return 0
	}
	return optics.LuminanceFor(track.Stop(t), float64(take.Sensitivity), open)
}

func (p *Pass) blinds(camera int, n units.Nits, f units.Frame) bool {
	if grey := p.grey(camera, p.Tracks.Rate.Time(f)); grey > 0 {
		return optics.StopsBetween(grey, n) >= flareOver
	}
	return n >= flareNits
}

func (p *Pass) brightness(camera int, n units.Nits, t units.Seconds) string {
	if grey := p.grey(camera, t); grey > 0 {
		return fmt.Sprintf("%s cd/m2, %s stops over middle grey", units.Number(float64(n), 0), units.Number(optics.StopsBetween(grey, n), 1))
	}
	return fmt.Sprintf("%s cd/m2; the plan gives no sensitivity or stop to hold that against", units.Number(float64(n), 0))
}

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

func (p *Pass) tellShine(s *shine) {
	all := tidy(append(append([]diag.Frames(nil), s.in...), s.near...))
	if len(all) == 0 {
		return
	}
	p.tell([]part{{thing: s.thing, frames: all}}, telling{rule: p.rule, camera: p.cameraAt(s.camera), say: func(parts []part) {
		p.sayShine(s, parts[0].frames)
	}})
}

func (p *Pass) sayShine(s *shine, frames []diag.Frames) {
	name, camera := s.thing.ID().Name, p.cameraAt(s.camera)
	in := meet(tidy(s.in), frames)
	worst := frames[0].From
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			if s.share[f] > s.share[worst] || s.share[worst] == 0 && s.off[f] < s.off[worst] {
				worst = f
			}
		}
	}
	d := p.Report(s.span, "")
	d.Frames, d.Subject, d.Camera, d.Worst = frames, name, camera.Name, worst
	d.Share = units.Percent(s.share[worst])
	p.inBeat(d)
	switch {
	case len(in) == 0:
		d.Message = fmt.Sprintf("%s shines into %s's lens from just out of frame %s, down to %s off its edge", name, camera.Name, p.when(frames), units.Degrees(s.off[worst]))
	default:
		d.Message = fmt.Sprintf("%s shines into %s's lens %s, up to %s of the frame", name, camera.Name, p.when(frames), share(s.share[worst]))
		if first := s.share[in[0].From]; worst > in[0].From && s.share[worst] > flareGrowing*first {
			d.Message += fmt.Sprintf(", growing from %s", share(first))
		}
	}
	if s.box != nil && len(in) > 0 {
		if b, ok := s.box(worst); ok {
			d.Box = [4]float64{b.Left, b.Bottom, b.Right, b.Top}
			d.Message += ", " + where(b)
		}
	}
	at := p.Tracks.Rate.Time(worst)
	zoom := false
	if track := p.Tracks.Camera(camera); track != nil {
		lens := track.Lens(at)
		zoom = lens != nil && lens.Zoom()
	}
	if zoom {
		d.Message += ", on a zoom"
		d.Note("a zoom has several times the glass of a prime: it flares sooner and more")
	}
	if !zoom && (len(in) == 0 || s.soft) {
		d.Severity = diag.Note
	}
	d.Note("%s", s.bright(at))
	if len(in) > 0 && s.soft {
		d.Note("it has no aim, so it is taken to shine all round")
	}
	p.relateCamera(d, camera, at)
}
