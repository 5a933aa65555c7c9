package sheets

import (
	"fmt"
	"strings"

	"longhand/lang/daylight"
	"longhand/lang/plan"
	"longhand/lang/sky"
	"longhand/lang/units"
)

// coverage is the pickups, and whether their light matches the take's.
func (m *maker) coverage() *Table {
	t := table("coverage", "Coverage", col("pickup", "pickup", "title"), col("joins", "joins", "after or into which beat"), measure("length", "length", "s", "of the pickup"), measure("frames", "frames", "frames", "of the pickup"), col("cameras", "cameras", "with their lenses"), col("sees", "sees", "whom, how large"), col("window", "to roll in", "its window of light"), col("light", "light", "beside the take's"))
	t.Empty = "No coverage is planned after the take."
	for _, p := range m.parts[1:] {
		joins := "after"
		if p.pickup.Into {
			joins = "into"
		}
		if p.pickup.Beat != nil {
			joins += " " + beatName(p.pickup.Beat)
		}
		var cameras, sees []string
		for _, ct := range p.cameras() {
			lens := ""
			for _, f := range ct.Fits {
				lens = " " + f.Lens.Name
			}
			cameras = append(cameras, ct.Camera.Name+lens)
			for _, a := range ct.Aims {
				if a.See != nil {
					sees = append(sees, join(targets(a.See.Targets), a.See.Size))
				}
			}
		}
		window, light := m.match(p.pickup)
		t.add(nil, cells(word(p.pickup.Title), word(joins), seconds(p.clock.Length), count(p.tracks.Frames), word(listed(unique(cameras))), word(strings.Join(unique(sees), "; ")), word(window), word(light)))
	}
	return t
}

// match is a pickup's window and how its light is beside the take's.
func (m *maker) match(k *plan.Pickup) (window, light string) {
	t := &m.p.Take
	w := k.Roll
	switch {
	case w == nil && t.Roll == nil:
		return "not given", "neither says"
	case w == nil:
		return "not given", "the take rolls in " + windowName(t.Roll) + "; the pickup does not say"
	case t.Roll == nil:
		return windowName(w), "the take does not say"
	case windowName(w) == windowName(t.Roll):
		return windowName(w), "the same window"
	case t.Place == nil || t.Date == nil:
		return windowName(w), "another window than the take's " + windowName(t.Roll)
	}
	place, _, _ := daylight.WhereAndWhen(t)
	a, _, ok := daylight.Window(t, t.Roll)
	b, day, ok2 := daylight.Window(t, w)
	if !ok || !ok2 || a.State == sky.Never || b.State == sky.Never {
		return windowName(w), "another window than the take's, and one of the two never comes"
	}
	mid := func(w sky.Window) units.Lux {
		return sky.Bright(sky.At(place, w.Start.Add(w.End.Sub(w.Start)/2)).Elevation)
	}
	apart := stopsBetween(mid(a), mid(b))
	return windowName(w) + ", " + b.Text(day), "another window than the take's " + windowName(t.Roll) + "; daylight " + apart
}

func windowName(w *plan.Window) string {
	if w.Name != "" {
		return w.Name
	}
	return dayTime(w.From) + " to " + dayTime(w.To)
}

func dayTime(s units.Seconds) string {
	n := int(s/60 + 0.5)
	return fmt.Sprintf("%02d:%02d", n/60%24, n%60)
}

// coverageLines is what happens in the pickups.
func (m *maker) coverageLines() *Table {
	t := table("pickups", "What happens in the pickups", group("pickup", "pickup", "title"), clockColumns(), cueColumn(), col("who", "who", "goes"), col("does", "does", "the line in full"), col("where", "where", "where it begins"), untilColumns("done"))
	t.Empty = "There are no pickups."
	for _, p := range m.parts[1:] {
		for _, a := range p.inTime() {
			i := p.clock.Of(a)
			who := a.Who()
			if who == "" {
				who = name(cameraOf(a))
			}
			t.add(a, cells(word(p.pickup.Title)), m.clock(i.Start), p.cue(a), cells(word(who), word(m.says(a)), word(m.from(p, a))), m.until(i.End))
		}
	}
	if len(t.Rows) > 0 {
		t.note("each pickup has a clock of its own, from 0")
	}
	return t
}
