package sight

import (
	"math"

	"longhand/lang/geom"
)

// floorArea is a convex part of the floor as half planes, row by row of the
// grid: a row's columns lie right of every left bound and left of every right
// one. Bounds are in cells, at the middle of the row.
type floorArea struct {
	left, right []floorBound
	none        bool
	r0, r1      float64 // rows outside are empty
}

// floorBound is a column as at + per*row.
type floorBound struct{ at, per float64 }

func (a *floorArea) reset() {
	a.left, a.right, a.none = a.left[:0], a.right[:0], false
	a.r0, a.r1 = math.Inf(-1), math.Inf(1)
}

// within adds the half plane nx*x + ny*y <= c, in metres from the grid's origin.
func (a *floorArea) within(m *FloorMap, nx, ny, c float64) {
	// The middle of a cell is ((column + 1/2) cell, (row + 1/2) cell).
	c = c/m.Cell - (nx+ny)/2
	switch {
	case nx > 0:
		a.right = append(a.right, floorBound{c / nx, -ny / nx})
	case nx < 0:
		a.left = append(a.left, floorBound{c / nx, -ny / nx})
	case ny > 0:
		a.r1 = min(a.r1, c/ny)
	case ny < 0:
		a.r0 = max(a.r0, c/ny)
	case c < 0:
		a.none = true
	}
}

// span is the columns of a row, both ends included; empty where from > to.
func (a *floorArea) span(row, columns int) (from, to int) {
	r := float64(row)
	lo, hi := -0.5, float64(columns)-0.5
	for i := range a.left {
		if v := a.left[i].at + a.left[i].per*r; v > lo {
			lo = v
		}
	}
	for i := range a.right {
		if v := a.right[i].at + a.right[i].per*r; v < hi {
			hi = v
		}
	}
	if lo > hi || r < a.r0 || r > a.r1 || a.none {
		return 0, -1
	}
	return int(math.Ceil(lo)), int(math.Floor(hi))
}

// floorAreaOf is a convex, counter-clockwise polygon as an area.
func floorAreaOf(m *FloorMap, poly []geom.Vec) *floorArea {
	a := &floorArea{}
	a.reset()
	for i := range poly {
		p := poly[i].Sub(m.Origin)
		d := poly[(i+1)%len(poly)].Sub(poly[i])
		a.within(m, d.Y, -d.X, d.Y*p.X-d.X*p.Y)
	}
	return a
}

// fill sets the bits of an area.
func (m *FloorMap) fill(grid []uint64, a *floorArea) {
	for row := range m.Rows {
		from, to := a.span(row, m.Columns)
		if from <= to {
			setSpan(grid[row*m.words:(row+1)*m.words], from, to)
		}
	}
}

// spanMask is the bits of word w that lie in columns from to to.
func spanMask(w, from, to int) uint64 {
	mask := ^uint64(0)
	if d := from - w<<6; d > 0 {
		if d > 63 {
			return 0
		}
		mask <<= uint(d)
	}
	if d := to - w<<6; d < 63 {
		if d < 0 {
			return 0
		}
		mask &= ^uint64(0) >> uint(63-d)
	}
	return mask
}

func setSpan(row []uint64, from, to int) {
	for w := from >> 6; w <= to>>6; w++ {
		row[w] |= spanMask(w, from, to)
	}
}

func clearSpan(row []uint64, from, to int) {
	for w := from >> 6; w <= to>>6; w++ {
		row[w] &^= spanMask(w, from, to)
	}
}
