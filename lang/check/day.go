package check

import (
	"longhand/lang/plan"
	"longhand/lang/sky"
	"longhand/lang/units"
)

// whereAndWhen is the place and the day of the shoot; false where the plan
// doesn't say one of them.
func (p *Pass) whereAndWhen() (sky.Place, sky.Day, bool) {
	t := &p.Plan.Take
	day := sky.Day{Year: 2000, Month: 1, Day: 1}
	if t.Date != nil {
		day = sky.Day{Year: t.Date.Year, Month: t.Date.Month, Day: t.Date.Day, Zone: t.Date.Zone}
	}
	if t.Place == nil || t.Date == nil {
		return sky.Place{}, day, false
	}
	return sky.Place{Lat: t.Place.Lat, Lon: t.Place.Lon}, day, true
}

// window is the light that a window of the plan names; false where nothing tells.
func (p *Pass) window(w *plan.Window) (sky.Window, sky.Day, bool) {
	place, day, ok := p.whereAndWhen()
	if w == nil {
		return sky.Window{}, day, false
	}
	if w.Name == "" {
		return sky.Between(day, w.From, w.To), day, true
	}
	if !ok {
		return sky.Window{}, day, false
	}
	out, err := sky.WindowOf(w.Name, place, day)
	return out, day, err == nil
}

// windowName is how a window is called: its name, or "the window".
func windowName(w *plan.Window) string {
	if w.Name == "" {
		return "the window"
	}
	return w.Name
}

// reset is the time back to first positions, and whether the plan gives it.
func (p *Pass) reset() (units.Seconds, bool) {
	if r := p.Plan.Take.Reset; r > 0 {
		return r, true
	}
	return sky.Reset, false
}

// minutes prints a time as one plans a day: "11 min", "1 h 20 min".
func minutes(s units.Seconds) string {
	m := int(s/60 + 0.5)
	switch {
	case s < 90:
		return s.String()
	case m >= 60 && m%60 == 0:
		return units.Number(float64(m/60), 0) + " h"
	case m >= 60:
		return units.Number(float64(m/60), 0) + " h " + units.Number(float64(m%60), 0) + " min"
	}
	return units.Number(float64(m), 0) + " min"
}
