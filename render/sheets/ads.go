package sheets

import (
	"slices"

	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

func (m *maker) ads() ([]*Table, []safety.Topic) {
	var topics []safety.Topic
	if len(m.p.Kit.Vehicles) > 0 {
		topics = append(topics, safety.Vehicles)
	}
	if m.dark() {
		topics = append(topics, safety.Darkness)
	}
	if m.p.Take.Place != nil {
		topics = append(topics, safety.Daylight)
	}
	if len(m.hidden()) > 0 {
		topics = append(topics, safety.Hiding)
	}
	return []*Table{m.day(), m.first(), m.running(), m.keepClear(), m.standing(), m.unseen()}, topics
}

// first is where everybody and everything is as the take begins.
func (m *maker) first() *Table {
	t := table("first", "First positions", col("who", "who", "name"), col("role", "as", "role or kind"), col("where", "where", "place at the first frame"), measure("up", "floor", "m", "height of the floor there"), col("posture", "posture", "of a person"), clockColumns(), col("does", "first does", "the line"), col("cue", "on", "what to listen or look for"))
	t.Columns[t.Column("clock")].Title = "first goes"
	t.Empty = "Nobody and nothing is placed in this take."
	p := m.take
	for _, tr := range p.tracks.Bodies {
		role, posture := string(tr.Thing.Kind()), ""
		switch thing := tr.Thing.(type) {
		case *plan.Person:
			if thing.Role != "" {
				role = thing.Role
			}
			posture = tr.Posture(0).String()
		case *plan.Rig:
			role = thing.Class
		}
		when, does, cue := cells(word(""), word(""), word("")), "stays", ""
		for _, a := range p.inTime() {
			if m.goes(p, tr.Thing, a) {
				when, does, cue = m.clock(p.clock.Of(a).Start), m.says(a), p.words(a)
				break
			}
		}
		t.add(nil, cells(word(tr.Thing.ID().Name), word(role), word(m.where(p, tr.Thing, 0)), m.signed(float64(tr.At(0).Z)), word(posture)), when, cells(word(does), word(cue)))
	}
	return t
}

// goes says whether a line is the first that a thing does, and not one that says
// where it is to begin with.
func (m *maker) goes(p *part, thing plan.Thing, a *plan.Action) bool {
	switch a.Deed.(type) {
	case *plan.Ride, *plan.Mount:
		return false
	}
	if who, ok := thing.(*plan.Person); ok {
		return m.does(p, who, a)
	}
	return a.Subject == thing
}

// running is who goes on what cue, in order of time.
func (m *maker) running() *Table {
	t := table("running", "Running order", beatColumn(), clockColumns(), cueColumn(), col("who", "who", "goes"), col("does", "does", "the line in full"), col("from", "from", "where it begins"), col("to", "to", "where it ends"), untilColumns("done"), slipColumns())
	t.Empty = "Nothing happens in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			switch a.Deed.(type) {
			case *plan.See, *plan.Fit, *plan.Swing, *plan.Rack:
				continue // the camera's own business, on its sheet
			}
			from, to := m.from(p, a), m.to(p, a)
			i := p.clock.Of(a)
			done := cells(word("holds"), word(""))
			if !i.Open {
				done = m.until(i.End)
				if i.Length() < 1e-9 {
					done = cells(word("at once"), word(""))
				}
			}
			if to == from || i.Open {
				to = ""
			}
			t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(whoGoes(a)), word(m.says(a)), word(from), word(to)), done, p.slip(a))
		}
	}
	if len(t.Rows) > 0 {
		t.note("may slip: how much later it may happen before anything else moves")
	}
	if i := t.Column("slack"); slices.ContainsFunc(t.Rows, func(r Row) bool { return r.Cells[i].Text != "" }) {
		t.note("breaks after: how much later it may happen before something the plan states no longer holds")
	}
	return t
}

// whoGoes is who a line is for.
func whoGoes(a *plan.Action) string {
	switch a.Deed.(type) {
	case *plan.Handoff, *plan.Cut:
		return name(cameraOf(a))
	case *plan.Cue:
		return "light"
	}
	return a.Who()
}

// keepClear is where nobody may stand: ahead of what moves.
func (m *maker) keepClear() *Table {
	t := table("clear", "Where nobody may stand", col("who", "ahead of", "vehicle or rig that moves"), beatColumn(), clockColumns(), untilColumns("until"), col("from", "from", "where it begins"), col("to", "to", "where it ends"), measure("speed", "up to", "m/s", "its greatest speed"), measure("dry", "keep ahead, dry", "m", "stopping distance of a slow driver on dry ground"), measure("wet", "wet", "m", "on wet ground"), measure("wide", "lane", "m", "its width and the usual gap at either side"))
	t.Columns[t.Column("beat")].Group = false
	t.Empty = "No vehicle and no wheeled rig moves over the floor in this take."
	for _, p := range m.parts {
		for _, tr := range p.tracks.Bodies {
			if !m.wheeled(tr.Thing) {
				continue
			}
			for _, s := range m.runs(tr) {
				v := m.topSpeed(tr, s[0], s[1])
				t.add(nil, cells(word(tr.Thing.ID().Name)), p.beatAt(s[0]), m.clock(s[0]), m.until(s[1]), cells(word(m.spot(tr.At(s[0]).Point())), word(m.spot(tr.At(s[1]).Point())), m.speed(v),
					m.length(safety.StoppingDistance(v, safety.Dry)), m.length(safety.StoppingDistance(v, safety.Wet)), m.length(tr.Width+2*sideGap)))
			}
		}
	}
	if len(t.Rows) > 0 {
		t.note(m.stopNote())
		t.note("where a lens must not see you either, keep to the floor no lens sees")
	}
	return t
}

// sideGap is kept free at either side of what moves: common practice, no source,
// from memory.
const sideGap units.Metres = 1

// wheeled says whether a thing rolls over the floor by itself.
func (m *maker) wheeled(thing plan.Thing) bool {
	switch t := thing.(type) {
	case *plan.Vehicle:
		return true
	case *plan.Rig:
		return !m.worn(t)
	}
	return false
}

// runs are the stretches in which a thing moves over the floor.
func (m *maker) runs(tr *motion.Track) [][2]units.Seconds {
	var out [][2]units.Seconds
	for i := range tr.Segments {
		s := &tr.Segments[i]
		if s.Kind != motion.Moving && s.Kind != motion.Relating && s.Kind != motion.Braking || s.End <= s.Start {
			continue
		}
		if m.topSpeed(tr, s.Start, s.End) < still {
			continue
		}
		if n := len(out); n > 0 && s.Start-out[n-1][1] < 1e-6 {
			out[n-1][1] = s.End
			continue
		}
		out = append(out, [2]units.Seconds{s.Start, s.End})
	}
	return out
}

func (m *maker) topSpeed(tr *motion.Track, from, to units.Seconds) units.MetresPerSecond {
	var v units.MetresPerSecond
	for k := m.rate.From(from); m.rate.Time(k) <= to; k++ {
		v = max(v, tr.Speed(m.rate.Time(k)))
	}
	return v
}
