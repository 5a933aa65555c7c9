package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// bends is how much a path bends, sampled: the greatest curvature near each
// sample, a corner counting as a bend as tight as it is rounded in walking.
type bends struct {
	step  float64
	kappa []float64 // empty: straight
}

const (
	bendStep   = 0.1
	cornerSide = 0.35 // metres before and after a corner within which it is rounded
)

func newBends(path *geom.Path) bends {
	n := max(1, int(math.Ceil(path.Length()/bendStep)))
	b := bends{step: path.Length() / float64(n), kappa: make([]float64, n+1)}
	if b.step == 0 {
		return bends{}
	}
	any := false
	for i := range b.kappa {
		b.kappa[i] = math.Abs(path.Curvature(b.step * float64(i)))
		any = any || b.kappa[i] > 1e-9
	}
	for _, c := range path.Corners() {
		any = true
		// A circle that leaves each side of the corner cornerSide away from it.
		k := math.Tan(math.Abs(c.Turn)/2) / cornerSide
		low := int(math.Floor((c.S - cornerSide) / b.step))
		high := int(math.Ceil((c.S + cornerSide) / b.step))
		for i := max(0, low); i <= min(n, high); i++ {
			b.kappa[i] = math.Max(b.kappa[i], k)
		}
	}
	if !any {
		return bends{}
	}
	return b
}

// at is the greater curvature of the two samples about s.
func (b bends) at(s float64) float64 {
	if len(b.kappa) == 0 {
		return 0
	}
	i := clamp(s/b.step, 0, float64(len(b.kappa)-1))
	low, high := int(math.Floor(i)), int(math.Ceil(i))
	return math.Max(b.kappa[low], b.kappa[high])
}

// cap is the most speed that a sideways acceleration allows; nil where the path
// is straight.
func (b bends) cap(lateral units.MetresPerSecond2) func(units.Metres) units.MetresPerSecond {
	if len(b.kappa) == 0 || lateral <= 0 {
		return nil
	}
	return func(s units.Metres) units.MetresPerSecond {
		return units.MetresPerSecond(math.Sqrt(float64(lateral) / b.at(float64(s))))
	}
}

// tightest is the greatest curvature anywhere.
func (b bends) tightest() float64 {
	most := 0.0
	for _, k := range b.kappa {
		most = math.Max(most, k)
	}
	return most
}
