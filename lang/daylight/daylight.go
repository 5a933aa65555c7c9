// Package daylight is the light a plan asks of the sky: where and on what day it
// is shot, and what the windows it names are there. It imports plan, sky and units.
package daylight

import (
	"longhand/lang/plan"
	"longhand/lang/sky"
	"longhand/lang/units"
)

// WhereAndWhen is the place and the day of the shoot; false where the plan
// doesn't say one of them. There is a day even so, for which clock times do.
func WhereAndWhen(t *plan.Take) (sky.Place, sky.Day, bool) {
	day := sky.Day{Year: 2000, Month: 1, Day: 1}
	if t.Date != nil {
		day = sky.Day{Year: t.Date.Year, Month: t.Date.Month, Day: t.Date.Day, Zone: t.Date.Zone}
	}
	if t.Place == nil || t.Date == nil {
		return sky.Place{}, day, false
	}
	return sky.Place{Lat: t.Place.Lat, Lon: t.Place.Lon}, day, true
}

// Window is the light that a window of the plan names, and the day it is on;
// false where nothing tells, as for no window. It may be one that never comes.
func Window(t *plan.Take, w *plan.Window) (sky.Window, sky.Day, bool) {
	place, day, ok := WhereAndWhen(t)
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

// Reset is the time back to first positions between two tries, and whether the
// plan gives it; where it doesn't, it is what is usual.
func Reset(t *plan.Take) (reset units.Seconds, given bool) {
	if t.Reset > 0 {
		return t.Reset, true
	}
	return sky.Reset, false
}
