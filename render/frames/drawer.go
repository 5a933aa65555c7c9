package frames

import (
	"longhand/lang/compile"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// Drawer draws the frames of one take. It keeps what does not change from frame
// to frame, never changes once made, and may be used by several goroutines at once.
type Drawer struct {
	r     *compile.Result
	scene *sight.Scene
	set   []fixture
	rules []setLine // lines that belong to no one solid
}

// fixture is a piece of the set.
type fixture struct {
	prism prism
	solid *sight.Solid // nil for glass, which hides nothing
	edges []edge
	class string
}

// setLine is a line of the set with what it is drawn as.
type setLine struct {
	edge  edge
	class string
}

// New prepares a take's frames; nil where the plan was not worked out so far as to
// have any.
func New(r *compile.Result) *Drawer {
	if r == nil || r.Plan == nil || r.Tracks == nil || r.Stage == nil || r.Stage.Scene == nil {
		return nil
	}
	d := &Drawer{r: r, scene: r.Stage.Scene}
	d.pieces()
	d.hung()
	return d
}

// pieces makes fixtures of the set's solids: edges without the seams between the
// pieces of one wall, and with the lines in which different things meet.
func (d *Drawer) pieces() {
	things := map[plan.Thing][]int{}
	next := 0
	for i := range d.r.Stage.Pieces {
		p := &d.r.Stage.Pieces[i]
		var s *sight.Solid
		if !p.Glass && p.Hole == nil {
			s = &d.scene.Solids[next] // staging keeps their order
			next++
		}
		if p.Hole != nil {
			continue
		}
		pr, ok := newPrism(p.Polygon, p.Z[0], p.Z[1], isRound(p))
		if !ok {
			continue
		}
		f := fixture{prism: pr, solid: s, class: "frame-edge"}
		if s == nil {
			f.class = "frame-glass"
		}
		if p.Door == nil { // a door is a thing of its own in its wall
			things[p.Thing] = append(things[p.Thing], len(d.set))
		}
		d.set = append(d.set, f)
	}
	for i := range d.set {
		d.set[i].edges = d.set[i].prism.edges()
	}
	for _, group := range things {
		for _, i := range group {
			var others []*prism
			for _, j := range group {
				if j != i {
					others = append(others, &d.set[j].prism)
				}
			}
			d.set[i].edges = withoutSeams(d.set[i].edges, others)
		}
	}
	for i := range d.set {
		for j := i + 1; j < len(d.set); j++ {
			a, b := &d.set[i], &d.set[j]
			if a.solid == nil || b.solid == nil || a.solid.Shut != nil || b.solid.Shut != nil {
				continue
			}
			for _, e := range meeting(&a.prism, &b.prism) {
				d.rules = append(d.rules, setLine{e, "frame-edge"})
			}
		}
	}
}

func isRound(p *solid.Piece) bool {
	_, pillar := p.Thing.(*plan.Pillar)
	return pillar
}

// hung is what hangs on walls: mirrors and glows, on both faces.
func (d *Drawer) hung() {
	add := func(a, b geom.Vec, z [2]float64, class string) {
		out := a.Sub(b).Unit().Left()
		n := geom.Vec3{X: -out.X, Y: -out.Y}
		corners := [4]geom.Vec3{a.At(z[0]), b.At(z[0]), b.At(z[1]), a.At(z[1])}
		for i, c := range corners {
			d.rules = append(d.rules, setLine{edge{a: c, b: corners[(i+1)%4], n1: n, n2: n}, class})
		}
	}
	for _, m := range d.scene.Mirrors {
		add(m.A, m.B, m.Z, "frame-mirror")
	}
	for _, g := range d.scene.Glows {
		add(g.A, g.B, g.Z, "frame-glow")
	}
}

// there says whether a solid stands at a frame.
func there(s *sight.Solid, f units.Frame) bool {
	if s.Shut == nil {
		return true
	}
	for _, r := range s.Shut {
		if r.From <= f && f <= r.To {
			return true
		}
	}
	return false
}
