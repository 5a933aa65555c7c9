package body

import "longhand/lang/units"

// Handoff is how a camera goes from one carrier to another in the middle of a
// take, and how long that takes.
type Handoff struct {
	How     string        // "the wearer steps on the platform"
	Typical units.Seconds // allow this
	Minimum units.Seconds // less cannot be done
	Still   bool          // both must stand still; otherwise they must be at rest to each other
	Weight  bool          // somebody's weight goes on or off a balanced arm
}

// What a handoff asks of the two carriers and of the frame.
const (
	HandoffOverlap     units.Seconds         = 1    // both hold it
	HandoffOverlapHard units.Seconds         = 0.5  // with spoken "mine" and "yours"
	HandoffReach       units.Metres          = 0.9  // between the two grips
	HandoffDrift       units.MetresPerSecond = 0.15 // speed to each other that still counts as rest
	HandoffShake       units.Percent         = 2    // of frame width
	HandoffShakeHard   units.Percent         = 5    // unless hidden by a whip or a body
)

// The ways a camera changes hands, and SitsInVehicle, by which it only changes what
// carries its wearer.
var (
	handToHand     = Handoff{How: "from operator to operator, standing", Typical: 3, Minimum: 2}
	throughOpening = Handoff{How: "through a window or hatch", Typical: 5, Minimum: 3}
	ontoLock       = Handoff{How: "onto the hook or lock", Typical: 6, Minimum: 4}
	offLock        = Handoff{How: "off the hook or lock", Typical: 4, Minimum: 2.5}
	stepsOnArm     = Handoff{How: "the wearer steps on the arm's platform, belted", Typical: 10, Minimum: 6, Still: true, Weight: true}
	stepsOffArm    = Handoff{How: "the wearer steps off the arm's platform after the grip's clear", Typical: 6, Minimum: 4, Still: true, Weight: true}
	stepsOnCart    = Handoff{How: "the wearer steps on the platform, belted", Typical: 10, Minimum: 6, Still: true}
	stepsOffCart   = Handoff{How: "the wearer steps off the platform", Typical: 6, Minimum: 4, Still: true}
	SitsInVehicle  = Handoff{How: "the wearer sits into the open vehicle", Typical: 8, Minimum: 5, Still: true}
	clampOn        = Handoff{How: "clamped onto the standing vehicle", Typical: 12, Minimum: 8, Still: true}
	boardDolly     = Handoff{How: "the operator boards the dolly", Typical: 4, Minimum: 3}
	leaveDolly     = Handoff{How: "the operator steps off the dolly", Typical: 2, Minimum: 1.5}
)

// The opening a handoff through a window or hatch needs, square.
const (
	HandoffOpening     units.Metres = 0.6
	HandoffOpeningHard units.Metres = 0.45
)

// Through is a handoff by way of a window or a hatch: it takes at least as long as
// that does.
func (h Handoff) Through() Handoff {
	if h.Minimum > throughOpening.Minimum {
		h.How += ", " + throughOpening.How
		return h
	}
	return throughOpening
}

// HandoffBetween is how a camera goes from a rig of one class to one of
// another.
func HandoffBetween(from, to Class) Handoff {
	switch {
	case inHand(from) && inHand(to):
		return handToHand
	case from == BodyRig && to == Crane:
		return stepsOnArm
	case from == Crane && to == BodyRig:
		return stepsOffArm
	case from == BodyRig && to == Cart:
		return stepsOnCart
	case from == Cart && to == BodyRig:
		return stepsOffCart
	case inHand(from) && to == Cart:
		return clampOn
	case RigOf(from).Crewing == Worn && to == Dolly:
		return boardDolly
	case from == Dolly && RigOf(to).Crewing == Worn:
		return leaveDolly
	case inHand(from):
		return ontoLock
	case inHand(to):
		return offLock
	}
	return Handoff{
		How:     "off one lock and onto the other",
		Typical: offLock.Typical + ontoLock.Typical,
		Minimum: offLock.Minimum + ontoLock.Minimum,
	}
}

func inHand(c Class) bool { return c == Gimbal || c == Handheld }

func (l *list) handoffs() {
	for _, h := range []Handoff{handToHand, throughOpening, ontoLock, offLock, stepsOnArm, stepsOffArm, stepsOnCart, stepsOffCart,
		SitsInVehicle, clampOn, boardDolly, leaveDolly} {
		still := ""
		if h.Still {
			still = ", standing still"
		}
		l.add(Practice, "handoff: "+h.How, "%s, least %s%s", h.Typical, h.Minimum, still)
	}
	l.add(Practice, "handoff, both hold it", "%s, least %s", HandoffOverlap, HandoffOverlapHard)
	l.add(Practice, "handoff, reach", "%s", l.length(HandoffReach))
	l.add(Practice, "handoff, speed to each other", "at most %s", l.speed(HandoffDrift))
	l.add(Practice, "handoff, opening", "%s square, least %s", l.length(HandoffOpening), l.length(HandoffOpeningHard))
}
