package check

import (
	"longhand/lang/daylight"
	"longhand/lang/diag"
	"longhand/lang/safety"
	"longhand/lang/sky"
)

var lightWindow = &Rule{
	Entry: diag.Entry{
		Code:     "light-window",
		Title:    "the light lasts for less than the take",
		Severity: diag.Error,
		At:       []string{"take roll", "take place", "take date", "take reset", "pickup header"},
		Explain: `The take is to be rolled in a window of light ("roll in civil-dusk"), and on that
day, in that place, the window is shorter than the take, or there is no such
light: in a northern summer the sun may never be 12 degrees down. A window that
holds the take once, and no second try after the reset, is a note.

Windows go by the sun's elevation: civil dusk from sunset until the sun's middle
is 6 degrees down, nautical until 12, golden light from 6 degrees up. Times are
by the method of the NOAA solar calculator, for a level horizon and clear air,
good to some seconds; hills, houses and clouds take more away. A try is the take's
length, and after it the time to get back to first positions: "reset", or 20
minutes where the plan doesn't say (common practice).

To mend it: another day or window, a shorter take, or parts of it as pickups. Fix
a last start, and keep it: as the light goes, people hurry.`,
		Bad: `take "Too long for dusk"
  rate 24 fps
  place 0 N 10 E
  date 2026-03-20 zone +01:00
  roll in civil-dusk
set "Yard"
  mark M1 (0, 0)
people
  performer mina
beat "Wait"
  mina stands at M1 in 23:00
`,
		Good: `take "Long dusk"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in civil-dusk
set "Yard"
  mark M1 (0, 0)
people
  performer mina
beat "Wait"
  mina stands at M1 in 23:00
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		for _, u := range p.Plan.Pickups {
			if w, _, ok := daylight.Window(&p.Plan.Take, u.Roll); ok && w.State == sky.Never {
				d := p.Report(u.Roll.Span, "there is no %s on that day in that place, and pickup %s is to be rolled in it: %s never comes", u.Roll.Name, quote(u.Title), sky.WindowSays(u.Roll.Name))
				d.Subject = u.Title
				p.sunNotes(d, true)
			}
		}
		roll := p.Plan.Take.Roll
		w, day, ok := daylight.Window(&p.Plan.Take, roll)
		if !ok {
			return
		}
		place, _, known := daylight.WhereAndWhen(&p.Plan.Take)
		length := p.Clock.Length
		if w.State == sky.Never {
			d := p.Report(roll.Span, "there is no %s on that day in that place: %s never comes", roll.Name, sky.WindowSays(roll.Name))
			if known {
				noon, night := sky.At(place, sky.Noon(place, day)), sky.At(place, sky.Midnight(place, day))
				d.Note("the sun's middle is at %s at %s and at %s at %s", noon.Elevation, day.Clock(sky.Noon(place, day)), night.Elevation, day.Clock(sky.Midnight(place, day)))
			}
			p.sunNotes(d, known)
			return
		}
		reset, given := daylight.Reset(&p.Plan.Take)
		tries := sky.TriesIn(w, length, reset)
		switch tries.Count() {
		case 0:
			d := p.Report(roll.Span, "%s lasts from %s, %s, and the take %s: %s too long for a single try",
				windowName(roll), w.Text(day), minutes(w.Length()), minutes(length), minutes(length-w.Length()))
			p.sunNotes(d, known && roll.Name != "")
		case 1:
			d := p.Report(roll.Span, "%s, %s, holds one try of %s and no second: that would take %s more",
				windowName(roll), w.Text(day), minutes(length), minutes(2*length+reset-w.Length()))
			d.Severity = diag.Note
			d.Note("the last start is at %s", day.Clock(tries.Last))
			if given {
				d.Note("the reset takes %s", minutes(reset))
			} else {
				d.Note("the reset is taken as %s, common practice: the take doesn't say", minutes(reset))
			}
			p.sunNotes(d, known && roll.Name != "")
		}
	},
}

func (p *Pass) sunNotes(d *diag.Diagnostic, known bool) {
	if known {
		t := &p.Plan.Take
		d.Relate(t.Place.Span, "the place")
		d.Relate(t.Date.Span, "the day")
		d.Note("times of the sun by the method of the NOAA solar calculator")
	}
	d.Note("%s", safety.Daylight.Caution())
}
