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
	bendStep = 0.1
	// The lengths before and after a corner within which it is rounded: of a
	// right angle, and of a turn about, which is made almost on the spot.
	cornerSide, aboutSide = 0.35, 0.1
	// sharpest is the curvature above which a way is as good as a turn on the
	// spot, 1/m: it is walked at a tenth of a pace, not stopped in.
	sharpest = 60
)

// sideOf is how far from a corner its rounding begins.
func sideOf(turn float64) float64 {
	over := clamp((math.Abs(turn)-math.Pi/2)/(math.Pi/2), 0, 1)
	return cornerSide + (aboutSide-cornerSide)*over
}

func newBends(path *geom.Path) bends {
	n, step := looks(path.Length(), bendStep)
	if step == 0 {
		return bends{}
	}
	b := bends{step: step, kappa: make([]float64, n+1)}
	straight := true
	was := path.Heading(0)
	for i := range b.kappa {
		s := b.step * float64(i)
		h := path.Heading(s)
		// Between two samples a way may bend more than at either.
		between := math.Abs(geom.AngleDiff(was, h)) / b.step
		was = h
		b.kappa[i] = max(math.Abs(path.Curvature(s)), between)
		if i > 0 {
			b.kappa[i-1] = max(b.kappa[i-1], between)
		}
		straight = straight && b.kappa[i] < 1e-9
	}
	for _, c := range path.Corners() {
		straight = false
		// A circle that leaves each side of the corner so far away from it.
		side := sideOf(c.Turn)
		k := math.Tan(min(math.Abs(c.Turn)/2, math.Pi/2-1e-3)) / side
		low := int(math.Floor((c.S - side) / b.step))
		high := int(math.Ceil((c.S + side) / b.step))
		for i := max(0, low); i <= min(n, high); i++ {
			b.kappa[i] = max(b.kappa[i], k)
		}
	}
	if straight {
		return bends{}
	}
	for i, k := range b.kappa {
		b.kappa[i] = min(k, sharpest)
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
	return max(b.kappa[low], b.kappa[high])
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
		most = max(most, k)
	}
	return most
}
