package sky

import (
	"fmt"
	"math"
	"time"

	"longhand/lang/units"
)

// Day is a date on the clock of a zone.
type Day struct {
	Year, Month, Day int
	Zone             units.Seconds // ahead of UTC
}

// Check says what is wrong with a place or a day, if anything.
func Check(p Place, d Day) error {
	if !(math.Abs(float64(p.Lat)) <= 90) {
		return fmt.Errorf("a latitude of %s is not on earth: it must be from 90° south to 90° north", p.Lat)
	}
	if !(math.Abs(float64(p.Lon)) <= 180) {
		return fmt.Errorf("a longitude of %s is not on earth: it must be from 180° west to 180° east", p.Lon)
	}
	if t := d.at(0); t.Year() != d.Year || int(t.Month()) != d.Month || t.Day() != d.Day {
		return fmt.Errorf("there is no day %04d-%02d-%02d", d.Year, d.Month, d.Day)
	}
	if d.Year < 1800 || d.Year > 2400 {
		return fmt.Errorf("the sun is worked out for the years 1800 to 2400, not for %d", d.Year)
	}
	if !(math.Abs(float64(d.Zone)) <= 14*3600) {
		return fmt.Errorf("a zone of %s h from UTC is not in use: it must be within 14 h", units.Number(float64(d.Zone)/3600, 1))
	}
	return nil
}

// At is the instant a time after the day's midnight.
func (d Day) At(sinceMidnight units.Seconds) time.Time { return d.at(seconds(sinceMidnight)) }

func (d Day) at(since time.Duration) time.Time {
	zone := time.FixedZone("", int(d.Zone))
	return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, zone).Add(since)
}

// SinceMidnight is an instant on the day's clock; above 24 h on the next day,
// negative on the day before.
func (d Day) SinceMidnight(t time.Time) units.Seconds {
	return units.Seconds(t.Sub(d.at(0)).Seconds())
}

func seconds(s units.Seconds) time.Duration {
	return time.Duration(math.Round(float64(s) * float64(time.Second)))
}

// Noon is the instant of the day at which the sun stands highest: the passage of
// the meridian nearest to 12:00 on the day's clock.
func Noon(p Place, d Day) time.Time {
	return passage(p, d.at(12*time.Hour), 0)
}

// Midnight is the passage below the pole after the day's noon, the middle of the
// night between this day and the next.
func Midnight(p Place, d Day) time.Time {
	return passage(p, Noon(p, d).Add(12*time.Hour), 180)
}

// passage is the instant nearest to t at which the sun's hour angle is the one
// given. The hour angle grows by 360° a day to within half a minute, so each
// round leaves a ten-thousandth of the error.
func passage(p Place, t time.Time, hourAngle units.Degrees) time.Time {
	for range 3 {
		off := (At(p, t).HourAngle - hourAngle).Normalised()
		t = t.Add(-seconds(units.Seconds(float64(off) / 360 * 86400)))
	}
	return t
}

// half is the time between the sun's highest and lowest points, in which its
// elevation only rises or only falls.
type half struct {
	place    Place
	from, to time.Time
}

func morning(p Place, d Day) half {
	noon := Noon(p, d)
	return half{p, passage(p, noon.Add(-12*time.Hour), 180), noon}
}

func evening(p Place, d Day) half { return half{p, Noon(p, d), Midnight(p, d)} }

func nextMorning(p Place, d Day) half {
	midnight := Midnight(p, d)
	return half{p, midnight, passage(p, midnight.Add(12*time.Hour), 0)}
}

func (h half) elevations() (from, to units.Degrees) {
	return At(h.place, h.from).Elevation, At(h.place, h.to).Elevation
}

// cross is the instant at which the sun passes an elevation; there is one, as
// the caller has seen that the elevation lies between those of the ends.
func (h half) cross(elevation units.Degrees) time.Time {
	from, to := h.from, h.to
	rising := At(h.place, from).Elevation < elevation
	for to.Sub(from) > 10*time.Millisecond {
		mid := from.Add(to.Sub(from) / 2)
		if (At(h.place, mid).Elevation < elevation) == rising {
			from = mid
		} else {
			to = mid
		}
	}
	return from
}
