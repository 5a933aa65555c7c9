package scout

import (
	"context"
	"math"

	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// half of a target has to be seen for it to count as seen for a time.
const half = 0.5

// look works out what lenses at spots see of the targets, all at once, and fills
// in all that does not need the other cameras.
func (a *Ask) look(ctx context.Context, c *cut, spots []spot) error {
	if len(spots) == 0 {
		return nil
	}
	scene := c.scene
	all := c.whole()
	for i := range spots {
		scene.Cameras = append(scene.Cameras, sight.Camera{
			Name: spots[i].label(i), Width: float64(a.Frame.Width), Height: float64(a.Frame.Height),
			Rolls: all, Track: a.views(c, &spots[i]),
		})
	}
	seen, err := sight.See(ctx, &scene, sight.Options{Workers: a.Workers})
	if err != nil {
		return err
	}
	for i := range spots {
		a.measure(c, &spots[i], scene.Cameras[i].Track, func(body int) []sight.Run { return seen.Of(i, body) })
	}
	return nil
}

func (s *spot) label(i int) string {
	return "\x00" + s.In(units.Metric) + " " + units.Number(float64(i), 0)
}

func (a *Ask) views(c *cut, s *spot) []sight.View {
	out := make([]sight.View, len(c.frames))
	for k := range out {
		out[k] = a.aim(c, s.pupil, units.Frame(k))
	}
	return out
}

// measure puts what was seen from a spot into numbers.
func (a *Ask) measure(c *cut, s *spot, views []sight.View, runs func(body int) []sight.Run) {
	n := len(c.frames)
	least := make([]float64, n)
	tall := make([]float64, n)
	for k := range least {
		least[k], tall[k] = 1, math.Inf(1)
	}
	nearest, furthest := math.Inf(1), 0.0
	for i, bodies := range c.targets {
		shows, whole := make([]float64, n), make([]float64, n)
		for _, b := range bodies {
			for _, r := range runs(b) {
				for f := r.From; f <= r.To; f++ {
					m := r.At(f)
					shows[f] += m.Share
					if m.Visible > 0 {
						whole[f] += m.Share / m.Visible
					}
				}
			}
		}
		_, person := a.Sees[i].(*plan.Person)
		main := &c.scene.Bodies[bodies[0]]
		for k := range n {
			p := main.At(units.Frame(k))
			v := 0.0
			if whole[k] > 0 {
				v = shows[k] / whole[k]
			}
			d := math.Hypot(p.X-s.pupil.X, p.Y-s.pupil.Y)
			nearest, furthest = min(nearest, d), max(furthest, d)
			if p.Height <= 0 || d < float64(a.Close) || !a.holds(views[k], p, person) {
				v = 0
			}
			least[k] = min(least[k], v)
			tall[k] = min(tall[k], p.Height*float64(a.Focal)/(max(d, 1e-3)*float64(a.Frame.Height)))
		}
	}
	long := 0
	s.Sees, s.Tall = 0, 0
	for k := range n {
		s.Sees += least[k] / float64(n)
		s.Tall += tall[k] / float64(n)
		if least[k] >= half {
			long++
		}
	}
	s.For = a.share(c, long)
	s.Nearest, s.Furthest = units.Metres(nearest), units.Metres(furthest)
	if s.Wall != nil {
		s.Hole = a.needed(s, views)
		if s.Hole > mostHole || !roomy(&a.Plan.Set, s.Wall, float64(s.Along), float64(s.Up), float64(s.Hole.Metres())) {
			s.Sees, s.For = 0, 0 // no hole, no camera
		}
	}
	s.Score = score(s.Sees, 0, s.Tall)
}

// holds says whether the middle of a target, and of a person the head, is within
// the frame.
func (a *Ask) holds(v sight.View, p sight.Pose, person bool) bool {
	view := optics.View{At: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: a.Focal}
	z := p.Z + p.Height/2
	if person {
		z = p.Z + 0.93*p.Height
	}
	at, ok := view.Project(geom.Vec3{X: p.X, Y: p.Y, Z: z})
	return ok && a.Frame.Holds(at)
}

// share is so many frames of a cut as time of the take.
func (a *Ask) share(c *cut, frames int) units.Seconds {
	all := float64(a.Frames.To-a.Frames.From) + 1
	return a.seconds(all * float64(frames) / float64(len(c.frames)))
}

// expose works out how long the other cameras have a spot in view. What of it they
// would see is the hole with what fills it and the camera behind it; on the floor,
// the camera on its legs.
func (a *Ask) expose(ctx context.Context, c *cut, s *spot, plugs []solid.Piece) error {
	s.Seen, s.Covered, s.By = 0, 0, ""
	if len(c.others) > 0 {
		scene := c.scene
		scene.Cameras = c.others
		first := len(scene.Bodies)
		scene.Bodies = append(append([]sight.Body(nil), scene.Bodies...), s.bodies(plugs)...)
		seen, err := sight.See(ctx, &scene, sight.Options{Workers: a.Workers})
		if err != nil {
			return err
		}
		n := len(c.frames)
		shows, inFrame := make([]bool, n), make([]bool, n)
		most := 0
		for i := range scene.Cameras {
			mine := make([]bool, n)
			for b := first; b < len(scene.Bodies); b++ {
				for _, r := range seen.Of(i, b) {
					for f := r.From; f <= r.To; f++ {
						inFrame[f] = true
						if r.At(f).Visible > 0 {
							mine[f], shows[f] = true, true
						}
					}
				}
			}
			if k := count(mine); k > most {
				most, s.By = k, scene.Cameras[i].Name
			}
		}
		s.Seen = a.share(c, count(shows))
		s.Covered = max(0, a.share(c, count(inFrame))-s.Seen)
	}
	s.Score = score(s.Sees, float64(s.Seen)/float64(a.seconds(float64(a.Frames.To-a.Frames.From)+1)), s.Tall)
	return nil
}

func count(list []bool) int {
	n := 0
	for _, b := range list {
		if b {
			n++
		}
	}
	return n
}

// bodies are what others would see of a spot.
func (s *spot) bodies(plugs []solid.Piece) []sight.Body {
	box := func(name string, at geom.Vec, heading, long, wide, z0, z1 float64) sight.Body {
		l, w := long/2, wide/2
		return sight.Body{Name: "\x00" + name, Of: "\x00" + name, Kind: "camera",
			Polygon: []geom.Vec{{X: l, Y: -w}, {X: l, Y: w}, {X: -l, Y: w}, {X: -l, Y: -w}},
			Track:   []sight.Pose{{X: at.X, Y: at.Y, Z: z0, Heading: heading, Height: z1 - z0}}}
	}
	if s.Wall == nil {
		return []sight.Body{{Name: "\x00legs", Of: "\x00legs", Kind: "rig", Radius: sticks,
			Track: []sight.Pose{{X: s.At.X, Y: s.At.Y, Z: s.z, Height: s.pupil.Z - s.z + overLens}}}}
	}
	up := float64(s.Up)
	heading := s.normal.Angle()
	out := []sight.Body{box("camera", s.At.Sub(s.normal.Mul(thickness(s.Wall)/2+0.3)), heading, 0.4, 0.2, up-0.125, up+0.125)}
	if plugs == nil { // nothing is cut yet: a plate on both faces stands for the hole
		wide := min(float64(s.Hole.Metres()), float64(mostHole.Metres()))
		return append(out, box("hole", s.At, heading, thickness(s.Wall)+2*faceOff, wide, up-wide/2, up+wide/2))
	}
	for _, p := range plugs {
		plug := staging.Plug(p)
		plug.Name, plug.Of = "\x00plug", "\x00plug"
		out = append(out, plug)
	}
	return out
}

// exact works out a spot at every frame of a cut, with the hole cut and the lens
// behind it.
func (a *Ask) exact(ctx context.Context, c *cut, floors *solid.Floors, s *spot) error {
	var plugs []solid.Piece
	if s.Wall == nil {
		if _, ok := a.onFloor(c, floors, s.At, s.pupil.Z-s.z); !ok {
			s.Sees, s.Score, s.Checked = 0, 0, true // somebody passes there
			return nil
		}
	} else {
		s.pupil = s.At.Sub(s.normal.Mul(holeThick(s.Wall)/2 + pupilBehind)).At(float64(s.Up))
		wide := a.needed(s, a.views(c, s))
		s.Hole = units.Millimetres(math.Ceil(float64(wide)/5-1e-9) * 5) // as one measures it
		if s.Hole > mostHole {
			s.Sees, s.Score, s.Checked = 0, 0, true
			return nil
		}
		c, plugs = a.holed(c, s.hole())
	}
	was := s.Hole
	one := []spot{*s}
	if err := a.look(ctx, c, one); err != nil {
		return err
	}
	*s = one[0]
	s.Hole = was
	if err := a.expose(ctx, c, s, plugs); err != nil {
		return err
	}
	s.Checked = true
	return nil
}

// hole is the lens hole of a spot as the plan would have it.
func (s *spot) hole() *plan.Hole {
	return &plan.Hole{Ident: plan.Ident{Name: "\x00hole"}, Wall: s.Wall, Along: s.Along, Up: s.Up, Wide: s.Hole.Metres()}
}
