package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

var throughWall = &Rule{
	Entry: diag.Entry{
		Code:     "through-wall",
		Title:    "a way that leads through something solid",
		Severity: diag.Error,
		Explain: `Somebody's way, or the place they stand in, goes through a wall, a block, a
pillar, a platform's side or a door that is shut at that moment. It is checked at
every frame, with the height of the floor: whoever walks up stairs doesn't walk
through them, and whoever is on a platform is above what stands below it.

A person is taken to be as deep as a chest, 0.25 m, where they squeeze past
something; a vehicle, a dolly or a cart has its own length and width, 0.05 m of
which is let off. A step of up to 0.2 m, or 0.4 m onto something that is there to
be stood on, is no obstacle.

To mend it: lead the way round with "via", through a door, move the mark, or open
the door first.`,
		Bad: `take "Through"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4.8 m to 7.4 m high 2.6 m open
  mark M1 (12, -4)
  mark M2 (12, 4)
people
  performer mina
beat "In"
  mina walks from M1 to M2
`,
		Good: `take "Through the door"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4.8 m to 7.4 m high 2.6 m open
  mark M1 (12, -4)
  mark M2 (12, 4)
people
  performer mina
beat "In"
  mina walks from M1 via (6.1, -1), (6.1, 1) to M2
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		m := p.moving()
		for _, b := range m.list {
			narrow := p.gaps(m, b)
			for _, c := range p.collisions(m, b) {
				if !inGap(narrow, c) {
					p.throughWall(m, b, c)
				}
			}
		}
	},
}

// inGap says that a collision is of a body in a gap too narrow for it, which is
// found fault with as that.
func inGap(narrow []gap, c collision) bool {
	for _, g := range narrow {
		if c.from <= g.to && c.to >= g.from && (g.left.Thing == c.with.Thing || g.right.Thing == c.with.Thing) {
			return true
		}
	}
	return false
}

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
	all := p.obstacles()
	m.looks(b, func(from, to int, s, e motion.Pose) {
		still := s == e
		low, high := geom.Bounds([]geom.Vec{s.Point(), e.Point()})
		margin := geom.Vec{X: b.reach, Y: b.reach}
		if !still {
			margin = margin.Add(geom.Vec{X: lookSlack, Y: lookSlack})
		}
		low, high = low.Sub(margin), high.Add(margin)
		for _, o := range all {
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
		if s.Kind == motion.Riding || s.Kind == motion.Stepping || seated(b, o, low, t) {
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

func (p *Pass) throughWall(m *movers, b *mover, c collision) {
	from, worst := m.time(c.from), m.time(c.worst)
	s := b.track.Segment(worst)
	name := nameOf(b.thing)
	at := m.at(b, c.worst).Point()
	verb := "goes through"
	if s.Kind == motion.Resting {
		verb = "stands in"
	}
	what := string(c.with.Thing.Kind()) + " " + c.with.Name
	if c.with.Door != nil {
		d := p.foundOn(s.Action, b.thing, from, m.time(c.to), "%s %s %s, which is shut, at %s, %s", name, verb, what, p.spot(at), worst.Clock())
		if t, ok := c.with.opens(worst); ok {
			d.Note("the door is open at %s, %s later", t.Clock(), t-from)
		} else {
			d.Note("nothing opens it after that")
		}
		p.finishCollision(d, b, c, s.Action)
		return
	}
	d := p.foundOn(s.Action, b.thing, from, m.time(c.to), "%s %s %s at %s, %s, by %s", name, verb, what, p.spot(at), worst.Clock(), p.Length(metres(c.deepest)))
	p.finishCollision(d, b, c, s.Action)
}

func (p *Pass) finishCollision(d *diag.Diagnostic, b *mover, c collision, a *plan.Action) {
	d.Worst = units.Frame(c.worst)
	d.Relate(c.with.Thing.ID().Decl, "%s %s", c.with.Thing.Kind(), c.with.Name)
	if b.person != nil {
		d.Note("a person is taken to be %s deep, front to back", p.Length(2*bodyDepth))
	} else {
		d.Note("%s is %s long and %s wide", nameOf(b.thing), p.Length(metres(2*b.long)), p.Length(metres(2*b.wide)))
	}
	if a != nil {
		d.Note("in: %s", clock.Describe(a))
	}
	if b.person == nil || c.with.Door != nil {
		return
	}
	var moves []markMove
	for _, mark := range exactMarks(a) {
		if to, ok := pushedOut(c.with, mark.Point); ok {
			moves = append(moves, markMove{mark, to})
		}
	}
	p.offerMarks(d, moves...)
}

// markRoom is how far from something solid a mark is offered a place: half of
// somebody's width, and elbow room (common practice, no source).
const markRoom = 0.35

// pushedOut is the nearest place beside an obstacle for a mark that is in it, or
// too near to it; false where it is neither.
func pushedOut(o *obstacle, at geom.Vec) (geom.Vec, bool) {
	if o.distance(at) >= bodyDepth-wallSlop {
		return at, false
	}
	poly := geom.Polygon(o.Polygon)
	best, near := at, math.Inf(1)
	for i := range poly {
		e := poly.Edge(i)
		foot := e.At(e.Closest(at))
		if gap := foot.Dist(at); gap < near {
			out := e.B.Sub(e.A).Unit().Left().Mul(-markRoom)
			near, best = gap, foot.Add(out)
		}
	}
	return best, near < 1
}
