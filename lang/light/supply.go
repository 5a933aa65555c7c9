package light

import (
	"fmt"
	"math"
	"sort"

	"longhand/lang/units"
)

// ContinuousShare is how far a circuit may be loaded by what burns three hours
// or more, as lamps on a set do (US National Electrical Code, 210.20(A): the
// circuit carries 125 % of the continuous load).
const ContinuousShare = 0.8

// Current is what a load draws from one phase: P/(V·pf). A power factor of 0 is
// taken as 1.
func Current(p units.Watts, v units.Volts, powerFactor float64) units.Amperes {
	return units.Amperes(float64(p) / (float64(v) * factor(powerFactor)))
}

// ThreePhaseCurrent is what a balanced load draws from each of three phases,
// the voltage being between two of them: P/(√3·V·pf).
func ThreePhaseCurrent(p units.Watts, v units.Volts, powerFactor float64) units.Amperes {
	return units.Amperes(float64(p) / (math.Sqrt(3) * float64(v) * factor(powerFactor)))
}

func factor(pf float64) float64 {
	if pf == 0 {
		return 1
	}
	return pf
}

// ThreePhasePower is the apparent power, in volt-amperes, of three phases of a
// rating: √3·V·I.
func ThreePhasePower(v units.Volts, rating units.Amperes) units.Watts {
	return units.Watts(math.Sqrt(3) * float64(v) * float64(rating))
}

// ContinuousLimit is the lasting load a circuit of a rating may carry.
func ContinuousLimit(rating units.Amperes) units.Amperes { return rating * ContinuousShare }

// RatingFor is the least rating of a circuit that may carry a lasting load.
func RatingFor(continuous units.Amperes) units.Amperes { return continuous / ContinuousShare }

// Spread puts lamps on circuits, the largest first, each on the first circuit
// with room under the limit. It returns each lamp's circuit, from 0, and how
// many circuits that takes; a plan that has fewer is over its supply.
func Spread(lamps []units.Amperes, limit units.Amperes) (circuit []int, circuits int, err error) {
	order := make([]int, len(lamps))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return lamps[order[a]] > lamps[order[b]] })
	circuit = make([]int, len(lamps))
	var used []units.Amperes
	const slop = 1e-9 // ampere: what rounding may add to a sum that is just full
	for _, i := range order {
		if lamps[i] > limit+slop {
			return nil, 0, fmt.Errorf("a lamp of %s does not go on a circuit that may carry %s", lamps[i], limit)
		}
		at := 0
		for at < len(used) && used[at]+lamps[i] > limit+slop {
			at++
		}
		if at == len(used) {
			used = append(used, 0)
		}
		used[at] += lamps[i]
		circuit[i] = at
	}
	return circuit, len(used), nil
}

// UniverseSize is how many slots a line of DMX512 has (ANSI E1.11).
const UniverseSize = 512

// Universes is how many lines of DMX512 a number of slots takes.
func Universes(slots int) int { return (max(slots, 0) + UniverseSize - 1) / UniverseSize }

// Balance puts circuits on three phases, the heaviest first, each on the phase
// that carries least. It returns each circuit's phase, 0 to 2, and what each
// phase carries.
func Balance(circuits []units.Amperes) (phase []int, carries [3]units.Amperes) {
	order := make([]int, len(circuits))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return circuits[order[a]] > circuits[order[b]] })
	phase = make([]int, len(circuits))
	for _, i := range order {
		least := 0
		for p := range carries {
			if carries[p] < carries[least] {
				least = p
			}
		}
		phase[i] = least
		carries[least] += circuits[i]
	}
	return phase, carries
}
