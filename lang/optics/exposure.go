package optics

import (
	"math"
	"slices"

	"longhand/lang/units"
)

// The constants of light meters (ISO 2720:1974).
const (
	// IncidentC is for light that falls on a flat receptor, in lux seconds: 240
	// to 400 are allowed, 250 is usual.
	IncidentC = 250
	// ReflectedK is for light that comes from the subject: 10.6 to 13.4 are
	// allowed, 12.5 is usual.
	ReflectedK = 12.5
	// TradeC is the constant in the crew's rule footcandles = 25·T²/(S·t).
	TradeC = 25 * Footcandle
)

// Footcandle is a lumen a square foot, in lux.
const Footcandle = 1 / (0.3048 * 0.3048)

// StopFor is the stop that exposes light of E falling on the subject: N² =
// E·S·t/C (ISO 2720). Sensitivity is the exposure index; c is usually
// [IncidentC].
func StopFor(e units.Lux, sensitivity float64, t units.Seconds, c float64) units.Stop {
	return units.Stop(math.Sqrt(float64(e) * sensitivity * float64(t) / c))
}

// LightFor is the light on the subject that a stop asks for: C·N²/(S·t).
func LightFor(n units.Stop, sensitivity float64, t units.Seconds, c float64) units.Lux {
	return units.Lux(c * float64(n) * float64(n) / (sensitivity * float64(t)))
}

// LuminanceFor is the brightness of the subject that a stop asks for, by a
// reflected meter: K·N²/(S·t), K being [ReflectedK].
func LuminanceFor(n units.Stop, sensitivity float64, t units.Seconds) units.Nits {
	return units.Nits(ReflectedK * float64(n) * float64(n) / (sensitivity * float64(t)))
}

// ExposureValue is log2(N²/t).
func ExposureValue(n units.Stop, t units.Seconds) float64 {
	return math.Log2(float64(n) * float64(n) / float64(t))
}

// LightAtEV is the light on the subject for an exposure value at index 100:
// C/100·2^EV.
func LightAtEV(ev, c float64) units.Lux { return units.Lux(c / 100 * math.Exp2(ev)) }

// LuminanceAtEV is the brightness of the subject for an exposure value at index
// 100: K/100·2^EV.
func LuminanceAtEV(ev float64) units.Nits { return units.Nits(ReflectedK / 100 * math.Exp2(ev)) }

// StopsBetween is how many stops brighter b is than a; infinite where one is
// dark.
func StopsBetween[L ~float64](a, b L) float64 { return math.Log2(float64(b / a)) }

// DensityStops is what a filter of an optical density takes, in stops.
func DensityStops(density float64) float64 { return density / math.Log10(2) }

// OpenBy is the stop that lets in more light by a number of stops.
func OpenBy(n units.Stop, stops float64) units.Stop {
	return n / units.Stop(math.Exp2(stops/2))
}

// NominalStop is the engraved number nearest to a stop on the full-stop scale:
// f/5.6 for the exact 4·√2.
func NominalStop(n units.Stop) units.Stop {
	if !(n > 0) {
		return n
	}
	k := int(math.Round(2 * math.Log2(float64(n))))
	if k >= 0 && k < len(engraved) {
		return engraved[k]
	}
	return units.Stop(math.Exp2(float64(k) / 2))
}

var engraved = [...]units.Stop{1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64}

// FullStops are the engraved numbers of the full-stop scale, from 1 to 64.
func FullStops() []units.Stop { return slices.Clone(engraved[:]) }

// FullStopUp is the first engraved number that is no wider than a stop; the stop
// itself beyond 64.
func FullStopUp(n units.Stop) units.Stop {
	for _, e := range engraved {
		if e >= n-1e-9 {
			return e
		}
	}
	return n
}

// FullStopDown is the last engraved number that is no narrower than a stop; 0 below 1.
func FullStopDown(n units.Stop) units.Stop {
	best := units.Stop(0)
	for _, e := range engraved {
		if e <= n+1e-9 {
			best = e
		}
	}
	return best
}

// Illuminance is the light a lamp of an intensity throws on a surface: the
// inverse square and cosine laws, I·cos θ/d². A surface turned away gets none.
func Illuminance(i units.Candela, distance units.Metres, incidence units.Degrees) units.Lux {
	c := math.Cos(incidence.Radians())
	if c <= 0 {
		return 0
	}
	return units.Lux(float64(i) * c / float64(distance*distance))
}
