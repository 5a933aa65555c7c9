package syntax

import (
	"strconv"
	"strings"

	"longhand/lang/units"
)

// Dimension is what the quantity measures; a clock counts as a duration.
func (q *Quantity) Dimension() units.Dimension {
	if q == nil {
		return units.NoDimension
	}
	if _, err := units.ParseClock(q.Text); err == nil && hasColon(q.Text) {
		return units.Duration
	}
	return units.DimensionOf(q.Text)
}

// The methods below give the quantity as the type that is meant, or say in a
// sentence why it is not one.

// Length is a length.
func (q *Quantity) Length() (units.Metres, error) { return units.ParseLength(q.Text) }

// Millimetres is a length, as optics count it.
func (q *Quantity) Millimetres() (units.Millimetres, error) {
	m, err := units.ParseLength(q.Text)
	return m.Millimetres(), err
}

// TimeSpan is a duration in seconds, frames, counts or bars.
func (q *Quantity) TimeSpan() (units.TimeSpan, error) { return units.ParseTimeSpan(q.Text) }

// DayTime is a time of day, in seconds since midnight.
func (q *Quantity) DayTime() (units.Seconds, error) { return units.ParseDayTime(q.Text) }

// IsClock reports whether the quantity is written with a colon: 1:04.
func (q *Quantity) IsClock() bool { return q != nil && hasColon(q.Text) }

// IsSigned reports whether a plus or minus is written before it: +9 s.
func (q *Quantity) IsSigned() bool {
	return q != nil && q.Text != "" && (q.Text[0] == '+' || q.Text[0] == '-')
}

// Speed is a speed.
func (q *Quantity) Speed() (units.MetresPerSecond, error) {
	v, err := units.Parse(q.Text, units.Speed)
	return units.MetresPerSecond(v), err
}

// Angle is an angle.
func (q *Quantity) Angle() (units.Degrees, error) {
	v, err := units.Parse(q.Text, units.Angle)
	return units.Degrees(v), err
}

// AngularSpeed is a turning speed.
func (q *Quantity) AngularSpeed() (units.DegreesPerSecond, error) {
	v, err := units.Parse(q.Text, units.AngularSpeed)
	return units.DegreesPerSecond(v), err
}

// Mass is a weight.
func (q *Quantity) Mass() (units.Kilograms, error) {
	v, err := units.Parse(q.Text, units.Mass)
	return units.Kilograms(v), err
}

// Kelvin is a colour temperature.
func (q *Quantity) Kelvin() (units.Kelvin, error) {
	v, err := units.Parse(q.Text, units.Temperature)
	return units.Kelvin(v), err
}

// Power is a power.
func (q *Quantity) Power() (units.Watts, error) {
	v, err := units.Parse(q.Text, units.Power)
	return units.Watts(v), err
}

// Current is a current.
func (q *Quantity) Current() (units.Amperes, error) {
	v, err := units.Parse(q.Text, units.Current)
	return units.Amperes(v), err
}

// Voltage is a voltage.
func (q *Quantity) Voltage() (units.Volts, error) {
	v, err := units.Parse(q.Text, units.Voltage)
	return units.Volts(v), err
}

// Intensity is a luminous intensity.
func (q *Quantity) Intensity() (units.Candela, error) {
	v, err := units.Parse(q.Text, units.Intensity)
	return units.Candela(v), err
}

// Luminance is a luminance.
func (q *Quantity) Luminance() (units.Nits, error) {
	v, err := units.Parse(q.Text, units.Luminance)
	return units.Nits(v), err
}

// Percent is a share, of 100.
func (q *Quantity) Percent() (units.Percent, error) {
	v, err := units.Parse(q.Text, units.Share)
	return units.Percent(v), err
}

// In is the number of a quantity of any dimension, in the unit its type is
// named after: for rates, tempos and paces.
func (q *Quantity) In(d units.Dimension) (float64, error) { return units.Parse(q.Text, d) }

// Metres is the coordinate; a bare number is in the set's own unit.
func (c *Coordinate) Metres(system units.System) (units.Metres, error) {
	if v, err := strconv.ParseFloat(c.Text, 64); err == nil {
		if system == units.Feet {
			return units.Metres(v) * units.Foot, nil
		}
		return units.Metres(v), nil
	}
	return units.ParseLength(c.Text)
}

// Value is the number.
func (n *Number) Value() (float64, error) { return strconv.ParseFloat(n.Text, 64) }

// Int is the number if it is whole and no larger than a million.
func (n *Number) Int() (int, bool) {
	v, err := strconv.ParseFloat(n.Text, 64)
	if err != nil || v != float64(int(v)) || v < -1e6 || v > 1e6 {
		return 0, false
	}
	return int(v), true
}

// Value is the T-number: 2.8 for T2.8.
func (s *Stop) Value() units.Stop {
	v, err := strconv.ParseFloat(s.Text[1:], 64)
	if err != nil {
		return 0
	}
	return units.Stop(v)
}

// Degrees is the bearing, north and east positive, and its letter; ok is false
// if it has none of N, S, E, W.
func (b *Bearing) Degrees() (d units.Degrees, side string, ok bool) {
	text, side := strings.Trim(b.Amount, Blanks), b.Side
	if n := len(text); side == "" && n > 0 && strings.Contains("NSEW", text[n-1:]) {
		text, side = text[:n-1], text[n-1:]
	}
	text = strings.TrimRight(text, "deg°"+Blanks)
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || side == "" {
		return 0, side, false
	}
	if side == "S" || side == "W" {
		v = -v
	}
	return units.Degrees(v), side, true
}

func hasColon(text string) bool {
	for i := range len(text) {
		if text[i] == ':' {
			return true
		}
	}
	return false
}
