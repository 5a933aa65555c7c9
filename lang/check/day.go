package check

import (
	"longhand/lang/plan"
	"longhand/lang/units"
)

// windowName is how a window is called: its name, or "the window".
func windowName(w *plan.Window) string {
	if w.Name == "" {
		return "the window"
	}
	return w.Name
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
