package label

import "longhand/render/scene"

// Drawn takes what a drawing already holds for obstacles, all at one cost (0
// forbids): lines and paths as lines of a width in millimetres, circles, boxes
// and polygons with their inside, texts with their outline.
func Drawn(items []scene.Item, width, cost float64) []Obstacle {
	var out []Obstacle
	for _, it := range items {
		switch v := it.(type) {
		case *scene.Group:
			out = append(out, Drawn(v.Items, width, cost)...)
		case *scene.Circle:
			out = append(out, Obstacle{Circle: &Circle{v.Center, v.Radius}, Cost: cost})
		case *scene.Rect:
			box := v.Box
			out = append(out, Obstacle{Box: &box, Cost: cost})
		case *scene.Polygon:
			out = append(out, Obstacle{Area: v.Points, Cost: cost})
		case *scene.Text:
			q := v.Quad()
			out = append(out, Obstacle{Area: q[:], Cost: cost})
		default:
			if path := scene.Outline(it); path != nil {
				lines, closed := path.Flat(0.1)
				for i, l := range lines {
					if closed[i] {
						l = append(l, l[0])
					}
					out = append(out, Obstacle{Line: l, Width: width, Cost: cost})
				}
			}
		}
	}
	return out
}
