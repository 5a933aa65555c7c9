package sheets

import (
	"fmt"
	"strings"

	"longhand/lang/light"
	"longhand/lang/lighting"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// wired spreads every lamp over the supplies' circuits. What finds none is counted.
func (m *maker) wired() (all []lighting.Circuit, left int) {
	all, homeless := m.lights(m.take).Circuits(m.p.Set.Supplies)
	for _, n := range homeless {
		left += n
	}
	return all, left
}

// circuits is which lamps go on which circuit, and the most each carries.
func (m *maker) circuits() *Table {
	t := table("circuits", "Circuits", col("supply", "supply", "name"), measure("circuit", "circuit", "no.", "number of the circuit"), col("lamps", "lamps", "what is on it"), measure("full", "all in full", "A", "current with all of it in full"),
		measure("rating", "rating", "A", "of the circuit"), measure("lasting", "lasting load to", "A", "80 % of the rating"), measure("peak", "peak", "A", "the most at any moment of the take"), clockColumns(), col("phase", "phase", "of three, balanced"))
	t.Columns[t.Column("clock")].Title = "at"
	t.Empty = "No supply is given in this plan, so no circuits can be told."
	all, left := m.wired()
	amps := make([]units.Amperes, len(all))
	each := units.Amperes(0) // of circuits of three phases, from each
	for i, c := range all {
		if c.Supply.ThreePhase {
			each += c.Full
		} else {
			amps[i] = c.Full
		}
	}
	phase, carries := light.Balance(amps)
	used := 0
	for i, c := range all {
		if len(c.On) == 0 {
			continue
		}
		used++
		var lamps []string
		for _, s := range c.On {
			lamps = append(lamps, fmt.Sprintf("%d of %s", s.Count, s.Unit.Name))
		}
		on := "L" + units.Number(float64(phase[i]+1), 0)
		if c.Supply.ThreePhase {
			on = "all three"
		}
		w, at := light.Peak(c.Loads(), 0, m.take.clock.Length)
		t.add(nil, cells(word(c.Supply.Name), count(c.Number), word(strings.Join(lamps, ", ")), amperes(c.Full), amperes(c.Supply.Amperes), amperes(light.ContinuousLimit(c.Supply.Amperes)), amperes(lighting.Current(c.Supply, w))), m.clock(at), cells(word(on)))
	}
	if len(all) > 0 {
		t.Empty = "No lamp is on any supply in this plan."
	}
	if used > 0 {
		t.note(fmt.Sprintf("on three phases, all in full: L1 %s, L2 %s, L3 %s", carries[0]+each, carries[1]+each, carries[2]+each))
		t.note(fmt.Sprintf("%d of %d circuits are used; a lasting load is held to 80 %% of the rating", used, len(all)))
		t.note("power is taken in proportion to level; filament lamps draw somewhat less when dimmed than this, power factor 1")
	}
	m.noteLost(t, all)
	if left > 0 && len(all) > 0 {
		t.note(noRoom(left))
	}
	return t
}

// noRoom says how many lamps no circuit has room for.
func noRoom(lamps int) string {
	if lamps == 1 {
		return "1 lamp finds no circuit with room: the supply is too small by it"
	}
	return fmt.Sprintf("%d lamps find no circuit with room: the supply is too small by them", lamps)
}

// noteLost says what voltage each supply's cable takes on the way to the lamps, of
// the circuit that loses most.
func (m *maker) noteLost(t *Table, all []lighting.Circuit) {
	worst := map[*plan.Supply]*lighting.Lost{}
	lost := m.lights(m.take).Lost(all)
	for i := range lost {
		d := &lost[i]
		if w := worst[d.Circuit.Supply]; w == nil || d.Volts > w.Volts {
			worst[d.Circuit.Supply] = d
		}
	}
	for _, s := range m.p.Set.Supplies {
		d := worst[s]
		if d == nil {
			continue
		}
		text := fmt.Sprintf("%s, %s of %s copper: at its peak, %s at %s, circuit %d loses %s, %s of %s, so that %s are left at the lamp", s.Name, m.metres(s.Cable.Run), s.Cable.Thick(),
			d.Current, d.When.Clock(), d.Circuit.Number, d.Volts, d.Part, s.Volts, d.Left())
		if d.Part > light.DropForLamps {
			text += fmt.Sprintf(": more than the %s that IEC 60364-5-52, table G.52.1, suggests for lamps on a public supply", light.DropForLamps)
		}
		t.note(text)
	}
	if len(worst) > 0 {
		t.note("voltage lost is reckoned for copper in service (IEC 60364-5-52, annex G: 0.0225 Ω·mm²/m), there and back, power factor 1; how a cable is rated, laid and protected is for a licensed electrician under the local code")
	}
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
			if c.Supply == s {
				loads = append(loads, c.Loads()...)
				rating += s.Amperes
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
			a := lighting.Current(s, w)
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
