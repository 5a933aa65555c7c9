package sky

import (
	"time"

	"longhand/lang/units"
)

// Elevations of the sun's middle, without refraction, at which the light
// changes its name.
const (
	// Horizon is where the disc's upper edge touches a level horizon: 34' of
	// refraction and 16' of radius (Almanac for Computers, US Naval Observatory).
	Horizon units.Degrees = -50.0 / 60
	// Civil, Nautical and Astronomical end twilight (AMS Glossary of Meteorology).
	Civil        units.Degrees = -6
	Nautical     units.Degrees = -12
	Astronomical units.Degrees = -18
	// Golden is where the sun is low enough to light faces from the side: common
	// practice, no source.
	Golden units.Degrees = 6
)

// State says whether something happens on a day at all.
type State int

const (
	Timed  State = iota // it happens, at the times given
	Never               // the sun stays too high or too low
	Always              // it lasts the whole time
)

var stateNames = [...]string{"", "never", "always"}

// String is "never" or "always", and empty for Timed.
func (s State) String() string {
	if s < 0 || int(s) >= len(stateNames) {
		return ""
	}
	return stateNames[s]
}

// Moment is when the sun passes an elevation. State is Never where it stays
// below all that half of the day, Always where it stays above.
type Moment struct {
	Time  time.Time // on the day's clock; may be of the day before or after
	State State
}

// Rises is when the sun rises past an elevation before the day's noon.
func Rises(p Place, d Day, elevation units.Degrees) Moment {
	return momentOf(morning(p, d), d, elevation)
}

// Sets is when the sun sinks past an elevation after the day's noon.
func Sets(p Place, d Day, elevation units.Degrees) Moment {
	return momentOf(evening(p, d), d, elevation)
}

func momentOf(h half, d Day, elevation units.Degrees) Moment {
	from, to := h.elevations()
	switch {
	case from < elevation && to < elevation:
		return Moment{State: Never}
	case from >= elevation && to >= elevation:
		return Moment{State: Always}
	}
	return Moment{Time: d.local(h.cross(elevation))}
}

func (d Day) local(t time.Time) time.Time { return t.In(time.FixedZone("", int(d.Zone))) }
