package sight

import (
	"math"
	"math/bits"

	"longhand/lang/units"
)

// column clears the cells of which any point up to the height is in sight, of
// those that level has left.
func (v *floorView) column(f units.Frame) {
	m, e := v.r.m, &v.look.eye
	h0, h1 := -e.z, m.Height-e.z
	v.wide.reset()
	v.frameArea(&v.wide, h0, h1)
	ready := false
	for row := range m.Rows {
		from, to := v.wide.span(row, m.Columns)
		if from > to || !v.candidates(row, from, to) {
			continue
		}
		if !ready {
			// What one solid hides at the bottom and at the top it hides in
			// between, for what a convex solid hides is convex.
			v.cast(h0, h1, f)
			v.look.solids(f)
			ready = true
		}
		v.uncover(row, from, to)
		for w := from >> 6; w <= to>>6; w++ {
			for b := v.row[w]; b != 0; b &= b - 1 {
				column := w<<6 + bits.TrailingZeros64(b)
				if !v.open(column, row, h0, h1) {
					v.row[w] &^= b & -b
				}
			}
		}
		v.mark(row, from, to, f)
	}
}

// open is whether a cell's upright line from h0 to h1 above the lens has a part
// in frame that nothing hides.
func (v *floorView) open(column, row int, h0, h1 float64) bool {
	e := &v.look.eye
	at := v.r.m.Middle(column, row)
	q, l := e.place(at.X, at.Y)
	if !e.steep && q <= 0 {
		return false
	}
	n, p := q, l/q
	if e.steep {
		n, p = math.Hypot(q, l), math.Atan2(l, q)
	}
	if n == 0 {
		return false
	}
	if !e.steep && (p < e.win.p0 || p > e.win.p1) {
		return false
	}
	cx, cy, w := q/n, l/n, 1/n
	lo, hi := e.win.span(cx, cy)
	lo, hi = max(lo, h0*w), min(hi, h1*w)
	if lo >= hi {
		return false
	}
	v.gaps = v.gaps[:0]
	for i := range v.look.items[:v.look.n] {
		o := &v.look.items[i]
		if !e.holds(o, p) || o.lo >= hi || o.hi <= lo {
			continue
		}
		ow, a, b := o.slopes(cx, cy)
		if ow < w { // it begins beyond the cell
			continue
		}
		// A falling ray reaches the top of o beyond the cell where it falls too
		// little, and a climbing one its underside.
		if o.h1 < 0 {
			b = min(b, o.h1*w)
		}
		if o.h0 > 0 {
			a = max(a, o.h0*w)
		}
		if a < b {
			v.gaps = append(v.gaps, gap{a, b})
		}
	}
	return openBetween(v.gaps, lo, hi)
}

// openBetween is whether intervals leave a gap between lo and hi.
func openBetween(gaps []gap, lo, hi float64) bool {
	for i := 1; i < len(gaps); i++ {
		for j := i; j > 0 && gaps[j].lo < gaps[j-1].lo; j-- {
			gaps[j], gaps[j-1] = gaps[j-1], gaps[j]
		}
	}
	for _, g := range gaps {
		if min(g.lo, hi)-lo > thin {
			return true
		}
		lo = max(lo, g.hi)
	}
	return hi-lo > thin
}
