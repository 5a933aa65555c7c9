package sheets

import (
	"math"
	"sort"
	"strings"

	"longhand/lang/geom"
	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/plan"
	"longhand/lang/safety"
	"longhand/lang/units"
)

func (m *maker) electric() ([]*Table, []safety.Topic) {
	var topics []safety.Topic
	if len(m.p.Kit.Lamps) > 0 || len(m.p.Set.Supplies) > 0 {
		topics = append(topics, safety.Electricity, safety.Heat)
	}
	if len(m.p.Kit.Washes) > 0 {
		topics = append(topics, safety.Height)
	}
	if m.dark() {
		topics = append(topics, safety.Darkness)
	}
	return []*Table{m.cues(), m.washes(), m.hanging(), m.placed(), m.circuits(), m.current(), m.onPeople()}, topics
}

// darkLevel is the level, in per cent, at and below which a cue makes people walk
// blind.
const darkLevel = 5

func (m *maker) dark() bool {
	for _, p := range m.parts {
		for _, a := range p.actions {
			if c, ok := a.Deed.(*plan.Cue); ok {
				for _, l := range c.Levels {
					if l.Per <= darkLevel {
						return true
					}
				}
			}
		}
	}
	return false
}

// lights is everything that burns in a part, with its levels.
func (m *maker) lights(p *part) *lighting.Lighting {
	q := *m.p
	q.Actions = p.actions
	return lighting.Of(&q, p.clock)
}

// cues is the cue sheet: a row a level that changes.
func (m *maker) cues() *Table {
	t := table("cues", "Cues", beatColumn(), clockColumns(), col("cue", "on", "what to listen or look for"), col("name", "cue", "its name"), col("light", "takes", "the wash or lamp"), col("lamps", "lamps", "how many of what"),
		measure("from", "from", "%", "level before"), measure("to", "to", "%", "level after"), measure("over", "over", "s", "how long the change takes"), untilColumns("done"), col("clash", "mind", "what it meets"), slipColumns())
	t.Empty = "No light cue is called in this plan."
	for _, p := range m.parts {
		all := m.lights(p)
		for _, a := range p.inTime() {
			c, ok := a.Deed.(*plan.Cue)
			if !ok {
				continue
			}
			i := p.clock.Of(a)
			for _, v := range c.Levels {
				l := all.Unit(levelName(v))
				if l == nil {
					continue
				}
				from := before(l, i.Start)
				t.add(a, p.beat(a), m.clock(i.Start), p.cue(a), cells(word(c.Name), word(l.Name), word(units.Number(float64(l.Count), 0)+" x "+l.Lamp.Name),
					number(float64(from), 1, from.String()), number(float64(v.Per), 1, v.Per.String()), seconds(i.Length())),
					m.until(i.End), cells(word(meets(all, l, a))), p.slip(a))
			}
		}
	}
	if len(t.Rows) > 0 {
		t.note("what a cue moves is out until its first cue; what no cue moves burns in full")
		t.note("large filament lamps take about " + light.GlowDown.String() + " to go dark, whatever the board says")
	}
	return t
}

// before is a unit's level just before a time.
func before(u *lighting.Unit, t units.Seconds) units.Percent {
	return units.Percent(math.Round(float64(u.Level(t-1e-6))*10) / 10)
}

// meets says which cue a cue takes a light over from.
func meets(all *lighting.Lighting, u *lighting.Unit, a *plan.Action) string {
	for _, o := range all.Overlaps {
		if o.Later == a && o.Unit.Name == u.Name {
			return "takes over from cue " + o.Earlier.Deed.(*plan.Cue).Name + " at " + units.Percent(math.Round(float64(o.Level))).String()
		}
	}
	return ""
}

// washes is what hangs, lamp by lamp.
func (m *maker) washes() *Table {
	t := table("washes", "Washes", col("wash", "wash", "name"), col("lamp", "lamp", "kind of lamp"), measure("count", "lamps", "lamps", "that hang for it"), col("colour", "colour", "of the lamp"), col("changes", "colour changes", "whether the lamp can take another colour"),
		col("grid", "grid", "where it hangs"), measure("each", "each", "W", "in full"), measure("all", "together", "W", "in full"), measure("candela", "each gives", "cd", "in full"), measure("spacing", "apart", "m", "spread evenly over the grid"), measure("high", "up", "m", "where lamps hang: height over the floor"))
	t.Empty = "There are no washes in this plan."
	for _, w := range m.p.Kit.Washes {
		if w.Lamp == nil || w.Grid == nil {
			continue
		}
		candela := word("not given")
		if w.Lamp.Candela > 0 {
			candela = number(float64(w.Lamp.Candela), 0, w.Lamp.Candela.String())
		}
		all := w.Lamp.Power * units.Watts(w.Count)
		t.add(nil, cells(word(w.Name), word(w.Lamp.Name), count(w.Count), word(colour(w.Lamp)), word(yes(w.Lamp.Changes)), word(w.Grid.Name), watts(w.Lamp.Power), watts(all), candela,
			m.length(light.Spacing(geom.Polygon(w.Grid.Polygon).Area(), w.Count)), m.length(lighting.Height(w.Grid))))
	}
	return t
}

func watts(w units.Watts) Cell { return number(float64(w), 0, w.String()) }

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func colour(l *plan.Lamp) string {
	switch {
	case l.Colour != "":
		return l.Colour
	case l.Kelvin > 0:
		return l.Kelvin.String()
	}
	return "as it comes"
}

// hanging counts lamps against the points of each grid, and what lamps that
// change colour would save.
func (m *maker) hanging() *Table {
	t := table("hanging", "Hanging points", col("grid", "grid", "name"), measure("points", "points", "points", "there are"), measure("lamps", "lamps", "lamps", "that hang on it"), measure("free", "left", "points", "points not used; below 0: too few"),
		measure("places", "places", "places", "the most lamps of one wash"), measure("colours", "colours", "colours", "different ones on this grid"), measure("changing", "if all changed colour", "lamps", "lamps that would hang if each could take every colour"))
	t.Empty = "There is no grid to hang lamps from in this plan."
	all := m.lights(m.take)
	for _, g := range m.p.Set.Grids {
		h := all.Hanging(g)
		places := 0
		colours := map[string]bool{}
		for _, u := range h.Washes {
			places = max(places, u.Count)
			colours[colour(u.Lamp)] = true
		}
		t.add(nil, cells(word(g.Name), count(g.Points), count(h.Lamps), count(g.Points-h.Lamps), count(places), count(len(colours)), count(light.LampsFor(places, len(colours), true))))
		if len(colours) > 1 && len(h.Washes) > 1 {
			t.note("on " + g.Name + " a lamp that cannot change colour hangs once a place and colour: " + lampSum(m.p, g))
		}
		if len(h.Shared) > 0 {
			names := make([]string, len(h.Shared))
			for i, u := range h.Shared {
				names[i] = u.Name
			}
			t.note("the same lamps do for " + listed(names) + ", which are never lit together")
		}
	}
	return t
}

// lampSum writes the count of lamps out.
func lampSum(p *plan.Plan, g *plan.Grid) string {
	var parts []string
	for _, w := range p.Kit.Washes {
		if w.Grid == g && w.Lamp != nil {
			parts = append(parts, units.Number(float64(w.Count), 0)+" x "+colour(w.Lamp))
		}
	}
	sort.Strings(parts)
	return strings.Join(parts, " + ")
}

// placed is the lamps that stand in the set.
func (m *maker) placed() *Table {
	t := table("placed", "Lamps in the set", col("lamp", "lamp", "name"), col("where", "where", "place on the floor"), measure("up", "up", "m", "above the floor"), col("aims", "aims at", "where it points"),
		measure("power", "power", "W", "in full"), col("colour", "colour", "of the lamp"), col("seen", "in frame", "whether it may be, and which camera first shows it when"))
	t.Empty = "No lamp stands in the set."
	for _, q := range m.p.Set.Placed {
		aims := "all round"
		if q.Aims != nil {
			aims = q.Aims.Text
		}
		t.add(nil, cells(word(name(q.Lamp)), word(q.At.Text), m.length(q.Up), word(aims), watts(q.Lamp.Power), word(colour(q.Lamp)), word(m.lampSeen(q.Lamp))))
	}
	return t
}

func (m *maker) lampSeen(l *plan.Lamp) string {
	may := "must not be"
	if l.Seen {
		may = "may be"
	}
	for _, c := range m.take.stage.Cameras {
		if f := m.take.showing(c, l); len(f) > 0 {
			return may + "; " + c.Name + " shows it from " + m.rate.Time(f[0].From).Clock()
		}
	}
	return may + "; no camera shows it"
}
