package pace

import "math"

// Ease is a smooth way from 0 to 1 as a fraction of the time goes from 0 to 1,
// at rest at both ends.
type Ease int

const (
	// MinimumJerk is 10x³ - 15x⁴ + 6x⁵, how a practised hand moves (Flash &
	// Hogan 1985); its acceleration, too, is 0 at both ends.
	MinimumJerk Ease = iota
	// Smoothstep is 3x² - 2x³.
	Smoothstep
	// Cosine is (1 - cos πx)/2.
	Cosine
)

// At is the fraction of the way; 0 before, 1 after.
func (e Ease) At(x float64) float64 {
	switch {
	case !(x > 0):
		return 0
	case x >= 1:
		return 1
	}
	switch e {
	case Smoothstep:
		return x * x * (3 - 2*x)
	case Cosine:
		return (1 - math.Cos(math.Pi*x)) / 2
	}
	return x * x * x * (10 + x*(6*x-15))
}

// Speed is the derivative of At: multiply by way over time.
func (e Ease) Speed(x float64) float64 {
	if !(x > 0 && x < 1) {
		return 0
	}
	switch e {
	case Smoothstep:
		return 6 * x * (1 - x)
	case Cosine:
		return math.Pi / 2 * math.Sin(math.Pi*x)
	}
	return 30 * x * x * (1 - x) * (1 - x)
}

// Accel is the second derivative of At: multiply by way over time squared.
func (e Ease) Accel(x float64) float64 {
	if !(x >= 0 && x <= 1) {
		return 0
	}
	switch e {
	case Smoothstep:
		return 6 - 12*x
	case Cosine:
		return math.Pi * math.Pi / 2 * math.Cos(math.Pi*x)
	}
	return 60 * x * (1 - x) * (1 - 2*x)
}

// PeakSpeed is the greatest Speed, at half time: 15/8, 3/2, π/2.
func (e Ease) PeakSpeed() float64 { return e.Speed(0.5) }

// PeakAccel is the greatest Accel: 10/√3 (at x = 1/2 - √3/6), 6, π²/2.
func (e Ease) PeakAccel() float64 {
	switch e {
	case Smoothstep, Cosine:
		return e.Accel(0)
	}
	return 10 / math.Sqrt(3)
}

// Time is the least time for a way of any unit under a greatest speed and
// acceleration in the same unit; 0 or less is no limit.
func (e Ease) Time(way, speed, accel float64) float64 {
	way = math.Abs(way)
	t := 0.0
	if speed > 0 {
		t = e.PeakSpeed() * way / speed
	}
	if accel > 0 {
		t = max(t, math.Sqrt(e.PeakAccel()*way/accel))
	}
	return t
}
