package units

import (
	"fmt"
	"math"
	"strings"
)

// Text prints a length in the plan's system: "2.4 m", or feet and inches to the
// nearest half inch: 8', 8'6", 0'3½".
func (m Metres) Text(s System) string {
	if s == Feet {
		return feetText(m)
	}
	if m != 0 && math.Abs(float64(m)) < 0.1 {
		return decimal(float64(m)*1000, 0) + " mm"
	}
	return decimal(float64(m), 2) + " m"
}

func feetText(m Metres) string {
	halves := int(math.Round(float64(m/Inch) * 2))
	sign := ""
	if halves < 0 {
		sign, halves = "-", -halves
	}
	feet, inches, half := halves/24, halves%24/2, halves%2 == 1
	switch {
	case half:
		return fmt.Sprintf(`%s%d'%d½"`, sign, feet, inches)
	case inches == 0:
		return fmt.Sprintf(`%s%d'`, sign, feet)
	}
	return fmt.Sprintf(`%s%d'%d"`, sign, feet, inches)
}

// String prints seconds to a tenth: "6.4 s".
func (s Seconds) String() string { return decimal(float64(s), 1) + " s" }

// Clock prints a time on the take's clock: "1:04.5".
func (s Seconds) Clock() string {
	tenths := int(math.Round(float64(s) * 10))
	sign := ""
	if tenths < 0 {
		sign, tenths = "-", -tenths
	}
	return fmt.Sprintf("%s%d:%02d.%d", sign, tenths/600, tenths/10%60, tenths%10)
}

// String prints whole degrees, or a tenth where it matters: "45°", "2.5°".
func (d Degrees) String() string {
	if math.Abs(float64(d)) < 10 {
		return decimal(float64(d), 1) + "°"
	}
	return decimal(float64(d), 0) + "°"
}

func (v MetresPerSecond) String() string { return decimal(float64(v), 2) + " m/s" }

// Text prints a speed in the plan's system: "1.2 m/s" or "3.9 ft/s".
func (v MetresPerSecond) Text(s System) string {
	if s == Feet {
		return decimal(float64(v)/float64(Foot), 1) + " ft/s"
	}
	return v.String()
}
func (w DegreesPerSecond) String() string { return decimal(float64(w), 0) + "°/s" }
func (mm Millimetres) String() string     { return decimal(float64(mm), 1) + " mm" }
func (kg Kilograms) String() string       { return decimal(float64(kg), 1) + " kg" }
func (k Kelvin) String() string           { return decimal(float64(k), 0) + " K" }
func (w Watts) String() string            { return decimal(float64(w), 0) + " W" }
func (v Volts) String() string            { return decimal(float64(v), 1) + " V" }
func (a Amperes) String() string          { return decimal(float64(a), 1) + " A" }
func (p Percent) String() string          { return decimal(float64(p), 1) + " %" }
func (t Stop) String() string             { return "T" + decimal(float64(t), 1) }

// Number prints v with at most the given decimals and no idle zeros, and never
// "-0".
func Number(v float64, decimals int) string { return decimal(v, decimals) }

func decimal(v float64, decimals int) string {
	switch {
	case math.IsInf(v, 1):
		return "∞"
	case math.IsInf(v, -1):
		return "-∞"
	case math.IsNaN(v):
		return "?"
	}
	return trimZeros(fmt.Sprintf("%.*f", decimals, v))
}

func trimZeros(s string) string {
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Thousandth is a number to a thousandth, for machines to read: never -0, and 0 where
// it is infinite or none.
func Thousandth(v float64) float64 {
	v = math.Round(v*1000) / 1000
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}
