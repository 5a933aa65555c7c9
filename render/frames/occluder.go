package frames

import (
	"math"
	"sort"

	"longhand/lang/geom"
)

// slack is how far inside a solid's shadow a point must be to be hidden by it, in
// metres: what lies on its own surface is not.
const slack = 1e-3

// plane keeps the points with n·p >= d.
type plane struct {
	n geom.Vec3
	d float64
}

// occluder is the space that one convex solid hides from the lens, in the lens's
// own coordinates: behind the faces turned to the lens and within the cone over
// its outline. It is the meeting of half spaces.
type occluder struct {
	planes []plane
	// on paper, to leave out quickly what it cannot hide; all of it where it
	// reaches behind the lens
	low, high [2]float64
	nearest   float64 // least distance along the axis
}

// hides is the part of a line from a to b, as parameters, that is hidden; ok is
// false where nothing is.
func (o *occluder) hides(a, b geom.Vec3) (t0, t1 float64, ok bool) {
	t0, t1 = 0, 1
	for i := range o.planes {
		p := &o.planes[i]
		fa, fb := p.n.Dot(a)-p.d-slack, p.n.Dot(b)-p.d-slack
		switch {
		case fa <= 0 && fb <= 0:
			return 0, 0, false
		case fa <= 0:
			t0 = max(t0, fa/(fa-fb))
		case fb <= 0:
			t1 = min(t1, fa/(fa-fb))
		}
		if t0 >= t1 {
			return 0, 0, false
		}
	}
	return t0, t1, true
}

// face is a face of a convex solid: its corners, by number, and its outward normal.
type face struct {
	corners []int
	normal  geom.Vec3
}

// solidOccluder is the occluder of a convex solid; nil where the lens is within
// it.
func solidOccluder(points []geom.Vec3, faces []face) *occluder {
	o := &occluder{}
	var middle geom.Vec3
	for _, p := range points {
		middle = middle.Add(p.Mul(1 / float64(len(points))))
	}
	type edge struct{ a, b int }
	front := map[edge]bool{}
	var order []edge
	for _, f := range faces {
		p := points[f.corners[0]]
		// The lens is the origin: it is outside a face whose plane it is beyond.
		if d := f.normal.Dot(p); d < 0 {
			o.planes = append(o.planes, plane{f.normal.Mul(-1), -d})
			for i, a := range f.corners {
				e := edge{a, f.corners[(i+1)%len(f.corners)]}
				front[e] = true
				order = append(order, e)
			}
		}
	}
	if len(o.planes) == 0 {
		return nil
	}
	for _, e := range order {
		if !front[edge{e.b, e.a}] { // the face on its other side is turned away
			o.cone(points[e.a], points[e.b], middle)
		}
	}
	o.bounds(points)
	return o
}

// flatOccluder is the occluder of a flat convex figure that lies on a plane n·p =
// d, d above 0.
func flatOccluder(points []geom.Vec3, n geom.Vec3, d float64) *occluder {
	o := &occluder{planes: []plane{{n, d}}}
	var middle geom.Vec3
	for _, p := range points {
		middle = middle.Add(p.Mul(1 / float64(len(points))))
	}
	for i, a := range points {
		o.cone(a, points[(i+1)%len(points)], middle)
	}
	o.bounds(points)
	return o
}

// cone adds the plane through the lens and an edge, the middle being inside.
func (o *occluder) cone(a, b, middle geom.Vec3) {
	n := cross(a, b)
	if l := n.Len(); l > 1e-12 {
		n = n.Mul(1 / l)
		if n.Dot(middle) < 0 {
			n = n.Mul(-1)
		}
		o.planes = append(o.planes, plane{n, 0})
	}
}

func (o *occluder) bounds(points []geom.Vec3) {
	inf := math.Inf(1)
	o.low, o.high, o.nearest = [2]float64{inf, inf}, [2]float64{-inf, -inf}, inf
	for _, p := range points {
		o.nearest = min(o.nearest, p.Z)
		if p.Z < near {
			o.low, o.high = [2]float64{-inf, -inf}, [2]float64{inf, inf}
			return
		}
		x, y := p.X/p.Z, p.Y/p.Z
		o.low = [2]float64{min(o.low[0], x), min(o.low[1], y)}
		o.high = [2]float64{max(o.high[0], x), max(o.high[1], y)}
	}
}

// shown is what is left of a line, already cut to the frame, when everything that
// hides part of it has been taken out.
func shown(a, b geom.Vec3, hiders []*occluder) [][2]geom.Vec3 {
	type gap struct{ from, to float64 }
	var gaps []gap
	x0, x1 := min(a.X/a.Z, b.X/b.Z), max(a.X/a.Z, b.X/b.Z)
	y0, y1 := min(a.Y/a.Z, b.Y/b.Z), max(a.Y/a.Z, b.Y/b.Z)
	deepest := max(a.Z, b.Z)
	for _, o := range hiders {
		if o.nearest > deepest || x1 < o.low[0] || x0 > o.high[0] || y1 < o.low[1] || y0 > o.high[1] {
			continue
		}
		if t0, t1, ok := o.hides(a, b); ok {
			gaps = append(gaps, gap{t0, t1})
		}
	}
	sort.Slice(gaps, func(i, j int) bool { return gaps[i].from < gaps[j].from })
	var out [][2]geom.Vec3
	at := 0.0
	for _, g := range append(gaps, gap{1, 1}) {
		if g.from > at {
			out = append(out, [2]geom.Vec3{lerp(a, b, at), lerp(a, b, g.from)})
		}
		at = max(at, g.to)
	}
	return out
}
