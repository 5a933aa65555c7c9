package sky

import (
	"fmt"
	"strings"
	"time"

	"longhand/lang/units"
)

// Window is a stretch of light.
type Window struct {
	State State
	// Start and End are on the day's clock; zero where State is Never. Where it
	// is Always they hold the stretch it was asked about.
	Start, End time.Time
	// Bound at Start or End by noon or midnight, and not by the light itself: the
	// sun never gets so high, or so low, and turns back.
	StartTurns, EndTurns bool
}

// Length is how long it lasts; 0 for Never.
func (w Window) Length() units.Seconds { return units.Seconds(w.End.Sub(w.Start).Seconds()) }

// band is a named window: the elevations it lies between, and which half of the
// day it is in.
type band struct {
	low, high units.Degrees
	half      func(Place, Day) half
	says      string
}

var bands = map[string]band{
	"golden-morning": {Horizon, Golden, morning, "from sunrise until the sun is 6° up"},
	"golden-evening": {Horizon, Golden, evening, "from the sun 6° up until sunset"},
	"civil-dawn":     {Civil, Horizon, morning, "from the sun 6° down until sunrise"},
	"civil-dusk":     {Civil, Horizon, evening, "from sunset until the sun is 6° down"},
	"nautical-dawn":  {Nautical, Civil, morning, "from the sun 12° down until 6° down, before sunrise"},
	"nautical-dusk":  {Nautical, Civil, evening, "from the sun 6° down until 12° down, after sunset"},
}

const (
	daySays   = "from sunrise to sunset"
	nightSays = "from the sun 12° down in the evening until 12° down in the morning after"
)

// WindowNames lists the windows a plan can name, in the order of a day.
func WindowNames() []string {
	return []string{"nautical-dawn", "civil-dawn", "golden-morning", "day", "golden-evening", "civil-dusk", "nautical-dusk", "night"}
}

// WindowSays is what a named window is, in words; empty for an unknown name.
func WindowSays(name string) string {
	switch name {
	case "day":
		return daySays
	case "night":
		return nightSays
	}
	return bands[name].says
}

// WindowOf is a named window on a day. The night of a day begins that evening.
func WindowOf(name string, p Place, d Day) (Window, error) {
	if err := Check(p, d); err != nil {
		return Window{}, err
	}
	switch name {
	case "day":
		return dayWindow(p, d), nil
	case "night":
		return nightWindow(p, d), nil
	}
	b, ok := bands[name]
	if !ok {
		return Window{}, fmt.Errorf("unknown window %q; the windows are %s, or two times such as 19:40 to 20:25", name, strings.Join(WindowNames(), ", "))
	}
	return between(b.half(p, d), d, b.low, b.high), nil
}

// between is the part of a half day in which the sun is between two elevations.
func between(h half, d Day, low, high units.Degrees) Window {
	from, to := h.elevations()
	rising := from < to
	least, most := from, to
	if !rising {
		least, most = to, from
	}
	if most < low || least >= high {
		return Window{State: Never}
	}
	w := Window{Start: d.local(h.from), End: d.local(h.to)}
	atLow, atHigh := &w.End, &w.Start
	lowTurns, highTurns := &w.EndTurns, &w.StartTurns
	if rising {
		atLow, atHigh = &w.Start, &w.End
		lowTurns, highTurns = &w.StartTurns, &w.EndTurns
	}
	if *lowTurns = least >= low; !*lowTurns {
		*atLow = d.local(h.cross(low))
	}
	if *highTurns = most < high; !*highTurns {
		*atHigh = d.local(h.cross(high))
	}
	if *lowTurns && *highTurns {
		w.State = Always
	}
	return w
}

func dayWindow(p Place, d Day) Window {
	return join(between(morning(p, d), d, Horizon, 91), between(evening(p, d), d, Horizon, 91))
}

func nightWindow(p Place, d Day) Window {
	return join(between(evening(p, d), d, -91, Nautical), between(nextMorning(p, d), d, -91, Nautical))
}

// join puts together the two halves of a stretch around noon or midnight.
func join(a, b Window) Window {
	switch {
	case a.State == Never:
		return b
	case b.State == Never:
		return a
	}
	w := Window{Start: a.Start, End: b.End, StartTurns: a.State == Always, EndTurns: b.State == Always}
	if w.StartTurns && w.EndTurns {
		w.State = Always
	}
	return w
}

// Between is a window given by two clock times; an end not after the start is of
// the next day.
func Between(d Day, from, to units.Seconds) Window {
	if to <= from {
		to += 24 * 3600
	}
	return Window{Start: d.At(from), End: d.At(to)}
}

// Text is the window as people say it: "20:31 to 21:04". The start is rounded up
// and the end down to the minute, so that what is printed lies inside; a time
// that is not of the day itself says so. It is "never" or "always" where that is
// so.
func (w Window) Text(d Day) string {
	if w.State != Timed {
		return w.State.String()
	}
	from := w.Start.Add(time.Minute - time.Nanosecond).Truncate(time.Minute)
	to := w.End.Truncate(time.Minute)
	return d.Clock(from) + " to " + d.Clock(to)
}

// Clock prints an instant on the day's clock: "20:31", or "00:12 the next
// day".
func (d Day) Clock(t time.Time) string { return d.clock(t, "15:04") }

// Exact prints an instant on the day's clock to the second: "20:31:40".
func (d Day) Exact(t time.Time) string { return d.clock(t, "15:04:05") }

func (d Day) clock(t time.Time, format string) string {
	t = d.local(t)
	text := t.Format(format)
	switch start := d.at(0); {
	case t.Before(start):
		return text + " the day before"
	case !t.Before(start.Add(24 * time.Hour)):
		return text + " the next day"
	}
	return text
}

// Text is the moment on the day's clock, to the nearest minute, or "never" or
// "always".
func (m Moment) Text(d Day) string {
	if m.State != Timed {
		return m.State.String()
	}
	return d.Clock(m.Time.Add(30 * time.Second).Truncate(time.Minute))
}
