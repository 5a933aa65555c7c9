package frames

import (
	"math"
	"sort"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/render/scene"
)

// sides is how many corners stand for a circle.
const sides = 24

func (p *picture) body(l *layer, b *sight.Body, thing plan.Thing) {
	p.bodyAt(l, b, thing, b.At(p.f), b.Polygon)
}

// bodyAt draws a body at a pose, with a footprint in its own frame if it isn't round.
func (p *picture) bodyAt(l *layer, b *sight.Body, thing plan.Thing, at sight.Pose, footprint []geom.Vec) {
	if !(at.Height > 0) {
		return
	}
	class := "frame-machine"
	switch b.Kind {
	case "performer":
		class = "frame-performer"
	case "crew":
		class = "frame-crew"
	}
	floor := geom.Vec{X: at.X, Y: at.Y}
	if who, ok := thing.(*plan.Person); ok && b.Radius > 0 {
		if at.Z < p.lens.at.Z && p.lens.at.Z < at.Z+at.Height && floor.Dist(p.lens.at.Floor()) < b.Radius {
			return
		}
		posture, stature := body.Standing, at.Height
		if tr := p.d.r.Tracks.Body(who); tr != nil {
			posture, stature = tr.Posture(p.d.r.Tracks.Rate.Time(p.f)), float64(tr.Stature)
		}
		if fig := newFigure(p.lens, at, b.Radius, posture, stature); fig != nil && p.figure(l, fig, floor, class) {
			return
		}
	}
	polygon := geom.Polygon(footprint)
	if b.Radius > 0 {
		polygon = nil
		for i := range sides {
			polygon = append(polygon, geom.Polar(b.Radius, 2*math.Pi*float64(i)/sides))
		}
	}
	pr, ok := newPrism(polygon.Placed(floor, at.Heading), at.Z, at.Z+at.Height, b.Radius > 0)
	if !ok {
		return
	}
	p.prism(l, &pr, pr.edges(), class, true)
	switch {
	case b.Kind == "camera":
		p.glass(l, at, polygon)
	case b.Kind == "vehicle" && b.Name == b.Of:
		p.wheels(l, at, polygon)
	}
}

// circle adds a ring in the world that faces a way.
func (p *picture) circle(l *layer, centre geom.Vec3, u, w geom.Vec3, radius float64, class string) {
	normal := cross(u, w)
	if normal.Dot(p.lens.at.Sub(centre)) <= 0 {
		return
	}
	var points []geom.Vec3
	for i := range sides + 1 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / sides)
		points = append(points, p.lens.see(centre.Add(u.Mul(radius*c)).Add(w.Mul(radius*s))))
	}
	l.lines = append(l.lines, line{class, points})
}

// glass is the front of another camera's lens.
func (p *picture) glass(l *layer, at sight.Pose, polygon geom.Polygon) {
	ahead := 0.0
	for _, v := range polygon {
		ahead = max(ahead, v.X)
	}
	left := geom.Polar(1, at.Heading).Left().At(0)
	centre := geom.Vec{X: at.X, Y: at.Y}.Add(geom.Polar(ahead, at.Heading)).At(at.Z + at.Height/2)
	p.circle(l, centre, left, skyward, 0.08, "frame-detail")
	p.circle(l, centre, left, skyward, 0.05, "frame-detail")
}

// wheels tell a vehicle from a box (common practice, no source: wheels 0.64 m
// across, a fifth of the length from either end).
func (p *picture) wheels(l *layer, at sight.Pose, polygon geom.Polygon) {
	low, high := geom.Bounds(polygon)
	if at.Z > 0.4 || high.X-low.X < 1.5 {
		return
	}
	const radius = 0.32
	ahead := geom.Polar(1, at.Heading)
	for _, y := range [2]float64{low.Y, high.Y} {
		u := ahead.At(0)
		if y > 0 {
			u = u.Mul(-1)
		}
		for _, k := range [2]float64{0.2, 0.8} {
			x := low.X + k*(high.X-low.X)
			c := geom.Vec{X: at.X, Y: at.Y}.Add(ahead.Mul(x)).Add(ahead.Left().Mul(y))
			p.circle(l, c.At(at.Z+radius), u, skyward, radius, "frame-machine")
			p.circle(l, c.At(at.Z+radius), u, skyward, radius*0.45, "frame-detail")
		}
	}
}

// apart is how far the nearer limb of a figure stands before the next, in metres:
// more than slack, so that it hides it.
const apart = 3 * slack

// figure adds a person: each limb hides those behind it and, with them, what is
// behind the person. It is false where the lens looks too steeply down on them.
func (p *picture) figure(l *layer, fig *figure, floor geom.Vec, class string) bool {
	to := floor.Sub(p.lens.at.Floor())
	distance := to.Len()
	n := p.lens.turn(to.Unit().At(0))
	order := make([]int, len(fig.parts))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(i, j int) bool { return fig.parts[order[i]].depth > fig.parts[order[j]].depth })
	planes := make([]float64, len(fig.parts))
	for rank, i := range order {
		planes[i] = distance - apart*float64(rank+1)
	}
	raise := func(s scene.Point, d float64) (geom.Vec3, bool) {
		r := p.lens.ray(s)
		k := n.Dot(r)
		if !(k > 0.05) || d < 0.05 {
			return geom.Vec3{}, false
		}
		return r.Mul(d / k), true
	}
	detail, hair := "frame-detail", "frame-hair"
	if fig.box.Height() < small {
		class, detail, hair = class+"-far", "frame-detail-far", "frame-detail-far"
	}
	var lines []line
	var hiders []*occluder
	for i, part := range fig.parts {
		ring := make([]geom.Vec3, 0, len(part.ring)+1)
		for _, s := range part.ring {
			q, ok := raise(s, planes[i])
			if !ok {
				return false
			}
			ring = append(ring, q)
		}
		if len(ring) < 3 {
			continue
		}
		hiders = append(hiders, flatOccluder(ring, n, planes[i]))
		lines = append(lines, line{class, append(ring, ring[0])})
	}
	for _, m := range fig.lines {
		if fig.box.Height() < tiny && !m.hair {
			continue
		}
		var points []geom.Vec3
		for _, s := range m.points {
			if q, ok := raise(s, planes[m.part]); ok {
				points = append(points, q)
			}
		}
		kind := detail
		if m.hair {
			kind = hair
		}
		lines = append(lines, line{kind, points})
	}
	p.hiders = append(p.hiders, hiders...)
	l.lines = append(l.lines, lines...)
	return true
}

// A figure lower than small on paper, in millimetres, is drawn with thinner lines;
// one lower than tiny without a face.
const (
	small = 18.0
	tiny  = 9.0
)
