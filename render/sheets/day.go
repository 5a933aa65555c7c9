package sheets

import (
	"fmt"
	"math"

	"longhand/lang/daylight"
	"longhand/lang/optics"
	"longhand/lang/sky"
	"longhand/lang/timecode"
	"longhand/lang/units"
)

// day is what the day allows: window, tries, last start.
func (m *maker) day() *Table {
	t := table("day", "The day", col("item", "", "what it is about"), col("value", "", "what the day says"))
	t.Columns[0].Title, t.Columns[1].Title = "item", "value"
	row := func(item, value string) {
		if value != "" {
			t.add(nil, cells(word(item), word(value)))
		}
	}
	k := &m.p.Take
	length := m.take.clock.Length
	row("take", fmt.Sprintf("%s (%d frames at %s fps)", length.Clock(), m.take.tracks.Frames, m.rate))
	reset, given := daylight.Reset(k)
	row("reset", minutes(reset)+map[bool]string{true: "", false: " (taken, as the plan gives none)"}[given])
	row("record", m.record())
	place, day, known := daylight.WhereAndWhen(k)
	w, _, timed := daylight.Window(k, k.Roll)
	if !known {
		t.note("the plan gives no place and date, so the sun's times cannot be told")
		if timed {
			m.tries(row, w, day, reset)
		}
		return t
	}
	row("date", fmt.Sprintf("%04d-%02d-%02d, clock %s", day.Year, day.Month, day.Day, zone(k.Date.Zone)))
	row("place", fmt.Sprintf("%s, %s", side(float64(place.Lat), "N", "S"), side(float64(place.Lon), "E", "W")))
	row("sunrise, sunset", sky.Rises(place, day, sky.Horizon).Text(day)+", "+sky.Sets(place, day, sky.Horizon).Text(day))
	row("civil twilight", "begins "+sky.Rises(place, day, sky.Civil).Text(day)+", ends "+sky.Sets(place, day, sky.Civil).Text(day))
	if k.Roll == nil {
		t.note("the plan names no window to roll in")
		return t
	}
	if !timed {
		return t
	}
	title := k.Roll.Name
	if title == "" {
		title = "given times"
	}
	row("window", title+", "+w.Text(day))
	if says := sky.WindowSays(k.Roll.Name); says != "" {
		row("which is", says)
	}
	if w.State == sky.Never {
		t.note("the window never comes on that day at that place")
		return t
	}
	m.tries(row, w, day, reset)
	row("light over the window", stops(sky.Fall(place, w)))
	from, to := sky.At(place, w.Start), sky.At(place, w.End)
	row("sun", "from "+stands(from)+" to "+stands(to)+"; bearings clockwise from north")
	return t
}

func (m *maker) tries(row func(string, string), w sky.Window, day sky.Day, reset units.Seconds) {
	row("window is", minutes(w.Length()))
	tries := sky.TriesIn(w, m.take.clock.Length, reset)
	if tries.Count() == 0 {
		row("tries", "none: the take is longer than the window by "+minutes(-tries.Spare))
		return
	}
	row("tries", units.Number(float64(tries.Count()), 0))
	clock := day.Clock
	list, whole := tries.OnTheMinute(m.take.clock.Length + reset)
	if !whole {
		clock = day.Exact // there is no minute to give away
	}
	starts := ""
	for i, s := range list {
		if i == 12 {
			starts += ", …"
			break
		}
		if i > 0 {
			starts += ", "
		}
		starts += clock(s)
	}
	row("starts", starts)
	row("last start", day.Clock(tries.Last))
	row("to spare", minutes(tries.Spare))
}

// stands says where the sun is.
func stands(s sky.Sun) string {
	e := s.Apparent()
	where := " above"
	if e < 0 {
		e, where = -e, " below"
	}
	return (units.Degrees(math.Round(float64(e)*10) / 10)).String() + where + " the horizon in " + units.Degrees(math.Round(float64(s.Azimuth))).String()
}

// record is what a roll holds of the take.
func (m *maker) record() string {
	r := m.p.Take.Record
	if r == nil {
		return ""
	}
	s, good := minutes(r.Duration), r.Duration
	if r.Gauge != "" {
		good *= timecode.UsableFilm
		s = r.Gauge + ", " + m.metres(r.Length) + ": " + s + ", good for " + minutes(good)
		if g, err := timecode.ParseGauge(r.Gauge); err == nil {
			s += "; the take runs through " + m.metres(g.Length(m.take.clock.Length, m.rate))
		}
	}
	spare := good - m.take.clock.Length
	if spare < 0 {
		return s + "; too short by " + minutes(-spare)
	}
	return s + "; " + minutes(spare) + " to spare"
}

// minutes prints a time of minutes: "11 min", "1 min 4 s".
func minutes(s units.Seconds) string {
	all := int(math.Round(float64(s)))
	if all < 0 {
		return "-" + minutes(-s)
	}
	min, sec := all/60, all%60
	switch {
	case min == 0:
		return fmt.Sprintf("%d s", sec)
	case sec == 0:
		return fmt.Sprintf("%d min", min)
	}
	return fmt.Sprintf("%d min %d s", min, sec)
}

func stops(v float64) string {
	if math.Abs(v) < 0.05 {
		return "does not change"
	}
	if v < 0 {
		return "falls by " + units.Number(-v, 1) + " stops under a clear sky"
	}
	return "grows by " + units.Number(v, 1) + " stops under a clear sky"
}

func side(v float64, plus, minus string) string {
	if v < 0 {
		return units.Number(-v, 2) + "° " + minus
	}
	return units.Number(v, 2) + "° " + plus
}

func zone(s units.Seconds) string {
	sign := "+"
	if s < 0 {
		sign, s = "-", -s
	}
	all := int(math.Round(float64(s) / 60))
	return fmt.Sprintf("UTC%s%02d:%02d", sign, all/60, all%60)
}

// stopsBetween says how much brighter one light is than another.
func stopsBetween(a, b units.Lux) string {
	n := optics.StopsBetween(a, b)
	switch {
	case math.Abs(n) < 0.05:
		return "is the same in the middle of both"
	case n > 0:
		return "is " + units.Number(n, 1) + " stops brighter in the middle of it"
	}
	return "is " + units.Number(-n, 1) + " stops darker in the middle of it"
}
