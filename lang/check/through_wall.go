package check

import (
	"math"

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
		At:       these(these(inTheWay, beingThere...), "set platform"),
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

func (p *Pass) throughWall(m *movers, b *mover, c collision) {
	from, worst := m.time(c.from), m.time(c.worst)
	s := b.track.Segment(worst)
	line := p.feetLine(b, worst)
	name := nameOf(b.thing)
	at := m.at(b, c.worst).Point()
	verb := "goes through"
	if s.Kind == motion.Resting {
		verb = "stands in"
	}
	what := string(c.with.Thing.Kind()) + " " + c.with.Name
	if c.with.Door != nil {
		d := p.foundOn(line, b.thing, from, m.time(c.to), "%s %s %s, which is shut, at %s, %s", name, verb, what, p.spot(at), worst.Clock())
		if t, ok := c.with.opens(worst); ok {
			d.Note("the door is open at %s, %s later", t.Clock(), t-from)
		} else {
			d.Note("nothing opens it after that")
		}
		p.finishCollision(d, b, c, line)
		return
	}
	d := p.foundOn(line, b.thing, from, m.time(c.to), "%s %s %s at %s, %s, by %s", name, verb, what, p.spot(at), worst.Clock(), p.Length(metres(c.deepest)))
	p.finishCollision(d, b, c, line)
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
