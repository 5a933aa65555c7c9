package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// collision is a time for which a body is inside a part of the set.
type collision struct {
	with     *obstacle
	from, to int // frames
	deepest  float64
	worst    int
}

// collisions are in order of time, one a part of the set and visit.
func (p *Pass) collisions(m *movers, b *mover) []collision {
	var found []collision
	open := map[plan.Thing]int{} // the last collision with each, in found
	join := max(1, int(m.rate.PerSecond()*sameFinding))
	hit := func(o *obstacle, frame int, deep float64) {
		if i, ok := open[o.Thing]; ok && frame <= found[i].to+join {
			c := &found[i]
			c.to = max(c.to, frame)
			if deep > c.deepest {
				c.deepest, c.worst = deep, frame
			}
			return
		}
		open[o.Thing] = len(found)
		found = append(found, collision{o, frame, frame, deep, frame})
	}
	near := p.obstaclesNear(m, b)
	m.looks(b, func(from, to int, s, e *motion.Pose) {
		near := near[from/m.stride/stageLooks]
		if len(near) == 0 {
			return
		}
		still := *s == *e
		low, high := geom.Bounds([]geom.Vec{s.Point(), e.Point()})
		margin := geom.Vec{X: b.reach, Y: b.reach}
		if !still {
			margin = margin.Add(geom.Vec{X: lookSlack, Y: lookSlack})
		}
		low, high = low.Sub(margin), high.Add(margin)
		for _, o := range near {
			if !o.near(low, high) {
				continue
			}
			if still && o.Door == nil { // one look tells for all of it
				if deep, ok := p.inside(m, b, o, from); ok {
					hit(o, from, deep)
					hit(o, to, deep)
				}
				continue
			}
			for f := from; f <= to; f++ {
				if deep, ok := p.inside(m, b, o, f); ok {
					hit(o, f, deep)
				}
			}
		}
	})
	return found
}

// inside is how deep a body is in an obstacle at a frame; false where it isn't.
func (p *Pass) inside(m *movers, b *mover, o *obstacle, frame int) (float64, bool) {
	t := m.time(frame)
	if !o.there(t) {
		return 0, false
	}
	pose := m.at(b, frame)
	low, high := b.span(pose)
	if !o.blocks(b, low, high) {
		return 0, false
	}
	if b.person != nil {
		s := b.track.Segment(t)
		if s.Kind == motion.Riding || s.Kind == motion.Stepping || seated(b, o, low, t) || p.steppedOff(m, b, o, frame) {
			return 0, false
		}
		deep := bodyDepth - o.distance(pose.Point())
		return deep, deep > wallSlop
	}
	if !b.rolls(t) {
		// What stands has been put there, with its legs where they fit.
		deep := -o.distance(pose.Point())
		return deep, deep > wallSlop
	}
	box := b.box(pose)
	deep := math.Inf(-1)
	for _, part := range o.parts {
		deep = math.Max(deep, overlap(box, part))
	}
	return deep, deep > fenderSlop
}

// rolls says that a vehicle or a rig goes somewhere at a time. A tripod is
// carried.
func (b *mover) rolls(t units.Seconds) bool {
	if b.rig != nil && (b.class.Class == body.Sticks || b.class.Class == body.Slider) {
		return false
	}
	return b.rig == nil || b.track.Segment(t).Kind != motion.Resting
}

// seated says that somebody sits on, or is about to sit on, what they are in.
func seated(b *mover, o *obstacle, low float64, t units.Seconds) bool {
	if o.Z[1] > low+seatHeight {
		return false
	}
	if _, ok := o.Thing.(*plan.Wall); ok {
		return false
	}
	for _, at := range [...]units.Seconds{t - sitsWithin, t, t + sitsWithin} {
		if b.track.Posture(max(0, at)) == body.Sitting {
			return true
		}
	}
	return false
}

// offWithin is for how long somebody who went over an edge is still beside it, s.
const offWithin = 0.5

// steppedOff says that somebody stood on a platform just before: they went over its
// edge, which is a finding of its own.
func (p *Pass) steppedOff(m *movers, b *mover, o *obstacle, frame int) bool {
	if _, ok := o.Thing.(*plan.Platform); !ok {
		return false
	}
	before := m.at(b, max(0, frame-int(offWithin*m.rate.PerSecond())))
	return float64(before.Z) >= o.Z[1]-wallSlop && o.distance(before.Point()) <= 0
}
