package check

import (
	"math"
	"sort"
	"time"

	"longhand/lang/daylight"
	"longhand/lang/diag"
	"longhand/lang/sky"
	"longhand/lang/units"
)

// How far the light of coverage may be from the take's: stops of the sky's
// brightness, and degrees of the sun's direction while it is up (common
// practice, no source).
const (
	pickupStops               = 1.0
	pickupTurn  units.Degrees = 45
)

var pickupLight = &Rule{
	Entry: diag.Entry{
		Code:     "pickup-light",
		Title:    "coverage in other light than the take's",
		Severity: diag.Warning,
		At:       []string{"pickup header", "take roll"},
		Explain: `A pickup is planned for another window of light than the take it goes with, and for
more than half of that window its daylight is like that of no moment of the
take's: brighter or darker by more than one stop, or, while the sun is up, from a
direction more than 45 degrees off.

Cut into the take, its shadows fall the other way or its sky has another colour,
and no grading mends that.

The brightness is that of a clear sky by the sun's elevation (Explanatory
Supplement to the Astronomical Almanac, 1992), the sun's position by the method
of the NOAA solar calculator.

To mend it: roll the pickup in the take's window, on that day or the next one, or
light it where no daylight gets in and leave "roll in" out.`,
		Bad: `take "Dusk"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in civil-dusk
set "Yard"
  mark M1 (0, 0)
people
  performer mina
beat "Wait"
  mina stands at M1 in 20 s
pickup "Her hands" after "Wait" roll in day
  mina stands at M1 in 5 s
`,
		Good: `take "Dusk"
  rate 24 fps
  place 56.05 N 12.69 E
  date 2026-08-20 zone +02:00
  roll in civil-dusk
set "Yard"
  mark M1 (0, 0)
people
  performer mina
beat "Wait"
  mina stands at M1 in 20 s
pickup "Her hands" after "Wait" roll in civil-dusk
  mina stands at M1 in 5 s
`,
	},
	Needs: Timed,
	Run: func(p *Pass) {
		place, _, ok := daylight.WhereAndWhen(&p.Plan.Take)
		take, day, timed := daylight.Window(&p.Plan.Take, p.Plan.Take.Roll)
		if !ok || !timed || take.State == sky.Never {
			return
		}
		for _, u := range p.Plan.Pickups {
			w, _, ok := daylight.Window(&p.Plan.Take, u.Roll)
			if !ok || w.State == sky.Never {
				continue
			}
			a, b := skies(place, take), skies(place, w)
			like := likeness(a, b)
			if like >= 0.5 {
				continue
			}
			d := p.Report(u.Roll.Span, "pickup %s is rolled in other light than the take: %s, %s, against %s, %s",
				quote(u.Title), windowName(u.Roll), skyText(w, day, b), windowName(p.Plan.Take.Roll), skyText(take, day, a))
			d.Subject, d.Pickup = u.Title, u.Title
			d.Relate(p.Plan.Take.Roll.Span, "the take's window")
			apart := math.Log2(float64(middle(b) / middle(a)))
			word := "brighter"
			if apart < 0 {
				word = "darker"
			}
			d.Note("for the most part it is %s %s than the take; %s of the window is within %s and %s of the take's light",
				stopsText(math.Abs(apart)), word, units.Percent(math.Round(100*like)), stopsText(pickupStops), pickupTurn)
			d.Note("%s", sky.BrightSource)
			d.Fix("roll it in the take's window", replaced(u.Roll.Span, p.Plan.Take.Roll.Span.Text()))
			if u.Beat != nil {
				d.Beat = u.Beat.Title
			}
		}
	},
}

// sunlight is the light at a moment of a window.
type sunlight struct {
	lux     units.Lux
	bearing units.Degrees
	up      bool
}

// skyLooks is how many moments of a window are looked at.
const skyLooks = 48

func skies(place sky.Place, w sky.Window) []sunlight {
	var out []sunlight
	for i := range skyLooks + 1 {
		t := w.Start.Add(w.End.Sub(w.Start) / skyLooks * time.Duration(i))
		s := sky.At(place, t)
		out = append(out, sunlight{sky.Bright(s.Elevation), s.Bearing(), s.Elevation > sky.Horizon})
	}
	return out
}

// likeness is the part of a window's moments that are like some moment of the
// take's.
func likeness(take, w []sunlight) float64 {
	n := 0
	for _, y := range w {
		for _, x := range take {
			off := math.Abs(float64(x.bearing - y.bearing))
			if math.Abs(stopsApart(x, y)) <= pickupStops && x.up == y.up && (!x.up || math.Min(off, 360-off) <= float64(pickupTurn)) {
				n++
				break
			}
		}
	}
	return float64(n) / float64(len(w))
}

// stopsApart is how many stops brighter b is than a.
func stopsApart(a, b sunlight) float64 { return math.Log2(float64(b.lux / a.lux)) }

// middle is the median of the light of a window's moments.
func middle(l []sunlight) units.Lux {
	lux := make([]float64, len(l))
	for i, s := range l {
		lux[i] = float64(s.lux)
	}
	sort.Float64s(lux)
	return units.Lux(lux[len(lux)/2])
}

func skyText(w sky.Window, d sky.Day, l []sunlight) string {
	low, high := l[0].lux, l[0].lux
	for _, s := range l {
		low, high = min(low, s.lux), max(high, s.lux)
	}
	return w.Text(d) + ", " + luxText(low) + " to " + luxText(high)
}

// luxText prints light of which two figures can be trusted.
func luxText(e units.Lux) string {
	if e >= 100 {
		step := math.Pow(10, math.Floor(math.Log10(float64(e)))-1)
		e = units.Lux(math.Round(float64(e)/step) * step)
	}
	return e.String()
}
