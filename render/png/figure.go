package png

import "longhand/render/scene"

// pixel is a place in the picture, in pixels from its top left corner.
type pixel struct{ x, y float64 }

// A contour is a line or ring of steps from a start.
type contour struct {
	start  pixel
	steps  []step
	closed bool
}

// A step goes to its last point, through as many controls as it has others.
type step struct {
	n      int // points in use: 1 line, 2 quadratic, 3 cubic
	points [3]pixel
}

type figure []contour

// figure turns a path without arcs into pixels.
func (p *painter) figure(cmds []scene.Cmd) figure {
	var fig figure
	at := func(q scene.Point) pixel { return pixel{q.X * p.k, q.Y * p.k} }
	var pen pixel
	fresh := true // the next step starts a contour
	add := func(s step) {
		if fresh {
			fig = append(fig, contour{start: pen})
			fresh = false
		}
		last := &fig[len(fig)-1]
		last.steps = append(last.steps, s)
	}
	for _, c := range cmds {
		switch c.Op {
		case scene.Move:
			fresh = true
		case scene.Draw:
			add(step{1, [3]pixel{at(c.At)}})
		case scene.Curve:
			add(step{3, [3]pixel{at(c.C1), at(c.C2), at(c.At)}})
		case scene.Close:
			if !fresh {
				fig[len(fig)-1].closed = true
			}
			fresh = true
		}
		pen = at(c.At)
	}
	return fig
}

// glyphPen collects the outline of letters.
type glyphPen struct {
	place  func(x, y float64) pixel
	figure figure
}

func (g *glyphPen) Move(x, y float64) {
	g.figure = append(g.figure, contour{start: g.place(x, y)})
}

func (g *glyphPen) add(s step) {
	last := &g.figure[len(g.figure)-1]
	last.steps = append(last.steps, s)
}

func (g *glyphPen) Line(x, y float64) { g.add(step{1, [3]pixel{g.place(x, y)}}) }

func (g *glyphPen) Quad(cx, cy, x, y float64) {
	g.add(step{2, [3]pixel{g.place(cx, cy), g.place(x, y)}})
}

func (g *glyphPen) Cubic(ax, ay, bx, by, x, y float64) {
	g.add(step{3, [3]pixel{g.place(ax, ay), g.place(bx, by), g.place(x, y)}})
}

func (g *glyphPen) Close() { g.figure[len(g.figure)-1].closed = true }
