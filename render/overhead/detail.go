package overhead

import (
	"longhand/lang/units"
	"longhand/render/scene"
)

// enlarges is how many times larger a detail has to be to be worth drawing.
const enlarges = 2.0

// detailOf decides whether what people and cameras do on foot happens in so small
// a part of the drawing that it needs drawing again, larger: how large, and the
// extent.
func (d *drawing) detailOf() (extent, float64, bool) {
	e := d.happening(d.span, d.beat, false)
	if !e.any || d.beat == nil {
		return e, 0, false
	}
	size := e.size()
	// Somebody who stands needs no detail.
	if size.X < 1.2 && size.Y < 1.2 {
		e.add(e.centre(), 1.2)
	}
	half := scene.BoxAt(0, 0, d.box.Width()*0.55, d.box.Height()*0.55)
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

// around is the part of the sheet that a detail shows, with its room.
func around(v scene.View, e extent, scale float64) scene.Box {
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
	return out
}

// withDetail adds the detail of a drawing, if it needs one: in a free corner of
// the drawing, or else it gives back a drawing for a sheet of its own.
func (d *drawing) withDetail(set extent, l layout) (inset, own *drawing) {
	e, scale, ok := d.detailOf()
	if !ok {
		return nil, nil
	}
	frame := around(d.view, e, scale)
	if !frame.Overlaps(d.box) {
		return nil, nil
	}
	size := e.size().Mul(1000 / scale)
	w, h := size.X+2*room, size.Y+2*room+4
	sub := &drawing{material: d.material, o: d.o, beat: d.beat, span: d.span, pre: "detail-"}
	if box, free := d.corner(w, h, d.occupied(), frame); free {
		sub.box = box
		inner := scene.Box{Min: scene.Pt(box.Min.X, box.Min.Y+4), Max: box.Max}
		sub.view = scene.View{Scale: scale, Plan: e.centre(), Paper: inner.Center()}
		d.detail = &frame
		d.keepOff(box)
		return sub, nil
	}
	if s := fit(e, l.drawing, scales(d.plan.Take.Units)); s*enlarges <= d.view.Scale+1e-9 {
		sub.pre = ""
		sub.box = l.drawing
		sub.view = centred(e, set, l.drawing, s)
		frame = around(d.view, e, s)
		d.detail = &frame
		return nil, sub
	}
	return nil, nil
}
