package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var stairsRig = &Rule{
	Entry: diag.Entry{
		Code:     "stairs-rig",
		Title:    "a worn or held camera on stairs, backwards or too fast",
		Severity: diag.Error,
		At:       these(going, "set stairs"),
		Explain: `Somebody with a camera goes down stairs backwards: that isn't planned. Or somebody
with a body rig goes up them faster than 0.8 m/s or down them faster than 0.6 m/s,
along the slope; that is a warning (common practice, no source; 0.5 and 0.4 m/s
are usual).

To mend it: take the stairs as a move of their own, at a slower pace, or hand the
camera up.`,
		Bad: `take "Backwards down"
  rate 24 fps
set "Hall"
  platform gallery (6, 0) (12, 0) (12, 6) (6, 6) high 0 m to 2 m
  stairs flight (2, 3) (6, 3) width 2 m rise 2 m
  mark M1 (9, 3)
  mark M2 (1, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  crew ida
  crew jon
beat "Down"
  ida walks from M1 to M2 straight backwards at 0.4 m/s
  A on arms with ida
  A takes w35 T4
  A sees (30, 3)
  jon spots ida
`,
		Good: `take "Forwards down"
  rate 24 fps
set "Hall"
  platform gallery (6, 0) (12, 0) (12, 6) (6, 6) high 0 m to 2 m
  stairs flight (2, 3) (6, 3) width 2 m rise 2 m
  mark M1 (9, 3)
  mark M2 (1, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  crew ida
beat "Down"
  ida walks from M1 to M2 straight at 0.6 m/s
  A on arms with ida
  A takes w35 T4
  A sees (-30, 3)
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		if len(p.Plan.Set.Stairs) == 0 {
			return
		}
		m := p.moving()
		for _, b := range m.list {
			if b.person != nil {
				p.onStairs(m, b)
			}
		}
	},
}

// Paces of a body rig on stairs, along the slope (common practice, no source).
var (
	stairsUp   = body.Limit[units.MetresPerSecond]{Typical: 0.5, Hard: 0.8}
	stairsDown = body.Limit[units.MetresPerSecond]{Typical: 0.4, Hard: 0.6}
)

// climb is the worst of somebody with a camera on stairs, on one line.
type climb struct {
	from, to, worst int
	speed           units.MetresPerSecond
	limit           body.Limit[units.MetresPerSecond]
	backs, down     bool
	rig             *plan.Rig
	line            *plan.Action
}

func (p *Pass) onStairs(m *movers, b *mover) {
	var found []climb
	m.looks(b, func(from, to int, s, q *motion.Pose) {
		t := m.time(from)
		dt := float64(m.time(to) - t)
		dz := float64(q.Z - s.Z)
		if dt <= 0 || math.Abs(dz) < 0.1*dt || !b.onFoot(t) || !p.onFlight(s.Point()) || !p.onFlight(q.Point()) {
			return
		}
		rig := p.wornRig(m, b.person, t)
		if rig == nil {
			return
		}
		way := q.Point().Sub(s.Point())
		c := climb{from: from, to: to, worst: from, rig: rig, line: b.track.Segment(t).Action, limit: stairsUp, down: dz < 0,
			speed: units.MetresPerSecond(math.Hypot(way.Len(), dz) / dt),
			backs: dz < 0 && way.Dot(geom.Polar(1, s.Heading)) < -0.5*way.Len()}
		if c.down {
			c.limit = stairsDown
		}
		class, _ := body.ParseClass(rig.Class)
		if !c.backs && (class != body.BodyRig || c.speed <= c.limit.Hard+slowSlop) {
			return
		}
		if n := len(found); n > 0 && found[n-1].line == c.line && found[n-1].backs == c.backs && found[n-1].down == c.down {
			last := &found[n-1]
			last.to = to
			if c.speed > last.speed {
				last.speed, last.worst = c.speed, from
			}
			return
		}
		found = append(found, c)
	})
	for _, c := range found {
		p.stairsRig(m, b, c)
	}
}

// onFlight says that a place is on a flight of stairs.
func (p *Pass) onFlight(at geom.Vec) bool {
	for _, s := range p.Plan.Set.Stairs {
		if !s.Bad && s.Foot != s.Head && flight(s).Contains(at) {
			return true
		}
	}
	return false
}

// flight is the ground that a flight of stairs takes up.
func flight(s *plan.Stairs) geom.Polygon {
	side := s.Head.Sub(s.Foot).Unit().Left().Mul(float64(s.Width) / 2)
	return geom.Polygon{s.Foot.Sub(side), s.Head.Sub(side), s.Head.Add(side), s.Foot.Add(side)}.CCW()
}

func (p *Pass) stairsRig(m *movers, b *mover, c climb) {
	at := m.time(c.worst)
	where := p.spot(m.at(b, c.worst).Point())
	way := "up"
	if c.down {
		way = "down"
	}
	var d *diag.Diagnostic
	if c.backs {
		d = p.foundOn(c.line, b.thing, m.time(c.from), m.time(c.to), "%s goes backwards down stairs with %s at %s, %s, at %s: that isn't planned at any pace",
			nameOf(b.thing), c.rig.Name, where, at.Clock(), p.Speed(c.speed))
	} else {
		d = p.foundOn(c.line, b.thing, m.time(c.from), m.time(c.to), "%s goes %s stairs with %s at %s at %s, %s, %s over the limit of %s",
			nameOf(b.thing), way, c.rig.Name, p.Speed(c.speed), where, at.Clock(), p.Speed(c.speed-c.limit.Hard), p.Speed(c.limit.Hard))
		d.Severity = diag.Warning
		d.Note("usually %s, at the most %s, along the slope, %s", p.Speed(c.limit.Typical), p.Speed(c.limit.Hard), body.Practice)
	}
	d.Worst = units.Frame(c.worst)
	if c.line != nil {
		d.Note("in: %s", clock.Describe(c.line))
	}
	d.Note("%s", safety.Worn.Caution())
}
