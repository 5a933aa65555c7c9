package body

import "longhand/lang/units"

// Posture is how a person holds themself.
type Posture int

// The postures, tallest first.
const (
	Standing Posture = iota
	Sitting          // on a seat of usual height, a quarter of stature above the floor
	Kneeling         // upright on both knees
	Crouching
)

// Postures lists them in order.
func Postures() []Posture { return []Posture{Standing, Sitting, Kneeling, Crouching} }

// SeatFraction is the height of a usual seat as a part of the sitter's stature.
const SeatFraction = 0.26

type postureRow struct {
	name   string
	height float64       // top of the head above the floor, of stature
	change units.Seconds // to get into it from standing, or out of it
	source string
}

var postures = [...]postureRow{
	Standing:  {"standing", 1, 0, DIN},
	Sitting:   {"sitting", 0.785, 1.5, "eyes above the seat: " + DIN + "; height of the seat, time: " + Practice},
	Kneeling:  {"kneeling", 0.74, 2, Practice},
	Crouching: {"crouching", 0.6, 1.2, Practice},
}

func (p Posture) row() postureRow {
	if p < 0 || int(p) >= len(postures) {
		return postures[Standing]
	}
	return postures[p]
}

// String is the word for it: "standing".
func (p Posture) String() string { return p.row().name }

// HeightFraction is the height of the head's top as a part of stature.
func (p Posture) HeightFraction() float64 { return p.row().height }

// Change is the time it takes to go from one posture to another: down to it, or
// up from it, or by way of standing.
func Change(from, to Posture) units.Seconds {
	if from == to {
		return 0
	}
	return from.row().change + to.row().change
}

func (l *list) postures() {
	for _, p := range Postures() {
		r := p.row()
		if p == Standing {
			continue
		}
		l.add(r.source, "posture, "+r.name, "%s of stature high, %s to take or leave", percent(r.height), r.change)
	}
}
