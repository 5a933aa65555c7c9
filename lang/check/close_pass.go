package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var closePass = &Rule{
	Entry: diag.Entry{
		Code:     "close-pass",
		Title:    "a moving vehicle near somebody on foot",
		Severity: diag.Error,
		At:       beingThere,
		Explain: `A vehicle or a cart moves, and somebody on foot is ahead of it within the distance
it needs to stop, and 1 m more; or it passes them by less than 1 m (then it is a
warning). Ahead is along its way, and straight on where its way ends: a driver who
misses the mark goes on.

The stopping distance is that of a driver who reacts in 2.5 s and brakes at
3.4 m/s² (AASHTO, A Policy on Geometric Design of Highways and Streets):
v x 2.5 s + v²/6.8 m/s². At 3 m/s that is 8.8 m, at 5 m/s 16.2 m; twice that in
the wet, ten times on ice.

To mend it: let people stand to the side, by more than 1 m and 3 m for choice,
drive slower, or send them in after it has stopped.`,
		Bad: `take "Ahead"
  rate 24 fps
set "Yard"
  mark D0 (-14, 0)
  mark D1 (3, 0)
  mark M1 (8, 0)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer otto
beat "In"
  van drives from D0 to D1 at 3 m/s
  otto stands at M1
`,
		Good: `take "Aside"
  rate 24 fps
set "Yard"
  mark D0 (-14, 0)
  mark D1 (3, 0)
  mark M1 (8, 5)
kit
  vehicle van 4.6 m x 1.9 m high 2.3 m
people
  performer otto
beat "In"
  van drives from D0 to D1 at 3 m/s
  otto stands at M1
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		m := p.moving()
		for _, v := range m.list {
			if !v.vehicle() {
				continue
			}
			top := m.topSpeed(v)
			if top < creeping {
				continue
			}
			reach := float64(safety.StoppingDistance(units.MetresPerSecond(top), safety.Dry) + body.VehicleGap.Hard)
			for _, b := range m.list {
				if b.person != nil && len(p.contacts(m, v, b)) == 0 { // else it bumps into them
					p.passes(m, v, b, reach)
				}
			}
		}
	},
}

// creeping is a speed at which whoever walks beside a vehicle stops it with a
// word; aheadSide is how far to the side of what a vehicle sweeps somebody is
// still ahead of it; keepsPace is the most by which a cart may gain on somebody
// it follows, and alongside the most by which it differs from who walks beside
// it (common practice, no source).
const (
	creeping  = 0.5 // m/s
	aheadSide = 0.2 // m
	keepsPace = 0.3 // m/s
	alongside = 0.7 // m/s
)

// topSpeed is the most of a body, from look to look.
func (m *movers) topSpeed(b *mover) float64 {
	top := 0.0
	m.looks(b, func(from, to int, p, q *motion.Pose) {
		if to > from {
			top = math.Max(top, p.Point().Dist(q.Point())/float64(m.time(to)-m.time(from)))
		}
	})
	return top * 1.1 // between two looks it may have been faster
}

// passing is the worst moment of a vehicle with somebody on foot.
type passing struct {
	found    bool
	from, to int
	worst    int
	gap      float64 // m: ahead of it, or beside it
	short    float64 // m
	speed    float64
	follows  bool // a cart that keeps its distance behind
}

func (w *passing) note(frame int, gap, short, speed float64, follows bool) {
	if !w.found {
		*w = passing{found: true, from: frame, short: math.Inf(-1), follows: true}
	}
	w.to = frame
	w.follows = w.follows && follows
	if short > w.short {
		w.worst, w.gap, w.short, w.speed = frame, gap, short, speed
	}
}

func (p *Pass) passes(m *movers, v, b *mover, reach float64) {
	var ahead, beside passing
	gapHard := float64(body.VehicleGap.Hard)
	lanes := m.lanes(v)
	near := v.reach + b.radius + gapHard
	may := func(look int, nearest float64) bool {
		l := lanes[look]
		return !l.rests && (nearest <= near+2*lookSlack || l.way == geom.Vec{} || m.mayBeAhead(v, b, look, l.way))
	}
	// Nobody gets far in a twelfth of a second.
	m.meetingsEvery(max(1, m.stride/3), v, b, reach, may, func(frame int, s, q motion.Pose) {
		going := m.velocity(v, frame)
		speed := going.Len()
		if speed < creeping {
			return
		}
		stop := float64(safety.StoppingDistance(units.MetresPerSecond(speed), safety.Dry))
		apart := s.Point().Dist(q.Point()) - b.radius
		if apart > gapHard+v.reach && apart > stop+gapHard+v.long {
			return
		}
		t := m.time(frame)
		if !b.onFoot(t) || p.bonded(v.thing, b.thing, t) {
			return
		}
		vl, vh := v.span(s)
		bl, bh := b.span(q)
		if bl >= vh || vl >= bh {
			return
		}
		if apart <= gapHard+v.reach {
			gap := away(v.box(s), q.Point()) - b.radius
			if gap < gapHard && going.Sub(m.velocity(b, frame)).Len() >= alongside {
				beside.note(frame, math.Max(0, gap), gapHard-gap, speed, false)
			}
		}
		if gap, ok := m.aheadOf(v, b, frame, s.Point(), q.Point(), going.Unit(), stop+gapHard); ok {
			closing := speed - m.velocity(b, frame).Dot(going.Unit())
			ahead.note(frame, gap, stop+gapHard-gap, speed, v.rig != nil && closing < keepsPace)
		}
	})
	switch {
	case ahead.found:
		w := ahead
		stop := safety.StoppingDistance(units.MetresPerSecond(w.speed), safety.Dry)
		d := p.foundOn(p.feetLine(v, m.time(w.worst)), v.thing, m.time(w.from), m.time(w.to),
			"%s goes at %s at %s with %s %s ahead of it: it stops in %s, and %s more is kept free, so they are %s too close",
			nameOf(v.thing), p.Speed(units.MetresPerSecond(w.speed)), m.time(w.worst).Clock(), nameOf(b.thing), p.Length(metres(w.gap)),
			p.Length(stop), p.Length(body.VehicleGap.Hard), p.Length(metres(w.short)))
		if w.follows {
			d.Severity = diag.Warning // it goes no faster than who walks ahead of it
		}
		p.finishPass(d, m, b, w)
	case beside.found:
		w := beside
		d := p.foundOn(p.feetLine(v, m.time(w.worst)), v.thing, m.time(w.from), m.time(w.to),
			"%s passes %s at %s, %s, with %s between them, %s less than the %s it keeps", nameOf(v.thing), nameOf(b.thing),
			p.Speed(units.MetresPerSecond(w.speed)), m.time(w.worst).Clock(), p.Length(metres(w.gap)), p.Length(metres(w.short)), p.Length(body.VehicleGap.Hard))
		d.Severity = diag.Warning
		p.finishPass(d, m, b, w)
	}
}

func (p *Pass) finishPass(d *diag.Diagnostic, m *movers, b *mover, w passing) {
	d.Worst = units.Frame(w.worst)
	if a := p.feetLine(b, m.time(w.worst)); a != nil {
		d.Relate(a.Span, "%s", clock.Describe(a))
	}
	d.Note("stopping distance on a dry road: v x %s + v²/(2 x %s), AASHTO; usually %s more is kept free, at the least %s, %s",
		safety.Reaction, safety.Braking.Text(p.Plan.Take.Units), p.Length(body.VehicleGap.Typical), p.Length(body.VehicleGap.Hard), body.Practice)
	d.Note("%s", safety.Vehicles.Caution())
}

// aheadOf is how far ahead of a vehicle's end, the vehicle being at one place and
// going one way, somebody at another is, along its way or straight on past it; false
// where they are to the side, behind or further.
func (m *movers) aheadOf(v, b *mover, frame int, at, q, dir geom.Vec, within float64) (float64, bool) {
	rel := q.Sub(at)
	if rel.Len() > within+v.long+b.radius || dir == (geom.Vec{}) {
		return 0, false
	}
	side := aheadWithin(v, b)
	s := v.track.Segment(m.time(frame))
	goes := s.Kind == motion.Moving && s.Path != nil && s.Profile != nil
	if !goes || s.Straight() {
		least := 0.0 // who is in it already is ahead of what goes no way of its own
		if goes {
			least = v.long
		}
		u := rel.Dot(dir)
		gap := u - v.long - b.radius
		return math.Max(0, gap), u > least && gap < within && math.Abs(dir.Cross(rel)) < side
	}
	const step = 0.5
	from := float64(s.Profile.At(m.time(frame) - s.Start))
	for u := 0.0; u <= within+v.long+b.radius; u += step {
		p := s.Path.AtExtended(from + u)
		if p.Dist(q) > side+step {
			continue
		}
		along := s.Path.Tangent(from + u)
		off := q.Sub(p)
		if math.Abs(along.Cross(off)) >= side {
			continue
		}
		ahead := u + along.Dot(off)
		gap := ahead - v.long - b.radius
		if ahead > v.long && gap < within {
			return math.Max(0, gap), true
		}
	}
	return 0, false
}

// aheadWithin is how far to the side of a vehicle's way somebody is still ahead of
// it.
func aheadWithin(v, b *mover) float64 { return v.wide + b.radius + aheadSide }

// lane is how a vehicle goes from a look to the next: it rests all the time, or
// goes one way all the time; neither where it does both, or bends.
type lane struct {
	rests bool
	way   geom.Vec
}

func (m *movers) lanes(v *mover) []lane {
	if v.lanes != nil {
		return v.lanes
	}
	v.lanes = make([]lane, len(m.lookAt))
	for look := range v.lanes {
		// A velocity is told from the frames on either side.
		from, to := max(0, look*m.stride-1), min((look+1)*m.stride, m.frames-1)
		s := v.track.Segment(m.time(from))
		switch {
		case s != v.track.Segment(m.time(to)):
		case s.Kind == motion.Resting:
			v.lanes[look].rests = true
		case s.Straight():
			v.lanes[look].way = s.Path.Tangent(0)
		}
	}
	return v.lanes
}

// mayBeAhead is whether somebody may be ahead of a vehicle that goes straight from a
// look to the next.
func (m *movers) mayBeAhead(v, b *mover, look int, way geom.Vec) bool {
	p := b.looks[look].Point().Sub(v.looks[look].Point())
	q := b.looks[look+1].Point().Sub(v.looks[look+1].Point())
	const slack = 2 * lookSlack
	side := aheadWithin(v, b) + slack
	x, y := way.Cross(p), way.Cross(q)
	return !(x > side && y > side || x < -side && y < -side || way.Dot(p) < -slack && way.Dot(q) < -slack)
}
