package geom

import "slices"

// Walls is what stops sight on the floor, prepared so that what can be seen from
// a point takes microseconds: edges cut where they cross or touch, with their
// corners shared. It never changes once made and may be shared.
type Walls struct {
	corners []Vec
	edges   [][2]int32 // corner numbers
}

// NewWalls prepares a boundary and the segments within it. The boundary, which
// may be empty, is what sight ends at everywhere; where there is nothing in the
// way at all, nothing counts as seen. Points within a nanometre are one.
func NewWalls(boundary Polygon, segments ...Segment) *Walls {
	all := append(boundary.Edges(), segments...)
	cuts := make([][]float64, len(all))
	order := make([]int, len(all))
	left := func(i int) float64 { return min(all[i].A.X, all[i].B.X) }
	for i := range all {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int { return compareVec(Vec{left(i), float64(i)}, Vec{left(j), float64(j)}) })
	for n, i := range order {
		right := max(all[i].A.X, all[i].B.X) + joinSlop
		for _, j := range order[n+1:] {
			if left(j) > right {
				break
			}
			cutAtMeeting(all[i], all[j], &cuts[i], &cuts[j])
		}
	}
	weld := welder{cells: map[[2]int64]int32{}}
	w := &Walls{}
	seen := map[[2]int32]bool{}
	for i, s := range all {
		slices.Sort(cuts[i])
		from := weld.corner(s.A)
		for _, k := range append(cuts[i], 1) {
			p := s.B
			if k < 1 {
				p = s.At(k)
			}
			to := weld.corner(p)
			if from == to {
				continue
			}
			if edge := [2]int32{min(from, to), max(from, to)}; !seen[edge] {
				seen[edge] = true
				w.edges = append(w.edges, edge)
			}
			from = to
		}
	}
	w.corners = weld.corners
	return w
}

// cutAtMeeting notes the fractions at which two segments have to be cut so that
// they share corners only.
func cutAtMeeting(s, t Segment, onS, onT *[]float64) {
	if min(s.A.Y, s.B.Y) > max(t.A.Y, t.B.Y)+joinSlop || min(t.A.Y, t.B.Y) > max(s.A.Y, s.B.Y)+joinSlop {
		return
	}
	touched := false
	near := func(s Segment, p Vec, cuts *[]float64) {
		if k := s.Closest(p); s.At(k).Dist(p) <= joinSlop {
			touched = true
			if k > 0 && k < 1 {
				*cuts = append(*cuts, k)
			}
		}
	}
	near(s, t.A, onS)
	near(s, t.B, onS)
	near(t, s.A, onT)
	near(t, s.B, onT)
	if touched {
		return
	}
	if k, l, ok := s.Intersect(t); ok {
		*onS, *onT = append(*onS, k), append(*onT, l)
	}
}

// welder gives points numbers, the same to points within joinSlop.
type welder struct {
	corners []Vec
	cells   map[[2]int64]int32
}

func (w *welder) corner(p Vec) int32 {
	const size = 4 * joinSlop
	x, y := int64(p.X/size), int64(p.Y/size)
	for dx := int64(-1); dx <= 1; dx++ {
		for dy := int64(-1); dy <= 1; dy++ {
			if i, ok := w.cells[[2]int64{x + dx, y + dy}]; ok && w.corners[i].Dist(p) <= joinSlop {
				return i
			}
		}
	}
	i := int32(len(w.corners))
	w.corners = append(w.corners, p)
	w.cells[[2]int64{x, y}] = i
	return i
}
