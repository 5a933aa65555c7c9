package overhead

import (
	"slices"
	"strings"

	"longhand/lang/departments"
	"longhand/lang/plan"
	"longhand/render/fonts"
	"longhand/render/scene"
)

// compose draws one beat, or the whole take, on as many sheets as its list needs.
func (m *material) compose(beat *plan.Beat, o Options) (sheets []*scene.Sheet, title func(pages int)) {
	s := span{0, m.tracks.Length()}
	if beat != nil {
		s = m.spanOf(beat)
	}
	e := m.happening(s, beat, true)
	set := m.setExtent()
	if !e.any {
		e = set
	}
	if !e.any {
		e.add(e.low, 2)
	}
	l, scale := m.choose(e, o)
	d := &drawing{material: m, o: o, beat: beat, span: s, box: l.drawing, view: centred(e, set, l.drawing, scale)}
	part, own := d.withDetail(set, l)
	notes := d.draw()
	d.point()
	lost := d.settle()
	sheet := d.sheet(l)
	if part != nil {
		part.draw()
		lost = append(lost, part.settle()...)
		sheet.Add(part.inset())
	}
	var ownNotes []note
	var left []string
	if own != nil {
		ownNotes = own.draw()
		left = own.settle()
		ownNotes = own.withRest(ownNotes, left, l.key)
	}
	notes = d.withRest(notes, lost, l.key)
	key, rest := fullKey(l.key, notes, max(1, o.Page)+1)
	sheet.Add(key)
	drawn := []*drawing{d}
	sheets = []*scene.Sheet{sheet}
	if own != nil {
		all := ownNotes
		sh := own.sheet(l)
		if len(rest) > 0 {
			all = append(slices.Clone(rest), own.offSheet(left)...)
		}
		var k *scene.Group
		k, rest = fullKey(l.key, all, max(1, o.Page)+2)
		sh.Add(k)
		sheets, drawn = append(sheets, sh), append(drawn, own)
	}
	for len(rest) > 0 && len(sheets) < 50 {
		var more *scene.Sheet
		more, rest = d.overflow(l, rest, max(1, o.Page)+len(sheets)+1)
		sheets, drawn = append(sheets, more), append(drawn, d)
	}
	return sheets, func(pages int) {
		first := max(1, o.Page)
		pages = max(pages, first+len(sheets)-1)
		for i, sh := range sheets {
			sh.Add(drawn[i].titleBlock(l.title, l.paper.Name, first+i, pages))
		}
	}
}

// withRest adds to the list what stands at its end: cautions, in full where there
// is room, what is off the drawing, what has no name on it.
func (d *drawing) withRest(notes []note, lost []string, columns []scene.Box) []note {
	off := d.offSheet(lost)
	full := append(append(slices.Clone(notes), d.cautions(false)...), off...)
	if len(keyOf(&scene.Group{}, columns, full)) == 0 {
		return full
	}
	short := append(d.cautions(true), off...)
	all := append(slices.Clone(notes), short...)
	if len(keyOf(&scene.Group{}, columns, all)) == 0 {
		return all
	}
	// Rather than a page for two lines, their headings go into them.
	if tight := append(slices.Clone(notes), runIn(short)...); len(keyOf(&scene.Group{}, columns, tight)) == 0 {
		return tight
	}
	return all
}

// runIn puts headings into the entries below them.
func runIn(notes []note) []note {
	var out []note
	head := ""
	for _, n := range notes {
		switch {
		case n.head != "":
			head = n.head + ": "
			continue
		case n.under != "":
			n.under = head + n.under
		case len(n.texts) > 0:
			n.under, n.texts = head+strings.Join(n.texts, " "), nil
		}
		n.wide, head = true, ""
		out = append(out, n)
	}
	return out
}

// choose finds how the paper lies and the scale, where the options leave it open.
func (m *material) choose(e extent, o Options) (layout, float64) {
	turns := []Turn{Landscape, Portrait}
	if o.Turn != Auto {
		turns = []Turn{o.Turn}
	}
	var best layout
	scale := 0.0
	for _, t := range turns {
		l := layoutOf(o.paper(), t)
		s := o.Scale
		if s <= 0 {
			s = fit(e, l.drawing, scales(m.plan.Take.Units))
		}
		if scale == 0 || s < scale || o.Scale > 0 && !fits(e, best.drawing, s) && fits(e, l.drawing, s) {
			best, scale = l, s
		}
	}
	if o.Scale <= 0 {
		scale = m.withSet(e, best.drawing, scale)
	}
	return best, scale
}

// withSet is a scale, or a smaller one, at which some of the set is on the drawing:
// people on empty paper are nowhere. Sets too far off for that are left out.
func (m *material) withSet(e extent, box scene.Box, scale float64) float64 {
	set := m.setExtent()
	for _, s := range scales(m.plan.Take.Units) {
		if s < scale || s > 4*scale {
			continue
		}
		v := centred(e, set, box, s)
		for _, p := range m.pieces {
			var on extent
			for _, q := range p.Polygon {
				on.add(q, 0)
			}
			a, b := v.Point(on.low), v.Point(on.high)
			if on.any && max(a.X, b.X) > box.Min.X && min(a.X, b.X) < box.Max.X && max(a.Y, b.Y) > box.Min.Y && min(a.Y, b.Y) < box.Max.Y {
				return s
			}
		}
	}
	return scale
}

// draw makes all layers but the labels, which wait for their places, and gives the
// entries of the list.
func (d *drawing) draw() []note {
	never := d.layer("never-seen", "floor that no camera sees", "", departments.Grip, departments.Ads, departments.Electric, departments.Camera, departments.Art, departments.Sound)
	views := d.layer("views", "what the cameras see of the floor", "dotted at the start of the beat, dashed at its end", departments.Camera, departments.Ads, departments.Effects, departments.Script, departments.Art, departments.Sound)
	floor := d.layer("floor", "platforms, stairs and grids", "")
	set := d.layer("set", "the set", d.plan.Set.Title)
	marks := d.layer("marks", "marks on the floor", "")
	lamps := d.layer("lamps", "lamps", "", departments.Electric, departments.Camera, departments.Art)
	machines := d.layer("machines", "vehicles and rigs with their paths", "open where they start, dark where they end, light where they stay")
	paths := d.layer("paths", "paths", "a tick across for each second")
	bodies := d.layer("bodies", "people", "open where they start, filled where they end, grey where they stay")
	cameras := d.layer("cameras", "cameras", "")
	spoils := d.layer("findings", "findings", "")
	outs := d.layer("paint-outs", "what is painted out", "", departments.Effects, departments.Camera, departments.Script)
	cues := d.layer("cues", "cues in order of time", "")

	if d.o.NeverSeen {
		d.drawNever(never)
	}
	if !d.whole() {
		d.drawViews(views)
	}
	d.floors(floor)
	d.blocks(set)
	d.walls(set)
	d.doors(set)
	d.windows(set)
	light := d.drawLamps(lamps)
	all := d.movers()
	each := func(do func(*scene.Group, *mover), into *scene.Group, kinds ...string) {
		for _, kind := range kinds {
			for _, b := range all {
				if b.kind == kind {
					do(into, b)
				}
			}
		}
	}
	each(d.path, machines, "vehicle", "rig")
	each(d.drawBody, machines, "vehicle", "rig")
	each(d.path, paths, "crew", "performer")
	for _, c := range d.tracks.Cameras {
		d.lensPath(paths, c)
	}
	d.marks(marks)
	each(d.drawBody, bodies, "crew", "performer")
	for _, c := range d.tracks.Cameras {
		d.drawCamera(cameras, c)
	}
	var notes []note
	if d.whole() {
		notes = d.beats(cues)
	} else {
		events := d.events()
		if !d.bare {
			d.badges(cues, events)
		}
		notes = d.notes(events)
	}
	notes = append(notes, d.drawPaintOuts(outs)...)
	if !d.bare {
		notes = append(notes, d.drawFound(spoils, d.found())...)
	}
	if d.o.Department == departments.Electric {
		return append(light, notes...)
	}
	return append(notes, light...)
}

// sheet is the paper with the drawing's frame, its layers clipped to it.
func (d *drawing) sheet(l layout) *scene.Sheet {
	t := d.plan.Take
	s := &scene.Sheet{Width: l.paper.Width, Height: l.paper.Height, Styles: styles(d.o.Colour)}
	s.Title = t.Title + ": overhead of the whole take"
	switch {
	case d.pickup != nil:
		s.Title = t.Title + ": overhead of pickup " + d.called()
	case d.beat != nil:
		s.Title = t.Title + ": overhead of beat " + d.called()
	}
	s.Desc = "Floor plan at " + scaleText(d.view.Scale, t.Units) + ", " + d.span.from.Clock() + " to " + d.span.to.Clock()
	plan := &scene.Group{ID: "plan", Title: "floor plan", Clip: [][]scene.Point{d.box.Corners()}}
	for _, g := range d.layers {
		plan.Add(g)
	}
	s.Add(&scene.Rect{Class: "paper", Box: s.Box()}, plan, &scene.Rect{Class: "border", Box: d.box})
	strip := l.strip
	s.Add(&scene.Rect{Class: "border", Box: scene.Box{Min: d.box.Min, Max: scene.Pt(s.Width-margin, s.Height-margin)}}, &scene.Rect{Class: "border", Box: strip})
	bar, w := d.scaleBar(scene.Pt(strip.Min.X+4, strip.Min.Y+6))
	arrow, aw := d.bearings(scene.Pt(strip.Min.X+4+w+12, strip.Center().Y+1.3), 3.8)
	s.Add(bar, arrow, d.legend(scene.Pt(strip.Min.X+4+w+12+aw+6, strip.Min.Y), strip))
	return s
}

// inset is a detail as it lies in a corner of another drawing.
func (d *drawing) inset() *scene.Group {
	g := &scene.Group{ID: d.id("drawing"), Class: "detail", Title: "detail at " + scaleText(d.view.Scale, d.plan.Take.Units)}
	plan := &scene.Group{Clip: [][]scene.Point{d.box.Corners()}}
	for _, l := range d.layers {
		plan.Add(l)
	}
	head := scene.Box{Min: d.box.Min, Max: scene.Pt(d.box.Max.X, d.box.Min.Y+heading)}
	g.Add(&scene.Rect{Class: "paper", Box: d.box}, plan, &scene.Rect{Class: "paper rule", Box: head}, &scene.Rect{Class: "border", Box: d.box},
		&scene.Text{Class: "ink", At: scene.Pt(head.Min.X+1.2, head.Center().Y), Text: "detail " + scaleText(d.view.Scale, d.plan.Take.Units), Size: 7.5, Face: fonts.Bold, Level: scene.Center})
	return g
}

// overflow is a sheet for what the list at the side had no room for.
func (d *drawing) overflow(l layout, notes []note, next int) (*scene.Sheet, []note) {
	s := &scene.Sheet{Width: l.paper.Width, Height: l.paper.Height, Styles: styles(d.o.Colour)}
	s.Title = d.plan.Take.Title + ": list, continued"
	in := s.Box().Grow(-margin)
	s.Add(&scene.Rect{Class: "paper", Box: s.Box()}, &scene.Rect{Class: "border", Box: in})
	n := max(1, int(in.Width()/80))
	w := in.Width() / float64(n)
	var columns []scene.Box
	for i := range n {
		b := scene.BoxAt(in.Min.X+float64(i)*w, in.Min.Y, w, in.Height())
		if b.Max.X > l.title.Min.X+1e-6 {
			b.Max.Y = l.title.Min.Y
		}
		columns = append(columns, b)
	}
	key, rest := fullKey(columns, notes, next)
	if len(rest) == len(notes) { // longer than a sheet
		rest = nil
	}
	s.Add(key)
	return s, rest
}
