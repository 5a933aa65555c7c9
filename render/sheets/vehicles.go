package sheets

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

// vehicles is what drives or rolls, how fast, how close to people.
func (m *maker) vehicles() ([]*Table, []safety.Topic) {
	drives, close := m.drives(), m.closePasses()
	var topics []safety.Topic
	if len(drives.Rows) > 0 || len(m.p.Kit.Vehicles) > 0 {
		topics = append(topics, safety.Vehicles, safety.Stunts)
	}
	return []*Table{drives, close, m.passengers()}, topics
}

// drives is every stretch in which a vehicle or a wheeled rig moves.
func (m *maker) drives() *Table {
	t := table("drives", "Drives", beatColumn(), clockColumns(), cueColumn(), col("who", "who", "vehicle or wheeled rig"), col("does", "does", "the line in full"), col("from", "from", "where it begins"), col("to", "to", "where it ends"), measure("length", "way", "m", "over the floor"), untilColumns("stands"),
		measure("peak", "up to", "m/s", "its greatest speed"), measure("peak_kmh", "km/h", "km/h", "the same"), measure("limit", "limit", "m/s", "with people on foot nearby, or of the rig"), measure("dry", "stops in, dry", "m", "a slow driver on dry ground"), measure("wet", "wet", "m", "on wet ground"), slipColumns())
	t.Empty = "Nothing drives and no rig rolls over the floor in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			thing := a.Subject
			if thing == nil || !m.wheeled(thing) {
				if c, ok := m.carried(p, a); ok && m.wheeled(c) {
					thing = c
				} else {
					continue
				}
			}
			switch a.Deed.(type) {
			case *plan.Move, *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel:
			default:
				continue
			}
			tr := p.tracks.Body(thing)
			if tr == nil {
				continue
			}
			i := p.clock.Of(a)
			if m.way3(tr, i.Start, i.End) < 0.05 {
				continue // an arm moves and its base stands
			}
			v := m.topSpeed(tr, i.Start, i.End)
			limit := word("")
			if d, ok := fastest(p, a); ok {
				limit = m.speed(units.MetresPerSecond(d.Limit))
			}
			kmh := float64(v) * 3.6
			t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(thing.ID().Name), word(m.says(a)), word(m.where(p, thing, i.Start)), word(m.where(p, thing, i.End)), m.length(m.way3(tr, i.Start, i.End))), m.until(i.End),
				cells(m.speed(v), number(kmh, 1, units.Number(kmh, 1)), limit, m.length(safety.StoppingDistance(v, safety.Dry)), m.length(safety.StoppingDistance(v, safety.Wet))), p.slip(a))
		}
	}
	if len(t.Rows) > 0 {
		t.note(m.stopNote())
	}
	return t
}

// closePasses is how close each moving vehicle comes to each person on foot.
func (m *maker) closePasses() *Table {
	t := table("close", "Closest to people", col("who", "who", "vehicle or wheeled rig, moving"), col("person", "to", "a person on foot, not with it"), measure("gap", "gap", "m", "between the outlines on the floor"), clockColumns(), beatColumn(),
		measure("speed", "at", "m/s", "its speed then"), measure("stops", "stops in", "m", "at that speed, dry"), col("where", "person at", "where the person is"),
		measure("ahead_gap", "ahead of it: gap", "m", "the least that is left of the gap beyond the stopping distance, while the person is in its lane ahead; empty: never ahead"), col("ahead_clock", "at", "when that is"))
	t.Columns[t.Column("beat")].Group = false
	t.Empty = "No vehicle and no wheeled rig moves while somebody is on foot in this take."
	for _, tr := range m.take.tracks.Bodies {
		if !m.wheeled(tr.Thing) {
			continue
		}
		people, _ := m.closest(m.take, tr, func(units.Seconds) bool { return true })
		for _, n := range people {
			ahead, when := word(""), ""
			if !math.IsInf(n.ahead, 1) {
				ahead, when = m.signed(n.ahead), n.aheadAt.Clock()
			}
			t.add(nil, cells(word(tr.Thing.ID().Name), word(n.what), m.length(units.Metres(n.gap))), m.clock(n.at), m.take.beatAt(n.at), cells(m.speed(n.speed), m.length(safety.StoppingDistance(n.speed, safety.Dry)), word(m.where(m.take, n.thing, n.at)), ahead, word(when)))
		}
	}
	if len(t.Rows) > 0 {
		t.note("keep " + m.metres(body.VehicleGap.Typical) + " and more beyond the stopping distance, " + m.metres(body.VehicleGap.Hard) + " at the very least, and nobody ahead; " + body.Practice)
	}
	return t
}

func (m *maker) stopNote() string {
	return "stopping distances are for " + safety.Reaction.String() + " to react and a braking of " + safety.Braking.Text(m.sys) + " (AASHTO, A Policy on Geometric Design), twice that in the wet; slopes, rails and loads lengthen them"
}

// ahead says whether an outline lies within the lane that a thing is about to
// cover at a time.
func ahead(tr *motion.Track, o outline, at units.Seconds) bool {
	v := tr.Velocity(at)
	if v.Len() < still {
		return false
	}
	d := o.centre.Sub(tr.At(at).Point())
	way := v.Unit()
	return d.Dot(way) > 0 && math.Abs(d.Cross(way)) < float64(tr.Width)/2+o.radius
}

// passengers is who is aboard what drives.
func (m *maker) passengers() *Table {
	t := table("aboard", "Aboard", col("carrier", "on", "vehicle or rig"), col("who", "who", "aboard"), beatColumn(), clockColumns(), untilColumns("until"), measure("ahead", "ahead", "m", "from its middle"), measure("left", "left", "m", "from its middle"), measure("speed", "up to", "m/s", "its greatest speed meanwhile"))
	t.Columns[t.Column("beat")].Group = false
	t.Empty = "Nobody rides anything in this plan."
	for _, p := range m.parts {
		for _, r := range p.tracks.Rides {
			tr := p.tracks.Body(r.Carrier)
			if tr == nil || p.pickup != nil && !p.has(r.Action) {
				continue
			}
			t.add(r.Action, cells(word(nameOf(r.Carrier)), word(nameOf(r.Who))), p.beatAt(r.From), m.clock(r.From), m.until(r.To), cells(m.signed(r.At.X), m.signed(r.At.Y), m.speed(m.topSpeed(tr, r.From, r.To))))
		}
	}
	return t
}
