package sight

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// The reference: rays in space against upright prisms and cylinders, written
// from the scene's definition alone. It shares nothing with the engine.

type ray struct{ o, d geom.Vec3 }

// hitPrism is the nearest t > 0 at which a ray meets a prism's surface; it
// takes any simple polygon.
func hitPrism(r ray, poly []geom.Vec, z0, z1 float64) float64 {
	best := math.Inf(1)
	for i := range poly {
		a, b := poly[i], poly[(i+1)%len(poly)]
		ex, ey := b.X-a.X, b.Y-a.Y
		det := r.d.X*ey - r.d.Y*ex
		if det == 0 {
			continue
		}
		ax, ay := a.X-r.o.X, a.Y-r.o.Y
		t := (ax*ey - ay*ex) / det
		k := (ax*r.d.Y - ay*r.d.X) / det
		z := r.o.Z + t*r.d.Z
		if t > 0 && t < best && k >= 0 && k <= 1 && z >= z0 && z <= z1 {
			best = t
		}
	}
	for _, z := range []float64{z0, z1} {
		if r.d.Z == 0 {
			continue
		}
		t := (z - r.o.Z) / r.d.Z
		if t > 0 && t < best && inPolygon(geom.Vec{X: r.o.X + t*r.d.X, Y: r.o.Y + t*r.d.Y}, poly) {
			best = t
		}
	}
	return best
}

func inPolygon(p geom.Vec, poly []geom.Vec) bool {
	in := false
	for i, j := 0, len(poly)-1; i < len(poly); j, i = i, i+1 {
		a, b := poly[i], poly[j]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < (b.X-a.X)*(p.Y-a.Y)/(b.Y-a.Y)+a.X {
			in = !in
		}
	}
	return in
}

func hitCylinder(r ray, cx, cy, radius, z0, z1 float64) float64 {
	best := math.Inf(1)
	ox, oy := r.o.X-cx, r.o.Y-cy
	a := r.d.X*r.d.X + r.d.Y*r.d.Y
	b := ox*r.d.X + oy*r.d.Y
	c := ox*ox + oy*oy - radius*radius
	if disc := b*b - a*c; a > 0 && disc >= 0 {
		for _, t := range []float64{(-b - math.Sqrt(disc)) / a, (-b + math.Sqrt(disc)) / a} {
			z := r.o.Z + t*r.d.Z
			if t > 0 && t < best && z >= z0 && z <= z1 {
				best = t
			}
		}
	}
	for _, z := range []float64{z0, z1} {
		if r.d.Z == 0 {
			continue
		}
		t := (z - r.o.Z) / r.d.Z
		x, y := ox+t*r.d.X, oy+t*r.d.Y
		if t > 0 && t < best && x*x+y*y <= radius*radius {
			best = t
		}
	}
	return best
}

// caster holds the world at one frame.
type caster struct {
	s      *Scene
	f      units.Frame
	bodies []castBody
	solids []int
}

type castBody struct {
	there   bool
	poly    []geom.Vec
	x, y, r float64
	z0, z1  float64
}

func newCaster(s *Scene, f units.Frame) *caster {
	c := &caster{s: s, f: f}
	for i, o := range s.Solids {
		shut := o.Shut == nil
		for _, r := range o.Shut {
			shut = shut || r.From <= f && f <= r.To
		}
		if shut {
			c.solids = append(c.solids, i)
		}
	}
	for i := range s.Bodies {
		b := &s.Bodies[i]
		p := b.Track[0]
		if len(b.Track) > 1 {
			p = b.Track[f]
		}
		cb := castBody{there: p.Height > 0, x: p.X, y: p.Y, r: b.Radius, z0: p.Z, z1: p.Z + p.Height}
		for _, v := range b.Polygon {
			cb.poly = append(cb.poly, geom.Vec{
				X: p.X + v.X*math.Cos(p.Heading) - v.Y*math.Sin(p.Heading),
				Y: p.Y + v.X*math.Sin(p.Heading) + v.Y*math.Cos(p.Heading)})
		}
		c.bodies = append(c.bodies, cb)
	}
	return c
}

func (b *castBody) hit(r ray) float64 {
	if !b.there {
		return math.Inf(1)
	}
	if b.r > 0 {
		return hitCylinder(r, b.x, b.y, b.r, b.z0, b.z1)
	}
	return hitPrism(r, b.poly, b.z0, b.z1)
}

func (b *castBody) holds(p geom.Vec3) bool {
	if p.Z <= b.z0 || p.Z >= b.z1 {
		return false
	}
	if b.r > 0 {
		return math.Hypot(p.X-b.x, p.Y-b.y) < b.r
	}
	return inPolygon(p.Floor(), b.poly)
}

// castCamera is the picture plane in space, from the definitions of pan, tilt
// and roll.
type castCamera struct {
	o, fwd, right, up geom.Vec3
	tx, ty            float64
}

func newCastCamera(c *Camera, v View) castCamera {
	k := castCamera{o: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, tx: c.Width / 2 / v.Focal, ty: c.Height / 2 / v.Focal}
	k.fwd = geom.Vec3{X: math.Cos(v.Tilt) * math.Cos(v.Pan), Y: math.Cos(v.Tilt) * math.Sin(v.Pan), Z: math.Sin(v.Tilt)}
	right := geom.Vec3{X: math.Sin(v.Pan), Y: -math.Cos(v.Pan)}
	up := geom.Vec3{X: right.Y*k.fwd.Z - right.Z*k.fwd.Y, Y: right.Z*k.fwd.X - right.X*k.fwd.Z, Z: right.X*k.fwd.Y - right.Y*k.fwd.X}
	k.up = up.Mul(math.Cos(v.Roll)).Add(right.Mul(math.Sin(v.Roll)))
	k.right = right.Mul(math.Cos(v.Roll)).Sub(up.Mul(math.Sin(v.Roll)))
	return k
}

// through is the ray through a point of the frame, in fractions.
func (k *castCamera) through(x, y float64) ray {
	return ray{k.o, k.fwd.Add(k.right.Mul((2*x - 1) * k.tx)).Add(k.up.Mul((2*y - 1) * k.ty))}
}

// at is where a point falls in the frame, and its depth.
func (k *castCamera) at(p geom.Vec3) (x, y, depth float64) {
	d := p.Sub(k.o)
	depth = d.Dot(k.fwd)
	return 0.5 + d.Dot(k.right)/depth/k.tx/2, 0.5 + d.Dot(k.up)/depth/k.ty/2, depth
}

// cast is what a dense grid of rays finds of a body.
type cast struct {
	hits, open int     // rays that would meet the body; that meet it first
	visible    float64 // open over hits
	share      float64 // per cent of the frame
	box        Box
}

// rays casts n x n rays over the body's bounds in the frame.
func (c *caster) rays(camera, body, n int) cast {
	cam := &c.s.Cameras[camera]
	v := cam.Track[0]
	if len(cam.Track) > 1 {
		v = cam.Track[c.f]
	}
	k := newCastCamera(cam, v)
	b := &c.bodies[body]
	out := cast{box: Box{1, 1, 0, 0}}
	skip := func(i int) bool {
		for _, o := range cam.Own {
			if o.Body == c.s.Bodies[i].Name && o.From <= c.f && c.f <= o.To {
				return true
			}
		}
		return c.bodies[i].holds(k.o)
	}
	if !b.there || skip(body) {
		return out
	}
	x0, y0, x1, y1 := b.frameBounds(&k)
	if x0 >= x1 || y0 >= y1 {
		return out
	}
	for j := range n {
		for i := range n {
			x, y := x0+(x1-x0)*(float64(i)+0.5)/float64(n), y0+(y1-y0)*(float64(j)+0.5)/float64(n)
			r := k.through(x, y)
			t := b.hit(r)
			if math.IsInf(t, 1) {
				continue
			}
			out.hits++
			if c.blocked(r, t, body, skip) {
				continue
			}
			out.open++
			out.box.Left, out.box.Right = min(out.box.Left, x), max(out.box.Right, x)
			out.box.Bottom, out.box.Top = min(out.box.Bottom, y), max(out.box.Top, y)
		}
	}
	if out.hits > 0 {
		out.visible = float64(out.open) / float64(out.hits)
		out.share = 100 * float64(out.open) / float64(n*n) * (x1 - x0) * (y1 - y0)
	}
	return out
}

func (c *caster) blocked(r ray, t float64, body int, skip func(int) bool) bool {
	for _, i := range c.solids {
		s := &c.s.Solids[i]
		if r.o.Z > s.Z[0] && r.o.Z < s.Z[1] && inPolygon(r.o.Floor(), s.Polygon) {
			continue
		}
		if hitPrism(r, s.Polygon, s.Z[0], s.Z[1]) < t {
			return true
		}
	}
	for i := range c.bodies {
		if i != body && c.bodies[i].there && c.bodies[i].hit(r) < t && !skip(i) {
			return true
		}
	}
	return false
}

// frameBounds is the bounds of a body in the frame: of its corners where all
// lie ahead, of the whole frame where some do not.
func (b *castBody) frameBounds(k *castCamera) (x0, y0, x1, y1 float64) {
	pts := b.poly
	if b.r > 0 {
		pts = nil
		for i := range 64 {
			// a polygon about the circle
			p := geom.Polar(b.r/math.Cos(math.Pi/64), 2*math.Pi*float64(i)/64)
			pts = append(pts, geom.Vec{X: b.x + p.X, Y: b.y + p.Y})
		}
	}
	x0, y0, x1, y1 = 1, 1, 0, 0
	for _, p := range pts {
		for _, z := range []float64{b.z0, b.z1} {
			x, y, depth := k.at(p.At(z))
			if depth < 0.01 {
				return 0, 0, 1, 1
			}
			x0, x1, y0, y1 = min(x0, x), max(x1, x), min(y0, y), max(y1, y)
		}
	}
	return max(x0, 0), max(y0, 0), min(x1, 1), min(y1, 1)
}
