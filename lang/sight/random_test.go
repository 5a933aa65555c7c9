package sight

import (
	"fmt"
	"math"
	"math/rand/v2"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// kinds of random scene: each a thing the engine must get right.
type randomKind struct {
	name   string
	change func(r *rand.Rand, s *Scene)
}

var randomKinds = []randomKind{
	{"level", func(r *rand.Rand, s *Scene) {}},
	{"tilt", func(r *rand.Rand, s *Scene) {
		eachView(s, func(v *View) { v.Tilt = r.Float64()*1.2 - 0.6 })
	}},
	{"roll", func(r *rand.Rand, s *Scene) {
		eachView(s, func(v *View) { v.Tilt, v.Roll = r.Float64()*0.6-0.3, r.Float64()*3-1.5 })
	}},
	{"steep", func(r *rand.Rand, s *Scene) {
		eachView(s, func(v *View) {
			v.Tilt, v.Roll, v.Z = -1.57+r.Float64()*0.6, r.Float64()*2-1, 3+r.Float64()*3
		})
	}},
	{"straight down", func(r *rand.Rand, s *Scene) {
		eachView(s, func(v *View) { v.Tilt, v.Z = -math.Pi/2, 4+r.Float64()*3 })
	}},
	{"high", func(r *rand.Rand, s *Scene) {
		eachView(s, func(v *View) { v.Z, v.Tilt = 2+r.Float64()*3, -r.Float64()*0.9 })
	}},
	{"near", func(r *rand.Rand, s *Scene) { // bodies round the lens, cut by the camera's plane
		eachView(s, func(v *View) { v.X, v.Y, v.Z, v.Tilt = 0, 0, 1+r.Float64()*1.5, r.Float64()*1.2-0.6 })
		for i := range s.Bodies {
			eachPose(&s.Bodies[i], func(p *Pose) {
				at := geom.Polar(0.3+r.Float64()*1.5, r.Float64()*2*math.Pi)
				p.X, p.Y, p.Z = at.X, at.Y, r.Float64()*2
			})
		}
	}},
	{"stacked", func(r *rand.Rand, s *Scene) { // people on platforms, lamps over them, things on things
		for i := range s.Bodies {
			b := &s.Bodies[i]
			if i%3 == 0 {
				continue
			}
			under := &s.Bodies[i-i%3]
			eachPose(b, func(p *Pose) {
				u := under.Track[0]
				p.X, p.Y = u.X+r.Float64()*0.6-0.3, u.Y+r.Float64()*0.6-0.3
				p.Z = u.Z + u.Height
				if i%3 == 2 {
					p.Z += 2.2
					p.Height = 0.3
				}
			})
		}
		eachView(s, func(v *View) { v.Z, v.Tilt = r.Float64()*5, r.Float64()*0.6-0.3 })
	}},
	{"reaching into each other", func(r *rand.Rand, s *Scene) {
		for i := 1; i < len(s.Bodies); i += 2 {
			eachPose(&s.Bodies[i], func(p *Pose) {
				u := s.Bodies[i-1].Track[0]
				p.X, p.Y = u.X+r.Float64()*0.4-0.2, u.Y+r.Float64()*0.4-0.2
			})
		}
		eachView(s, func(v *View) { v.Z, v.Tilt = r.Float64()*4, r.Float64()*0.4-0.2 })
	}},
	{"touching", touching},
}

func touching(r *rand.Rand, s *Scene) {
	// Blocks and bodies that share faces, edges and corners, and stand on each other.
	s.Solids = nil
	cells := r.Perm(36)
	top := map[int]float64{}
	place := func() (x, y, z, h float64) {
		i := cells[r.IntN(14)]
		h = []float64{0.5, 1, 1.5}[r.IntN(3)]
		z = top[i]
		top[i] += h
		return float64(i%6) - 3, float64(i/6) - 3, z, h
	}
	for range 9 {
		x, y, z, h := place()
		s.Solids = append(s.Solids, box("block", "block", x, y, x+1, y+1, z, z+h))
	}
	for i := range s.Bodies {
		b := &s.Bodies[i]
		x, y, z, h := place()
		b.Radius, b.Polygon = 0, []geom.Vec{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}, {X: 0, Y: 1}}
		if i%3 == 0 {
			b.Radius, b.Polygon = 0.5, nil
			x, y = x+0.5, y+0.5
		}
		eachPose(b, func(p *Pose) { *p = Pose{X: x, Y: y, Z: z, Height: h} })
	}
	eachView(s, func(v *View) { v.Z, v.Tilt = r.Float64()*4, r.Float64()*0.4-0.2 })
}

func eachView(s *Scene, do func(*View)) {
	for i := range s.Cameras {
		for f := range s.Cameras[i].Track {
			do(&s.Cameras[i].Track[f])
		}
	}
}

func eachPose(b *Body, do func(*Pose)) {
	for f := range b.Track {
		do(&b.Track[f])
	}
}

// randomScene has walls with openings, doors, a platform, blocks overhead, a
// bent wall and bodies of every shape, at a few unrelated frames.
func randomScene(r *rand.Rand, frames, cameras, bodies int) *Scene {
	s := &Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: frames, Aspect: 1.85}
	box := func(name, kind string, x0, y0, x1, y1, z0, z1 float64) *Solid {
		s.Solids = append(s.Solids, Solid{Name: name, Kind: kind, Z: [2]float64{z0, z1},
			Polygon: []geom.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}})
		return &s.Solids[len(s.Solids)-1]
	}
	// A wall across with a square hole and a doorway with a door in it.
	y := r.Float64()*2 - 1
	box("wall", "wall", -6, y, -2, y+0.2, 0, 3)
	box("wall", "wall", -2, y, -1.7, y+0.2, 0, 1.2)
	box("wall", "wall", -2, y, -1.7, y+0.2, 1.5, 3)
	box("wall", "wall", -1.7, y, 1, y+0.2, 0, 3)
	box("wall", "wall", 1, y, 2, y+0.2, 2.1, 3)
	box("wall", "wall", 2, y, 6, y+0.2, 0, 3)
	box("door", "door", 1, y+0.05, 2, y+0.15, 0, 2.1).Shut = []Frames{{1, 2}}
	box("gate", "door", -4, y+1.5, -3, y+1.6, 0, 2.1).Shut = []Frames{}
	box("platform", "platform", -5, 2, -2, 5, 0, 0.6)
	box("beam", "block", -1, 2.5, 4, 2.9, 2.0+r.Float64(), 3.2)
	s.Solids = append(s.Solids, Solid{Name: "bend", Kind: "wall", Z: [2]float64{0, 0.8 + r.Float64()*1.5},
		Polygon: []geom.Vec{{X: 3, Y: -4}, {X: 5, Y: -4}, {X: 5, Y: -2}, {X: 4.7, Y: -2}, {X: 4.7, Y: -3.7}, {X: 3, Y: -3.7}}})
	for range 3 {
		at := geom.Vec{X: r.Float64()*12 - 6, Y: r.Float64()*12 - 6}
		w, d, turn := 0.2+r.Float64(), 0.2+r.Float64(), r.Float64()*3
		var poly []geom.Vec
		for _, k := range []geom.Vec{{X: -w, Y: -d}, {X: w, Y: -d}, {X: w, Y: d}, {X: -w, Y: d}} {
			poly = append(poly, at.Add(k.Rotate(turn)))
		}
		if r.IntN(2) == 0 { // either way round
			poly[1], poly[3] = poly[3], poly[1]
		}
		z := r.Float64() * 1.5
		s.Solids = append(s.Solids, Solid{Name: "block", Kind: "block", Polygon: poly, Z: [2]float64{z, z + 0.3 + r.Float64()*2}})
	}
	for i := range bodies {
		b := Body{Name: fmt.Sprintf("body %d", i), Kind: "performer"}
		b.Of = b.Name
		switch i % 4 {
		case 0, 1:
			b.Radius = 0.15 + r.Float64()*0.4
		case 2:
			b.Polygon = []geom.Vec{{X: -1, Y: -0.4}, {X: 1, Y: -0.4}, {X: 1, Y: 0.4}, {X: -1, Y: 0.4}}
		case 3:
			b.Polygon = []geom.Vec{{X: 0.6, Y: 0}, {X: -0.2, Y: 0.5}, {X: -0.3, Y: -0.5}}
		}
		for range frames {
			p := Pose{X: r.Float64()*12 - 6, Y: r.Float64()*12 - 6, Heading: r.Float64() * 6, Height: 0.3 + r.Float64()*1.7}
			if r.IntN(3) == 0 {
				p.Z = r.Float64() * 2
			}
			if r.IntN(12) == 0 {
				p.Height = 0
			}
			b.Track = append(b.Track, p)
		}
		s.Bodies = append(s.Bodies, b)
	}
	for i := range cameras {
		c := Camera{Name: fmt.Sprintf("camera %d", i), Width: 24.89, Height: 13.45, Rolls: []Frames{{0, units.Frame(frames - 1)}}}
		c.Own = []Own{{Body: s.Bodies[i].Name, Frames: Frames{0, units.Frame(frames / 2)}}}
		for range frames {
			at := geom.Polar(3+r.Float64()*6, r.Float64()*2*math.Pi)
			c.Track = append(c.Track, View{X: at.X, Y: at.Y, Z: 0.4 + r.Float64()*1.6,
				Pan: at.Mul(-1).Angle() + r.Float64()*0.8 - 0.4, Focal: 14 + r.Float64()*40})
		}
		s.Cameras = append(s.Cameras, c)
	}
	return s
}
