package overhead

import (
	"longhand/render/fonts"
	"longhand/render/scene"
)

// legend says what the signs mean, as far as the strip has room.
func (d *drawing) legend(at scene.Point, strip scene.Box) scene.Item {
	g := &scene.Group{ID: d.id("legend"), Title: "signs"}
	type sign struct {
		text string
		draw func(scene.Point) []scene.Item
	}
	signs := []sign{
		{"performer", func(p scene.Point) []scene.Item { return performer(p, 1.3, 0, starts) }},
		{"crew", func(p scene.Point) []scene.Item { return crew(p, 1.2, 0, starts) }},
		{"camera", func(p scene.Point) []scene.Item { return lens(p, 1.1, 0, starts) }},
		{"rig", func(p scene.Point) []scene.Item {
			b := scene.BoxAt(p.X-2, p.Y-1.3, 4, 2.6)
			c := b.Corners()
			return []scene.Item{&scene.Rect{Class: "machine-start", Box: b}, scene.Line("machine-line", c[0], c[2]), scene.Line("machine-line", c[1], c[3])}
		}},
		{"starts", func(p scene.Point) []scene.Item { return performer(p, 1.3, 0, starts) }},
		{"ends", func(p scene.Point) []scene.Item { return performer(p, 1.3, 0, ends) }},
		{"stays", func(p scene.Point) []scene.Item { return performer(p, 1.3, 0, stays) }},
		{"view at start", func(p scene.Point) []scene.Item {
			return []scene.Item{scene.Line("view-start", p.Add(scene.Pt(-2.5, 0)), p.Add(scene.Pt(2.5, 0)))}
		}},
		{"at end", func(p scene.Point) []scene.Item {
			return []scene.Item{scene.Line("view-end", p.Add(scene.Pt(-2.5, 0)), p.Add(scene.Pt(2.5, 0)))}
		}},
	}
	if d.o.NeverSeen {
		signs = append(signs, sign{"never seen", func(p scene.Point) []scene.Item {
			b := scene.BoxAt(p.X-2, p.Y-1.3, 4, 2.6)
			return []scene.Item{scene.Hatch("never", [][]scene.Point{b.Corners()}, neverHatch)}
		}})
	}
	if len(d.findings) > 0 {
		signs = append(signs, sign{"finding", func(p scene.Point) []scene.Item { return triangleShape(p, 1.9) }})
	}
	if len(d.plan.PaintOuts) > 0 {
		signs = append(signs, sign{"painted out", func(p scene.Point) []scene.Item {
			return []scene.Item{scene.RegularPolygon("paint-badge", p, 1.9, 4, 90)}
		}})
	}
	const rows, pitch = 3, 3.9
	x := at.X
	for i := 0; i < len(signs); i += rows {
		column := signs[i:min(i+rows, len(signs))]
		w := 0.0
		for _, s := range column {
			w = max(w, 7+fonts.Regular.Width(7, s.text)+3)
		}
		if x+w > strip.Max.X-1 {
			break
		}
		for k, s := range column {
			p := scene.Pt(x+3, at.Y+2.6+pitch*float64(k))
			g.Add(s.draw(p)...)
			g.Add(&scene.Text{Class: "quiet", At: scene.Pt(x+7, p.Y), Text: s.text, Size: 7, Level: scene.Center})
		}
		x += w
	}
	return g
}
