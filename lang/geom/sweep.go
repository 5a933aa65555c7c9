package geom

import (
	"math"
	"slices"
)

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
