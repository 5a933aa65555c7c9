package geom

import (
	"cmp"
	"math"
	"slices"
)

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
	v.sortEvents()
}

// sortEvents orders the corners by direction. For all but huge plans the key, to
// 2^-46, and the number of the corner fit in one word, which sorts three times
// as fast; sameKey is far wider than what that rounds off.
func (v *Viewer) sortEvents() {
	if len(v.walls.corners) > math.MaxUint16 {
		slices.SortFunc(v.events, func(a, b event) int {
			return cmp.Or(cmp.Compare(a.key, b.key), cmp.Compare(a.corner, b.corner))
		})
		return
	}
	v.packed = v.packed[:0]
	for _, e := range v.events {
		v.packed = append(v.packed, uint64(e.key*(1<<46))<<16|uint64(e.corner))
	}
	slices.Sort(v.packed)
	for i, p := range v.packed {
		corner := int32(p & math.MaxUint16)
		v.events[i] = event{v.key[corner], corner}
	}
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
		if !(math.Abs(turn-halfTurn) > sameKey) || turn < 2*sameKey || turn > wholeTurn-2*sameKey {
			continue // the point is on it or looks along it: no group holds both ends
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
