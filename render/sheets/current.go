package sheets

import (
	"fmt"
	"sort"

	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/units"
)

// circuit is a fuse with what is on it.
type circuit struct {
	supply string
	number int
	volts  units.Volts
	rating units.Amperes
	loads  []light.Load
	counts []int
	names  []string
	full   units.Amperes
}

// wired spreads every lamp over the supplies' circuits: the largest first, each
// on the first with room. What finds none is counted.
func (m *maker) wired() (all []circuit, left int) {
	for _, s := range m.p.Set.Supplies {
		for i := 0; i < max(s.Count, 1); i++ {
			all = append(all, circuit{supply: s.Name, number: i + 1, volts: s.Volts, rating: s.Amperes})
		}
	}
	lights := m.lights(m.take)
	order := make([]*lighting.Unit, len(lights.Units))
	for i := range lights.Units {
		order[i] = &lights.Units[i]
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].Lamp.Power > order[j].Lamp.Power })
	for _, u := range order {
		for range u.Count {
			if !put(all, u) {
				left++
			}
		}
	}
	return all, left
}

// put puts one lamp of a unit on the first circuit with room under the lasting
// limit.
func put(all []circuit, u *lighting.Unit) bool {
	const slop = 1e-9 // ampere: what rounding may add to a sum that is just full
	for k := range all {
		c := &all[k]
		if !(c.volts > 0) {
			continue
		}
		amps := light.Current(u.Lamp.Power, c.volts, 1)
		if c.full+amps > light.ContinuousLimit(c.rating)+slop {
			continue
		}
		c.full += amps
		if n := len(c.names); n > 0 && c.names[n-1] == u.Name {
			c.counts[n-1]++
			c.loads[n-1].Full += u.Lamp.Power
			return true
		}
		c.names, c.counts = append(c.names, u.Name), append(c.counts, 1)
		c.loads = append(c.loads, light.Load{Full: u.Lamp.Power, Law: light.Linear, Curve: u.Curve})
		return true
	}
	return false
}

// circuits is which lamps go on which circuit, and the most each carries.
func (m *maker) circuits() *Table {
	t := table("circuits", "Circuits", col("supply", "supply", "name"), measure("circuit", "circuit", "no.", "number of the circuit"), col("lamps", "lamps", "what is on it"), measure("full", "all in full", "A", "current with all of it in full"),
		measure("rating", "rating", "A", "of the circuit"), measure("lasting", "lasting load to", "A", "80 % of the rating"), measure("peak", "peak", "A", "the most at any moment of the take"), clockColumns(), col("phase", "phase", "of three, balanced"))
	t.Columns[t.Column("clock")].Title = "at"
	t.Empty = "No supply is given in this plan, so no circuits can be told."
	all, left := m.wired()
	amps := make([]units.Amperes, len(all))
	for i, c := range all {
		amps[i] = c.full
	}
	phase, carries := light.Balance(amps)
	used := 0
	for i, c := range all {
		if len(c.names) == 0 {
			continue
		}
		used++
		lamps := ""
		for k, n := range c.names {
			if k > 0 {
				lamps += ", "
			}
			lamps += fmt.Sprintf("%d of %s", c.counts[k], n)
		}
		w, at := light.Peak(c.loads, 0, m.take.clock.Length)
		t.add(nil, cells(word(c.supply), count(c.number), word(lamps), amperes(c.full), amperes(c.rating), amperes(light.ContinuousLimit(c.rating)), amperes(light.Current(w, c.volts, 1))), m.clock(at), cells(word("L"+units.Number(float64(phase[i]+1), 0))))
	}
	if len(all) > 0 {
		t.Empty = "No lamp is on any supply in this plan."
	}
	if used > 0 {
		t.note(fmt.Sprintf("on three phases, all in full: L1 %s, L2 %s, L3 %s", carries[0], carries[1], carries[2]))
		t.note(fmt.Sprintf("%d of %d circuits are used; a lasting load is held to 80 %% of the rating", used, len(all)))
		t.note("power is taken in proportion to level; filament lamps draw somewhat less when dimmed than this, power factor 1")
	}
	if left > 0 && len(all) > 0 {
		t.note(fmt.Sprintf("%d lamps find no circuit with room: the supply is too small by them", left))
	}
	return t
}

func amperes(a units.Amperes) Cell { return number(float64(a), 2, a.String()) }

// current is what each supply carries as the levels change.
func (m *maker) current() *Table {
	t := table("current", "Current over time", col("supply", "supply", "name"), clockColumns(), beatColumn(), measure("current", "current", "A", "on all its circuits together"), measure("share", "of what it lasts", "%", "of 80 % of the rating of its circuits"), measure("power", "power", "W", "drawn"))
	t.Columns[t.Column("beat")].Group = false
	t.Empty = "No supply is given in this plan, so no current can be told."
	all, _ := m.wired()
	end := m.take.clock.Length
	var chart Chart
	for _, s := range m.p.Set.Supplies {
		var loads []light.Load
		rating := units.Amperes(0)
		for _, c := range all {
			if c.supply == s.Name {
				loads = append(loads, c.loads...)
				rating += c.rating
			}
		}
		if len(loads) == 0 || s.Volts <= 0 {
			continue
		}
		limit := light.ContinuousLimit(rating)
		series := Series{Name: s.Name}
		_, peakAt := light.Peak(loads, 0, end)
		for _, at := range light.Bends(loads, 0, end) {
			w := light.Power(loads, at)
			a := light.Current(w, s.Volts, 1)
			row := m.clock(at)
			if at == peakAt {
				row[0].Text += " (peak)"
			}
			t.add(nil, cells(word(s.Name)), row, m.take.beatAt(at), cells(amperes(a), number(float64(a/limit)*100, 1, units.Percent(float64(a/limit)*100).String()), watts(w)))
			series.Points = append(series.Points, [2]float64{float64(at), float64(a)})
		}
		chart.Lines = append(chart.Lines, series)
		if len(m.p.Set.Supplies) == 1 {
			chart.Limit = float64(limit)
		}
	}
	if len(m.p.Set.Supplies) > 0 {
		t.Empty = "No lamp is on any supply in this plan."
	}
	if len(chart.Lines) > 0 {
		chart.Title, chart.Unit, chart.End = "Current over the take", "A", float64(end)
		for _, s := range m.take.clock.Spans() {
			if s.Beat != nil && s.To > s.From {
				chart.Marks = append(chart.Marks, Mark{float64(s.From), units.Number(float64(s.Beat.Index+1), 0)})
			}
		}
		t.Chart = &chart
	}
	return t
}
