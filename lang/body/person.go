package body

import "longhand/lang/units"

// Person is what is taken for granted about a performer or a crew member.
type Person struct {
	Stature  units.Metres // from the floor to the top of the head, standing
	Weight   units.Kilograms
	Diameter units.Metres // of the circle on the floor that stands for the body

	Walk, Run, Back Limit[units.MetresPerSecond]
	Accel           Limit[units.MetresPerSecond2] // speeding up and braking
	Lateral         Limit[units.MetresPerSecond2] // v²/r in a curve
	Turn            Limit[units.DegreesPerSecond] // on the spot

	// Spread is the standard deviation of the length of a timed action from try
	// to try, as a part of that length.
	Spread units.Percent
}

// Anybody is the person assumed where a plan gives no more than a name.
func Anybody() Person {
	return Person{
		Stature:  1.70,
		Weight:   75,
		Diameter: 0.46,
		Walk:     Limit[units.MetresPerSecond]{Typical: 1.3, Hard: 2.0},
		Run:      Limit[units.MetresPerSecond]{Typical: 3.5, Hard: 6.0},
		Back:     Limit[units.MetresPerSecond]{Typical: 0.8, Hard: 1.63},
		Accel:    Limit[units.MetresPerSecond2]{Typical: 1.5, Hard: 3.0},
		Lateral:  Limit[units.MetresPerSecond2]{Typical: 1.5, Hard: 3.0},
		Turn:     Limit[units.DegreesPerSecond]{Typical: 120, Hard: 360},
		Spread:   5,
	}
}

// Fractions of stature at which the landmarks of a standing body lie (DIN
// 33402-2, medians of men: 1630, 1450, 1100 and 765 mm of 1750 mm).
const (
	EyeFraction      = 1630.0 / 1750
	ShoulderFraction = 1450.0 / 1750
	ElbowFraction    = 1100.0 / 1750
	GripFraction     = 765.0 / 1750
	ChinFraction     = 0.87 // from memory
)

// EyeHeight is the height of the eyes above the floor someone of a stature
// stands, sits, kneels or crouches on.
func EyeHeight(stature units.Metres, p Posture) units.Metres {
	return stature * units.Metres(p.HeightFraction()-(1-EyeFraction))
}

// Height is how high the top of the head is in a posture.
func Height(stature units.Metres, p Posture) units.Metres {
	return stature * units.Metres(p.HeightFraction())
}

func (l *list) people() {
	p := Anybody()
	l.add("between the medians of men, 1.75 m, and women, 1.625 m, with shoes: "+DIN, "person, stature", "%s", l.length(p.Stature))
	l.add(Practice, "person, weight", "%s", p.Weight)
	l.add("overall shoulder breadth of men, 50th percentile, S. Pheasant, Bodyspace, from memory", "person, circle on the floor", "%s across", l.length(p.Diameter))
	l.add("R. W. Bohannon, Age and Ageing 26 (1997): comfortable walk 1.27 to 1.46 m/s, walk to run near 2 m/s", "person, walking pace", "%s", l.pace(p.Walk))
	l.add(Practice, "person, running pace", "%s, stunt staff above it", l.pace(p.Run))
	l.add("typical: "+Practice+"; limit: A. Hreljac et al., J. Sports Sci. Med. 4 (2005), preferred change to a run", "person, walking backwards", "%s", l.pace(p.Back))
	l.add(Practice, "person, speeding up and braking", "%s, limit %s", l.accel(p.Accel.Typical), l.accel(p.Accel.Hard))
	l.add(Practice, "person, sideways in a curve", "%s, limit %s", l.accel(p.Lateral.Typical), l.accel(p.Lateral.Hard))
	l.add(Practice, "person, turning on the spot", "%s, limit %s", p.Turn.Typical, p.Turn.Hard)
	l.add(Practice, "person, spread of timing", "%s of each action's length", p.Spread)
	l.add(DIN, "person, eye height", "%s of stature", percent(EyeFraction))
	l.add(DIN, "person, shoulder height", "%s of stature", percent(ShoulderFraction))
}

func percent(f float64) units.Percent { return units.Percent(f * 100) }
