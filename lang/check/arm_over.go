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

var armOver = &Rule{
	Entry: diag.Entry{
		Code:     "arm-over",
		Title:    "an arm over somebody, or within a metre of a head",
		Severity: diag.Error,
		At:       beingThere,
		Explain: `The arm of a crane or a jib, from its pivot to the lens, comes within 1 m of
somebody's head who isn't on it and doesn't work it; that is an error. Where it
passes over somebody, higher up, it is a warning: nothing swings over people
without a fixed stop (common practice, no source). The arm is taken as a straight
line 0.25 m thick.

To mend it: keep people out of what the arm sweeps, raise it, or swing it round
the other way.`,
		Bad: `take "Under"
  rate 24 fps
set "Hall"
  mark K0 (0, 0)
  mark M1 (0, 3)
  mark M2 (4, 0.5)
  mark M3 (4, -5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig boom crane reach 6 m
people
  performer mina
  crew ida
beat "Under it"
  boom stands at K0
  A on boom with ida up 2.2 m at (5, 0)
  A takes w35 T4
  mina walks from M1 to M2
  mina walks to M3
`,
		Good: `take "Clear of it"
  rate 24 fps
set "Hall"
  mark K0 (0, 0)
  mark M1 (9, 3)
  mark M2 (9, -5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig boom crane reach 6 m
people
  performer mina
  crew ida
beat "Past it"
  boom stands at K0
  A on boom with ida up 2.2 m at (5, 0)
  A takes w35 T4
  mina walks from M1 to M2
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		m := p.moving()
		for _, c := range p.Tracks.Cameras {
			for i := range c.Holds {
				if h := &c.Holds[i]; h.Rig != nil && armed(h.Rig) {
					p.armOver(m, c, h)
				}
			}
		}
	},
}

// armed says that a rig is an arm that swings over a floor.
func armed(r *plan.Rig) bool {
	c, _ := body.ParseClass(r.Class)
	return c == body.Crane || c == body.Jib
}

// armThick is how thick an arm is (common practice, no source).
const armThick = 0.25

// under is the worst of an arm and somebody near it.
type under struct {
	found    bool
	from, to int
	worst    int
	gap      float64 // m between arm and head
	near     bool    // nearer than the limit, not only below
}

func (p *Pass) armOver(m *movers, c *motion.CameraTrack, h *motion.Hold) {
	first, last := int(m.rate.At(h.Start)), min(int(m.rate.At(h.End)), m.frames-1)
	found := make([]under, len(m.list))
	hard := float64(body.ArmGap.Hard)
	for f := first; f <= last; f += m.stride {
		t := m.time(f)
		arm, ok := c.Arm(t)
		if !ok {
			return
		}
		reach := arm.Pivot.Floor().Dist(arm.Tip.Floor()) + hard + 0.5
		for i, b := range m.list {
			if b.person == nil {
				continue
			}
			pose := m.at(b, f)
			if pose.Point().Dist(arm.Pivot.Floor()) > reach || p.works(m, b, h, t) {
				continue
			}
			gap, over := armGap(arm, pose, b.radius)
			u := &found[i]
			near := gap < hard
			if !near && !over {
				continue
			}
			if !u.found {
				*u = under{found: true, from: f, gap: math.Inf(1)}
			}
			u.to = f
			u.near = u.near || near
			if gap < u.gap {
				u.gap, u.worst = gap, f
			}
		}
	}
	for i, u := range found {
		if u.found {
			p.isUnder(m, c, h, m.list[i], u)
		}
	}
}

// works says that somebody works an arm, rides it or is about to, at a time.
func (p *Pass) works(m *movers, b *mover, h *motion.Hold, t units.Seconds) bool {
	return b.thing == plan.Thing(h.Operator) || !b.onFoot(t) || m.root(b.thing, t) != b.thing || p.bonded(b.thing, h.Rig, t)
}

// armGap is how far a head is from an arm, and whether the arm is over it.
func armGap(a motion.Arm, pose motion.Pose, radius float64) (gap float64, over bool) {
	line := geom.Segment{A: a.Pivot.Floor(), B: a.Tip.Floor()}
	at := pose.Point()
	k := line.Closest(at)
	beside := math.Max(0, at.Dist(line.At(k))-radius-armThick/2)
	under := a.Pivot.Z + (a.Tip.Z-a.Pivot.Z)*k - armThick/2
	head := float64(pose.Z + pose.Height)
	above := math.Max(0, under-head)
	return math.Hypot(beside, above), beside == 0 && under > head
}

func (p *Pass) isUnder(m *movers, c *motion.CameraTrack, h *motion.Hold, b *mover, u under) {
	t := m.time(u.worst)
	line := p.feetLine(b, t)
	if moves := c.Speed(t); moves > b.track.Speed(t) && h.Action != nil {
		line = h.Action
	}
	where := p.spot(m.at(b, u.worst).Point())
	var d *diag.Diagnostic
	if u.near {
		d = p.foundOn(line, h.Rig, m.time(u.from), m.time(u.to), "the arm of %s is %s from the head of %s at %s, %s, %s nearer than the %s it keeps",
			h.Rig.Name, p.Length(metres(u.gap)), nameOf(b.thing), where, t.Clock(), p.Length(body.ArmGap.Hard-metres(u.gap)), p.Length(body.ArmGap.Hard))
	} else {
		d = p.foundOn(line, h.Rig, m.time(u.from), m.time(u.to), "the arm of %s is over %s at %s, %s, %s above the head: nobody is under an arm without a fixed stop",
			h.Rig.Name, nameOf(b.thing), where, t.Clock(), p.Length(metres(u.gap)))
		d.Severity = diag.Warning
	}
	d.Worst = units.Frame(u.worst)
	if line != nil {
		d.Note("in: %s", clock.Describe(line))
	}
	if who := p.feetLine(b, t); who != nil && who != line {
		d.Relate(who.Span, "%s", clock.Describe(who))
	}
	d.Note("usually %s from any head, at the least %s, %s", p.Length(body.ArmGap.Typical), p.Length(body.ArmGap.Hard), body.Practice)
	d.Note("%s", safety.Cranes.Caution())
}
