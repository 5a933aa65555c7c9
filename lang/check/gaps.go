package check

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// gap is a time for which a body goes through less room than it needs.
type gap struct {
	from, to    int // frames
	worst       int
	width       float64
	need        float64
	left, right *obstacle
	door        *plan.Door // nil where it is no door
}

const (
	walking    = 0.2  // m/s: slower is standing
	slabLeast  = 0.12 // m along the way, each way, that counts as beside
	gapSlop    = 0.01 // m of width that is rounding
	doorNear   = 0.4  // m from a door's line: who is there is in it
	widestNeed = 4.0  // m: nothing needs more room than that to look for
)

// gaps are worked out once a body: a way through something solid asks too.
func (p *Pass) gaps(m *movers, b *mover) []gap {
	if p.narrow == nil {
		p.narrow = map[*mover][]gap{}
	}
	if g, ok := p.narrow[b]; ok {
		return g
	}
	var out []gap
	join := max(1, int(m.rate.PerSecond()*sameFinding))
	about := p.obstaclesNear(m, b)
	m.looks(b, func(from, to int, s, q *motion.Pose) {
		look := from / m.stride
		there, t := about[look/stageLooks], m.lookAt[look]
		if len(there) == 0 || to == from || s.Point().Dist(q.Point()) < walking*float64(m.time(to)-t) || !b.goes(t) {
			return
		}
		usual := p.needs(m, b, t, true)
		usual = math.Min(math.Max(usual, p.needs(m, b, t, false)), widestNeed)
		low, high := geom.Bounds([]geom.Vec{s.Point(), q.Point()})
		margin := geom.Vec{X: usual + lookSlack, Y: usual + lookSlack}
		low, high = low.Sub(margin), high.Add(margin)
		var near []*obstacle
		for _, o := range there {
			if o.near(low, high) {
				near = append(near, o)
			}
		}
		if len(near) == 0 || len(near) == 1 && len(near[0].parts) == 1 {
			return // there is nothing on the other side
		}
		for f := from; f < to; f++ {
			g, ok := p.gapAt(m, b, f, near)
			if !ok {
				continue
			}
			if n := len(out); n > 0 && f <= out[n-1].to+join {
				last := &out[n-1]
				last.to = f
				if g.width-g.need < last.width-last.need {
					g.from, g.to = last.from, f
					*last = g
				}
				continue
			}
			out = append(out, g)
		}
	})
	p.narrow[b] = out
	return out
}

// mostNeed is no less than the room, to each side, that a body ever needs to look
// for.
func (m *movers) mostNeed(b *mover) float64 {
	if b.person == nil {
		return widestNeed
	}
	for _, list := range m.worn {
		for _, w := range list {
			if w.who == b.person {
				return widestNeed
			}
		}
	}
	return 2 * b.radius
}

// goes says that a body is one that goes through gaps by itself at a time.
func (b *mover) goes(t units.Seconds) bool {
	s := b.track.Segment(t)
	if b.person != nil {
		return b.onFoot(t)
	}
	return s.Kind != motion.Resting && s.Kind != motion.Riding && b.rolls(t)
}

// gapAt is the room beside a body at a frame, across its way; false where it is
// enough.
func (p *Pass) gapAt(m *movers, b *mover, frame int, near []*obstacle) (gap, bool) {
	t := m.time(frame)
	pose := m.at(b, frame)
	v := m.velocity(b, frame)
	if v.Len() < walking {
		return gap{}, false
	}
	dir := v.Unit()
	at := pose.Point()
	low, high := b.span(pose)
	half := math.Max(slabLeast, v.Len()/m.rate.PerSecond())
	g := gap{from: frame, to: frame, worst: frame}
	left, right := math.Inf(1), math.Inf(1)
	for _, o := range near {
		if !o.there(t) || !o.blocks(b, low, high) {
			continue
		}
		for _, part := range o.parts {
			least, most, ok := across(part, at, dir, half)
			switch {
			case !ok:
			case least > 0:
				if least < left {
					left, g.left = least, o
				}
			case most < 0:
				if -most < right {
					right, g.right = -most, o
				}
			default:
				return gap{}, false // it goes right into it: a way through something solid
			}
		}
	}
	if g.left == nil || g.right == nil {
		return gap{}, false
	}
	g.width = left + right
	g.door = p.doorAt(at, g.left, g.right)
	g.need = p.needs(m, b, t, g.door != nil)
	return g, g.width < g.need-gapSlop
}

// doorAt is the door that a place between two pieces of its wall lies in.
func (p *Pass) doorAt(at geom.Vec, left, right *obstacle) *plan.Door {
	w, ok := left.Thing.(*plan.Wall)
	if !ok || right.Thing != plan.Thing(w) {
		return nil
	}
	for _, d := range p.Plan.Set.Doors {
		if d.Bad || d.Wall != w {
			continue
		}
		a, b := d.Ends()
		if (geom.Segment{A: a, B: b}).Distance(at) <= doorNear {
			return d
		}
	}
	return nil
}

// across is where a convex polygon lies to the side of a place, left positive,
// as far as it is within half a slab ahead and behind; false where it isn't.
func across(part geom.Polygon, at, dir geom.Vec, half float64) (least, most float64, ok bool) {
	least, most = math.Inf(1), math.Inf(-1)
	take := func(v float64) { least, most = math.Min(least, v), math.Max(most, v) }
	n := len(part)
	for i := range n {
		a, b := part[i].Sub(at), part[(i+1)%n].Sub(at)
		ua, ub := dir.Dot(a), dir.Dot(b)
		va, vb := dir.Cross(a), dir.Cross(b)
		if math.Abs(ua) <= half {
			take(va)
		}
		for _, edge := range [...]float64{-half, half} {
			if (ua < edge) != (ub < edge) {
				take(va + (vb-va)*(edge-ua)/(ub-ua))
			}
		}
	}
	return least, most, most >= least
}
