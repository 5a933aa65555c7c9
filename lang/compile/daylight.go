package compile

import (
	"longhand/lang/sky"
)

// Light is the window a take is rolled in and the tries it holds.
type Light struct {
	Day    sky.Day
	Window sky.Window
	Tries  sky.Tries
}

// Daylight works out the window a plan names; false where it names none, or no
// place and date for a window that needs them.
func Daylight(r *Result) (Light, bool) {
	t := &r.Plan.Take
	if t.Roll == nil || r.Tracks == nil {
		return Light{}, false
	}
	day := sky.Day{Year: 2000, Month: 1, Day: 1} // for clock times any day will do
	if t.Date != nil {
		day = sky.Day{Year: t.Date.Year, Month: t.Date.Month, Day: t.Date.Day, Zone: t.Date.Zone}
	}
	l := Light{Day: day}
	switch {
	case t.Roll.Name == "":
		l.Window = sky.Between(day, t.Roll.From, t.Roll.To)
	case t.Place == nil || t.Date == nil:
		return Light{}, false
	default:
		w, err := sky.WindowOf(t.Roll.Name, sky.Place{Lat: t.Place.Lat, Lon: t.Place.Lon}, day)
		if err != nil {
			return Light{}, false
		}
		l.Window = w
	}
	l.Tries = sky.TriesIn(l.Window, r.Tracks.Length(), t.Reset)
	return l, true
}
