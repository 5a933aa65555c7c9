package safety

import "longhand/lang/units"

// What a driver is reckoned with: slow and on a dry road (AASHTO, A Policy on
// Geometric Design of Highways and Streets; Texas DOT Roadway Design Manual).
// Printed tables for alert drivers, such as the UK Highway Code's, stop in about
// half the distance.
const (
	Reaction units.Seconds          = 2.5
	Braking  units.MetresPerSecond2 = 3.4 // 11.2 ft/s²
)

// Surface is what the wheels are on.
type Surface int

const (
	Dry Surface = iota
	Wet         // takes twice the distance (UK road safety pages)
	Ice         // takes ten times the distance (same)
)

// Factor multiplies the stopping distance.
func (s Surface) Factor() float64 {
	switch s {
	case Wet:
		return 2
	case Ice:
		return 10
	}
	return 1
}

// Stop is how far something goes, and how long it takes, from the moment it
// should stop: v·t + v²/2a. A braking of 0 never stops.
func Stop(v units.MetresPerSecond, reaction units.Seconds, braking units.MetresPerSecond2) (units.Metres, units.Seconds) {
	way := float64(v)*float64(reaction) + float64(v*v)/(2*float64(braking))
	return units.Metres(way), reaction + units.Seconds(float64(v)/float64(braking))
}

// StoppingDistance is the distance inside which nobody may be ahead of a moving
// vehicle: that of a slow driver, times the surface's factor.
func StoppingDistance(v units.MetresPerSecond, s Surface) units.Metres {
	d, _ := Stop(v, Reaction, Braking)
	return d * units.Metres(s.Factor())
}

// Gravity is the standard acceleration of free fall, exact by definition.
const Gravity units.MetresPerSecond2 = 9.80665

// SkidDistance is how far locked wheels slide at a coefficient of friction:
// v²/2μg.
func SkidDistance(v units.MetresPerSecond, friction float64) units.Metres {
	return units.Metres(float64(v*v) / (2 * friction * float64(Gravity)))
}

// Speeds at which people come near a machine (ISO 13855).
const (
	BodyApproach units.MetresPerSecond = 1.6 // walking
	HandApproach units.MetresPerSecond = 2.0 // a hand or an arm
)

// Separation is how far from a machine that stops by itself its guard must
// stand: K·T + C (ISO 13855), T the whole time to stop and C how far a person
// reaches past the guard.
func Separation(approach units.MetresPerSecond, toStop units.Seconds, reach units.Metres) units.Metres {
	return units.Metres(float64(approach)*float64(toStop)) + reach
}

// CurtainReach is how far a finger reaches through a light curtain that notices
// things of a size and more: 8(d-14) mm, for sizes up to 40 mm (ISO 13855).
func CurtainReach(size units.Millimetres) units.Metres {
	return max(0, 8*(size-14)).Metres()
}

// LineClearance is the least distance from an overhead power line that anything
// raised must keep at work (US OSHA 1926.1408, table A); above 350 kV the
// line's owner decides and ok is false.
func LineClearance(kilovolts float64) (distance units.Metres, ok bool) {
	switch {
	case kilovolts <= 50:
		return 10 * units.Foot, true
	case kilovolts <= 200:
		return 15 * units.Foot, true
	case kilovolts <= 350:
		return 20 * units.Foot, true
	}
	return 0, false
}
