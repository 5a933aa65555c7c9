package frames

import (
	"math"
	"slices"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/render/scene"
)

// A mirror shows the bodies before it, turned over across its glass and cut to it,
// behind what stands before the glass and behind what stands before them. The set is
// left out of it but for what it hides: its lines would be taken for the room's own.

// mirrors draws what is seen in each mirror that the lens is before.
func (p *picture) mirrors() []scene.Item {
	var out []scene.Item
	for i := range p.d.scene.Mirrors {
		g := &glass{&p.d.scene.Mirrors[i]}
		if g.before(p.lens.at.Floor()) <= touch {
			continue
		}
		q := &picture{d: p.d, camera: p.camera, f: p.f, lens: p.lens}
		var ok bool
		if q.window, ok = g.window(p.lens); !ok {
			continue
		}
		q.reflect(g)
		if len(q.layers) == 0 {
			continue
		}
		items := q.draw()
		if len(items) == 0 {
			continue
		}
		group := &scene.Group{Class: "frame-body", Title: "in the mirror " + g.Name}
		group.Add(items...)
		out = append(out, group)
		p.drawn = append(p.drawn, q.drawn...)
	}
	return out
}

// glass is one face of a mirror.
type glass struct{ *sight.Mirror }

// before is how far before the face a place is, in metres.
func (g *glass) before(p geom.Vec) float64 {
	return p.Sub(g.A).Dot(g.B.Sub(g.A).Unit().Left())
}

// image is a place turned over across the glass.
func (g *glass) image(p geom.Vec) geom.Vec { return geom.Segment{A: g.A, B: g.B}.Mirror(p) }

// pose is a pose turned over.
func (g *glass) pose(at sight.Pose) sight.Pose {
	v := g.image(geom.Vec{X: at.X, Y: at.Y})
	at.X, at.Y, at.Heading = v.X, v.Y, 2*g.B.Sub(g.A).Angle()-at.Heading
	return at
}

// window is the planes through the lens and the edges of the glass, and the glass
// itself; false where the lens sees it edge on.
func (g *glass) window(l *lens) ([]plane, bool) {
	corners := []geom.Vec3{l.see(g.A.At(g.Z[0])), l.see(g.B.At(g.Z[0])), l.see(g.B.At(g.Z[1])), l.see(g.A.At(g.Z[1]))}
	o := flatOccluder(corners, geom.Vec3{}, 0)
	planes := o.planes[1:]
	if len(planes) != len(corners) {
		return nil, false
	}
	n := l.turn(g.B.Sub(g.A).Unit().Left().Mul(-1).At(0))
	return append(planes, plane{n, n.Dot(corners[0])}), true
}

// clear is how far before the glass something has to stand to hide it, in metres: the
// wall it hangs on doesn't.
const clear = 0.01

// reflect collects the images of what stands before a mirror, and what hides them.
func (p *picture) reflect(g *glass) {
	for i := range p.d.set {
		fx := &p.d.set[i]
		if fx.solid == nil || !there(fx.solid, p.f) {
			continue
		}
		for _, part := range fx.prism.parts {
			part = g.cut(part)
			p.hide(part, fx.prism.z)
			image := make(geom.Polygon, len(part))
			for k, v := range part {
				image[len(part)-1-k] = g.image(v)
			}
			p.hide(image, fx.prism.z)
		}
	}
	own := p.own()
	real := &picture{d: p.d, camera: p.camera, f: p.f, lens: p.lens}
	layers := map[string]*layer{}
	for i := range p.d.scene.Bodies {
		b := &p.d.scene.Bodies[i]
		if len(b.Track) == 0 {
			continue
		}
		at, thing := b.At(p.f), p.d.r.Stage.Things[i]
		if g.before(geom.Vec{X: at.X, Y: at.Y}) <= 0 {
			continue
		}
		if !own[b.Name] {
			real.body(&layer{}, b, thing)
		}
		l := layers[b.Of]
		if l == nil {
			l = &layer{name: b.Of, title: b.Of + " in " + g.Name, class: "frame-body"}
			layers[b.Of] = l
			p.layers = append(p.layers, l)
		}
		footprint := slices.Clone(b.Polygon)
		for k := range footprint {
			footprint[k].Y = -footprint[k].Y
		}
		slices.Reverse(footprint)
		p.bodyAt(l, b, thing, g.pose(at), footprint)
	}
	p.hiders = append(p.hiders, real.hiders...)
}

// hide adds what a solid hides, where it is one.
func (p *picture) hide(polygon geom.Polygon, z [2]float64) {
	if pr, ok := newPrism(polygon, z[0], z[1], false); ok {
		if hiders, ok := pr.occluders(p.lens); ok {
			p.hiders = append(p.hiders, hiders...)
		}
	}
}

// cut is the part of a convex polygon that stands clear before the glass.
func (g *glass) cut(p geom.Polygon) geom.Polygon {
	var out geom.Polygon
	for i, a := range p {
		b := p[(i+1)%len(p)]
		da, db := g.before(a)-clear, g.before(b)-clear
		if da >= 0 {
			out = append(out, a)
		}
		if da*db < 0 && math.Abs(da-db) > 0 {
			out = append(out, a.Lerp(b, da/(da-db)))
		}
	}
	return out
}
