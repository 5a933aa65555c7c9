package safety

import (
	"math"

	"longhand/lang/units"
)

// NewtonMetres is a moment.
type NewtonMetres float64

func (m NewtonMetres) String() string { return units.Number(float64(m), 0) + " N·m" }

// Newtons is a force.
type Newtons float64

func (n Newtons) String() string { return units.Number(float64(n), 0) + " N" }

// Moment is what a mass on a level arm turns with: m·g·L.
func Moment(mass units.Kilograms, arm units.Metres) NewtonMetres {
	return NewtonMetres(float64(mass) * float64(Gravity) * float64(arm))
}

// Counterweight is the mass that balances an arm: the load and the boom, whose
// middle is on the load's side, over the weight's distance from the pivot. It is
// an ideal: the real build is tried at floor level.
func Counterweight(load units.Kilograms, arm units.Metres, boom units.Kilograms, boomMiddle, weightArm units.Metres) units.Kilograms {
	return units.Kilograms((float64(load)*float64(arm) + float64(boom)*float64(boomMiddle)) / float64(weightArm))
}

// ThrowUp is the moment that swings the far end of a balanced arm up the instant
// a mass steps off it.
func ThrowUp(leaves units.Kilograms, arm units.Metres) NewtonMetres { return Moment(leaves, arm) }

// Lift is where a load is picked up and put down by hand: how far ahead of the
// ankles, from what height, and through what way.
type Lift struct{ Ahead, Height, Way units.Metres }

// liftConstant is the load one may lift at best (NIOSH 94-110).
const liftConstant units.Kilograms = 23

// LiftLimit is the load recommended as most for one person, by hand, seldom and
// without a twist (NIOSH 94-110): 23 kg times 25/H, 1 - 0.003|V - 75| and 0.82 +
// 4.5/D, in centimetres, none above 1. It is for lifting a rig off its stand, not
// for wearing it.
func LiftLimit(l Lift) units.Kilograms {
	h, v, d := float64(l.Ahead)*100, float64(l.Height)*100, float64(l.Way)*100
	atMostOne := func(m float64) units.Kilograms { return units.Kilograms(math.Max(0, math.Min(1, m))) }
	return liftConstant *
		atMostOne(25/math.Max(h, 25)) *
		atMostOne(1-0.003*math.Abs(v-75)) *
		atMostOne(0.82+4.5/math.Max(d, 25))
}

// WindPressure is the pressure of wind at a speed, in N/m²: 0.613·v² (ASCE 7,
// without shape and exposure factors).
func WindPressure(v units.MetresPerSecond) float64 { return 0.613 * float64(v*v) }

// WindForce is the push of wind on a flat frame that faces it.
func WindForce(v units.MetresPerSecond, width, height units.Metres) Newtons {
	return Newtons(WindPressure(v) * float64(width*height))
}
