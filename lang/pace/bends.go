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

// sampled is the move with its cap asked for: for each of the stretches it is
// cut into, the square of the least cap found there.
func (m Move) sampled() Move {
	if m.Cap == nil || m.samples != nil {
		return m
	}
	n := int(min(maxSamples, max(minSamples, math.Ceil(float64(m.Length)/sampleStep))))
	m.samples = make([]float64, n)
	for i := range m.samples {
		m.samples[i] = math.Inf(1)
	}
	fine := n * looks
	for k := 0; k <= fine; k++ {
		cap := float64(m.Cap(m.Length * units.Metres(float64(k)/float64(fine))))
		if math.IsNaN(cap) {
			continue
		}
		square := max(cap, 0) * cap
		for _, i := range [...]int{(k - 1) / looks, k / looks} { // a joint is in both
			if i < n {
				m.samples[i] = min(m.samples[i], square)
			}
		}
	}
	return m
}

// capped is the fastest profile under the cruise, the accelerations and a cap
// that is level on each stretch of a few centimetres: the square of the speed
// at the joints is bounded forwards by the gathering, then backwards by the
// braking (the phase-plane method of Bobrow, Dubowsky & Gibson 1985, in one
// dimension), and between two joints is a trapezoid of its own. Where no cap
// binds, that is the very trapezoid of the move without one. Speeds at the ends
// that are above the cap are kept, and braked from or gathered to.
func (m Move) capped(cruise float64) *Profile {
	length, n := float64(m.Length), len(m.samples)
	step := length / float64(n)
	slowest := min(crawl, cruise)
	level := func(i int) float64 {
		return min(cruise*cruise, max(m.samples[i], slowest*slowest))
	}
	squares := make([]float64, n+1)
	squares[0], squares[n] = float64(m.Entry*m.Entry), float64(m.Exit*m.Exit)
	up, down := 2*float64(m.Accel)*step, 2*m.brake()*step
	for i := 1; i < n; i++ {
		squares[i] = min(min(level(i-1), level(i)), squares[i-1]+up)
	}
	for i := n - 1; i > 0; i-- {
		squares[i] = min(squares[i], squares[i+1]+down)
	}
	for i := 1; i < n && squares[i] < squares[i-1]-down; i++ {
		squares[i] = squares[i-1] - down
	}
	for i := n - 1; i > 0 && squares[i] < squares[i+1]-up; i-- {
		squares[i] = squares[i+1] - up
	}
	b := &builder{parts: make([]part, 0, n)}
	for i := range n {
		m.hump(b, step, squares[i], squares[i+1], level(i))
	}
	return b.profile(length, float64(m.Exit))
}

// hump is the fastest way over one stretch between two squares of speed, under
// a level; straight from one to the other where an end is above it.
func (m Move) hump(b *builder, step, from, to, level float64) {
	if from > level || to > level {
		b.run(step, math.Sqrt(from), math.Sqrt(to))
		return
	}
	accel, brake := float64(m.Accel), m.brake()
	top := min(level, (2*accel*brake*step+brake*from+accel*to)/(accel+brake))
	top = max(top, max(from, to))
	up, down := (top-from)/(2*accel), min(step, (top-to)/(2*brake))
	up = min(up, step-down)
	flat := step - up - down
	// A change too short to divide by is left to the stretch beside it.
	enough := 1e-7 * step
	v := math.Sqrt(top)
	v0, v1 := v, v // of the flat
	if up < enough {
		up, flat, v0 = 0, flat+up, math.Sqrt(from)
	}
	if down < enough {
		down, flat, v1 = 0, flat+down, math.Sqrt(to)
	}
	if flat < enough {
		if up > down {
			up += flat
		} else {
			down += flat
		}
		flat = 0
	}
	b.run(up, math.Sqrt(from), v)
	b.run(flat, v0, v1)
	b.run(down, v, math.Sqrt(to))
}
