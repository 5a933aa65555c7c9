package geom

import "math"

// Visible is the polygon of floor that can be seen from a point, counter-
// clockwise. Edges the point lies on don't hide anything. Corners of walls are
// met exactly; slivers narrower than 1e-12 of a turn are dropped.
//
// The sweep: corners are sorted by direction; a ray turns through them and
// keeps the edges it meets in order of distance. What is nearest is what is
// seen. Edges share corners only, so between two corners the order can't
// change, and it is compared half way between them, where it is clearest.
func (w *Walls) Visible(from Vec) Polygon { return w.Viewer().Visible(nil, from) }

// VisibleWithin is Visible within a sector of width radians (less than a whole
// turn) in the middle of which is heading: what a camera's angle of view takes
// in. The point itself is the last corner.
func (w *Walls) VisibleWithin(from Vec, heading, width float64) Polygon {
	return w.Viewer().VisibleWithin(nil, from, heading, width)
}

// Viewer looks from many points without taking memory. Not for use by two
// goroutines at once: make one for each.
type Viewer struct {
	walls   *Walls
	rel     []Vec // corners as seen from the point, turned so that the sweep begins along +x
	key     []float64
	events  []event
	packed  []uint64
	active  []int32
	starts  []int32 // edges by the corner where the sweep enters them
	ends    []int32
	nextOut []int32
	nextIn  []int32
	span    []float64 // cross of an edge's ends: its distance from the point times its length
	from    Vec
	out     Polygon
}

type event struct {
	key    float64
	corner int32
}

// Viewer is a new one on these walls.
func (w *Walls) Viewer() *Viewer {
	n, m := len(w.corners), len(w.edges)
	return &Viewer{
		walls: w, rel: make([]Vec, n), key: make([]float64, n), events: make([]event, 0, n),
		starts: make([]int32, n), ends: make([]int32, n),
		nextIn: make([]int32, m), nextOut: make([]int32, m), span: make([]float64, m),
	}
}

// Visible appends the polygon to dst[:0].
func (v *Viewer) Visible(dst Polygon, from Vec) Polygon {
	v.out = dst[:0]
	if len(v.walls.corners) == 0 {
		return v.out
	}
	first := v.walls.corners[0].Sub(from)
	if first == (Vec{}) {
		first = Vec{1, 0}
	}
	v.sweep(from, first, wholeTurn)
	return tidy(v.out)
}

// VisibleWithin appends the polygon to dst[:0].
func (v *Viewer) VisibleWithin(dst Polygon, from Vec, heading, width float64) Polygon {
	if width >= 2*math.Pi {
		return v.Visible(dst, from)
	}
	v.out = dst[:0]
	if len(v.walls.corners) == 0 || !(width > 0) {
		return v.out
	}
	v.sweep(from, Polar(1, heading-width/2), bearing(Polar(1, width)))
	v.out = append(v.out, from)
	return tidy(v.out)
}

// tidy drops, in place, corners on the line between their neighbours and
// repeats.
func tidy(p Polygon) Polygon {
	kept := p[:0]
	for _, q := range p {
		if n := len(kept); n > 0 {
			if kept[n-1].Dist(q) <= joinSlop {
				continue
			}
			if n > 1 && (Segment{kept[n-2], q}).Distance(kept[n-1]) <= joinSlop {
				kept = kept[:n-1]
			}
		}
		kept = append(kept, q)
	}
	for len(kept) > 2 && kept[len(kept)-1].Dist(kept[0]) <= joinSlop {
		kept = kept[:len(kept)-1]
	}
	if n := len(kept); n > 3 && (Segment{kept[n-1], kept[1]}).Distance(kept[0]) <= joinSlop {
		kept = kept[:copy(kept, kept[1:])]
	}
	if n := len(kept); n > 3 && (Segment{kept[n-2], kept[0]}).Distance(kept[n-1]) <= joinSlop {
		kept = kept[:n-1]
	}
	return kept
}
