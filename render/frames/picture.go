package frames

import (
	"math"
	"strconv"

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
	g.Add(p.mirrors()...)
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
	// window is what a picture in a mirror is cut to: all of the frame if empty.
	window []plane
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
	own := p.own()
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

// own is what the camera brings with it at the frame, and so doesn't see.
func (p *picture) own() map[string]bool {
	out := map[string]bool{}
	for _, o := range p.d.scene.Cameras[p.camera].Own {
		if o.From <= p.f && p.f <= o.To {
			out[o.Body] = true
		}
	}
	return out
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
