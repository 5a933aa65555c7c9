package motion

import (
	"longhand/lang/geom"
)

// closing is an error that goes to nothing: the cubic that starts with a given
// gap and rate, and ends with none of either. Added to what a lens is aimed at
// next, or to a way that takes over, it leads there without a jump in place or
// in speed.
type closing struct {
	gap, rate   geom.Vec
	start, time float64
}

func (c closing) at(t float64) geom.Vec {
	u := t - c.start
	if c.time <= 0 || u >= c.time {
		return geom.Vec{}
	}
	if u <= 0 {
		return c.gap
	}
	x := u / c.time
	y := 1 - x
	return c.gap.Mul((1 + 2*x) * y * y).Add(c.rate.Mul(c.time * x * y * y))
}

// end is when the gap is closed.
func (c closing) end() float64 { return c.start + c.time }

// close is the quickest closing that keeps the rate of the gap under speed and
// its change under accel. Both of the cubic's bounds fall as the time grows
// (rate as 1.5 gap/T + rate, change as 6 gap/T² + 4 rate/T), so it is found by
// halving.
func closeGap(gap, rate geom.Vec, start, speed, accel float64) closing {
	c := closing{gap: gap, rate: rate, start: start}
	if gap.Len() < 1e-9 && rate.Len() < 1e-9 {
		return c
	}
	speed = max(speed, rate.Len()*1.0001)
	fits := func(T float64) bool {
		return 1.5*gap.Len()/T+rate.Len()/3 <= speed &&
			6*gap.Len()/(T*T)+4*rate.Len()/T <= accel
	}
	low, high := 0.0, 0.25
	for !fits(high) && high < 1e5 {
		low, high = high, high*2
	}
	for range 40 {
		mid := (low + high) / 2
		if fits(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	c.time = high
	return c
}
