package compile

import (
	"longhand/lang/daylight"
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
	if r.Tracks == nil {
		return Light{}, false
	}
	w, day, ok := daylight.Window(t, t.Roll)
	if !ok {
		return Light{}, false
	}
	reset, _ := daylight.Reset(t)
	return Light{Day: day, Window: w, Tries: sky.TriesIn(w, r.Tracks.Length(), reset)}, true
}
