package overhead

import (
	"context"
	"math"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/lang/units"
	"longhand/render/scene"
)

// neverHatch is the hatching of floor that is never seen.
var neverHatch = scene.Pattern{Angle: 135, Spacing: 1.4}

// drawNever hatches the floor on which a standing person is seen by no rolling
// camera all through the stretch: where people and gear may be.
func (d *drawing) drawNever(g *scene.Group) {
	if d.scene == nil || len(d.scene.Cameras) == 0 {
		return
	}
	rate := d.tracks.Rate
	cell := math.Max(0.1, 1.2*d.view.Scale/1000)
	from, to := rate.From(d.span.from), rate.At(d.lastOf(d.span))
	last := units.Frame(d.scene.Frames - 1)
	from, to = min(from, last), min(max(from, to), last)
	low, high := d.view.Floor(scene.Pt(d.box.Min.X, d.box.Max.Y)), d.view.Floor(scene.Pt(d.box.Max.X, d.box.Min.Y))
	m, err := sight.Floor(context.Background(), d.scene, sight.FloorOptions{
		Cell: cell, Height: sight.Standing, Frames: []sight.Frames{{From: from, To: to}}, Bounds: [2]geom.Vec{low, high},
	})
	if err != nil {
		return
	}
	var rings [][]scene.Point
	for _, r := range outlines(m.Columns, m.Rows, m.Never) {
		ring := make([]scene.Point, len(r))
		for i, c := range r {
			ring[i] = d.pt(geom.Vec{X: m.Origin.X + float64(c[0])*m.Cell, Y: m.Origin.Y + float64(c[1])*m.Cell})
		}
		rings = append(rings, ring)
	}
	g.Add(scene.Hatch("never", rings, neverHatch))
}

// outlines are the closed lines round the cells that are in, as corners of the
// grid; rings of holes are among them.
func outlines(columns, rows int, in func(column, row int) bool) [][][2]int {
	is := func(c, r int) bool { return c >= 0 && r >= 0 && c < columns && r < rows && in(c, r) }
	// Each edge has a cell that is in on its left.
	next := map[[2]int][][2]int{}
	var order [][2]int
	edge := func(a, b [2]int) {
		if len(next[a]) == 0 {
			order = append(order, a)
		}
		next[a] = append(next[a], b)
	}
	for r := range rows {
		for c := range columns {
			if !is(c, r) {
				continue
			}
			if !is(c, r-1) {
				edge([2]int{c, r}, [2]int{c + 1, r})
			}
			if !is(c+1, r) {
				edge([2]int{c + 1, r}, [2]int{c + 1, r + 1})
			}
			if !is(c, r+1) {
				edge([2]int{c + 1, r + 1}, [2]int{c, r + 1})
			}
			if !is(c-1, r) {
				edge([2]int{c, r + 1}, [2]int{c, r})
			}
		}
	}
	var out [][][2]int
	for _, start := range order {
		for len(next[start]) > 0 {
			var ring [][2]int
			at := start
			for {
				ends := next[at]
				if len(ends) == 0 {
					break
				}
				to := ends[0]
				next[at] = ends[1:]
				if n := len(ring); n > 1 && straight(ring[n-2], ring[n-1], at) {
					ring[n-1] = at
				} else {
					ring = append(ring, at)
				}
				at = to
				if at == start {
					break
				}
			}
			out = append(out, ring)
		}
	}
	return out
}

func straight(a, b, c [2]int) bool {
	return (b[0]-a[0])*(c[1]-b[1]) == (b[1]-a[1])*(c[0]-b[0])
}

func vec(x, y float64) geom.Vec { return geom.Vec{X: x, Y: y} }
