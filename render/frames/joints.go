package frames

import (
	"sort"

	"longhand/lang/geom"
)

// withoutSeams takes out of a piece's edges what only joins it to other pieces of
// the same thing: where the face goes on flat into theirs.
func withoutSeams(edges []edge, others []*prism) []edge {
	var faces []flat
	for _, o := range others {
		faces = append(faces, o.flats()...)
	}
	if len(faces) == 0 {
		return edges
	}
	var out []edge
	for _, e := range edges {
		type gap struct{ from, to float64 }
		var gaps []gap
		for i := range faces {
			f := &faces[i]
			if f.normal.Dot(e.n1) < 1-1e-6 && f.normal.Dot(e.n2) < 1-1e-6 {
				continue
			}
			if t0, t1, ok := f.on(e.a, e.b); ok {
				gaps = append(gaps, gap{t0, t1})
			}
		}
		sort.Slice(gaps, func(i, j int) bool { return gaps[i].from < gaps[j].from })
		length, at := e.b.Sub(e.a).Len(), 0.0
		for _, g := range append(gaps, gap{1, 1}) {
			if (g.from-at)*length > 2*touch {
				part := e
				part.a, part.b = lerp(e.a, e.b, at), lerp(e.a, e.b, g.from)
				out = append(out, part)
			}
			at = max(at, g.to)
		}
	}
	return out
}

// meeting is the lines in which the surfaces of two solids that reach into each
// other meet: the corner of a room, the floor of a gallery along its wall.
func meeting(p, q *prism) []edge {
	low, high := max(p.z[0], q.z[0]), min(p.z[1], q.z[1])
	pl, ph := geom.Bounds(p.polygon)
	ql, qh := geom.Bounds(q.polygon)
	if low >= high || pl.X > qh.X || ql.X > ph.X || pl.Y > qh.Y || ql.Y > ph.Y {
		return nil
	}
	var out []edge
	for i, s := range p.polygon.Edges() {
		for j, t := range q.polygon.Edges() {
			if at, ok := crossing(s, t); ok {
				out = append(out, edge{a: at.At(low), b: at.At(high), n1: sideNormal(p.polygon, i), n2: sideNormal(q.polygon, j)})
			}
		}
	}
	out = append(out, rims(p, q)...)
	return append(out, rims(q, p)...)
}

// crossing is where two edges cross, ends aside.
func crossing(s, t geom.Segment) (geom.Vec, bool) {
	d, e := s.B.Sub(s.A), t.B.Sub(t.A)
	k := d.Cross(e)
	if k == 0 {
		return geom.Vec{}, false
	}
	u, v := t.A.Sub(s.A).Cross(e)/k, t.A.Sub(s.A).Cross(d)/k
	const end = 1e-9
	if u <= end || u >= 1-end || v <= end || v >= 1-end {
		return geom.Vec{}, false
	}
	return s.At(u), true
}

// rims is where the level faces of p meet the sides of q.
func rims(p, q *prism) []edge {
	var out []edge
	for k, z := range p.z {
		if z <= q.z[0]+touch || z >= q.z[1]-touch {
			continue
		}
		normal := skyward.Mul(float64(2*k - 1))
		for i, s := range q.polygon.Edges() {
			for _, part := range p.parts {
				if a, b, ok := within(s, part); ok {
					out = append(out, edge{a: a.At(z), b: b.At(z), n1: normal, n2: sideNormal(q.polygon, i)})
				}
			}
		}
	}
	return out
}

// within is the part of a segment inside a convex polygon.
func within(s geom.Segment, p geom.Polygon) (a, b geom.Vec, ok bool) {
	t0, t1 := 0.0, 1.0
	for _, e := range p.Edges() {
		in := e.B.Sub(e.A).Unit().Left()
		fa, fb := in.Dot(s.A.Sub(e.A)), in.Dot(s.B.Sub(e.A))
		switch {
		case fa <= 0 && fb <= 0:
			return a, b, false
		case fa < 0:
			t0 = max(t0, fa/(fa-fb))
		case fb < 0:
			t1 = min(t1, fa/(fa-fb))
		}
	}
	return s.At(t0), s.At(t1), t0 < t1
}
