package sheets

import (
	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

// handoffs is every change of hands, with the time it has and the time it needs.
func (m *maker) handoffs() *Table {
	t := table("handoffs", "Handoffs", beatColumn(), clockColumns(), cueColumn(), col("camera", "camera", "name"), col("from", "from", "rig and who has it"), col("to", "to", "rig and who takes it"),
		col("where", "where", "where the lens is"), measure("height", "lens up", "m", "above the set's floor"), col("how", "how", "what is done"),
		measure("has", "has", "s", "time in the plan"), measure("usual", "usual", "s", "time to allow"), measure("least", "least", "s", "less cannot be done"),
		measure("gap", "apart", "m", "the lens's places on the two rigs, at the start"), measure("relative", "to each other", "m/s", "the most speed between the two"),
		measure("moving", "over the floor", "m/s", "the most speed of either"), col("still", "still", "whether both must stand"), col("weight", "weight", "who steps on where the operator steps off"), slipColumns())
	t.Empty = "No camera changes hands in this plan."
	for _, p := range m.parts {
		for _, h := range p.tracks.Handoffs {
			if p.pickup != nil && !p.has(h.Action) {
				continue
			}
			still := "at rest to each other"
			if h.Way.Still {
				still = "both stand"
			}
			weight := "none"
			switch {
			case h.Weight != nil:
				weight = h.Weight.Name
			case h.Way.Weight:
				weight = "needed, nobody named"
			}
			cue := ""
			slip := cells(word(""), word(""))
			if h.Action != nil {
				cue, slip = p.words(h.Action), p.slip(h.Action)
			}
			t.add(h.Action, p.beatAt(h.Start), m.clock(h.Start), cells(word(cue), word(name(h.Camera)), word(held(h.From, h.Giver)), word(held(h.To, h.Taker)),
				word(m.spot(h.At.Floor())), m.length(units.Metres(h.At.Z)), word(h.Way.How), seconds(h.End-h.Start), seconds(h.Way.Typical), seconds(h.Way.Minimum),
				m.length(h.GapStart), m.speed(h.Relative), m.speed(h.Moving), word(still), word(weight)), slip)
		}
	}
	if len(t.Rows) > 0 {
		t.note("within reach is " + m.metres(body.HandoffReach) + "; at rest to each other is under " + body.HandoffDrift.Text(m.sys) + "; " + body.Practice)
	}
	return t
}

func held(r *plan.Rig, who *plan.Person) string {
	if who == nil {
		return name(r)
	}
	return join(name(r)+",", who.Name)
}

// weights is who is on what moves, from when to when, and what their weight does.
func (m *maker) weights() *Table {
	t := table("weights", "Weights on and off", beatColumn(), clockColumns(), col("cue", "on: cue", "what to listen or look for"), untilColumns("off"), col("who", "who", "rides or stands on it"),
		col("carrier", "on", "the rig or vehicle"), measure("weight", "weight", "kg", "of the person"), measure("ahead", "ahead", "m", "from the carrier's middle"), measure("left", "left", "m", "from the carrier's middle"),
		col("as", "as", "operator, rider or weight"), measure("moment", "if it steps off", "N·m", "what throws a balanced arm: weight x 9.81 m/s² x reach"))
	t.Empty = "Nobody steps on or off a rig or a vehicle in this plan."
	for _, p := range m.parts {
		for _, r := range p.tracks.Rides {
			who, ok := r.Who.(*plan.Person)
			if !ok || p.pickup != nil && !p.has(r.Action) {
				continue
			}
			as := "rider"
			switch {
			case r.Weight:
				as = "weight"
			case m.operates(p, who, r.Carrier, r.From, r.To):
				as = "operator"
			}
			cue := "aboard as the take begins"
			if r.Action != nil && r.From > 0 {
				cue = p.words(r.Action)
			}
			moment := word("")
			if rig, ok := r.Carrier.(*plan.Rig); ok {
				if reach, arm := armOf(rig); arm {
					n := safety.ThrowUp(who.Weight, reach)
					moment = number(float64(n), 0, n.String())
				}
			}
			t.add(r.Action, p.beatAt(r.From), m.clock(r.From), cells(word(cue)), m.until(r.To), cells(word(who.Name), word(nameOf(r.Carrier)), m.kilograms(who.Weight), m.signed(r.At.X), m.signed(r.At.Y), word(as), moment))
		}
	}
	return t
}

// signed is a length that may be negative.
func (m *maker) signed(v float64) Cell {
	if v < 0 {
		c := m.length(units.Metres(-v))
		c.Text = "-" + c.Text
		n := -*c.Value + 0
		c.Value = &n
		return c
	}
	return m.length(units.Metres(v))
}

func armOf(r *plan.Rig) (units.Metres, bool) {
	class, err := body.ParseClass(r.Class)
	if err != nil || class != body.Crane && class != body.Jib {
		return 0, false
	}
	if r.Reach > 0 {
		return r.Reach, true
	}
	return body.RigOf(class).Reach, true
}

// operates says whether a person works the camera on a carrier for some of a
// stretch.
func (m *maker) operates(p *part, who *plan.Person, carrier plan.Thing, from, to units.Seconds) bool {
	for _, ct := range p.cameras() {
		for _, h := range ct.Holds {
			if h.Operator == who && h.Rig != nil && plan.Thing(h.Rig) == carrier && h.Start < to && h.End > from {
				return true
			}
		}
	}
	return false
}

// cards is what covers lenses and rigs.
func (m *maker) cards() *Table {
	t := table("cards", "Cards and covers", col("card", "card", "name"), measure("wide", "wide", "m", "across"), measure("high", "high", "m", "up"), col("colour", "colour", "as painted"),
		col("use", "for", "what it covers"), col("where", "where", "where that is"), col("clock", "from", "when it has to be there"))
	t.Empty = "There are no cards in this plan."
	used := map[*plan.Card]bool{}
	for _, o := range m.hidden() {
		if o.card == nil {
			continue
		}
		used[o.card] = true
		centre, _ := plan.On{Wall: o.hole.Wall, From: o.hole.Along, To: o.hole.Along}.Ends()
		when := o.from.Clock()
		if o.p.pickup != nil {
			when = o.p.name
		}
		t.add(o.action, cells(word(o.card.Name), m.length(o.card.Width), m.length(o.card.Height), word(o.card.Colour), word(o.camera.Name+" behind "+o.hole.Name), word(m.spot(centre)), word(when)))
	}
	for _, c := range m.p.Kit.Cards {
		if !used[c] {
			t.add(nil, cells(word(c.Name), m.length(c.Width), m.length(c.Height), word(c.Colour), word("not used by any line"), word(""), word("")))
		}
	}
	return t
}

// outline is the footprint of a thing at a time: a polygon, or a circle of a
// radius where it has no corners.
type outline struct {
	poly   geom.Polygon
	centre geom.Vec
	radius float64
}

// between is the gap between two outlines; 0 where they meet.
func (o outline) between(q outline) float64 {
	var d float64
	switch {
	case o.poly != nil && q.poly != nil:
		return o.poly.DistanceTo(q.poly)
	case o.poly != nil:
		d = o.poly.Distance(q.centre) - q.radius
	case q.poly != nil:
		d = q.poly.Distance(o.centre) - o.radius
	default:
		d = o.centre.Dist(q.centre) - o.radius - q.radius
	}
	return max(d, 0)
}
