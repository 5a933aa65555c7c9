package check

import (
	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

var bump = &Rule{
	Entry: diag.Entry{
		Code:     "bump",
		Title:    "two bodies meet",
		Severity: diag.Error,
		At:       beingThere,
		Explain: `Two people, vehicles or rigs are in the same place at the same time. A person is a
circle 0.46 m across, the width of shoulders; two of them may brush by 0.06 m. Of
a vehicle and a rig it is their length and width, and their height: who stands on
a platform doesn't meet what drives past below.

Who is carried and what carries them, an operator and their rig, the hands at a
handoff and a spotter with the one they spot may touch.

To mend it: let one of them wait, take another way, or end on a mark of their
own. Where they are meant to touch, say so: allow bump mina because "they
embrace".`,
		Bad: `take "Crossing"
  rate 24 fps
set "Yard"
  mark M1 (-4, 0)
  mark M2 (4, 0)
  mark M3 (0, -4)
  mark M4 (0, 4)
people
  performer mina
  performer otto
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  otto walks from M3 to M4 at 1.2 m/s
`,
		Good: `take "Crossing"
  rate 24 fps
set "Yard"
  mark M1 (-4, 0)
  mark M2 (4, 0)
  mark M3 (0, -4)
  mark M4 (0, 4)
people
  performer mina
  performer otto
beat "Across"
  mina walks from M1 to M2 at 1.2 m/s
  otto walks from M3 to M4 at 1.2 m/s starting +1.5 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		m := p.moving()
		for i, a := range m.list {
			for _, b := range m.list[i+1:] {
				for _, c := range p.contacts(m, a, b) {
					p.bumps(m, a, b, c)
				}
			}
		}
	},
}

// contact is a time for which two bodies are in each other.
type contact struct {
	from, to int // frames
	deepest  float64
	worst    int
}

// meetAgain is how long two must have been apart to meet anew, s.
const meetAgain = 1.0

func (p *Pass) contacts(m *movers, a, b *mover) []contact {
	if fixedThere(a) && fixedThere(b) {
		return nil // where they stand is how they were set up
	}
	between := [2]*mover{a, b}
	if known, ok := p.met[between]; ok {
		return known
	}
	if p.met == nil {
		p.met = map[[2]*mover][]contact{}
	}
	out := p.contactsAnew(m, a, b)
	p.met[between] = out
	p.met[[2]*mover{b, a}] = out
	return out
}

func (p *Pass) contactsAnew(m *movers, a, b *mover) []contact {
	var out []contact
	again := int(m.rate.PerSecond() * meetAgain)
	m.meetings(a, b, 0, func(frame int, s, q motion.Pose) {
		deep, ok := touch(a, b, s, q)
		if !ok {
			return
		}
		t := m.time(frame)
		if !a.counts(t) || !b.counts(t) || m.root(a.thing, t) == m.root(b.thing, t) || p.bonded(a.thing, b.thing, t) {
			return
		}
		if n := len(out); n > 0 && frame <= out[n-1].to+again {
			c := &out[n-1]
			c.to = frame
			if deep > c.deepest {
				c.deepest, c.worst = deep, frame
			}
			return
		}
		out = append(out, contact{frame, frame, deep, frame})
	})
	return out
}

// fixedThere says that a body is a support that never moves.
func fixedThere(b *mover) bool {
	return b.rig != nil && len(b.track.Segments) == 1 && b.track.Segments[0].Kind == motion.Resting
}

func (p *Pass) bumps(m *movers, a, b *mover, c contact) {
	// The one that moves faster is the one to stop.
	who, other := a, b
	if m.speed(b, c.from) >= m.speed(a, c.from) {
		who, other = b, a
	}
	from, to := m.time(c.from), m.time(c.to)
	line, met := p.feetLine(who, from), p.feetLine(other, from)
	at := m.at(who, c.from).Point()
	switch {
	case who.person != nil && other.person != nil:
		at = at.Lerp(m.at(other, c.from).Point(), 0.5)
	case other.person != nil:
		at = m.at(other, c.from).Point()
	}
	d := p.foundOn(line, who.thing, from, to, "%s meets %s at %s, %s, and is up to %s inside", nameOf(who.thing), nameOf(other.thing),
		p.spot(at), from.Clock(), p.Length(metres(c.deepest)))
	d.Worst = units.Frame(c.worst)
	if met != nil && met != line {
		d.Relate(met.Span, "%s", clock.Describe(met))
	}
	if p.ErrorsOnly {
		return
	}
	apart := p.Length(metres(m.at(a, c.worst).Point().Dist(m.at(b, c.worst).Point())))
	if a.person != nil && b.person != nil {
		d.Note("their middles are %s apart at the least, and shoulders are %s wide", apart, p.Length(body.Anybody().Diameter))
		p.ownMark(d, line, met)
	}
	if a.vehicle() || b.vehicle() {
		d.Note("%s", safety.Vehicles.Caution())
	}
	if len(d.Fixes) == 0 {
		p.waits(d, m, who, other, line, c)
	}
}

// feetLine is what a body is told to do at a time; the last that it was told where
// it isn't told anything, and the first where that comes later.
func (p *Pass) feetLine(b *mover, t units.Seconds) *plan.Action {
	var last *plan.Action
	for i := range b.track.Segments {
		s := &b.track.Segments[i]
		if s.Start > t {
			break
		}
		if s.Action != nil {
			last = s.Action
		}
	}
	if last != nil {
		return last
	}
	for _, a := range p.Plan.Actions {
		switch a.Deed.(type) {
		case *plan.Move, *plan.Stand, *plan.Ride, *plan.Leave, *plan.Board:
			if a.Subject == b.thing && (last == nil || p.Clock.Of(a).Start <= t) {
				last = a
			}
		}
	}
	return last
}

// vehicle says that a body drives: a vehicle, or a cart.
func (b *mover) vehicle() bool {
	if b.rig != nil {
		return b.class.Class == body.Cart
	}
	return b.person == nil
}

// ownMark offers a place beside a mark that two lines both end on.
func (p *Pass) ownMark(d *diag.Diagnostic, a, b *plan.Action) {
	if a == nil || b == nil {
		return
	}
	m, ok := a.Deed.(*plan.Move)
	n, also := b.Deed.(*plan.Move)
	if !ok || !also || m.Path.To == nil || n.Path.To == nil || !m.Path.To.Exact() || n.Path.To.Mark != m.Path.To.Mark {
		return
	}
	to, from := m.Path.To.Point, n.Path.To.Point
	t := p.Tracks.Body(a.Subject)
	if t == nil {
		return
	}
	side := "right"
	if came := t.At(p.Clock.Of(a).Start).Point(); came.X < to.X-1e-9 || came.X == to.X && from.X > to.X {
		side = "left"
	}
	text := p.Length(besideMark) + " " + side + " of " + m.Path.To.Mark.Name
	d.Note("both end on %s", m.Path.To.Mark.Name)
	d.Fix("end "+text, replaced(m.Path.To.Span, text))
}

// besideMark is how far beside a mark a second person stands (common practice,
// no source: elbow room).
const besideMark metres = 0.7
