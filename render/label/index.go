package label

import (
	"math"

	"longhand/render/scene"
)

// piece is a part of an obstacle that is quick to test: a segment, a convex box,
// a circle, or a ring as a whole.
type piece struct {
	kind     uint8
	a, b     scene.Point   // of a segment; a is a circle's centre
	radius   float64       // half a line's width, or a circle's radius
	points   []scene.Point // of a box or ring
	box      scene.Box
	obstacle int
	cost     float64 // 0 forbids
}

const (
	segment uint8 = iota
	convex
	round
	ring
)

func pieces(obstacles []Obstacle) []piece {
	var out []piece
	for i, o := range obstacles {
		cost := math.Max(0, o.Cost)
		add := func(p piece) {
			p.obstacle, p.cost = i, cost
			out = append(out, p)
		}
		switch {
		case len(o.Line) > 1:
			for j := 1; j < len(o.Line); j++ {
				a, b := o.Line[j-1], o.Line[j]
				add(piece{kind: segment, a: a, b: b, radius: o.Width / 2, box: boundsOf([]scene.Point{a, b}).Grow(o.Width / 2)})
			}
		case len(o.Area) > 2:
			add(piece{kind: ring, points: o.Area, box: boundsOf(o.Area)})
		case o.Box != nil:
			add(piece{kind: convex, points: o.Box.Corners(), box: *o.Box})
		case o.Circle != nil:
			c := *o.Circle
			add(piece{kind: round, a: c.Center, radius: c.Radius, box: scene.Box{Min: c.Center, Max: c.Center}.Grow(c.Radius)})
		}
	}
	return out
}

// covers is whether a label's quad lies on the piece.
func (p *piece) covers(q []scene.Point) bool {
	switch p.kind {
	case segment:
		if crossesQuad(p.a, p.b, q) {
			return true
		}
		return p.radius > 0 && segmentQuadDistance(p.a, p.b, q) < p.radius
	case convex:
		return overlap(p.points, q)
	case round:
		return quadDistance(p.a, q) < p.radius
	default:
		for i, a := range p.points {
			if crossesQuad(a, p.points[(i+1)%len(p.points)], q) {
				return true
			}
		}
		return inRing(q[0], p.points)
	}
}

// struck is whether a leader goes through the piece.
func (p *piece) struck(a, b scene.Point) bool {
	switch p.kind {
	case segment:
		return crosses(a, b, p.a, p.b)
	case convex:
		return crossesQuad(a, b, p.points)
	case round:
		return segmentDistance(p.a, a, b) < p.radius
	default:
		for i, c := range p.points {
			if crosses(a, b, c, p.points[(i+1)%len(p.points)]) {
				return true
			}
		}
		return inRing(a, p.points)
	}
}

// segmentQuadDistance is the distance of two shapes that do not meet: it is at a
// corner of one of them.
func segmentQuadDistance(a, b scene.Point, q []scene.Point) float64 {
	best := math.Min(quadDistance(a, q), quadDistance(b, q))
	for _, c := range q {
		best = math.Min(best, segmentDistance(c, a, b))
	}
	return best
}

// grid finds the pieces near a box without looking at all of them.
type grid struct {
	pieces []piece
	origin scene.Point
	cols   int
	rows   int
	cells  [][]int32
	seen   []int32 // the last question each piece was found for
	asked  int32
}

// cell is about the height of two lines of a label.
const cell = 6.0

func newGrid(within scene.Box, ps []piece) *grid {
	g := &grid{pieces: ps, origin: within.Min, seen: make([]int32, len(ps))}
	g.cols = max(1, min(400, int(within.Width()/cell)+1))
	g.rows = max(1, min(400, int(within.Height()/cell)+1))
	g.cells = make([][]int32, g.cols*g.rows)
	for i := range ps {
		g.each(ps[i].box, func(c int) { g.cells[c] = append(g.cells[c], int32(i)) })
	}
	return g
}

func (g *grid) each(b scene.Box, do func(cell int)) {
	clamp := func(v float64, n int) int { return int(math.Max(0, math.Min(float64(n-1), math.Floor(v/cell)))) }
	x0, x1 := clamp(b.Min.X-g.origin.X, g.cols), clamp(b.Max.X-g.origin.X, g.cols)
	y0, y1 := clamp(b.Min.Y-g.origin.Y, g.rows), clamp(b.Max.Y-g.origin.Y, g.rows)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			do(y*g.cols + x)
		}
	}
}

// near calls for each piece whose box meets b, once, until told to stop.
func (g *grid) near(b scene.Box, do func(*piece) (more bool)) {
	g.asked++
	stop := false
	g.each(b, func(c int) {
		if stop {
			return
		}
		for _, i := range g.cells[c] {
			if g.seen[i] == g.asked {
				continue
			}
			g.seen[i] = g.asked
			p := &g.pieces[i]
			if b.Min.X <= p.box.Max.X && p.box.Min.X <= b.Max.X && b.Min.Y <= p.box.Max.Y && p.box.Min.Y <= b.Max.Y && !do(p) {
				stop = true
				return
			}
		}
	})
}
