package body

import "longhand/lang/units"

// How near things may come to each other.
var (
	// OperatorGap is between an operator and a performer who both move.
	OperatorGap = Limit[units.Metres]{Typical: 1, Hard: 0.6}
	// LensGap is between the front of the lens and a performer.
	LensGap = Limit[units.Metres]{Typical: 0.6, Hard: 0.3}
	// ArmGap is between the tip of an arm and any head; never over a person
	// without a fixed stop.
	ArmGap = Limit[units.Metres]{Typical: 2, Hard: 1}
	// VehicleGap is between a moving vehicle and a person on foot, beyond its
	// stopping distance.
	VehicleGap = Limit[units.Metres]{Typical: 3, Hard: 1}
	// CueLead is how long before a cue it is called.
	CueLead = Limit[units.Seconds]{Typical: 1.5, Hard: 0.7}
)

// EdgeGap is the distance from an unguarded drop within which a path is found
// fault with.
const EdgeGap units.Metres = 0.6

// EdgeDrop is the least drop that counts: a step more than a stair's.
const EdgeDrop units.Metres = 0.3

// Worn-time limits of a full body rig: a spell, and the rest after it as a
// multiple of the spell.
var WornTime = Limit[units.Seconds]{Typical: 5 * 60, Hard: 12 * 60}

// RestAfterWorn is the rest a wearer needs, in lengths of the worn spell.
const RestAfterWorn = 2.0

func (l *list) clearances() {
	gap := func(name string, g Limit[units.Metres]) {
		l.add(Practice, "gap, "+name, "%s, least %s", l.length(g.Typical), l.length(g.Hard))
	}
	gap("operator to performer, both moving", OperatorGap)
	gap("lens to performer", LensGap)
	gap("tip of an arm to a head", ArmGap)
	gap("moving vehicle to a person on foot, beyond its stopping distance", VehicleGap)
	l.add(Practice, "gap, path to an unguarded drop", "%s, for drops of %s and more", l.length(EdgeGap), l.length(EdgeDrop))
	l.add(Practice, "spotter for walking backwards", "from %s on, and always above %s", l.length(BackSpotterDistance), l.speed(BackSpotterSpeed))
	l.add(Practice, "cue, called ahead by", "%s, least %s", CueLead.Typical, CueLead.Hard)
	l.add(Practice, "body rig, worn without rest", "%s min, limit %s min; rest twice as long",
		units.Number(float64(WornTime.Typical)/60, 0), units.Number(float64(WornTime.Hard)/60, 0))
}
