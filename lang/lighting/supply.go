package lighting

import (
	"longhand/lang/light"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Draw is what the lamps of a take draw, against what the plan's supplies give.
type Draw struct {
	Peak units.Watts // of all lamps, at their levels
	When units.Seconds
	Full units.Watts // of all lamps in full

	Rated   units.Watts // all circuits at their rating
	Lasting units.Watts // all circuits at the share they may carry for hours

	Circuits int // there are
	// Homeless are the lamps, by unit, that no circuit has room for when each is
	// wired for its full power, under the lasting limit.
	Homeless map[*Unit]int
}

// Draw is the most that the lamps draw, and where it is to come from: the
// largest lamps first, each on the first circuit with room.
func (l *Lighting) Draw(supplies []*plan.Supply) Draw {
	var d Draw
	loads := l.Loads()
	d.Peak, d.When = light.Peak(loads, 0, l.Length)
	for i := range loads {
		d.Full += loads[i].Full
	}
	all, homeless := l.Circuits(supplies)
	d.Circuits, d.Homeless = len(all), homeless
	for i := range all {
		s := all[i].Supply
		d.Rated += power(s, s.Amperes)
		d.Lasting += power(s, light.ContinuousLimit(s.Amperes))
	}
	return d
}

// Hanging is what hangs on a grid.
type Hanging struct {
	Washes []*Unit
	Lamps  int // each wash's, but for washes that share their lamps
	// Shared are washes of one lamp that changes colour and are never lit
	// together: the same lamps do for all of them.
	Shared []*Unit
	// Together is whether any two of the washes are ever lit at once.
	Together bool
}

// Hanging is what hangs on a grid: the lamps of every wash. A lamp that has one
// colour for good hangs once for each wash it is in; washes of a lamp that
// changes share their lamps if no two of them are ever lit at once.
func (l *Lighting) Hanging(g *plan.Grid) Hanging {
	var h Hanging
	byLamp := map[*plan.Lamp][]*Unit{}
	for i := range l.Units {
		u := &l.Units[i]
		if u.Wash == nil || u.Wash.Grid != g {
			continue
		}
		h.Washes = append(h.Washes, u)
		if u.Lamp.Changes {
			byLamp[u.Lamp] = append(byLamp[u.Lamp], u)
		}
		h.Lamps += u.Count
	}
	h.Together = !l.inTurn(h.Washes)
	for _, u := range h.Washes {
		group := byLamp[u.Lamp]
		if len(group) < 2 || group[0] != u || !l.inTurn(group) {
			continue
		}
		most := 0
		for _, v := range group {
			most = max(most, v.Count)
			h.Lamps -= v.Count
		}
		h.Lamps += most
		h.Shared = append(h.Shared, group...)
	}
	return h
}

// inTurn says that no two units are ever lit at once.
func (l *Lighting) inTurn(group []*Unit) bool {
	times := l.Moves()
	for i := range times {
		at := []units.Seconds{times[i]}
		if i+1 < len(times) {
			at = append(at, (times[i]+times[i+1])/2)
		}
		for _, t := range at {
			lit := 0
			for _, u := range group {
				if u.Curve.At(t) > 0 {
					lit++
				}
			}
			if lit > 1 {
				return false
			}
		}
	}
	return true
}
