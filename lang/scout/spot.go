package scout

import (
	"fmt"
	"math"

	"longhand/lang/geom"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// spot is a place on its way to being listed.
type spot struct {
	Place
	normal geom.Vec  // the way the lens looks out of the wall, level; zero on the floor
	pupil  geom.Vec3 // as it is looked from
	z      float64   // of the floor it stands on
	region int       // the place it was refined from
}

// pupilBehind is how far behind a wall's back face a hidden lens's entrance pupil
// is, metres; faceOff is how far before its face one is looked from while no hole
// is cut yet.
const (
	pupilBehind = 0.03
	faceOff     = 0.005
	edgeOff     = 0.05 // the least left of a wall between a hole and an edge, metres
	standOff    = 0.45 // kept between a camera on the floor and what stands or passes there
	sticks      = 0.3  // radius of a camera on its legs, metres
	overLens    = 0.15 // how far a camera rises over its lens, metres
)

// holeThick is how thick a wall is where a hole goes through it.
func holeThick(w *plan.Wall) float64 {
	if w.ThickGiven {
		return float64(w.Thick)
	}
	return solid.SkinThick
}

// onWall is a place on a wall; false where there is no wall to cut, or no room.
func (a *Ask) onWall(c *cut, w *plan.Wall, along, up float64) (spot, bool) {
	const around = 0.12 // of a hole, until its size is known
	if !roomy(&a.Plan.Set, w, along, up, around) {
		return spot{}, false
	}
	on := plan.On{Wall: w, From: units.Metres(along), To: units.Metres(along)}
	p, _ := on.Ends()
	const near = 0.01
	q, _ := plan.On{Wall: w, From: units.Metres(along - near), To: units.Metres(along - near)}.Ends()
	r, _ := plan.On{Wall: w, From: units.Metres(along + near), To: units.Metres(along + near)}.Ends()
	normal := r.Sub(q).Unit().Left()
	if normal == (geom.Vec{}) {
		return spot{}, false
	}
	s := spot{Place: Place{Wall: w, Along: units.Metres(along), Up: units.Metres(up), At: p, Left: true}, normal: normal}
	first := c.scene.Bodies[c.targets[0][0]].At(units.Frame(len(c.frames) / 2))
	if (geom.Vec{X: first.X, Y: first.Y}).Sub(p).Dot(normal) < 0 {
		s.Left, s.normal = false, normal.Mul(-1)
	}
	s.pupil = p.Add(s.normal.Mul(thickness(w)/2 + faceOff)).At(up)
	// Behind it a camera has to find room.
	behind := p.Sub(s.normal.Mul(thickness(w)/2 + 0.3))
	for i := range c.scene.Solids {
		o := &c.scene.Solids[i]
		if o.Shut == nil && o.Z[0] < up && up < o.Z[1] && geom.Polygon(o.Polygon).Contains(behind) {
			return spot{}, false
		}
	}
	return s, true
}

func thickness(w *plan.Wall) float64 {
	if w.Thick > 0 {
		return float64(w.Thick)
	}
	return solid.WallThick
}

// length of a wall's line.
func length(w *plan.Wall) float64 {
	l := 0.0
	for i := 1; i < len(w.Line); i++ {
		l += w.Line[i].Dist(w.Line[i-1])
	}
	return l
}

// roomy says whether a square about a place on a wall is all wall.
func roomy(set *plan.Set, w *plan.Wall, along, up, wide float64) bool {
	half := wide/2 + edgeOff
	if w.Glass || along-half < 0 || along+half > length(w) || up-half < float64(w.High.Low) || up+half > float64(w.High.High) {
		return false
	}
	// No hole goes round a corner.
	s := 0.0
	for i := 1; i < len(w.Line); i++ {
		s += w.Line[i].Dist(w.Line[i-1])
		if i+1 < len(w.Line) && math.Abs(s-along) < half {
			return false
		}
	}
	free := func(on plan.On, high plan.Range) bool {
		return on.Wall != w || along+half < float64(on.From) || along-half > float64(on.To) || up+half < float64(high.Low) || up-half > float64(high.High)
	}
	for _, d := range set.Doors {
		if !free(d.On, d.High) {
			return false
		}
	}
	for _, p := range set.Windows {
		if !free(p.On, p.High) {
			return false
		}
	}
	for _, m := range set.Mirrors {
		if !free(m.On, m.High) {
			return false
		}
	}
	for _, g := range set.Glows {
		if !free(g.On, g.High) {
			return false
		}
	}
	for _, h := range set.Holes {
		if h.Wall == w && !free(plan.On{Wall: w, From: h.Along - h.Wide/2, To: h.Along + h.Wide/2}, plan.Range{Low: h.Up - h.Wide/2, High: h.Up + h.Wide/2}) {
			return false
		}
	}
	return true
}

// onFloor is a place on the floor; false where something stands or passes there.
func (a *Ask) onFloor(c *cut, floors *solid.Floors, p geom.Vec, up float64) (spot, bool) {
	z := floors.Stand(p)
	s := spot{Place: Place{At: p, Up: units.Metres(up)}, z: z, pupil: p.At(z + up)}
	for i := range c.scene.Solids {
		o := &c.scene.Solids[i]
		if o.Z[0] < z+up+overLens && o.Z[1] > z+0.02 && geom.Polygon(o.Polygon).Distance(p) < sticks {
			return s, false
		}
	}
	for i := range c.scene.Bodies {
		b := &c.scene.Bodies[i]
		clear := reach(b) + standOff
		for k := range b.Track {
			at := &b.Track[k]
			if at.Height > 0 && at.Z < z+up && at.Z+at.Height > z && math.Hypot(at.X-p.X, at.Y-p.Y) < clear {
				return s, false
			}
		}
	}
	return s, true
}

// needed is how wide a hole has to be for a spot, over all the frames of a cut,
// with the usual margin: each corner of the frame followed from the rim of the
// lens's opening to the wall's far face. It is infinite where a corner never gets
// there.
func (a *Ask) needed(s *spot, views []sight.View) units.Millimetres {
	pupil := float64(optics.Pupil(a.Focal, a.stop()).Metres()) / 2
	face := holeThick(s.Wall) + pupilBehind
	across := s.normal.Left()
	half := 0.0
	for i, v := range views {
		if i > 0 && v == views[i-1] {
			continue
		}
		view := optics.View{Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: a.Focal}
		for _, x := range []units.Millimetres{-0.5, 0.5} {
			for _, y := range []units.Millimetres{-0.5, 0.5} {
				ray := view.Ray(x*a.Frame.Width, y*a.Frame.Height)
				ahead := ray.Floor().Dot(s.normal)
				if ahead < 1e-6 {
					return units.Millimetres(math.Inf(1))
				}
				k := face / ahead
				half = max(half, max(math.Abs(k*ray.Floor().Dot(across)), math.Abs(k*ray.Z))+pupil)
			}
		}
	}
	return units.Metres(2*half).Millimetres() + optics.HoleMargin
}

// mostHole is the widest hole that is offered: what is larger is a window, not a
// hole (common practice, no source).
const mostHole units.Millimetres = 400

// In is the place in the words of the plan: "on racks at 6.4 m up 1.45 m", "at
// (4.2, 3.5), lens 1.5 m up".
func (p *Place) In(sys units.System) string {
	if p.Wall != nil {
		return fmt.Sprintf("on %s at %s up %s", p.Wall.Name, p.Along.Text(sys), p.Up.Text(sys))
	}
	return fmt.Sprintf("at %s, lens %s up", point(p.At, sys), p.Up.Text(sys))
}

// point is a place as the plan writes it: in metres or in feet.
func point(p geom.Vec, sys units.System) string {
	k := 1.0
	if sys == units.Feet {
		k = float64(units.Foot)
	}
	return "(" + units.Number(p.X/k, 2) + ", " + units.Number(p.Y/k, 2) + ")"
}
