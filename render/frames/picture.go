package frames

import (
	"math"
	"sort"
	"strconv"

	"longhand/lang/body"
	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/scene"
)

// Draw is the picture of a camera at a frame, in a box on the sheet whose
// proportions should be the frame's; nil where there is none, as without a lens.
func Draw(r *compile.Result, camera *plan.Camera, f units.Frame, box scene.Box) *scene.Group {
	return New(r).Draw(camera, f, box)
}

// Draw is the picture of a camera at a frame.
func (d *Drawer) Draw(camera *plan.Camera, f units.Frame, box scene.Box) *scene.Group {
	c := d.camera(camera)
	if c < 0 || !(box.Width() > 0 && box.Height() > 0) {
		return nil
	}
	cam := &d.scene.Cameras[c]
	if f < 0 || int(f) >= d.scene.Frames || len(cam.Track) == 0 {
		return nil
	}
	v := cam.At(f)
	if !(v.Focal > 0 && cam.Width > 0 && cam.Height > 0) {
		return nil
	}
	p := &picture{d: d, camera: c, f: f, lens: newLens(v, cam.Width, box)}
	p.collect()
	id := []string{"frame", camera.Name, strconv.Itoa(int(f))}
	g := &scene.Group{ID: scene.ID(id...), Class: "frame-picture", Title: "what " + camera.Name + " sees at frame " + strconv.Itoa(int(f))}
	g.Add(&scene.Rect{Class: "frame-paper", Box: box})
	thirds := &scene.Group{Title: "thirds"}
	for _, k := range [2]float64{1. / 3, 2. / 3} {
		x, y := box.Min.X+k*box.Width(), box.Min.Y+k*box.Height()
		thirds.Add(scene.Line("frame-thirds", scene.Pt(x, box.Min.Y), scene.Pt(x, box.Max.Y)),
			scene.Line("frame-thirds", scene.Pt(box.Min.X, y), scene.Pt(box.Max.X, y)))
	}
	g.Add(thirds)
	g.Add(p.draw()...)
	g.Add(p.labels(), &scene.Rect{Class: "frame-line", Box: box})
	return g
}

// Found is the picture of a camera at a frame with a part of it, as fractions of its
// width and height from the left and from the bottom, framed by a dashed line.
func (d *Drawer) Found(camera *plan.Camera, f units.Frame, box scene.Box, part sight.Box) *scene.Group {
	g := d.Draw(camera, f, box)
	if g == nil || !(part.Right > part.Left && part.Top > part.Bottom) {
		return g
	}
	at := scene.Box{
		Min: scene.Pt(box.Min.X+part.Left*box.Width(), box.Max.Y-part.Top*box.Height()),
		Max: scene.Pt(box.Min.X+part.Right*box.Width(), box.Max.Y-part.Bottom*box.Height()),
	}.Grow(0.8)
	at.Min = scene.Pt(max(at.Min.X, box.Min.X+0.6), max(at.Min.Y, box.Min.Y+0.6))
	at.Max = scene.Pt(min(at.Max.X, box.Max.X-0.6), min(at.Max.Y, box.Max.Y-0.6))
	if at.Width() > 0 && at.Height() > 0 {
		g.Add(&scene.Rect{Class: "frame-found", Box: at})
	}
	return g
}

func (d *Drawer) camera(c *plan.Camera) int {
	if d == nil {
		return -1
	}
	for i, k := range d.r.Stage.Cameras {
		if k == c {
			return i
		}
	}
	return -1
}

// picture is one frame being drawn.
type picture struct {
	d      *Drawer
	camera int
	f      units.Frame
	lens   *lens
	hiders []*occluder
	layers []*layer
	drawn  []scene.Item // what labels should keep off
}

// layer is the lines of one thing, in the lens's own coordinates.
type layer struct {
	name, title, class string
	lines              []line
}

type line struct {
	class  string
	points []geom.Vec3
}

// collect finds everything there is to see.
func (p *picture) collect() {
	set := &layer{name: "set", title: "the set", class: "frame-set"}
	p.layers = append(p.layers, set)
	for i := range p.d.set {
		fx := &p.d.set[i]
		if fx.solid != nil && !there(fx.solid, p.f) {
			continue
		}
		p.prism(set, &fx.prism, fx.edges, fx.class, fx.solid != nil)
	}
	for _, r := range p.d.rules {
		p.edge(set, r.edge, r.class)
	}
	p.horizon(set)
	own := map[string]bool{}
	for _, o := range p.d.scene.Cameras[p.camera].Own {
		if o.From <= p.f && p.f <= o.To {
			own[o.Body] = true
		}
	}
	layers := map[string]*layer{}
	for i := range p.d.scene.Bodies {
		b := &p.d.scene.Bodies[i]
		if own[b.Name] || len(b.Track) == 0 {
			continue
		}
		l := layers[b.Of]
		if l == nil {
			l = &layer{name: b.Of, title: b.Of + ", " + b.Kind, class: "frame-body"}
			layers[b.Of] = l
			p.layers = append(p.layers, l)
		}
		p.body(l, b, p.d.r.Stage.Things[i])
	}
}

// prism adds a solid and what it hides.
func (p *picture) prism(l *layer, pr *prism, edges []edge, class string, hides bool) {
	if hides {
		hiders, ok := pr.occluders(p.lens)
		if !ok {
			return // the lens is within it
		}
		p.hiders = append(p.hiders, hiders...)
	}
	for _, e := range edges {
		p.edge(l, e, class)
	}
}

// edge adds a line of the world, where it may be seen at all.
func (p *picture) edge(l *layer, e edge, class string) {
	to := p.lens.at.Sub(e.a)
	front1, front2 := e.n1.Dot(to) > 0, e.n2.Dot(to) > 0
	if !front1 && !front2 || e.round && front1 == front2 {
		return
	}
	if class == "frame-edge" && e.a.Z < touch && e.b.Z < touch {
		class = "frame-floor"
	}
	l.lines = append(l.lines, line{class, []geom.Vec3{p.lens.see(e.a), p.lens.see(e.b)}})
}

// horizon is where the floor ends if nothing stands before it.
func (p *picture) horizon(l *layer) {
	const far, wide = 5000, 80 * math.Pi / 180
	v := p.d.scene.Cameras[p.camera].At(p.f)
	at := p.lens.at.Floor()
	a, b := at.Add(geom.Polar(far, v.Pan+wide)), at.Add(geom.Polar(far, v.Pan-wide))
	l.lines = append(l.lines, line{"frame-horizon", []geom.Vec3{p.lens.see(a.At(0)), p.lens.see(b.At(0))}})
}

// sides is how many corners stand for a circle.
const sides = 24

func (p *picture) body(l *layer, b *sight.Body, thing plan.Thing) {
	at := b.At(p.f)
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
	polygon := geom.Polygon(b.Polygon)
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

// A figure lower than small on paper, in millimetres, is drawn with thinner lines;
// one lower than tiny without a face.
const (
	small = 18.0
	tiny  = 9.0
)

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
