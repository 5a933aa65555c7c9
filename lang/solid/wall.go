package solid

import (
	"sort"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// opening is a rectangle cut out of a wall: a stretch of its length and a range
// of heights.
type opening struct{ from, to, low, high float64 }

// wall cuts a wall at its corners and at the edges of its openings; what stands
// above and below the openings stays. Doors and hole plugs fill their openings
// with pieces of their own.
func wall(set *plan.Set, w *plan.Wall) []Piece {
	base := newBaseline(w)
	if base.length() == 0 {
		return nil
	}
	full := span(w.High)
	var cuts []opening
	var fills []Piece
	add := func(from, to float64, z [2]float64) (opening, bool) {
		o := opening{max(from, 0), min(to, base.length()), max(z[0], full[0]), min(z[1], full[1])}
		if o.to <= o.from || o.high <= o.low {
			return o, false
		}
		cuts = append(cuts, o)
		return o, true
	}
	for _, d := range set.Doors {
		if d.Bad || d.Wall != w {
			continue
		}
		if o, ok := add(float64(d.From), float64(d.To), span(d.High)); ok {
			for _, q := range base.quads(o.from, o.to) {
				fills = append(fills, Piece{Name: d.Name, Thing: d, Polygon: q, Z: [2]float64{o.low, o.high}, Door: d})
			}
		}
	}
	for _, p := range set.Windows {
		if !p.Bad && p.Wall == w {
			add(float64(p.From), float64(p.To), span(p.High))
		}
	}
	for _, h := range set.Holes {
		if h.Bad || h.Wall != w {
			continue
		}
		half := float64(h.Wide) / 2
		o, ok := add(float64(h.Along)-half, float64(h.Along)+half, [2]float64{float64(h.Up) - half, float64(h.Up) + half})
		if ok {
			for _, q := range base.quads(o.from, o.to) {
				fills = append(fills, Piece{Name: h.Name, Thing: h, Polygon: q, Z: [2]float64{o.low, o.high}, Hole: h})
			}
		}
	}
	var out []Piece
	for _, stretch := range stretches(cuts, base.length()) {
		for _, z := range remaining(cuts, stretch, full) {
			for _, q := range base.quads(stretch[0], stretch[1]) {
				out = append(out, Piece{Name: w.Name, Thing: w, Polygon: q, Z: z, Glass: w.Glass})
			}
		}
	}
	return append(out, fills...)
}

// stretches are the parts of the wall's length between the edges of openings.
func stretches(cuts []opening, length float64) [][2]float64 {
	edges := []float64{0, length}
	for _, o := range cuts {
		edges = append(edges, o.from, o.to)
	}
	sort.Float64s(edges)
	var out [][2]float64
	for i := 0; i+1 < len(edges); i++ {
		if edges[i+1]-edges[i] > 1e-9 {
			out = append(out, [2]float64{edges[i], edges[i+1]})
		}
	}
	return out
}

// remaining is what of the wall's height stands in a stretch.
func remaining(cuts []opening, stretch [2]float64, full [2]float64) [][2]float64 {
	mid := (stretch[0] + stretch[1]) / 2
	left := [][2]float64{full}
	for _, o := range cuts {
		if mid < o.from || mid > o.to {
			continue
		}
		var next [][2]float64
		for _, z := range left {
			if o.high <= z[0] || o.low >= z[1] {
				next = append(next, z)
				continue
			}
			if o.low > z[0] {
				next = append(next, [2]float64{z[0], o.low})
			}
			if o.high < z[1] {
				next = append(next, [2]float64{o.high, z[1]})
			}
		}
		left = next
	}
	return left
}

// baseline is a wall's line on the floor with its thickness, mitred where it
// turns.
type baseline struct {
	pts   []geom.Vec
	at    []float64  // length at each point
	sides []geom.Vec // from each point to the left face's corner
	half  float64
}

func newBaseline(w *plan.Wall) *baseline {
	b := &baseline{half: float64(w.Thick) / 2}
	for _, p := range w.Line {
		if n := len(b.pts); n > 0 && b.pts[n-1].Dist(p) < 1e-9 {
			continue
		}
		b.pts = append(b.pts, p)
	}
	n := len(b.pts)
	b.at = make([]float64, n)
	for i := 1; i < n; i++ {
		b.at[i] = b.at[i-1] + b.pts[i].Dist(b.pts[i-1])
	}
	closed := n > 3 && b.pts[0].Dist(b.pts[n-1]) < 1e-6
	for i := range b.pts {
		var in, out geom.Vec
		switch {
		case i > 0:
			in = b.pts[i].Sub(b.pts[i-1]).Unit()
		case closed:
			in = b.pts[n-1].Sub(b.pts[n-2]).Unit()
		}
		switch {
		case i+1 < n:
			out = b.pts[i+1].Sub(b.pts[i]).Unit()
		case closed:
			out = b.pts[1].Sub(b.pts[0]).Unit()
		}
		b.sides = append(b.sides, mitre(in, out, b.half))
	}
	return b
}

// maxMitre keeps the point of a very sharp corner from running away: a mitre is
// at most this many half thicknesses long.
const maxMitre = 4

func mitre(in, out geom.Vec, half float64) geom.Vec {
	if in == (geom.Vec{}) {
		in = out
	}
	if out == (geom.Vec{}) {
		out = in
	}
	m := in.Left().Add(out.Left()).Unit()
	cos := m.Dot(in.Left())
	if cos < 1.0/maxMitre {
		cos = 1.0 / maxMitre
	}
	if m == (geom.Vec{}) { // a wall folded back on itself
		m = in.Left()
		cos = 1
	}
	return m.Mul(half / cos)
}

func (b *baseline) length() float64 {
	if len(b.at) == 0 {
		return 0
	}
	return b.at[len(b.at)-1]
}

// quads are the footprints of a stretch of the wall, one for each straight run.
func (b *baseline) quads(from, to float64) [][]geom.Vec {
	var out [][]geom.Vec
	for i := 0; i+1 < len(b.pts); i++ {
		s0, s1 := max(from, b.at[i]), min(to, b.at[i+1])
		if s1-s0 < 1e-9 {
			continue
		}
		pa, la := b.corner(i, s0)
		pb, lb := b.corner(i, s1)
		out = append(out, geom.Polygon{pa.Sub(la), pb.Sub(lb), pb.Add(lb), pa.Add(la)}.CCW())
	}
	return out
}

// corner is the point at length s on run i and the way to the left face there.
func (b *baseline) corner(i int, s float64) (p, left geom.Vec) {
	const near = 1e-9
	switch {
	case s-b.at[i] < near:
		return b.pts[i], b.sides[i]
	case b.at[i+1]-s < near:
		return b.pts[i+1], b.sides[i+1]
	}
	dir := b.pts[i+1].Sub(b.pts[i]).Unit()
	return b.pts[i].Add(dir.Mul(s - b.at[i])), dir.Left().Mul(b.half)
}
