package lighting

import (
	"math"
	"sort"

	"longhand/lang/light"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Current is what a load draws from a circuit of a supply, power factor 1: of three
// phases, balanced, from each.
func Current(s *plan.Supply, w units.Watts) units.Amperes {
	if s.ThreePhase {
		return light.ThreePhaseCurrent(w, s.Volts, 1)
	}
	return light.Current(w, s.Volts, 1)
}

// power is what a circuit of a supply gives at a current.
func power(s *plan.Supply, i units.Amperes) units.Watts {
	w := units.Watts(float64(s.Volts) * float64(i))
	if s.ThreePhase {
		w *= units.Watts(math.Sqrt(3))
	}
	return w
}

// Circuit is one line of a supply with what is on it.
type Circuit struct {
	Supply *plan.Supply
	Number int // of the supply's, from 1
	On     []Share
	Full   units.Amperes // with all of it in full
}

// Share is so many lamps of a unit.
type Share struct {
	Unit  *Unit
	Count int
}

// Loads is what is on a circuit.
func (c *Circuit) Loads() []light.Load {
	out := make([]light.Load, len(c.On))
	for i, s := range c.On {
		out[i] = light.Load{Full: s.Unit.Lamp.Power * units.Watts(s.Count), Law: light.Linear, Curve: s.Unit.Curve}
	}
	return out
}

// Circuits wires every lamp for its full power: the largest first, each on the first
// circuit with room under the lasting limit. Homeless are the lamps, by unit, that
// find none.
func (l *Lighting) Circuits(supplies []*plan.Supply) (all []Circuit, homeless map[*Unit]int) {
	homeless = map[*Unit]int{}
	for _, s := range supplies {
		if s.Bad || !(s.Volts > 0) {
			continue
		}
		for i := range max(s.Count, 1) {
			all = append(all, Circuit{Supply: s, Number: i + 1})
		}
	}
	order := make([]*Unit, len(l.Units))
	for i := range l.Units {
		order[i] = &l.Units[i]
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].Lamp.Power > order[j].Lamp.Power })
	for _, u := range order {
		for range u.Count {
			if !put(all, u) {
				homeless[u]++
			}
		}
	}
	return all, homeless
}

// put puts one lamp of a unit on the first circuit with room.
func put(all []Circuit, u *Unit) bool {
	const slop = 1e-9 // ampere: what rounding may add to a sum that is just full
	for k := range all {
		c := &all[k]
		a := Current(c.Supply, u.Lamp.Power)
		if c.Full+a > light.ContinuousLimit(c.Supply.Amperes)+slop {
			continue
		}
		c.Full += a
		if n := len(c.On); n > 0 && c.On[n-1].Unit == u {
			c.On[n-1].Count++
		} else {
			c.On = append(c.On, Share{u, 1})
		}
		return true
	}
	return false
}

// Lost is the voltage that a circuit's cable takes.
type Lost struct {
	Circuit *Circuit
	When    units.Seconds // of the circuit's peak
	Current units.Amperes // then
	Volts   units.Volts
	Part    units.Percent // of the supply's voltage
}

// Left is the voltage at the lamps.
func (d *Lost) Left() units.Volts { return d.Circuit.Supply.Volts - d.Volts }

// Lost is what the cable of each circuit takes at the circuit's peak in the take, for
// circuits that have lamps and a cable, in the order of the text.
func (l *Lighting) Lost(circuits []Circuit) []Lost {
	var out []Lost
	for i := range circuits {
		c := &circuits[i]
		if c.Supply.Cable == nil || len(c.On) == 0 {
			continue
		}
		w, at := light.Peak(c.Loads(), 0, l.Length)
		d := Lost{Circuit: c, When: at, Current: Current(c.Supply, w)}
		d.Volts = drop(c.Supply, c.Supply.Cable.Section, d.Current)
		d.Part = units.Percent(100 * float64(d.Volts/c.Supply.Volts))
		out = append(out, d)
	}
	return out
}

func drop(s *plan.Supply, section units.SquareMillimetres, i units.Amperes) units.Volts {
	if s.ThreePhase {
		return light.ThreePhaseDrop(s.Cable.Run, section, i, 1)
	}
	return light.VoltageDrop(s.Cable.Run, section, i, 1)
}

// SectionFor is the least usual cross-section with which the cable takes no more than
// a part of the voltage; false where none is thick enough.
func (d *Lost) SectionFor(most units.Percent) (units.SquareMillimetres, bool) {
	s := d.Circuit.Supply
	// The power factor is 1: the drop goes with the inverse of the section.
	return light.SectionFrom(s.Cable.Section * units.SquareMillimetres(d.Part/most))
}
