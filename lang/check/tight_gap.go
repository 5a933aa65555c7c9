package check

import (
	"fmt"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

var tightGap = &Rule{
	Entry: diag.Entry{
		Code:     "tight-gap",
		Title:    "a gap narrower than what goes through it",
		Severity: diag.Error,
		At:       these(inTheWay, going...),
		Explain: `Somebody or something goes through a door, or between two things, where there is
less room from side to side than it needs.

A person needs 0.46 m, the width of shoulders. An operator with a body rig needs a
door of 0.9 m, with a gimbal 0.8 m, with a camera in the hands 0.75 m; between
other things 0.8 m, or 0.7 m with a camera in the hands. A dolly needs its width
and 0.2 m, a cart its width and 0.3 m, an arm's base its width and 0.2 m, a
vehicle its width and 0.2 m (common practice, no source).

To mend it: take another way, make the gap wider, or take a smaller rig.`,
		Bad: `take "Narrow"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 5 m to 5.8 m high 2.6 m open
  mark M1 (5.4, -3)
  mark M2 (5.4, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig vest body-rig
people
  crew ida
beat "In"
  ida walks from M1 to M2 at 1 m/s
  A on vest with ida
  A takes w35 T4
`,
		Good: `take "Wide"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4.8 m to 6 m high 2.6 m open
  mark M1 (5.4, -3)
  mark M2 (5.4, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig vest body-rig
people
  crew ida
beat "In"
  ida walks from M1 to M2 at 1 m/s
  A on vest with ida
  A takes w35 T4
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		m := p.moving()
		for _, b := range m.list {
			for _, g := range p.gaps(m, b) {
				p.tightGap(m, b, g)
			}
		}
	},
}

// vehicleRoom is what a vehicle needs on top of its width, both sides together
// (common practice, no source).
const vehicleRoom = 0.2

// needs is the room from side to side that a body takes at a time, through a
// door or between other things.
func (p *Pass) needs(m *movers, b *mover, t units.Seconds, door bool) float64 {
	switch {
	case b.rig != nil:
		return 2*b.wide + float64(b.class.Doorway-b.class.Width)
	case b.person == nil:
		return 2*b.wide + vehicleRoom
	}
	rig := p.wornRig(m, b.person, t)
	if rig == nil {
		return 2 * b.radius
	}
	class, _ := body.ParseClass(rig.Class)
	r := body.RigOf(class)
	width := r.ClearHard
	if door {
		width = r.Doorway
	}
	if rig.Width > r.Width {
		width += rig.Width - r.Width
	}
	return float64(width)
}

// whyNeeds says what a body's need of room is made of.
func (p *Pass) whyNeeds(m *movers, b *mover, t units.Seconds) string {
	switch {
	case b.rig != nil:
		return fmt.Sprintf("%s, a %s %s wide, and %s of room, %s", b.rig.Name, b.rig.Class,
			p.Length(metres(2*b.wide)), p.Length(b.class.Doorway-b.class.Width), body.Practice)
	case b.person == nil:
		return fmt.Sprintf("%s, %s wide, and %s of room, %s", nameOf(b.thing), p.Length(metres(2*b.wide)), p.Length(vehicleRoom), body.Practice)
	}
	if rig := p.wornRig(m, b.person, t); rig != nil {
		return fmt.Sprintf("an operator with %s, a %s, %s", rig.Name, rig.Class, body.Practice)
	}
	return fmt.Sprintf("shoulders, %s wide", p.Length(metres(2*b.radius)))
}

// wornRig is what somebody has on or in their hands at a time; nil for nothing.
func (p *Pass) wornRig(m *movers, who *plan.Person, t units.Seconds) *plan.Rig {
	for _, rig := range p.Plan.Kit.Rigs { // in the order of the text
		for _, w := range m.worn[rig] {
			if w.who == who && t >= w.from && t < w.to {
				return rig
			}
		}
	}
	return nil
}

func (p *Pass) tightGap(m *movers, b *mover, g gap) {
	t := m.time(g.worst)
	line := b.track.Segment(t).Action
	where := fmt.Sprintf("between %s and %s", g.left.Name, g.right.Name)
	switch {
	case g.door != nil:
		where = "at door " + g.door.Name
	case g.left.Thing == g.right.Thing:
		where = "in " + g.left.Name
	}
	d := p.foundOn(line, b.thing, m.time(g.from), m.time(g.to), "%s goes through a gap of %s %s at %s, %s, and needs %s: %s too narrow",
		nameOf(b.thing), p.Length(metres(g.width)), where, p.spot(m.at(b, g.worst).Point()), t.Clock(), p.Length(metres(g.need)), p.Length(metres(g.need-g.width)))
	d.Worst = units.Frame(g.worst)
	d.Note("it needs the room of: %s", p.whyNeeds(m, b, t))
	if g.door != nil {
		d.Relate(g.door.Decl, "door %s", g.door.Name)
	} else {
		d.Relate(g.left.Thing.ID().Decl, "%s %s", g.left.Thing.Kind(), g.left.Name)
		if g.right.Thing != g.left.Thing {
			d.Relate(g.right.Thing.ID().Decl, "%s %s", g.right.Thing.Kind(), g.right.Name)
		}
	}
	if line != nil {
		d.Note("in: %s", clock.Describe(line))
	}
}
