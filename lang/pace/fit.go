package pace

import (
	"fmt"
	"math"

	"longhand/lang/units"
)

// TooShort says that a move can't be made in the time given.
type TooShort struct {
	Length             units.Metres
	Duration, Shortest units.Seconds
	// Peak and Strain are the speed and the acceleration that the time asks
	// for, those of the profile that comes with the error.
	Peak   units.MetresPerSecond
	Strain units.MetresPerSecond2
}

func (e *TooShort) Error() string {
	return fmt.Sprintf("%s in %s: the shortest possible is %s",
		e.Length.Text(units.Metric), e.Duration, secondsUp(e.Shortest))
}

// secondsUp prints a tenth rounded up, so that what is printed is possible.
func secondsUp(s units.Seconds) string {
	return units.Seconds(math.Ceil(float64(s)*10-1e-6) / 10).String()
}

// TooLong says that a move that may not stop is over before its time, however
// slow it gets.
type TooLong struct {
	Length            units.Metres
	Duration, Longest units.Seconds
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("%s in %s: without stopping it takes at most %s",
		e.Length.Text(units.Metric), e.Duration, e.Longest)
}

// In is the move in exactly the time given, with the accelerations of its pace
// and whatever cruise speed does it, up to the pace's. Where that can't be it
// returns a TooShort or a TooLong, and still a profile of that time and length
// for whoever has to go on: one that goes faster and harder, or one that
// ignores the speeds at the ends.
func (m Move) In(time units.Seconds) (*Profile, error) {
	if err := m.check(); err != nil {
		return (&builder{}).profile(0, 0), err
	}
	m = m.sampled()
	natural, err := m.Natural()
	if !(time >= least && time <= most*most) {
		if m.Length == 0 && time == 0 {
			return natural, err
		}
		return natural, fmt.Errorf("a move can't take %s", time)
	}
	if m.Length == 0 {
		return still(time), err
	}
	if err != nil {
		return m.forced(time), err
	}
	if shortest := natural.time; float64(time) < float64(shortest)*(1-1e-12) {
		forced := m.forced(time)
		return forced, &TooShort{m.Length, time, shortest, forced.Peak(), forced.Strain()}
	}
	if m.Entry > 0 || m.Exit > 0 {
		slowest := m.cruising(1e-9 * float64(m.Length) / float64(time))
		if slowest.time < time {
			return m.forced(time), &TooLong{m.Length, time, slowest.time}
		}
	}
	return m.cruising(m.cruiseFor(float64(time), float64(natural.Peak()))).stretched(time), nil
}

// Shortest is the least time the move can take at its pace.
func (m Move) Shortest() units.Seconds {
	p, err := m.Natural()
	if err != nil && m.check() != nil {
		return units.Seconds(math.Inf(1))
	}
	return p.time
}

// cruiseFor is the cruise speed, at most top, that makes the move last time.
// From rest to rest it is the smaller root of v²k - Tv + L = 0, k = (1/a+1/b)/2.
// Otherwise it is found by false position (the Illinois rule) on the pace, one
// over the speed: the time rises with it throughout, and almost straight.
func (m Move) cruiseFor(time, top float64) float64 {
	length := float64(m.Length)
	if m.Cap == nil && m.Entry == 0 && m.Exit == 0 {
		k := (1/float64(m.Accel) + 1/m.brake()) / 2
		return min(top, 2*length/(time+math.Sqrt(max(0, time*time-4*k*length))))
	}
	over := func(pace float64) float64 { return float64(m.cruising(1/pace).time) - time }
	low, high := 1/top, max(time/length, 1/top)
	under, above := over(low), over(high)
	for above < 0 && high < 1e12 {
		low, under = high, above
		high *= 2
		above = over(high)
	}
	if under >= 0 {
		return 1 / low
	}
	last := 0
	for range 200 {
		mid := low + (high-low)*under/(under-above)
		if !(mid > low && mid < high) {
			break
		}
		off := over(mid)
		switch {
		case math.Abs(off) <= closeEnough*time:
			return 1 / mid
		case off < 0:
			low, under = mid, off
			if last < 0 { // the same end twice: give the other less weight
				above /= 2
			}
			last = -1
		default:
			high, above = mid, off
			if last > 0 {
				under /= 2
			}
			last = 1
		}
	}
	return 1 / high
}

// closeEnough is how near, of the time asked for, the search has to come before
// stretching does the rest: far less than an acceleration is known to.
const closeEnough = 1e-8

// Lasting is the profile made to last exactly a time, every speed in it by the
// same factor: the same way of going, faster or slower. Its accelerations change
// by the factor's square. A time that isn't above 0 changes nothing.
func (p *Profile) Lasting(time units.Seconds) *Profile {
	if !(time > 0) || !(p.time > 0) || math.IsInf(float64(time), 0) {
		return p
	}
	return p.stretched(time)
}

// stretched is the profile made to last exactly time: for the last digits.
func (p *Profile) stretched(time units.Seconds) *Profile {
	k := float64(time / p.time)
	q := &Profile{parts: make([]part, len(p.parts)), length: p.length, time: time, exit: p.exit}
	for i, part := range p.parts {
		part.t, part.dt, part.v, part.a = part.t*k, part.dt*k, part.v/k, part.a/(k*k)
		q.parts[i] = part
	}
	return q
}

// forced covers the length in the time whatever that takes: two steady
// accelerations that meet half way in time, keeping the speeds at the ends, or
// where that would mean walking back a steady speed.
func (m Move) forced(time units.Seconds) *Profile {
	length, t := float64(m.Length), float64(time)
	entry, exit := float64(m.Entry), float64(m.Exit)
	middle := (4*length/t - entry - exit) / 2
	b := &builder{}
	if middle <= 0 {
		exit = length / t
		b.run(length, exit, exit)
	} else {
		b.run((entry+middle)*t/4, entry, middle)
		b.run((middle+exit)*t/4, middle, exit)
	}
	p := b.profile(length, exit)
	p.time = time
	return p
}

// still is a move of no length that takes time.
func still(time units.Seconds) *Profile {
	return &Profile{parts: []part{{dt: float64(time)}}, time: time}
}
