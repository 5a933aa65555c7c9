package overhead

import (
	"fmt"

	"longhand/lang/plan"
	"longhand/lang/units"
	"longhand/render/fonts"
	"longhand/render/label"
	"longhand/render/scene"
)

// small is whether people are so small on the drawing that their signs begin to lie
// on each other.
func (d *drawing) small() bool { return d.view.Scale > 150 }

// enlarges is how many times larger a detail has to be to be worth drawing.
const enlarges = 2.0

// detailOf decides whether what people and cameras do on foot happens in so small
// a part of the drawing that it needs drawing again, larger: how large, and the
// extent.
func (d *drawing) detailOf(whole bool) (extent, float64, bool) {
	e := d.happening(d.span, d.beat, false)
	if !e.any || !d.small() {
		return e, 0, false
	}
	size := e.size()
	// Somebody who stands needs no detail.
	if size.X < 1.2 && size.Y < 1.2 {
		e.add(e.centre(), 1.2)
	}
	if !d.whole() && !d.onFoot() {
		return e, 0, false
	}
	share := 0.55
	if whole {
		share = 1
	}
	half := scene.BoxAt(0, 0, d.box.Width()*share, d.box.Height()*share)
	for _, s := range scales(d.plan.Take.Units) {
		if s*enlarges > d.view.Scale+1e-9 {
			break
		}
		if fits(e, half, s) {
			return e, s, true
		}
	}
	return e, 0, false
}

// onFoot is whether somebody in the picture is on foot for a quarter of the stretch.
func (d *drawing) onFoot() bool {
	all, foot := 0, 0
	d.each(d.span, func(t units.Seconds) {
		all++
		for _, b := range d.tracks.Bodies {
			if b.Thing.Kind() == plan.KindPerformer && b.Carrier(t) == nil {
				foot++
				break
			}
		}
	})
	return foot*4 >= all
}

// framed is the part of the sheet that a detail shows, with its room.
func framed(v scene.View, e extent, scale float64) scene.Box {
	d := room * scale / 1000
	a, b := v.Point(e.low), v.Point(e.high)
	m := v.Length(d)
	box, _ := scene.BoundsOf([]scene.Point{a, b})
	return box.Grow(m)
}

// corner finds a corner of the drawing for an inset in which nothing happens;
// false where every corner is taken.
func (d *drawing) corner(w, h float64, taken []scene.Point, keep scene.Box) (scene.Box, bool) {
	const off = 2.0
	b := d.box.Grow(-off)
	for _, at := range []scene.Point{{X: b.Max.X - w, Y: b.Min.Y}, {X: b.Min.X, Y: b.Min.Y}, {X: b.Max.X - w, Y: b.Max.Y - h}, {X: b.Min.X, Y: b.Max.Y - h}} {
		box := scene.BoxAt(at.X, at.Y, w, h)
		free := !box.Overlaps(keep.Grow(3))
		for _, p := range taken {
			free = free && !inside(p, box.Grow(7))
		}
		if free {
			return box, true
		}
	}
	return scene.Box{}, false
}

// occupied is every place on paper where something of the stretch is.
func (d *drawing) occupied() []scene.Point {
	var out []scene.Point
	for _, b := range d.tracks.Bodies {
		d.each(d.span, func(t units.Seconds) { out = append(out, d.pt(b.At(t).Point())) })
	}
	for _, c := range d.tracks.Cameras {
		if _, _, ok := d.rolling(c, d.span); ok {
			d.each(d.span, func(t units.Seconds) {
				v := c.At(t)
				out = append(out, d.pt(vec(v.X, v.Y)))
			})
		}
	}
	for _, m := range d.plan.Set.Marks {
		if d.usedMarks()[m] {
			out = append(out, d.pt(m.Point))
		}
	}
	return out
}

// withDetail adds the detail of a drawing, if it needs one: in a free corner of
// the drawing, or else it gives back a drawing for a sheet of its own.
func (d *drawing) withDetail(set extent, l layout) (inset, own *drawing) {
	if e, scale, ok := d.detailOf(false); ok {
		frame := framed(d.view, e, scale)
		size := e.size().Mul(1000 / scale)
		box, free := d.corner(size.X+2*room, size.Y+2*room+heading, d.occupied(), frame)
		if free && frame.Overlaps(d.box) {
			d.detail = &frame
			d.covered = &box
			d.keep = append(d.keep, label.Obstacle{Box: &box})
			d.where = "see the detail, " + scaleText(scale, d.plan.Take.Units)
			inner := scene.Box{Min: box.Min.Add(scene.Pt(0, heading)), Max: box.Max}
			return &drawing{material: d.material, o: d.o, beat: d.beat, span: d.span, pre: "detail-", box: box,
				view: scene.View{Scale: scale, Plan: e.centre(), Paper: inner.Center()}}, nil
		}
	}
	e, scale, ok := d.detailOf(true)
	if !ok {
		return nil, nil
	}
	frame := framed(d.view, e, scale)
	d.detail = &frame
	d.where = fmt.Sprintf("detail on page %d", max(1, d.o.Page)+1)
	return nil, &drawing{material: d.material, o: d.o, beat: d.beat, span: d.span, box: l.drawing, view: centred(e, set, l.drawing, scale)}
}

// point says at a detail's frame where the detail is.
func (d *drawing) point() {
	if d.detail == nil {
		return
	}
	text := d.where
	g := d.layer("detail-frame", "what is drawn again, larger", text)
	g.Add(&scene.Rect{Class: "frame", Box: *d.detail})
	d.avoid(2, 0.4, scene.NewPath("").Ring(d.detail.Corners()...))
	a := ask{into: g, must: true, always: true, lines: []string{text}, model: scene.Text{Class: "ink", Size: 7.5, Face: fonts.Bold, Halo: 0.5}}
	a.ID, a.Radius, a.Priority, a.Reach = g.ID, 0.3, 70, 80
	for _, c := range d.detail.Corners() {
		if inside(c, d.box.Grow(-1)) {
			a.Also = append(a.Also, c)
		}
	}
	if len(a.Also) == 0 {
		a.Also = []scene.Point{d.detail.Center()}
	}
	a.At, a.Also = a.Also[0], a.Also[1:]
	d.say(a)
}

// heading is the height of an inset's own heading, in millimetres.
const heading = 4.0
