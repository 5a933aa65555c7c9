package overhead

import (
	"strconv"

	"longhand/lang/departments"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/render/label"
	"longhand/render/scene"
)

// drawing is one view of the floor on its way to the sheet: layers in painting
// order, and the labels that wait for their places.
type drawing struct {
	*material
	o    Options
	beat *plan.Beat // nil for the whole take, or a whole pickup
	span span
	view scene.View
	box  scene.Box // on the sheet
	pre  string    // before ids, where one sheet holds several drawings
	bare bool      // without numbers, which a list would have to explain

	// detail is the part of the sheet that is drawn again, larger; labels in it wait
	// for that drawing.
	detail *scene.Box
	where  string // its drawing is, in words
	// covered is the part of the sheet that the detail lies on, if it does.
	covered *scene.Box

	layers []*scene.Group
	asks   []ask
	keep   []label.Obstacle

	initials []initial
	ids      map[string]bool
}

// ask is a label that wants a place.
type ask struct {
	label.Request
	lines []string
	model scene.Text
	into  *scene.Group
	// draw paints something else than lines of text.
	draw func(label.Place) []scene.Item
	// must is for what the drawing is no good without.
	must bool
	// always is for what is said even where the detail says the rest.
	always bool
}

// whole is whether the whole take is drawn, with nothing of when it happens but
// where beats begin.
func (d *drawing) whole() bool { return d.beat == nil && d.pickup == nil }

// layer starts a layer over those before it. Fore names the departments that it
// is drawn for; for others it is dimmed.
func (d *drawing) layer(id, title, desc string, fore ...departments.Name) *scene.Group {
	g := &scene.Group{ID: d.pre + id, Title: title, Desc: desc, Class: id + d.dims(fore)}
	d.layers = append(d.layers, g)
	return g
}

// dims is the class of what a department need not look at.
func (d *drawing) dims(fore []departments.Name) string {
	if d.o.Department == "" || len(fore) == 0 {
		return ""
	}
	for _, f := range fore {
		if f == d.o.Department {
			return ""
		}
	}
	return " dim"
}

// crowded is whether the drawing is so small that what the stretch doesn't use goes
// without a name.
func (d *drawing) crowded() bool { return d.view.Scale > 200 }

// id is an id of the drawing that no other group of it has.
func (d *drawing) id(words ...string) string {
	id := d.pre + scene.ID(words...)
	if d.ids == nil {
		d.ids = map[string]bool{}
	}
	one := id
	for n := 2; d.ids[one]; n++ {
		one = id + "-" + strconv.Itoa(n)
	}
	d.ids[one] = true
	return one
}

func (d *drawing) pt(p geom.Vec) scene.Point { return d.view.Point(p) }

// shows is whether a point of the floor lies on the drawing, an edge of a given
// width left free.
func (d *drawing) shows(p geom.Vec, edge float64) bool {
	return inside(d.pt(p), d.box.Grow(-edge))
}

func inside(p scene.Point, b scene.Box) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// avoid keeps labels off something; at a cost above 0 they may cover it.
func (d *drawing) avoid(cost, width float64, items ...scene.Item) {
	d.keep = append(d.keep, label.Drawn(items, width, cost)...)
}

func (d *drawing) say(a ask) {
	if a.W == 0 {
		a.W, a.H = label.Size(a.model.Face, a.model.Size, a.lines...)
	}
	if d.covered != nil && inside(a.At, *d.covered) {
		return
	}
	if a.into != nil && inside(a.At, d.box) && (a.always || d.detail == nil || !inside(a.At, *d.detail)) {
		d.asks = append(d.asks, a)
	}
}

// settle finds the places of all labels, draws them into their groups and lists
// those that none was found for.
func (d *drawing) settle() (lost []string) {
	within := d.box.Grow(-0.8)
	if d.pre != "" { // under its heading
		within.Min.Y += heading
	}
	field := label.Field{Within: within, Obstacles: d.keep, Clear: 0.35}
	requests := make([]label.Request, len(d.asks))
	for i, a := range d.asks {
		requests[i] = a.Request
	}
	places, _ := label.Arrange(field, requests)
	// What the drawing needs and found nothing free lies over lines if it must, but
	// never on another label.
	var again []int
	for i, p := range places {
		if !p.OK && d.asks[i].must {
			again = append(again, i)
		}
	}
	if len(again) > 0 {
		soft := label.Field{Within: field.Within, Clear: 0.2}
		for _, o := range d.keep {
			if o.Circle == nil && o.Box == nil { // signs, marks and an inset stay clear
				o.Cost = max(o.Cost, 20)
			}
			soft.Obstacles = append(soft.Obstacles, o)
		}
		var more []label.Request
		for _, p := range places {
			if p.OK {
				soft.Obstacles = append(soft.Obstacles, label.Obstacle{Area: p.Quad[:]})
			}
		}
		for _, i := range again {
			r := requests[i]
			r.Tight, r.Reach = false, 150
			more = append(more, r)
		}
		found, _ := label.Arrange(soft, more)
		for k, i := range again {
			places[i] = found[k]
		}
	}
	d.showInitials()
	// All labels lie over all lines; leaders under all labels.
	top := d.layer("labels", "names and numbers", "")
	var names []scene.Item
	for i, p := range places {
		a := d.asks[i]
		if !p.OK {
			if a.must {
				lost = append(lost, a.name())
			}
			continue
		}
		one := &scene.Group{Class: a.into.Class, Title: a.into.Title}
		if p.Leader != nil {
			top.Add(&scene.Group{Class: a.into.Class, Items: []scene.Item{scene.Line("leader", p.Leader[0], p.Leader[1])}})
		}
		if a.draw != nil {
			one.Add(a.draw(p)...)
		} else {
			one.Add(p.Lines(a.model, a.lines...)...)
		}
		names = append(names, one)
	}
	top.Add(names...)
	full := d.layers[:0]
	for _, g := range d.layers {
		if len(g.Items) > 0 {
			full = append(full, g)
		}
	}
	d.layers = full
	return lost
}

// name is what a label says, for the list of those without a place.
func (a ask) name() string {
	if len(a.lines) > 0 {
		return a.lines[0]
	}
	return a.into.Title
}

// inBlock asks for a label in the middle of an area, or else beside that point.
func inBlock(a ask) ask {
	if a.W == 0 {
		a.W, a.H = label.Size(a.model.Face, a.model.Size, a.lines...)
	}
	a.At = a.At.Add(scene.Pt(0, -a.H/2-0.7))
	a.Sides = []label.Side{label.Below}
	return a
}
