package frames

import (
	"math"

	"longhand/lang/geom"
)

// edge is a line of the world with the outward directions of the two faces that
// meet at it.
type edge struct {
	a, b   geom.Vec3
	n1, n2 geom.Vec3
	// round edges stand for a curved surface: they are drawn only where one face
	// is turned to the lens and the other away.
	round bool
}

// prism is an upright solid of the world.
type prism struct {
	polygon geom.Polygon // counter-clockwise
	parts   []geom.Polygon
	z       [2]float64
	round   bool // its sides stand for a curved surface
}

func newPrism(polygon []geom.Vec, z0, z1 float64, round bool) (prism, bool) {
	p := geom.Polygon(polygon).Clean()
	if len(p) < 3 || !(z1 > z0) {
		return prism{}, false
	}
	parts, _ := p.ConvexParts()
	return prism{p, parts, [2]float64{z0, z1}, round}, len(parts) > 0
}

// sideNormal is the outward direction of side i.
func sideNormal(p geom.Polygon, i int) geom.Vec3 {
	d := p[(i+1)%len(p)].Sub(p[i]).Unit()
	return geom.Vec3{X: d.Y, Y: -d.X}
}

var skyward = geom.Vec3{Z: 1}

// edges are the lines of a prism.
func (p *prism) edges() []edge {
	n := len(p.polygon)
	out := make([]edge, 0, 3*n)
	for i, v := range p.polygon {
		next := p.polygon[(i+1)%n]
		side := sideNormal(p.polygon, i)
		before := sideNormal(p.polygon, (i+n-1)%n)
		out = append(out,
			edge{v.At(p.z[0]), next.At(p.z[0]), side, skyward.Mul(-1), false},
			edge{v.At(p.z[1]), next.At(p.z[1]), side, skyward, false},
			edge{v.At(p.z[0]), v.At(p.z[1]), before, side, p.round})
	}
	return out
}

// occluders are what the prism hides; ok is false where the lens is within it.
func (p *prism) occluders(l *lens) (out []*occluder, ok bool) {
	if p.z[0] < l.at.Z && l.at.Z < p.z[1] && p.polygon.Locate(l.at.Floor()) == geom.Inside {
		return nil, false
	}
	for _, part := range p.parts {
		n := len(part)
		points := make([]geom.Vec3, 2*n)
		top, bottom := make([]int, n), make([]int, n)
		var faces []face
		for i, v := range part {
			points[i], points[n+i] = l.see(v.At(p.z[0])), l.see(v.At(p.z[1]))
			top[i], bottom[i] = n+i, n-1-i
			j := (i + 1) % n
			faces = append(faces, face{[]int{i, j, n + j, n + i}, l.turn(sideNormal(part, i))})
		}
		faces = append(faces, face{top, l.turn(skyward)}, face{bottom, l.turn(skyward.Mul(-1))})
		if o := solidOccluder(points, faces); o != nil {
			out = append(out, o)
		}
	}
	return out, true
}

// faces are the flat faces of a convex prism in the world, for telling which
// edges only join pieces of one surface.
type flat struct {
	normal geom.Vec3
	offset float64
	ring   []geom.Vec3
}

func (p *prism) flats() []flat {
	n := len(p.polygon)
	var out []flat
	top, bottom := make([]geom.Vec3, n), make([]geom.Vec3, n)
	for i, v := range p.polygon {
		next := p.polygon[(i+1)%n]
		side := sideNormal(p.polygon, i)
		out = append(out, flat{side, side.Dot(v.At(0)), []geom.Vec3{v.At(p.z[0]), next.At(p.z[0]), next.At(p.z[1]), v.At(p.z[1])}})
		top[i], bottom[n-1-i] = v.At(p.z[1]), v.At(p.z[0])
	}
	return append(out, flat{skyward, p.z[1], top}, flat{skyward.Mul(-1), -p.z[0], bottom})
}

// touch is how close two surfaces are to count as one, in metres.
const touch = 1e-3

// on is the part of a line, as parameters, that lies on the face.
func (f *flat) on(a, b geom.Vec3) (t0, t1 float64, ok bool) {
	if math.Abs(f.normal.Dot(a)-f.offset) > touch || math.Abs(f.normal.Dot(b)-f.offset) > touch {
		return 0, 0, false
	}
	t0, t1 = 0, 1
	for i, p := range f.ring {
		d := f.ring[(i+1)%len(f.ring)].Sub(p)
		in := cross(f.normal, d)
		l := in.Len()
		if l == 0 {
			continue
		}
		in = in.Mul(1 / l)
		fa, fb := in.Dot(a.Sub(p))+touch, in.Dot(b.Sub(p))+touch
		switch {
		case fa < 0 && fb < 0:
			return 0, 0, false
		case fa < 0:
			t0 = max(t0, fa/(fa-fb))
		case fb < 0:
			t1 = min(t1, fa/(fa-fb))
		}
	}
	return t0, t1, t0 < t1
}
