// Package units holds the quantities of a plan as types, so that metres are
// never added to seconds, and prints and parses them as people write them.
//
// It imports nothing of the project.
package units

import "math"

// The quantities. Each is in the unit it is named after; angles are in degrees,
// counter-clockwise from +x on paper unless a field says otherwise.
type (
	Metres           float64
	Millimetres      float64
	Seconds          float64
	Degrees          float64
	MetresPerSecond  float64
	MetresPerSecond2 float64
	DegreesPerSecond float64
	Kilograms        float64
	Kelvin           float64
	Watts            float64
	Volts            float64
	Amperes          float64
	Candela          float64
	Nits             float64 // candela per square metre
	Lux              float64
	Percent          float64 // 100 is the whole
	Stop             float64 // a T-stop or f-number, 2.8 for T2.8
)

// Exact by definition (international yard and pound agreement, 1959).
const (
	Foot  Metres    = 0.3048
	Inch  Metres    = 0.0254
	Pound Kilograms = 0.45359237
)

// Metres converts the millimetres of optics to the metres of the floor.
func (mm Millimetres) Metres() Metres { return Metres(mm) / 1000 }

// Millimetres converts the metres of the floor to the millimetres of optics.
func (m Metres) Millimetres() Millimetres { return Millimetres(m) * 1000 }

// Radians is the angle for the trigonometric functions.
func (d Degrees) Radians() float64 { return float64(d) * math.Pi / 180 }

// FromRadians is the angle in degrees.
func FromRadians(r float64) Degrees { return Degrees(r * 180 / math.Pi) }

// Normalised is the same direction in (-180, 180].
func (d Degrees) Normalised() Degrees {
	r := math.Mod(float64(d), 360)
	switch {
	case r > 180:
		r -= 360
	case r <= -180:
		r += 360
	}
	return Degrees(r)
}

// System is how lengths are written and printed.
type System int

const (
	Metric System = iota
	Feet          // feet and inches
)
