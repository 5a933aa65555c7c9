package gltf

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// key is where a node is at a frame, in glTF's axes.
type key struct {
	at    geom.Vec3
	turn  rotation
	scale float64 // of its height
}

// How far keys may leave a pose off, between them.
const (
	offPlace = 0.001                // metres
	offTurn  = 0.05 * math.Pi / 180 // radians
	offScale = 0.001                // of the height
)

// rotation is a unit quaternion, x, y, z, w.
type rotation [4]float64

func (a rotation) times(b rotation) rotation {
	return rotation{
		a[3]*b[0] + a[0]*b[3] + a[1]*b[2] - a[2]*b[1],
		a[3]*b[1] - a[0]*b[2] + a[1]*b[3] + a[2]*b[0],
		a[3]*b[2] + a[0]*b[1] - a[1]*b[0] + a[2]*b[3],
		a[3]*b[3] - a[0]*b[0] - a[1]*b[1] - a[2]*b[2],
	}
}

func (a rotation) dot(b rotation) float64 {
	return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] + a[3]*b[3]
}

// apart is the angle between two rotations; the chord is used, as the cosine
// cannot tell small angles.
func (a rotation) apart(b rotation) float64 {
	if a.dot(b) < 0 {
		b = rotation{-b[0], -b[1], -b[2], -b[3]}
	}
	s := 0.0
	for i := range a {
		s += (a[i] - b[i]) * (a[i] - b[i])
	}
	return 4 * math.Asin(min(1, math.Sqrt(s)/2))
}

// between is spherical interpolation, as glTF has it for LINEAR rotations.
func (a rotation) between(b rotation, t float64) rotation {
	d := a.dot(b)
	if d < 0 {
		b, d = rotation{-b[0], -b[1], -b[2], -b[3]}, -d
	}
	p, q := 1-t, t
	if angle := math.Acos(min(1, d)); angle > 1e-6 {
		p, q = math.Sin((1-t)*angle)/math.Sin(angle), math.Sin(t*angle)/math.Sin(angle)
	}
	return rotation{p*a[0] + q*b[0], p*a[1] + q*b[1], p*a[2] + q*b[2], p*a[3] + q*b[3]}
}

// turned is a turn about the vertical, then up, then clockwise about the axis
// that looks back, each in radians.
func turned(about, tilt, roll float64) rotation {
	y := rotation{0, math.Sin(about / 2), 0, math.Cos(about / 2)}
	x := rotation{math.Sin(tilt / 2), 0, 0, math.Cos(tilt / 2)}
	z := rotation{0, 0, -math.Sin(roll / 2), math.Cos(roll / 2)}
	return y.times(x).times(z)
}

// chosen are the frames to key, first and last included, so that between them
// off stays within 1 (Ramer 1972, Douglas and Peucker 1973). One that never
// changes has one key.
func chosen(n int, off func(from, at, to int) float64) []int {
	if n == 0 {
		return nil
	}
	keep := make([]bool, n)
	keep[0], keep[n-1] = true, true
	type span struct{ from, to int }
	todo := []span{{0, n - 1}}
	for len(todo) > 0 {
		s := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		worst, at := 1.0, -1
		for i := s.from + 1; i < s.to; i++ {
			if d := off(s.from, i, s.to); d > worst {
				worst, at = d, i
			}
		}
		if at >= 0 {
			keep[at] = true
			todo = append(todo, span{s.from, at}, span{at, s.to})
		}
	}
	var out []int
	for i, k := range keep {
		if k {
			out = append(out, i)
		}
	}
	return out
}

// move puts a node at its first key and animates it where it moves or turns.
func (w *writer) move(n int, keys []key) {
	first := keys[0]
	at, turn := first.place(), first.turn.single()
	w.doc.Nodes[n].Translation, w.doc.Nodes[n].Rotation = &at, &turn
	part := func(from, at, to int) float64 { return float64(at-from) / float64(to-from) }
	moves, turns := false, false
	for _, k := range keys {
		moves = moves || k.at.Sub(first.at).Len() > offPlace/10
		turns = turns || k.turn.apart(first.turn) > offTurn/10
	}
	if moves {
		frames := chosen(len(keys), func(a, i, b int) float64 {
			on := keys[a].at.Add(keys[b].at.Sub(keys[a].at).Mul(part(a, i, b)))
			return on.Sub(keys[i].at).Len() / offPlace
		})
		var v []float32
		for _, f := range frames {
			p := keys[f].place()
			v = append(v, p[:]...)
		}
		w.channel(n, "translation", "LINEAR", frames, v, "VEC3")
	}
	if turns {
		frames := chosen(len(keys), func(a, i, b int) float64 {
			return keys[a].turn.between(keys[b].turn, part(a, i, b)).apart(keys[i].turn) / offTurn
		})
		var v []float32
		last := keys[0].turn
		for _, f := range frames {
			q := keys[f].turn
			if q.dot(last) < 0 { // the short way round
				q = rotation{-q[0], -q[1], -q[2], -q[3]}
			}
			last = q
			s := q.single()
			v = append(v, s[:]...)
		}
		w.channel(n, "rotation", "LINEAR", frames, v, "VEC4")
	}
}

// sizes animates height where somebody kneels or rises, and takes away what
// isn't there.
func (w *writer) sizes(n int, keys []key, there []bool) {
	grows, goes := false, false
	for f, k := range keys {
		grows = grows || math.Abs(k.scale-1) > offScale
		goes = goes || !there[f]
	}
	if goes {
		w.presence(n, there)
		return
	}
	if !grows {
		return
	}
	w.doc.Nodes[n].Scale = &vec3{1, single(keys[0].scale), 1}
	frames := chosen(len(keys), func(a, i, b int) float64 {
		t := float64(i-a) / float64(b-a)
		return math.Abs(keys[a].scale+(keys[b].scale-keys[a].scale)*t-keys[i].scale) / offScale
	})
	var v []float32
	for _, f := range frames {
		v = append(v, 1, single(keys[f].scale), 1)
	}
	w.channel(n, "scale", "LINEAR", frames, v, "VEC3")
}

// presence shows a node at the frames it is there; a size of nothing is how glTF
// says that there is nothing to draw.
func (w *writer) presence(n int, there []bool) {
	size := func(on bool) vec3 {
		if on {
			return vec3{1, 1, 1}
		}
		return vec3{}
	}
	first := size(there[0])
	w.doc.Nodes[n].Scale = &first
	var frames []int
	var v []float32
	for f, on := range there {
		if f == 0 || on != there[f-1] {
			s := size(on)
			frames = append(frames, f)
			v = append(v, s[:]...)
		}
	}
	if len(frames) > 1 {
		w.channel(n, "scale", "STEP", frames, v, "VEC3")
	}
}

func (w *writer) channel(n int, path, interpolation string, frames []int, v []float32, kind string) {
	times := make([]float32, len(frames))
	for i, f := range frames {
		times[i] = w.seconds(units.Frame(f))
	}
	w.anim.Samplers = append(w.anim.Samplers, sampler{
		Input: w.store(times, "SCALAR", 0, true), Interpolation: interpolation, Output: w.store(v, kind, 0, false),
	})
	w.anim.Channels = append(w.anim.Channels, channel{len(w.anim.Samplers) - 1, target{n, path}})
}

func (k key) place() vec3 { return vec3{single(k.at.X), single(k.at.Y), single(k.at.Z)} }

func (a rotation) single() quat {
	return quat{single(a[0]), single(a[1]), single(a[2]), single(a[3])}
}
