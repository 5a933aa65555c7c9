package geom

import (
	"math"
	"slices"
)

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

// wholeTurn is a turn in the measure of bearing; sameKey is the least
// difference of two directions.
const (
	wholeTurn = 4.0
	halfTurn  = 2.0
	sameKey   = 1e-12
)

// bearing grows with the direction of a vector counter-clockwise from +x, from
// 0 to 4, without trigonometry: the way along a diamond.
func bearing(v Vec) float64 {
	p := v.X / (math.Abs(v.X) + math.Abs(v.Y))
	if v.Y < 0 {
		return 3 + p
	}
	return 1 - p
}

// toward is the direction of a bearing; not of unit length.
func toward(key float64) Vec {
	if key > halfTurn {
		return Vec{key - 3, -(1 - math.Abs(key-3))}
	}
	return Vec{1 - key, 1 - math.Abs(1-key)}
}

// sweep turns from a direction by width and gathers the corners of what is
// seen.
func (v *Viewer) sweep(from, direction Vec, width float64) {
	v.from = from
	v.aim(direction, width)
	v.sortEdges(width)
	front := int32(-1)
	at := v.events
	if len(at) == 0 || at[0].key > 0 {
		// Nothing begins along the first direction itself.
		v.order(v.nextKey(0, width) / 2)
		front = v.front()
		v.emit(front, -1, Vec{1, 0})
	}
	for i := 0; i < len(at); {
		j := i + 1
		for j < len(at) && at[j].key-at[i].key < sameKey {
			j++
		}
		key := at[i].key
		middle := (key + v.nextKey(j, width)) / 2
		if i == 0 && key == 0 {
			v.order(middle)
		}
		v.update(at[i:j], toward(middle), i == 0 && key == 0)
		if now := v.front(); now != front {
			group := at[i:j]
			if !(i == 0 && key == 0) {
				v.emitAt(front, group)
			}
			v.emitAt(now, group)
			front = now
		}
		i = j
	}
	if width < wholeTurn {
		v.emit(front, -1, toward(width))
	} else if n := len(at); n > 0 && at[0].key == 0 {
		group := at[:1]
		for k := 1; k < n && at[k].key < sameKey; k++ {
			group = at[:k+1]
		}
		v.emitAt(front, group)
	}
}

// aim takes every corner into the frame of the sweep and sorts those within.
func (v *Viewer) aim(direction Vec, width float64) {
	d := direction.Unit()
	v.events = v.events[:0]
	for i, corner := range v.walls.corners {
		c := corner.Sub(v.from)
		r := Vec{d.Dot(c), d.Cross(c)}
		v.rel[i] = r
		v.starts[i], v.ends[i] = -1, -1
		if math.Abs(r.X)+math.Abs(r.Y) <= joinSlop {
			v.key[i] = math.NaN()
			continue
		}
		key := bearing(r)
		if key < sameKey || key > wholeTurn-sameKey {
			key = 0
		}
		v.key[i] = key
		if key < width {
			v.events = append(v.events, event{key, int32(i)})
		}
	}
	slices.SortFunc(v.events, func(a, b event) int {
		switch {
		case a.key < b.key:
			return -1
		case a.key > b.key:
			return 1
		}
		return int(a.corner - b.corner)
	})
}

// sortEdges hangs every edge on the corners at which the sweep enters and
// leaves it, and finds those that it begins on.
func (v *Viewer) sortEdges(width float64) {
	v.active = v.active[:0]
	for e, ends := range v.walls.edges {
		a, b := ends[0], ends[1]
		turn := v.key[b] - v.key[a]
		if turn < 0 {
			turn += wholeTurn
		}
		if !(math.Abs(turn-halfTurn) > sameKey) || turn < sameKey || turn > wholeTurn-sameKey {
			continue // the point is on it or looks along it
		}
		if turn > halfTurn {
			a, b = b, a
		}
		v.span[e] = v.rel[a].Cross(v.rel[b])
		if !(v.span[e] > 0) {
			continue
		}
		ka, kb := v.key[a], v.key[b]
		if kb < ka { // it lies across the first direction, or ends there
			if kb > 0 {
				v.active = append(v.active, int32(e))
			}
		}
		if ka < width {
			v.nextIn[e], v.starts[a] = v.starts[a], int32(e)
		}
		if kb < width {
			v.nextOut[e], v.ends[b] = v.ends[b], int32(e)
		}
	}
}

func (v *Viewer) nextKey(i int, width float64) float64 {
	if i < len(v.events) {
		return v.events[i].key
	}
	return width
}

// distance of an edge along a direction, in units of it.
func (v *Viewer) distance(e int32, direction Vec) float64 {
	ends := v.walls.edges[e]
	a, b := v.rel[ends[0]], v.rel[ends[1]]
	return v.span[e] / math.Abs(direction.Cross(b.Sub(a)))
}

// order sorts the edges that the sweep begins on.
func (v *Viewer) order(key float64) {
	direction := toward(key)
	slices.SortFunc(v.active, func(a, b int32) int {
		da, db := v.distance(a, direction), v.distance(b, direction)
		switch {
		case da < db:
			return -1
		case da > db:
			return 1
		}
		return int(a - b)
	})
}

func (v *Viewer) front() int32 {
	if len(v.active) == 0 {
		return -1
	}
	return v.active[0]
}

// update takes out the edges that end at a group of corners and puts in those
// that begin there. One that goes on where another ends takes its place.
func (v *Viewer) update(group []event, direction Vec, first bool) {
	if len(group) == 1 && !first {
		c := group[0].corner
		out, in := v.ends[c], v.starts[c]
		if out >= 0 && in >= 0 && v.nextOut[out] < 0 && v.nextIn[in] < 0 {
			for i, e := range v.active {
				if e == out {
					v.active[i] = in
					return
				}
			}
		}
	}
	if !first {
		for _, ev := range group {
			for e := v.ends[ev.corner]; e >= 0; e = v.nextOut[e] {
				if i := slices.Index(v.active, e); i >= 0 {
					v.active = slices.Delete(v.active, i, i+1)
				}
			}
		}
	}
	for _, ev := range group {
		for e := v.starts[ev.corner]; e >= 0; e = v.nextIn[e] {
			d := v.distance(e, direction)
			i := 0
			for i < len(v.active) && v.distance(v.active[i], direction) <= d {
				i++
			}
			v.active = slices.Insert(v.active, i, e)
		}
	}
}

// emitAt adds the point of an edge in the direction of a group of corners: the
// corner itself where the edge has one there.
func (v *Viewer) emitAt(e int32, group []event) {
	if e >= 0 {
		for _, end := range v.walls.edges[e] {
			for _, ev := range group {
				if ev.corner == end {
					v.emit(e, end, Vec{})
					return
				}
			}
		}
	}
	v.emit(e, -1, v.rel[group[0].corner])
}

// emit adds a corner, or the point of an edge in a direction of the sweep's
// frame; where there is no edge, the eye.
func (v *Viewer) emit(e, corner int32, direction Vec) {
	var p Vec
	switch {
	case corner >= 0:
		p = v.walls.corners[corner]
	case e < 0:
		p = v.from
	default:
		ends := v.walls.edges[e]
		a, b := v.rel[ends[0]], v.rel[ends[1]]
		k := a.Cross(direction) / (a.Cross(direction) - b.Cross(direction))
		if !(k > 0) {
			k = 0
		}
		p = v.walls.corners[ends[0]].Lerp(v.walls.corners[ends[1]], min(k, 1))
	}
	if n := len(v.out); n > 0 && v.out[n-1].Dist(p) <= joinSlop {
		return
	}
	v.out = append(v.out, p)
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
