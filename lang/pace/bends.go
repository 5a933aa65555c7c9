package pace

import (
	"math"

	"longhand/lang/units"
)

// Bends is the cap on speed from the curvature of a way (1/m, at metres along
// it) and the most acceleration sideways: v = √(a/|κ|).
func Bends(curvature func(s float64) float64, lateral units.MetresPerSecond2) func(units.Metres) units.MetresPerSecond {
	return func(s units.Metres) units.MetresPerSecond {
		k := math.Abs(curvature(float64(s)))
		return units.MetresPerSecond(math.Sqrt(float64(lateral) / k))
	}
}

// Lateral is the acceleration sideways at a speed on a bend: v²κ.
func Lateral(v units.MetresPerSecond, curvature float64) units.MetresPerSecond2 {
	return units.MetresPerSecond2(float64(v*v) * math.Abs(curvature))
}

// Turning is the rate at which the heading turns at a speed on a bend, in
// degrees: vκ.
func Turning(v units.MetresPerSecond, curvature float64) units.DegreesPerSecond {
	return units.DegreesPerSecond(float64(v) * curvature * 180 / math.Pi)
}

const (
	// sampleStep is the length of way between samples of the cap, metres: a
	// tenth of a step. looks is how often the cap is asked for in it.
	sampleStep = 0.05
	looks      = 2
	minSamples = 32
	maxSamples = 1 << 14
	// crawl is the least speed a cap may ask for, m/s: a cap of nothing on the
	// way would never let the move arrive.
	crawl = 0.05
)

// sampled is the move with its cap asked for: at each sample the square of the
// least cap in the intervals on either side.
func (m Move) sampled() Move {
	if m.Cap == nil || m.samples != nil {
		return m
	}
	n := int(math.Min(maxSamples, math.Max(minSamples, math.Ceil(float64(m.Length)/sampleStep))))
	m.samples = make([]float64, n+1)
	for i := range m.samples {
		m.samples[i] = math.Inf(1)
	}
	fine := n * looks
	for k := 0; k <= fine; k++ {
		cap := float64(m.Cap(m.Length * units.Metres(float64(k)/float64(fine))))
		if math.IsNaN(cap) {
			continue
		}
		square := math.Max(cap, 0) * cap
		low, high := k/looks, (k+looks-1)/looks
		m.samples[low] = math.Min(m.samples[low], square)
		m.samples[high] = math.Min(m.samples[high], square)
	}
	return m
}

// capped is the fastest profile under the cap, the cruise and the
// accelerations, on samples a few centimetres apart: the square of the speed is
// bounded forwards by the gathering, then backwards by the braking, and is
// linear in between, which is a steady acceleration (the phase-plane method of
// Bobrow, Dubowsky & Gibson 1985, in one dimension). Speeds at the ends that
// are above the cap are kept, and braked from or gathered to.
func (m Move) capped(cruise float64) *Profile {
	length, n := float64(m.Length), len(m.samples)-1
	step := length / float64(n)
	squares := make([]float64, n+1)
	slowest := math.Min(crawl, cruise)
	for i, square := range m.samples {
		squares[i] = math.Min(cruise*cruise, math.Max(square, slowest*slowest))
	}
	squares[0], squares[n] = float64(m.Entry*m.Entry), float64(m.Exit*m.Exit)
	up, down := 2*float64(m.Accel)*step, 2*m.brake()*step
	for i := 1; i < n; i++ {
		squares[i] = math.Min(squares[i], squares[i-1]+up)
	}
	for i := n - 1; i > 0; i-- {
		squares[i] = math.Min(squares[i], squares[i+1]+down)
	}
	for i := 1; i < n && squares[i] < squares[i-1]-down; i++ {
		squares[i] = squares[i-1] - down
	}
	for i := n - 1; i > 0 && squares[i] < squares[i+1]-up; i-- {
		squares[i] = squares[i+1] - up
	}
	b := &builder{parts: make([]part, 0, n)}
	for i := 1; i <= n; i++ {
		b.run(step, math.Sqrt(squares[i-1]), math.Sqrt(squares[i]))
	}
	return b.profile(length, float64(m.Exit))
}
