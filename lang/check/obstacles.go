package check

import (
	"math"
	"sort"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/solid"
	"longhand/lang/units"
)

// obstacle is a piece of the set as something to run into.
type obstacle struct {
	solid.Piece
	parts     []geom.Polygon // convex
	low, high geom.Vec       // of its bounds
	shut      []shutTime     // of a door
}

// shutTime is a time for which a door is shut.
type shutTime struct{ from, to units.Seconds }

// obstacles are the pieces of the set that stop a body.
func (p *Pass) obstacles() []*obstacle { return p.known().obstacles.get(p.findObstacles) }

func (p *Pass) findObstacles() []*obstacle {
	var solids []*obstacle
	for _, piece := range solid.Of(&p.Plan.Set) {
		if piece.Hole != nil || len(piece.Polygon) < 3 {
			continue
		}
		o := &obstacle{Piece: piece}
		poly := geom.Polygon(piece.Polygon)
		if parts, ok := poly.ConvexParts(); ok {
			o.parts = parts
		} else {
			o.parts = []geom.Polygon{geom.Hull(poly)}
		}
		o.low, o.high = geom.Bounds(piece.Polygon)
		if piece.Door != nil {
			if o.shut = p.shutTimes(piece.Door); len(o.shut) == 0 {
				continue
			}
		}
		solids = append(solids, o)
	}
	return solids
}

// obstaclesNear are those that a body could come near to in each stage: those that
// could meet what holds it and all the room it needs.
func (p *Pass) obstaclesNear(m *movers, b *mover) [][]*obstacle {
	if b.around != nil {
		return b.around
	}
	by := max(b.reach, m.mostNeed(b)) + lookSlack
	margin := geom.Vec{X: by, Y: by}
	all := p.obstacles()
	stages := m.stages(b)
	b.around = make([][]*obstacle, len(stages))
	var found []*obstacle
	for n, s := range stages {
		low, high := s.Low.Sub(margin), s.High.Add(margin)
		from := len(found)
		for _, o := range all {
			if o.near(low, high) {
				found = append(found, o)
			}
		}
		b.around[n] = found[from:len(found):len(found)]
	}
	return b.around
}

// shutTimes is when a door is shut. One that opens is out of the way when it is
// open, one that shuts is in it from its first moment.
func (p *Pass) shutTimes(d *plan.Door) []shutTime {
	type change struct {
		at   units.Seconds
		open bool
	}
	var changes []change
	for _, a := range p.Plan.Actions {
		op, ok := a.Deed.(*plan.Operate)
		if !ok || op.Door != d {
			continue
		}
		i := p.Clock.Of(a)
		at := i.End
		if !op.Open {
			at = i.Start
		}
		changes = append(changes, change{at, op.Open})
	}
	sort.SliceStable(changes, func(i, j int) bool { return changes[i].at < changes[j].at })
	var out []shutTime
	shut, since := !d.Open, units.Seconds(0)
	for _, c := range changes {
		if shut && c.open && c.at > since {
			out = append(out, shutTime{since, c.at})
		}
		if shut == c.open {
			shut, since = !c.open, c.at
		}
	}
	if shut {
		out = append(out, shutTime{since, units.Seconds(math.Inf(1))})
	}
	return out
}

// there says that it stands in the way at a time.
func (o *obstacle) there(t units.Seconds) bool {
	if o.Door == nil {
		return true
	}
	for _, s := range o.shut {
		if t >= s.from && t < s.to {
			return true
		}
	}
	return false
}

// opens is when a door that is shut at a time opens next; false where it stays
// shut.
func (o *obstacle) opens(t units.Seconds) (units.Seconds, bool) {
	for _, s := range o.shut {
		if t >= s.from && t < s.to {
			return s.to, !math.IsInf(float64(s.to), 0)
		}
	}
	return 0, false
}

// distance of a point, negative inside.
func (o *obstacle) distance(q geom.Vec) float64 {
	poly := geom.Polygon(o.Polygon)
	if poly.Contains(q) {
		return -poly.EdgeDistance(q)
	}
	return poly.EdgeDistance(q)
}

// near says that a circle could meet its bounds.
func (o *obstacle) near(low, high geom.Vec) bool {
	return low.X <= o.high.X && high.X >= o.low.X && low.Y <= o.high.Y && high.Y >= o.low.Y
}

// Heights that are no obstacle (common practice, no source): what one steps
// over, what wheels roll over, what is climbed onto where it can be stood on,
// and how much of a body ducks.
const (
	stepsOver   = 0.2
	rollsOver   = 0.05
	climbsOnto  = 0.45 // a step of 0.4 m, and the ramp it is taken on
	ducks       = 0.1  // of the body's height
	seatHeight  = 0.6  // what is sat on is no higher than this
	sitsWithin  = 4.0  // s: who sits so soon was on the way to the seat
	bodyDepth   = 0.12 // half a chest's depth: men, 50th percentile, 250 mm; S. Pheasant, Bodyspace, from memory
	wallSlop    = 0.02 // m of overlap that is rounding
	fenderSlop  = 0.05 // m of overlap that a driver or a grip corrects without a thought
	sameFinding = 0.5  // s: two meetings with the same wall so close are one
)

// blocks says that an obstacle is in the way of a body by their heights.
func (o *obstacle) blocks(b *mover, low, high float64) bool {
	over := rollsOver
	if b.person != nil {
		over = stepsOver
		high -= ducks * (high - low)
	}
	switch o.Thing.(type) {
	case *plan.Platform, *plan.Stairs:
		over = climbsOnto
	}
	return o.Z[1] > low+over && o.Z[0] < high
}
