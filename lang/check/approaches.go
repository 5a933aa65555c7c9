package check

import (
	"math"
	"sort"

	"longhand/lang/clock"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Approach is how near two bodies come to each other, and when.
type Approach struct {
	A, B plan.Thing
	At   units.Seconds
	Gap  units.Metres // between their outsides; negative where they meet
}

// Approaches lists every two bodies of a take that come within a distance of
// each other, at their closest, nearest first. Who belongs together (riders and
// carriers, an operator and their rig, the hands at a handoff) isn't listed for
// the time they do, nor are two that stand as they stood from the start.
func Approaches(pl *plan.Plan, c *clock.Clock, t *motion.Tracks, within units.Metres) []Approach {
	p := &Pass{Plan: pl, Clock: c, Tracks: t}
	m := p.moving()
	var out []Approach
	for i, a := range m.list {
		for _, b := range m.list[i+1:] {
			if x, ok := p.closest(m, a, b, float64(within)); ok {
				out = append(out, x)
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Gap < out[j].Gap })
	return out
}

func (p *Pass) closest(m *movers, a, b *mover, within float64) (Approach, bool) {
	best := Approach{A: a.thing, B: b.thing, Gap: units.Metres(math.Inf(1))}
	moved := false
	first := [2]motion.Pose{m.at(a, 0), m.at(b, 0)}
	m.meetings(a, b, within, func(frame int, s, q motion.Pose) {
		moved = moved || s != first[0] || q != first[1]
		alow, ahigh := a.span(s)
		blow, bhigh := b.span(q)
		if alow >= bhigh || blow >= ahigh {
			return
		}
		t := m.time(frame)
		if !a.counts(t) || !b.counts(t) || m.root(a.thing, t) == m.root(b.thing, t) || p.bonded(a.thing, b.thing, t) {
			return
		}
		if gap := units.Metres(outside(a, b, s, q)); gap < best.Gap {
			best.Gap, best.At = gap, t
		}
	})
	return best, moved && float64(best.Gap) <= within
}

// outside is the distance between the outsides of two bodies, negative where
// they are in each other.
func outside(a, b *mover, p, q motion.Pose) float64 {
	switch {
	case a.person != nil && b.person != nil:
		return p.Point().Dist(q.Point()) - a.radius - b.radius
	case a.person != nil:
		return away(b.box(q), p.Point()) - a.radius
	case b.person != nil:
		return outside(b, a, q, p)
	}
	box, other := a.box(p), b.box(q)
	if deep := overlap(box, other); deep > 0 {
		return -deep
	}
	return box.DistanceTo(other)
}
