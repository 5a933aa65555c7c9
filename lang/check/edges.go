package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// drop is a time near an edge.
type drop struct {
	from, to int
	worst    int
	near     float64 // m from the edge
	deep     float64 // m of drop
	backs    bool
	lens     bool
	over     bool // over the edge, not along it
	line     *plan.Action
}

func (p *Pass) edges(m *movers, floors *solid.Floors, b *mover) {
	var out []drop
	again := int(edgeAgain * m.rate.PerSecond())
	m.looks(b, func(from, to int, s, q *motion.Pose) {
		t := m.time(from)
		if float64(s.Z) <= float64(body.EdgeDrop) || s.Point().Dist(q.Point()) < edgeSlow*float64(m.time(to)-t) {
			return
		}
		if !b.onFoot(t) || p.nearStairs(*s) {
			return
		}
		if float64(s.Z)-floors.Under(s.Point(), float64(s.Z)) > stepsAside {
			return // on nothing that the set has, which is a jump
		}
		v := q.Point().Sub(s.Point())
		backs := v.Dot(geom.Polar(1, s.Heading)) < -0.5*v.Len()
		lens := b.person == nil || p.wearing(m, b.person, t)
		least := float64(body.EdgeDrop)
		if !backs {
			least = stepsAside
		}
		near, deep, _, ok := p.edgeNear(floors, s.Point(), float64(s.Z), least)
		if !ok {
			return
		}
		over := float64(s.Z)-floors.Under(q.Point(), float64(s.Z)) > least
		line := b.track.Segment(t).Action
		if n := len(out); n > 0 && out[n-1].line == line && from <= out[n-1].to+again {
			d := &out[n-1]
			d.to = from
			d.backs, d.lens = d.backs || backs, d.lens || lens
			if over && !d.over || near < d.near && over == d.over {
				d.over = over
				d.near, d.deep, d.worst = near, deep, from
			}
			return
		}
		out = append(out, drop{from, from, from, near, deep, backs, lens, over, line})
	})
	for _, d := range out {
		p.fallEdge(m, floors, b, d)
	}
}

// wearing says that somebody has a camera on or in their hands.
func (p *Pass) wearing(m *movers, who *plan.Person, t units.Seconds) bool {
	for _, list := range m.worn {
		for _, w := range list {
			if w.who == who && t >= w.from && t < w.to {
				return true
			}
		}
	}
	return false
}

// nearStairs says that a place is on a flight of stairs or next to one that
// leads to its floor.
func (p *Pass) nearStairs(at motion.Pose) bool {
	for _, s := range p.Plan.Set.Stairs {
		if s.Bad || s.Foot == s.Head {
			continue
		}
		if flight(s).Distance(at.Point()) <= stairsNear {
			return true
		}
	}
	return false
}

// edgeNear is how near the nearest unguarded drop is, how deep, and which way;
// false where none is within body.EdgeGap.
func (p *Pass) edgeNear(floors *solid.Floors, at geom.Vec, z, least float64) (near, deep float64, toward geom.Vec, ok bool) {
	near = math.Inf(1)
	gap := float64(body.EdgeGap)
	for i := range edgeLooks {
		dir := geom.Polar(1, 2*math.Pi*float64(i)/edgeLooks)
		far := at.Add(dir.Mul(gap))
		if z-floors.Under(far, z) <= least {
			continue
		}
		// Halve the way to find the edge.
		low, high := 0.0, gap
		for range 8 {
			mid := (low + high) / 2
			if z-floors.Under(at.Add(dir.Mul(mid)), z) > least {
				high = mid
			} else {
				low = mid
			}
		}
		if high >= near || p.guarded(at, at.Add(dir.Mul(high+0.3)), z) {
			continue
		}
		near, deep, toward, ok = high, z-floors.Under(far, z), dir, true
	}
	return near, deep, toward, ok
}

// guarded says that something stands between two places that would hold
// somebody who is at a height: a wall, a rail, a block.
func (p *Pass) guarded(from, to geom.Vec, z float64) bool {
	way := geom.Segment{A: from, B: to}
	for _, o := range p.obstacles() {
		if o.Door != nil || o.Z[1] < z+guardHigh || o.Z[0] > z+kneeHigh {
			continue
		}
		if _, ok := o.Thing.(*plan.Platform); ok {
			continue
		}
		if geom.Polygon(o.Polygon).MeetsSegment(way) != geom.Apart {
			return true
		}
	}
	return false
}

// fromEdge is a place further in for a mark that is too near a drop; false where
// it isn't, or where there is none.
func (p *Pass) fromEdge(floors *solid.Floors, at geom.Vec, z float64) (geom.Vec, bool) {
	const (
		tries = 4    // a corner takes two
		over  = 0.05 // m
	)
	moved := false
	for range tries {
		near, _, toward, ok := p.edgeNear(floors, at, z, float64(body.EdgeDrop))
		if !ok {
			return at, moved
		}
		at = at.Sub(toward.Mul(float64(body.EdgeGap) - near + over))
		moved = true
	}
	return at, false
}
