package overhead

import "longhand/render/scene"

// clipped is the part of a ring inside a box (Sutherland and Hodgman, 1974): an
// area that reaches far beyond the sheet is not worth its ink there. A ring in
// several parts stays one, joined along the box's edge.
func clipped(ring []scene.Point, box scene.Box) []scene.Point {
	type side struct {
		inside func(scene.Point) bool
		cross  func(a, b scene.Point) scene.Point
	}
	atX := func(x float64) func(a, b scene.Point) scene.Point {
		return func(a, b scene.Point) scene.Point {
			return scene.Pt(x, a.Y+(b.Y-a.Y)*(x-a.X)/(b.X-a.X))
		}
	}
	atY := func(y float64) func(a, b scene.Point) scene.Point {
		return func(a, b scene.Point) scene.Point {
			return scene.Pt(a.X+(b.X-a.X)*(y-a.Y)/(b.Y-a.Y), y)
		}
	}
	for _, s := range []side{
		{func(p scene.Point) bool { return p.X >= box.Min.X }, atX(box.Min.X)},
		{func(p scene.Point) bool { return p.X <= box.Max.X }, atX(box.Max.X)},
		{func(p scene.Point) bool { return p.Y >= box.Min.Y }, atY(box.Min.Y)},
		{func(p scene.Point) bool { return p.Y <= box.Max.Y }, atY(box.Max.Y)},
	} {
		var out []scene.Point
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			if s.inside(p) {
				out = append(out, p)
			}
			if s.inside(p) != s.inside(q) {
				out = append(out, s.cross(p, q))
			}
		}
		ring = out
	}
	return ring
}
