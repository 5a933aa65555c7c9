package changes

import (
	"strings"

	"longhand/lang/compare"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/render/backdrop"
	"longhand/render/scene"
)

// Draw draws what a comparison tells, as far as it has a place on the floor, on
// a sheet of A3. Ways and the set are drawn whomever the report is for; marks as
// the report has them.
func Draw(r *compare.Report) *scene.Sheet {
	t := &r.New.Plan.Take
	name := t.Title
	if name == "" {
		name = "the take"
	}
	line := r.OldName + revision(r.Old.Plan) + " to " + r.NewName + revision(r.New.Plan) + ": " + r.Summary()
	s, box := backdrop.Sheet(styles(), name+": before and after", line, "What was is grey and dashed, what is is solid: "+r.Summary()+".")
	d := &drawing{r: r, names: backdrop.Names{Box: box}}
	d.was, d.is = pieces(r.Old, r.New)
	d.gather()
	d.view = d.extent().View(box, 1.5)
	s.Add(backdrop.Floor(box, "the floor, before and after", d.set(), d.before(), d.after(), d.moved(), d.still()), d.names.Layer(), d.key(box))
	return s
}

// stretch is a part of a way that is in one plan only.
type stretch struct {
	*way
	points []geom.Vec
}

type drawing struct {
	r       *compare.Report
	view    scene.View
	was, is []piece
	gone    []stretch
	fresh   []stretch
	names   backdrop.Names
	differ  map[string]bool // marks
}

// gather finds what there is to be drawn.
func (d *drawing) gather() {
	list := waysOf(d.r)
	for i := range list {
		w := &list[i]
		for _, s := range differing(w.old, w.new) {
			d.gone = append(d.gone, stretch{w, s})
		}
		for _, s := range differing(w.new, w.old) {
			d.fresh = append(d.fresh, stretch{w, s})
		}
	}
}

// extent is all that differs; where nothing does, the whole set.
func (d *drawing) extent() backdrop.Extent {
	var e backdrop.Extent
	for _, s := range append(append([]stretch(nil), d.gone...), d.fresh...) {
		e.Add(s.points...)
	}
	for _, p := range d.was {
		e.Add(p.Polygon...)
	}
	for _, p := range d.is {
		if !p.same {
			e.Add(p.Polygon...)
		}
	}
	for _, c := range d.r.In(compare.Marks) {
		for _, p := range []*geom.Vec{c.From, c.To} {
			if p != nil {
				e.Add(*p)
			}
		}
	}
	if !e.Any {
		for _, p := range d.is {
			e.Add(p.Polygon...)
		}
		for _, m := range d.r.New.Plan.Set.Marks {
			e.Add(m.Point)
		}
	}
	return e
}

func (d *drawing) set() *scene.Group {
	g := &scene.Group{ID: "set", Class: "set", Title: "the set"}
	for _, p := range d.is {
		if p.same {
			g.Add(backdrop.Piece(p.Piece, d.view, ""))
		}
	}
	for _, p := range d.is {
		if !p.same {
			g.Add(&scene.Group{Title: p.Name + ", new or changed", Items: []scene.Item{backdrop.Piece(p.Piece, d.view, "new-piece")}})
			d.names.Add("ink", p.Name, 3, d.view.Point(geom.Polygon(p.Polygon).Centroid()))
		}
	}
	return g
}

func (d *drawing) before() *scene.Group {
	g := &scene.Group{ID: "before", Class: "before", Title: "before"}
	for _, p := range d.was {
		g.Add(&scene.Group{Title: p.Name + ", as it was", Items: []scene.Item{&scene.Polygon{Class: "old-piece", Points: d.view.Points(p.Polygon)}}})
	}
	for _, s := range d.gone {
		g.Add(d.stroke(s, "old-way", "old-head", s.name+", as it was"))
	}
	return g
}

func (d *drawing) after() *scene.Group {
	g := &scene.Group{ID: "after", Class: "after", Title: "after"}
	longest := map[string]stretch{}
	for _, s := range d.fresh {
		g.Add(d.stroke(s, s.class, s.class+"-head", s.name))
		if geom.NewStraight(s.points...).Length() > length(longest[s.name]) {
			longest[s.name] = s
		}
	}
	for _, s := range d.fresh {
		if l, ok := longest[s.name]; ok {
			delete(longest, s.name)
			d.nameWay(l)
		}
	}
	return g
}

func length(s stretch) float64 {
	if len(s.points) < 2 {
		return -1
	}
	return geom.NewStraight(s.points...).Length()
}

// stroke draws a stretch with a head at its end.
func (d *drawing) stroke(s stretch, class, headClass, title string) *scene.Group {
	pts := d.view.Points(s.points)
	g := &scene.Group{Title: title}
	if len(pts) == 1 || scene.LengthOf(pts) < 0.5 {
		g.Add(&scene.Circle{Class: class, Center: pts[len(pts)-1], Radius: 1.2})
		return g
	}
	g.Add(&scene.Polyline{Class: class, Points: pts})
	at, dir := scene.Along(pts, scene.LengthOf(pts))
	g.Add(scene.ArrowHead(headClass, at, dir, 2.6, 1.8))
	d.names.Avoid(pts)
	return g
}

// moved draws the marks that are not where they were, with the way from the old
// place to the new.
func (d *drawing) moved() *scene.Group {
	g := &scene.Group{ID: "marks", Class: "marks", Title: "marks that differ"}
	d.differ = map[string]bool{}
	for _, c := range d.r.In(compare.Marks) {
		d.differ[c.Name] = d.differ[c.Name] || c.From != nil || c.To != nil
		one := &scene.Group{Title: d.r.Sentence(&c)}
		text := c.Name
		at := scene.Point{}
		if c.From != nil {
			at = d.view.Point(*c.From)
			one.Add(&scene.Circle{Class: "old-mark", Center: at, Radius: 1.4}, scene.Cross("old-mark", at, 1.1))
			text = c.Name + " is gone"
		}
		if c.To != nil {
			to := d.view.Point(*c.To)
			if c.From != nil && at.Dist(to) > 2 {
				tip := to.Polar(-1.2, at.Towards(to))
				one.Add(scene.Line("moved", at, tip), scene.ArrowHead("moved-head", tip, at.Towards(to), 2, 1.4))
			}
			text = c.Name
			if c.From != nil {
				text += " " + c.Distance.Text(d.r.System)
			}
			at = to
			one.Add(scene.Cross("new-mark", at, 1.4))
		}
		if c.From != nil || c.To != nil {
			g.Add(one)
			d.names.Add("ink", text, 5, at)
		}
	}
	return g
}

// still draws the other marks.
func (d *drawing) still() *scene.Group {
	return backdrop.Marks(&d.r.New.Plan.Set, d.view, &d.names, d.differ)
}

// nameWay asks for a label anywhere along a stretch that is on the drawing.
func (d *drawing) nameWay(s stretch) {
	pts := d.view.Points(s.points)
	var places []scene.Point
	for _, k := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
		at, _ := scene.Along(pts, k*scene.LengthOf(pts))
		places = append(places, at)
	}
	d.names.Add(s.class+"-name", s.name, 4, places...)
}

func revision(p *plan.Plan) string {
	if p.Take.Revision == "" {
		return ""
	}
	return " (" + strings.TrimSpace(p.Take.Revision+" "+p.Take.RevisionDate) + ")"
}

// key explains the lines.
func (d *drawing) key(box scene.Box) *scene.Group {
	list := []backdrop.Entry{backdrop.Stroke("old-way", "as it was")}
	used := map[string]bool{}
	for _, s := range d.fresh {
		used[s.class] = true
	}
	for _, k := range [][2]string{{"performer", "performers now"}, {"crew", "crew now"}, {"machine", "vehicles and rigs now"}, {"lens", "lenses now"}} {
		if used[k[0]] {
			list = append(list, backdrop.Stroke(k[0], k[1]))
		}
	}
	if len(d.r.In(compare.Marks)) > 0 {
		list = append(list, backdrop.Entry{Text: "mark moved, from the circle to the cross", Draw: func(x, y float64) []scene.Item {
			return []scene.Item{&scene.Circle{Class: "old-mark", Center: scene.Pt(x+2, y), Radius: 1.4}, scene.Line("moved", scene.Pt(x+2, y), scene.Pt(x+8, y)), scene.Cross("new-mark", scene.Pt(x+9, y), 1.4)}
		}})
	}
	if len(d.was) > 0 || changed(d.is) {
		rect := func(class, text string) backdrop.Entry {
			return backdrop.Entry{Text: text, Draw: func(x, y float64) []scene.Item {
				return []scene.Item{&scene.Rect{Class: class, Box: scene.BoxAt(x+1, y-1.5, 8, 3)}}
			}}
		}
		list = append(list, rect("old-piece", "set as it was"), rect("stands new-piece", "set now"))
	}
	return backdrop.Key(box, d.view, d.r.System, "ways are drawn where they differ", list...)
}

func changed(list []piece) bool {
	for _, p := range list {
		if !p.same {
			return true
		}
	}
	return false
}
