package changes

import (
	"fmt"
	"math"
	"strings"

	"longhand/lang/compare"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

const (
	border = 10.0 // mm round the drawing
	head   = 14.0 // for the title
	foot   = 16.0 // for the key
)

// Draw draws what a comparison tells, as far as it has a place on the floor, on
// a sheet of A3. Ways and the set are drawn whomever the report is for; marks as
// the report has them.
func Draw(r *compare.Report) *scene.Sheet {
	paper := scene.A3.Landscape()
	s := &scene.Sheet{Width: paper.Width, Height: paper.Height, Styles: styles(),
		Title: r.New.Plan.Take.Title + ": before and after", Desc: "What was is grey and dashed, what is is solid: " + r.Summary() + "."}
	d := &drawing{r: r, box: scene.BoxAt(border, border+head, paper.Width-2*border, paper.Height-2*border-head-foot)}
	d.was, d.is = pieces(r.Old, r.New)
	d.gather()
	d.fit()
	s.Add(&scene.Rect{Class: "paper", Box: s.Box()})
	floor := &scene.Group{ID: "floor", Title: "the floor, before and after", Clip: [][]scene.Point{d.box.Corners()}}
	floor.Add(d.set(), d.before(), d.after(), d.marks())
	s.Add(floor, &scene.Rect{Class: "frame", Box: d.box}, d.names(), d.title(), d.key())
	return s
}

// stretch is a part of a way that is in one plan only.
type stretch struct {
	*way
	points []geom.Vec
}

type drawing struct {
	r       *compare.Report
	box     scene.Box
	view    scene.View
	was, is []piece
	gone    []stretch
	fresh   []stretch
	asks    []label.Request
	texts   []scene.Text
	drawn   []label.Obstacle
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

// scales a drawing may have (ISO 5455, and 1:25).
var scales = []float64{10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000, 10000}

// fit lays the drawing so that all that differs is on it; where nothing does, the
// whole set.
func (d *drawing) fit() {
	var e extent
	for _, s := range append(append([]stretch(nil), d.gone...), d.fresh...) {
		e.add(s.points...)
	}
	for _, p := range d.was {
		e.add(p.Polygon...)
	}
	for _, p := range d.is {
		if !p.same {
			e.add(p.Polygon...)
		}
	}
	for _, c := range d.r.In(compare.Marks) {
		for _, p := range []*geom.Vec{c.From, c.To} {
			if p != nil {
				e.add(*p)
			}
		}
	}
	if !e.any {
		for _, p := range d.is {
			e.add(p.Polygon...)
		}
		for _, m := range d.r.New.Plan.Set.Marks {
			e.add(m.Point)
		}
	}
	e.grow(1.5)
	size := e.high.Sub(e.low)
	d.view = scene.View{Scale: scales[len(scales)-1], Plan: e.low.Lerp(e.high, 0.5), Paper: d.box.Center()}
	for _, k := range scales {
		if size.X*1000/k <= d.box.Width() && size.Y*1000/k <= d.box.Height() {
			d.view.Scale = k
			return
		}
	}
}

// on says whether a place is on the drawing.
func (d *drawing) on(p scene.Point) bool {
	return p.X >= d.box.Min.X && p.X <= d.box.Max.X && p.Y >= d.box.Min.Y && p.Y <= d.box.Max.Y
}

func (d *drawing) set() *scene.Group {
	g := &scene.Group{ID: "set", Class: "set", Title: "the set"}
	for _, p := range d.is {
		if p.same {
			g.Add(p.draw(d.view))
		}
	}
	for _, p := range d.is {
		if !p.same {
			g.Add(&scene.Group{Title: p.Name + ", new or changed", Items: []scene.Item{p.draw(d.view)}})
			d.name(d.view.Point(geom.Polygon(p.Polygon).Centroid()), "ink", p.Name, 3)
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
	d.drawn = append(d.drawn, label.Obstacle{Line: pts, Width: 0.8, Cost: 12})
	return g
}

// marks draws those that are where they were as small ticks, and those that are
// not with the way from the old place to the new.
func (d *drawing) marks() *scene.Group {
	g := &scene.Group{ID: "marks", Class: "marks", Title: "marks"}
	differ := map[string]bool{}
	for _, c := range d.r.In(compare.Marks) {
		differ[c.Name] = differ[c.Name] || c.From != nil || c.To != nil
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
				text += " " + told(c.Distance, d.r.System)
			}
			at = to
			one.Add(scene.Cross("new-mark", at, 1.4))
		}
		if c.From != nil || c.To != nil {
			g.Add(one)
			d.name(at, "ink", text, 5)
		}
	}
	for _, m := range d.r.New.Plan.Set.Marks {
		if at := d.view.Point(m.Point); !differ[m.Name] && d.on(at) {
			g.Add(&scene.Group{Title: "mark " + m.Name, Items: []scene.Item{scene.Cross("quiet-mark", at, 0.9)}})
			d.name(at, "quiet", m.Name, 0)
		}
	}
	return g
}

func told(m units.Metres, sys units.System) string { return m.Text(sys) }

// name asks for a label at a place.
func (d *drawing) name(at scene.Point, class, text string, priority int) {
	if !d.on(at) {
		return
	}
	size, face := 7.0, fonts.Regular
	if priority > 0 {
		size, face = 8, fonts.Bold
	}
	w, h := label.Size(face, size, text)
	d.asks = append(d.asks, label.Request{ID: fmt.Sprint(len(d.asks)), At: at, Radius: 1.5, W: w, H: h, Priority: priority, Tight: priority == 0, Reach: 40})
	d.texts = append(d.texts, scene.Text{Class: class, Text: text, Size: size, Face: face, Halo: 0.5, Anchor: scene.Middle})
}

// nameWay asks for a label anywhere along a stretch that is on the drawing.
func (d *drawing) nameWay(s stretch) {
	pts := d.view.Points(s.points)
	var places []scene.Point
	for _, k := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
		at, _ := scene.Along(pts, k*scene.LengthOf(pts))
		if d.on(at) {
			places = append(places, at)
		}
	}
	if len(places) == 0 {
		return
	}
	n := len(d.asks)
	d.name(places[0], s.class+"-name", s.name, 4)
	d.asks[n].Also = places[1:]
}

func (d *drawing) names() *scene.Group {
	g := &scene.Group{ID: "names", Class: "names", Title: "names"}
	places, _ := label.Arrange(label.Field{Within: d.box.Grow(-1), Obstacles: d.drawn}, d.asks)
	for i, p := range places {
		if !p.OK {
			continue
		}
		if p.Leader != nil {
			g.Add(scene.Line("leader", p.Leader[0], p.Leader[1]))
		}
		g.Add(p.Lines(d.texts[i], d.texts[i].Text)...)
	}
	return g
}

func (d *drawing) title() *scene.Group {
	t := &d.r.New.Plan.Take
	g := &scene.Group{ID: "title", Title: "title"}
	name := t.Title
	if name == "" {
		name = "the take"
	}
	y := border + fonts.Bold.CapHeight(14)
	wide := d.box.Width()
	g.Add(&scene.Text{Class: "ink", At: scene.Pt(border, y), Text: fonts.Bold.Fit(14, wide, name+": before and after"), Size: 14, Face: fonts.Bold})
	text := d.r.OldName + revision(d.r.Old.Plan) + " to " + d.r.NewName + revision(d.r.New.Plan) + ": " + d.r.Summary()
	g.Add(&scene.Text{Class: "ink", At: scene.Pt(border, y+6), Text: fonts.Regular.Fit(8, wide, text), Size: 8})
	return g
}

func revision(p *plan.Plan) string {
	if p.Take.Revision == "" {
		return ""
	}
	return " (" + strings.TrimSpace(p.Take.Revision+" "+p.Take.RevisionDate) + ")"
}

// key explains the lines, with the scale.
func (d *drawing) key() *scene.Group {
	g := &scene.Group{ID: "key", Class: "key", Title: "key"}
	y := d.box.Max.Y + 6
	x := d.box.Min.X
	put := func(text string, draw func(x float64) []scene.Item) {
		g.Add(draw(x)...)
		g.Add(&scene.Text{Class: "ink", At: scene.Pt(x+12, y), Text: text, Size: 7.5, Level: scene.Center})
		x += 15 + fonts.Regular.Width(7.5, text) + 3
	}
	line := func(class string) func(float64) []scene.Item {
		return func(x float64) []scene.Item {
			return []scene.Item{scene.Line(class, scene.Pt(x, y), scene.Pt(x+10, y))}
		}
	}
	put("as it was", line("old-way"))
	used := map[string]bool{}
	for _, s := range d.fresh {
		used[s.class] = true
	}
	for _, k := range [][2]string{{"performer", "performers now"}, {"crew", "crew now"}, {"machine", "vehicles and rigs now"}, {"lens", "lenses now"}} {
		if used[k[0]] {
			put(k[1], line(k[0]))
		}
	}
	if len(d.r.In(compare.Marks)) > 0 {
		put("mark moved, from the circle to the cross", func(x float64) []scene.Item {
			return []scene.Item{&scene.Circle{Class: "old-mark", Center: scene.Pt(x+2, y), Radius: 1.4}, scene.Line("moved", scene.Pt(x+2, y), scene.Pt(x+8, y)), scene.Cross("new-mark", scene.Pt(x+9, y), 1.4)}
		})
	}
	if len(d.was) > 0 || changed(d.is) {
		put("set as it was", func(x float64) []scene.Item {
			return []scene.Item{&scene.Rect{Class: "old-piece", Box: scene.BoxAt(x+1, y-1.5, 8, 3)}}
		})
		put("set now", func(x float64) []scene.Item {
			return []scene.Item{&scene.Rect{Class: "stands new-piece", Box: scene.BoxAt(x+1, y-1.5, 8, 3)}}
		})
	}
	g.Add(d.scaleBar(d.box.Max.X, y)...)
	g.Add(&scene.Text{Class: "quiet", At: scene.Pt(d.box.Min.X, y+7), Size: 7,
		Text: "ways are drawn where they differ; a plan on paper, no survey: tape and measure on the day"})
	return g
}

func changed(list []piece) bool {
	for _, p := range list {
		if !p.same {
			return true
		}
	}
	return false
}

// scaleBar is a bar of whole metres, or feet, that ends at x.
func (d *drawing) scaleBar(x, y float64) []scene.Item {
	unit, name := 1.0, "m"
	if d.r.System == units.Feet {
		unit, name = float64(units.Foot), "ft"
	}
	count := 1.0
	for _, c := range []float64{1, 2, 5, 10, 20, 50, 100, 200, 500} {
		if count = c; d.view.Length(c*unit) >= 30 {
			break
		}
	}
	w := d.view.Length(count * unit)
	text := fmt.Sprintf("%s %s, 1:%s on A3", units.Number(count, 0), name, units.Number(math.Round(d.view.Scale), 0))
	left := x - w
	return []scene.Item{
		&scene.Rect{Class: "bar-dark", Box: scene.BoxAt(left, y-0.8, w/2, 1.6)},
		&scene.Rect{Class: "bar", Box: scene.BoxAt(left+w/2, y-0.8, w/2, 1.6)},
		&scene.Text{Class: "ink", At: scene.Pt(left-2, y), Text: text, Size: 7.5, Anchor: scene.End, Level: scene.Center},
	}
}
