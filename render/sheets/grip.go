package sheets

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

func (m *maker) grip() ([]*Table, []safety.Topic) {
	var topics []safety.Topic
	if len(m.p.Kit.Rigs) > 0 {
		topics = append(topics, safety.Weights)
	}
	if len(m.take.tracks.Carries) > 0 {
		topics = append(topics, safety.Worn)
	}
	weights := m.weights()
	if m.anyClass(body.Crane, body.Jib) {
		topics = append(topics, safety.Cranes, safety.PowerLines, safety.Wind)
	}
	if m.anyClass(body.Cart, body.Dolly) {
		topics = append(topics, safety.Vehicles)
	}
	if m.anyClass(body.Cable) {
		topics = append(topics, safety.Machines)
	}
	return []*Table{m.rigs(), m.rigMoves(), m.backing(), m.handoffs(), weights, m.clearances(), m.cards(), m.parking(), m.standing(), m.unseen()}, topics
}

func (m *maker) anyClass(classes ...body.Class) bool {
	for _, r := range m.p.Kit.Rigs {
		class, err := body.ParseClass(r.Class)
		for _, c := range classes {
			if err == nil && class == c {
				return true
			}
		}
	}
	return false
}

// rigs is what there is, and the room it takes.
func (m *maker) rigs() *Table {
	t := table("rigs", "Rigs", col("rig", "rig", "name"), col("class", "class", "kind of rig"), col("place", "first position", "where it is as the take begins"),
		measure("long", "long", "m", "footprint along its travel"), measure("wide", "wide", "m", "footprint across"),
		measure("clear", "way for it", "m", "width of way that is usual"), measure("clear_least", "least", "m", "least width of way"),
		measure("reach", "reach", "m", "from its base to the lens"), measure("carries", "carries", "kg", "the most"))
	t.Empty = "There are no rigs in this plan."
	for _, r := range m.p.Kit.Rigs {
		class, err := body.ParseClass(r.Class)
		if err != nil {
			continue
		}
		std := body.RigOf(class)
		long, wide := std.Length, std.Width
		if r.Length > 0 {
			long, wide = r.Length, r.Width
		}
		reach := std.Reach
		if r.Reach > 0 {
			reach = r.Reach
		}
		// Way is kept at either side of the footprint as the class has it.
		extra := units.Metres(0)
		if r.Width > std.Width {
			extra = r.Width - std.Width
		}
		_, high := carries(r)
		place := "not in this take"
		if m.take.tracks.Body(r) != nil {
			place = m.where(m.take, r, 0)
		}
		some := func(v units.Metres) Cell {
			if v <= 0 {
				return word("")
			}
			return m.length(v)
		}
		t.add(nil, cells(word(r.Name), word(r.Class), word(place), some(long), some(wide), some(plus(std.Clear, extra)), some(plus(std.ClearHard, extra)), some(reach), m.optional(high)))
	}
	return t
}

func plus(v, extra units.Metres) units.Metres {
	if v <= 0 {
		return 0
	}
	return v + extra
}

// rigMoves is every way of a rig, and of an operator who wears or holds one.
func (m *maker) rigMoves() *Table {
	t := table("moves", "Rigs and paths", beatColumn(), clockColumns(), cueColumn(), col("who", "who", "the rig, or the camera and who carries it"),
		col("does", "does", "the line in full"), col("from", "from", "where it begins"), col("to", "to", "where it ends"),
		measure("length", "way", "m", "over the floor"), untilColumns("arrives"), measure("takes", "takes", "s", "from start to end"),
		measure("peak", "peak", "m/s", "the most speed asked for"), measure("limit", "limit", "m/s", "the most the rig or its wearer does"), slipColumns())
	t.Empty = "No rig moves in this plan."
	for _, p := range m.parts {
		for _, a := range p.inTime() {
			thing, ok := m.carried(p, a)
			if !ok {
				continue
			}
			i := p.clock.Of(a)
			tr := p.tracks.Body(thing)
			if tr == nil {
				continue
			}
			who := thing.ID().Name
			if c := cameraOf(a); c != nil {
				who = c.Name + ", " + who
			}
			peak, limit := word(""), word("")
			if d, ok := fastest(p, a); ok {
				peak, limit = m.speed(units.MetresPerSecond(d.Peak)), m.speed(units.MetresPerSecond(d.Limit))
			}
			way, what := m.way3(tr, i.Start, i.End), thing
			if c := cameraOf(a); c != nil && way < 0.05 { // an arm or a slider moves and its base stands
				way, what = m.lensWay(p.tracks.Camera(c), i.Start, i.End), c
			}
			t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(who), word(m.says(a)), word(m.where(p, what, i.Start)), word(m.where(p, what, i.End)), m.length(way)),
				m.until(i.End), cells(seconds(i.Length()), peak, limit), p.slip(a))
		}
	}
	return t
}

// carried is what moves over the floor by a line that is the grip's: a rig, or
// the operator of a camera.
func (m *maker) carried(p *part, a *plan.Action) (plan.Thing, bool) {
	switch a.Deed.(type) {
	case *plan.Move, *plan.Stand:
		if r, ok := a.Subject.(*plan.Rig); ok {
			return r, true
		}
		if _, ok := a.Subject.(*plan.Camera); !ok {
			return nil, false
		}
	case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel:
	default:
		return nil, false
	}
	c := cameraOf(a)
	ct := p.tracks.Camera(c)
	if ct == nil {
		return nil, false
	}
	h := ct.Hold(p.clock.Of(a).Start)
	switch {
	case h == nil:
		return nil, false
	case h.Worn && h.Operator != nil:
		return h.Operator, true
	case h.Rig != nil:
		return h.Rig, true
	}
	return nil, false
}

// fastest is the greatest speed a line asks for, forwards or back.
func fastest(p *part, a *plan.Action) (motion.Demand, bool) {
	var out motion.Demand
	found := false
	for _, d := range p.tracks.Demands {
		if d.Action == a && (d.Quantity == motion.Speed || d.Quantity == motion.BackSpeed) && (!found || d.Peak > out.Peak) {
			out, found = d, true
		}
	}
	return out, found
}

// way3 is how far a thing goes over the floor between two times.
func (m *maker) way3(tr *motion.Track, from, to units.Seconds) units.Metres {
	sum := 0.0
	step := 1 / m.rate.PerSecond()
	for t := float64(from); t < float64(to); t += step {
		a, b := tr.At(units.Seconds(t)), tr.At(units.Seconds(min(t+step, float64(to))))
		sum += b.Point().Dist(a.Point())
	}
	return units.Metres(sum)
}

// lensWay is how far a lens goes, level, between two times.
func (m *maker) lensWay(ct *motion.CameraTrack, from, to units.Seconds) units.Metres {
	sum := 0.0
	step := 1 / m.rate.PerSecond()
	for t := float64(from); t < float64(to); t += step {
		a, b := ct.At(units.Seconds(t)), ct.At(units.Seconds(min(t+step, float64(to))))
		sum += math.Hypot(b.X-a.X, b.Y-a.Y)
	}
	return units.Metres(sum)
}

// backing is who goes backwards, and who is at their back.
func (m *maker) backing() *Table {
	t := table("backwards", "Backwards", beatColumn(), clockColumns(), untilColumns("until"), col("who", "who", "walks or goes backwards"), col("camera", "camera", "held meanwhile"),
		col("where", "from", "where it begins"), measure("length", "way", "m", "backwards"), measure("peak", "peak", "m/s", "backwards"), col("spotter", "spotter", "who is at their back"))
	t.Empty = "Nobody walks backwards in this plan."
	for _, p := range m.parts {
		for _, b := range p.tracks.Backing {
			if b.Length < 0.05 {
				continue
			}
			spotter := "nobody"
			if b.Spotter != nil {
				spotter = b.Spotter.Name
			}
			t.add(b.Action, p.beatAt(b.From), m.clock(b.From), m.until(b.To), cells(word(nameOf(b.Who)), word(name(b.Camera)), word(m.where(p, b.Who, b.From)), m.length(b.Length), m.speed(b.Peak), word(spotter)))
		}
	}
	if len(t.Rows) > 0 {
		t.note("a spotter from " + m.metres(body.BackSpotterDistance) + " on, and always above " + body.BackSpotterSpeed.Text(m.sys) + "; " + body.Practice)
	}
	return t
}
