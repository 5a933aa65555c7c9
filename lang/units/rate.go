package units

import (
	"fmt"
	"math"
)

// Frame is the number of a frame of the take, from 0.
type Frame int

// Rate is a frame rate as an exact fraction: 24000/1001 for "23.976".
type Rate struct{ Num, Den int }

// ParseRate reads a rate as crews write it. The broadcast rates 23.976 (23.98),
// 29.97, 47.952, 59.94 and 119.88 are N*1000/1001 exactly (SMPTE ST 12-1).
func ParseRate(perSecond float64) (Rate, bool) {
	if !(perSecond >= 1 && perSecond <= 1000) {
		return Rate{}, false
	}
	for _, whole := range []int{24, 30, 48, 60, 120} {
		if exact := float64(whole) * 1000 / 1001; math.Abs(perSecond-exact) < 0.005 {
			return Rate{whole * 1000, 1001}, true
		}
	}
	if perSecond == math.Trunc(perSecond) {
		return Rate{int(perSecond), 1}, true
	}
	return Rate{int(math.Round(perSecond * 1000)), 1000}, true
}

// PerSecond is the rate as a number.
func (r Rate) PerSecond() float64 {
	if r.Den == 0 {
		return 0
	}
	return float64(r.Num) / float64(r.Den)
}

// Time is the moment at which a frame is taken.
func (r Rate) Time(f Frame) Seconds { return Seconds(float64(f) * float64(r.Den) / float64(r.Num)) }

// frameSlop keeps a time that lies on a frame, but for the rounding of the
// arithmetic that led to it, on that frame: a thousandth of a frame.
const frameSlop = 1e-3

// At is the last frame taken at or before a time.
func (r Rate) At(t Seconds) Frame {
	return Frame(math.Floor(float64(t)*r.PerSecond() + frameSlop))
}

// From is the first frame taken at or after a time.
func (r Rate) From(t Seconds) Frame {
	return Frame(math.Ceil(float64(t)*r.PerSecond() - frameSlop))
}

// Duration is how long n frames last.
func (r Rate) Duration(n int) Seconds { return r.Time(Frame(n)) }

// String prints the rate as crews say it: "24", "23.976", "29.97".
func (r Rate) String() string { return trimZeros(fmt.Sprintf("%.3f", r.PerSecond())) }
