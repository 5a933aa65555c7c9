package sight

import (
	"fmt"
	"math"
	"math/rand/v2"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// load is the size of a made-up take to measure with. The reference is ten
// minutes at 24 frames a second, four cameras and sixty bodies among 200
// upright faces on a floor of 30 by 20 metres.
type load struct {
	walled                  bool // walls and doors; else pillars and blocks only
	frames, cameras, bodies int
}

func referenceLoad(walled bool) load {
	return load{walled: walled, frames: 14400, cameras: 4, bodies: 60}
}

// rooms are three by two, ten metres square, with a door between neighbours.
type loadDoor struct {
	at   geom.Vec
	a, b int // the rooms it joins
	turn bool
}

func loadDoors() []loadDoor {
	return []loadDoor{
		{geom.Vec{X: 10, Y: 4}, 0, 1, true}, {geom.Vec{X: 10, Y: 15}, 3, 4, true},
		{geom.Vec{X: 20, Y: 5}, 1, 2, true}, {geom.Vec{X: 20, Y: 16}, 4, 5, true},
		{geom.Vec{X: 5, Y: 10}, 0, 3, false}, {geom.Vec{X: 15, Y: 10}, 1, 4, false}, {geom.Vec{X: 25, Y: 10}, 2, 5, false},
	}
}

// scene makes the load; the same load is the same scene.
func (l load) scene() *Scene {
	r := rand.New(rand.NewPCG(1931, 7))
	s := &Scene{Rate: units.Rate{Num: 24, Den: 1}, Frames: l.frames, Aspect: 1.85}
	if l.walled {
		l.addWalls(r, s)
	}
	for len(s.Solids) < 50 {
		at := geom.Vec{X: 1 + r.Float64()*28, Y: 1 + r.Float64()*18}
		half := geom.Vec{X: 0.1 + r.Float64()*0.8, Y: 0.1 + r.Float64()*0.4}
		kind, top := "block", 0.4+r.Float64()*1.8
		if len(s.Solids)%3 == 0 {
			kind, top, half = "pillar", 4, geom.Vec{X: 0.2, Y: 0.2}
		}
		angle := r.Float64() * math.Pi
		var poly []geom.Vec
		for _, k := range []geom.Vec{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}} {
			poly = append(poly, at.Add(geom.Vec{X: k.X * half.X, Y: k.Y * half.Y}.Rotate(angle)))
		}
		s.Solids = append(s.Solids, Solid{Name: kind, Kind: kind, Polygon: poly, Z: [2]float64{0, top}})
	}
	for i := range l.cameras {
		l.addCamera(r, s, i)
	}
	for len(s.Bodies) < l.bodies {
		l.addBody(r, s)
	}
	return s
}

func (l load) addWalls(r *rand.Rand, s *Scene) {
	add := func(kind string, x0, y0, x1, y1, z float64) {
		s.Solids = append(s.Solids, Solid{Name: kind, Kind: kind, Z: [2]float64{0, z},
			Polygon: []geom.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}})
	}
	const half, leaf = 0.1, 0.6
	for _, x := range []float64{10, 20} {
		from := 0.0
		for _, d := range loadDoors() {
			if d.turn && d.at.X == x {
				add("wall", x-half, from, x+half, d.at.Y-leaf, 3)
				from = d.at.Y + leaf
			}
		}
		add("wall", x-half, from, x+half, 20, 3)
	}
	for i, d := range loadDoors()[4:] {
		add("wall", float64(10*i), d.at.Y-half, d.at.X-leaf, d.at.Y+half, 3)
		add("wall", d.at.X+leaf, d.at.Y-half, float64(10*i+10), d.at.Y+half, 3)
	}
	for _, d := range loadDoors() {
		w, h := leaf, 0.03
		if d.turn {
			w, h = h, w
		}
		add("door", d.at.X-w, d.at.Y-h, d.at.X+w, d.at.Y+h, 2.1)
		shut := []Frames{}
		for f := r.IntN(200); f < l.frames; {
			n := 48 + r.IntN(400)
			shut = append(shut, Frames{units.Frame(f), units.Frame(min(f+n, l.frames) - 1)})
			f += n + 48 + r.IntN(300)
		}
		s.Solids[len(s.Solids)-1].Shut = shut
	}
}

// walk goes from room to room through the doors, at a person's pace with halts.
func (l load) walk(r *rand.Rand) []geom.Vec {
	doors := loadDoors()
	room := r.IntN(6)
	spot := func() geom.Vec {
		return geom.Vec{X: float64(room%3)*10 + 1.5 + r.Float64()*7, Y: float64(room/3)*10 + 1.5 + r.Float64()*7}
	}
	at := spot()
	out := make([]geom.Vec, 0, l.frames)
	pace := (0.8 + r.Float64()*0.8) / 24
	for len(out) < l.frames {
		var way []geom.Vec
		if r.IntN(3) > 0 {
			for _, i := range r.Perm(len(doors)) {
				if d := doors[i]; d.a == room || d.b == room {
					room = d.a + d.b - room
					way = append(way, d.at)
					break
				}
			}
		}
		way = append(way, spot())
		for _, to := range way {
			n := max(1, int(at.Dist(to)/pace))
			for i := range n {
				out = append(out, at.Lerp(to, float64(i)/float64(n)))
			}
			at = to
		}
		for range r.IntN(72) {
			out = append(out, at)
		}
	}
	return out[:l.frames]
}

// addCamera adds a camera with the rig under it and the operator behind it.
func (l load) addCamera(r *rand.Rand, s *Scene, i int) {
	c := Camera{Name: fmt.Sprintf("camera %d", i), Width: 24.89, Height: 13.45, Rolls: []Frames{{0, units.Frame(l.frames - 1)}}}
	way := l.walk(r)
	pan, zoom := r.Float64()*6, r.Float64()*6
	height := 1.2 + r.Float64()*0.6
	rig := Body{Name: c.Name + " rig", Of: c.Name + " rig", Kind: "rig", Polygon: []geom.Vec{{X: -0.3, Y: -0.2}, {X: 0.1, Y: -0.2}, {X: 0.1, Y: 0.2}, {X: -0.3, Y: 0.2}}}
	op := Body{Name: c.Name + " operator", Of: c.Name + " operator", Kind: "crew", Radius: 0.23}
	for f, p := range way {
		t := float64(f) / 24
		v := View{X: p.X, Y: p.Y, Z: height, Pan: pan + 0.3*t*math.Sin(0.05*t) + 0.8*math.Sin(0.4*t),
			Tilt: 0.15 * math.Sin(0.23*t+zoom), Focal: 32 + 14*math.Sin(0.1*t+zoom)}
		c.Track = append(c.Track, v)
		rig.Track = append(rig.Track, Pose{X: p.X, Y: p.Y, Heading: v.Pan, Height: height - 0.2})
		b := p.Add(geom.Polar(-0.6, v.Pan))
		op.Track = append(op.Track, Pose{X: b.X, Y: b.Y, Heading: v.Pan, Height: 1.75})
	}
	all := c.Rolls[0]
	c.Own = []Own{{rig.Name, all}, {op.Name, all}}
	s.Cameras = append(s.Cameras, c)
	s.Bodies = append(s.Bodies, rig, op)
}

func (l load) addBody(r *rand.Rand, s *Scene) {
	i := len(s.Bodies)
	b := Body{Name: fmt.Sprintf("body %d", i), Kind: "performer", Radius: 0.23}
	height := 1.5 + r.Float64()*0.4
	if i%3 == 0 {
		b.Kind, b.Radius, height = "vehicle", 0, 0.6+r.Float64()
		b.Polygon = []geom.Vec{{X: -0.9, Y: -0.4}, {X: 0.9, Y: -0.4}, {X: 0.9, Y: 0.4}, {X: -0.9, Y: 0.4}}
	}
	b.Of = b.Name
	way := l.walk(r)
	heading := 0.0
	for f, p := range way {
		if f > 0 && way[f-1] != p {
			heading = p.Sub(way[f-1]).Angle()
		}
		b.Track = append(b.Track, Pose{X: p.X, Y: p.Y, Heading: heading, Height: height})
	}
	s.Bodies = append(s.Bodies, b)
}
