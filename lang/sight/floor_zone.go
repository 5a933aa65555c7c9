package sight

import (
	"sort"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// Zone is a connected part of the never-seen floor.
type Zone struct {
	Area     float64  // square metres
	Middle   geom.Vec // of its cells, on average; it may lie outside a bent zone
	Roomiest geom.Vec // the middle of the cell farthest from its edges
	Room     float64  // metres from there to the nearest edge, along x, y or across
	Min, Max geom.Vec // its bounds
	Cells    [][2]int // column and row
	// Opens and Closes are the first and last frame of the longest stretch about
	// the frames asked for through which all of it stays out of sight: before
	// the one and after the other some camera sees into it, unless they are the
	// first and last frame of the take.
	Opens, Closes units.Frame
}

// Zones lists the connected parts of at least an area, in square metres, the
// largest first.
func (m *FloorMap) Zones(least float64) []Zone {
	label := make([]int32, m.Columns*m.Rows)
	var zones []Zone
	for row := range m.Rows {
		for column := range m.Columns {
			if label[row*m.Columns+column] == 0 && m.Never(column, row) {
				zones = append(zones, m.zone(column, row, label, int32(len(zones)+1)))
			}
		}
	}
	kept := zones[:0]
	for _, z := range zones {
		if z.Area >= least-1e-12 {
			kept = append(kept, z)
		}
	}
	sort.SliceStable(kept, func(i, j int) bool { return len(kept[i].Cells) > len(kept[j].Cells) })
	m.times(kept)
	return kept
}

// zone collects the cells joined to one by their sides.
func (m *FloorMap) zone(column, row int, label []int32, id int32) Zone {
	var z Zone
	todo := [][2]int{{column, row}}
	label[row*m.Columns+column] = id
	for len(todo) > 0 {
		c := todo[len(todo)-1]
		todo = todo[:len(todo)-1]
		z.Cells = append(z.Cells, c)
		for _, d := range [4][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
			x, y := c[0]+d[0], c[1]+d[1]
			if x >= 0 && y >= 0 && x < m.Columns && y < m.Rows && label[y*m.Columns+x] == 0 && m.Never(x, y) {
				label[y*m.Columns+x] = id
				todo = append(todo, [2]int{x, y})
			}
		}
	}
	sort.Slice(z.Cells, func(i, j int) bool {
		a, b := z.Cells[i], z.Cells[j]
		return a[1] < b[1] || a[1] == b[1] && a[0] < b[0]
	})
	z.Area = float64(len(z.Cells)) * m.Cell * m.Cell
	z.Min, z.Max = m.Middle(column, row), m.Middle(column, row)
	for _, c := range z.Cells {
		p := m.Middle(c[0], c[1])
		z.Middle = z.Middle.Add(p)
		z.Min = geom.Vec{X: min(z.Min.X, p.X), Y: min(z.Min.Y, p.Y)}
		z.Max = geom.Vec{X: max(z.Max.X, p.X), Y: max(z.Max.Y, p.Y)}
	}
	z.Middle = z.Middle.Mul(1 / float64(len(z.Cells)))
	half := geom.Vec{X: m.Cell / 2, Y: m.Cell / 2}
	z.Min, z.Max = z.Min.Sub(half), z.Max.Add(half)
	m.roomiest(&z, label, id)
	return z
}

// roomiest finds the cell of a zone that is most rings of cells away from its
// edge, the nearest to its middle among equals.
func (m *FloorMap) roomiest(z *Zone, label []int32, id int32) {
	depth := make(map[[2]int]int, len(z.Cells))
	in := func(x, y int) bool {
		return x >= 0 && y >= 0 && x < m.Columns && y < m.Rows && label[y*m.Columns+x] == id
	}
	get := func(x, y int) int {
		if !in(x, y) {
			return 0
		}
		return depth[[2]int{x, y}]
	}
	// Two passes of the chessboard distance transform (Rosenfeld and Pfaltz 1966).
	for _, c := range z.Cells {
		x, y := c[0], c[1]
		depth[c] = 1 + min(get(x-1, y), get(x-1, y-1), get(x, y-1), get(x+1, y-1))
	}
	best, bestDist := 0, 0.0
	for i := len(z.Cells) - 1; i >= 0; i-- {
		c := z.Cells[i]
		x, y := c[0], c[1]
		depth[c] = min(depth[c], 1+min(get(x+1, y), get(x+1, y+1), get(x, y+1), get(x-1, y+1)))
		p := m.Middle(x, y)
		if d := p.Dist(z.Middle); depth[c] > best || depth[c] == best && d < bestDist {
			best, bestDist = depth[c], d
			z.Roomiest, z.Room = p, (float64(best)-0.5)*m.Cell
		}
	}
}

// times finds when each zone opens and closes, by looking on from the frames
// asked for, both ways, until every zone has been seen into.
func (m *FloorMap) times(zones []Zone) {
	if len(zones) == 0 || len(m.Frames) == 0 {
		return
	}
	from, to := m.Frames[0].From, m.Frames[0].To
	for _, f := range m.Frames {
		from, to = min(from, f.From), max(to, f.To)
	}
	last := units.Frame(m.run.st.scene.Frames - 1)
	for i := range zones {
		zones[i].Opens, zones[i].Closes = 0, last
	}
	m.lookOn(zones, to+1, last+1, 1, func(z *Zone, f units.Frame) { z.Closes = f - 1 })
	m.lookOn(zones, from-1, -1, -1, func(z *Zone, f units.Frame) { z.Opens = f + 1 })
}

func (m *FloorMap) lookOn(zones []Zone, from, end, step units.Frame, seen func(*Zone, units.Frame)) {
	v := newFloorView(m.run)
	owner := make([]int32, m.Columns*m.Rows)
	left := len(zones)
	for i, z := range zones {
		for _, c := range z.Cells {
			w, b := m.bit(c[0], c[1])
			v.unseen[w] |= b
			owner[c[1]*m.Columns+c[0]] = int32(i)
		}
	}
	done := make([]bool, len(zones))
	v.onSeen = func(column, row int, f units.Frame) {
		i := owner[row*m.Columns+column]
		if done[i] {
			return
		}
		done[i] = true
		left--
		seen(&zones[i], f)
	}
	for f := from; f != end && left > 0; f += step {
		for k, c := range m.run.cameras {
			if m.run.rolling[k].has(f) {
				v.see(c, f)
			}
		}
	}
}
