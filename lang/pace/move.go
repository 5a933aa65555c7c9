package pace

import (
	"fmt"
	"math"

	"longhand/lang/units"
)

// Pace is what a body or a rig does on the way.
type Pace struct {
	Speed units.MetresPerSecond  // of the cruise; 0 or less: as fast as the accelerations allow
	Accel units.MetresPerSecond2 // gathering speed
	Brake units.MetresPerSecond2 // losing it; 0 is as Accel
}

func (p Pace) brake() float64 {
	if p.Brake > 0 {
		return float64(p.Brake)
	}
	return float64(p.Accel)
}

func (p Pace) speed() float64 {
	if p.Speed > 0 {
		return float64(p.Speed)
	}
	return math.Inf(1)
}

// Move is a length to be covered.
type Move struct {
	Length units.Metres
	Pace
	// Entry and Exit are the speeds at the ends: more than 0 where the move
	// takes over from another, or hands on to one, without stopping.
	Entry, Exit units.MetresPerSecond
	// Cap, where it isn't nil, is the most speed the way allows at a length
	// along it (see Bends). A move with a cap is worked out on samples.
	Cap func(units.Metres) units.MetresPerSecond

	samples []float64 // the squares of Cap, where they have been taken
}

// NaturalTime is how long a move from rest to rest takes by itself: L/v + v/a
// (for a braking like the gathering), or 2√(L/a) where the cruise is never
// reached.
func NaturalTime(length units.Metres, p Pace) units.Seconds {
	profile, err := Move{Length: length, Pace: p}.Natural()
	if err != nil {
		return units.Seconds(math.Inf(1))
	}
	return profile.Duration()
}

// least and most bound the numbers of a move, in their units: a micrometre a
// second, a thousand kilometres. Beyond them the arithmetic would overflow long
// before a floor ends.
const (
	least = 1e-6
	most  = 1e6
)

// check finds numbers that make no move.
func (m Move) check() error {
	for _, q := range []struct {
		value float64
		what  string
		unit  string
	}{
		{float64(m.Length), "length", " m"},
		{float64(m.Entry), "entry speed", " m/s"},
		{float64(m.Exit), "exit speed", " m/s"},
	} {
		if !(q.value >= 0 && q.value <= most) {
			return fmt.Errorf("the %s of a move can't be %s", q.what, units.Number(q.value, 2)+q.unit)
		}
	}
	if m.Speed > 0 && m.Speed < least || m.Speed > most || math.IsNaN(float64(m.Speed)) {
		return fmt.Errorf("a move can't go at %s m/s", units.Number(float64(m.Speed), 7))
	}
	for _, rate := range []float64{float64(m.Accel), m.brake()} {
		if !(rate >= least && rate <= most) {
			return fmt.Errorf("a move needs an acceleration above 0, not %s m/s²", units.Number(rate, 7))
		}
	}
	return nil
}

// NoRoom says that a move is too short to change from its entry to its exit
// speed.
type NoRoom struct {
	Length, Needs units.Metres
	Entry, Exit   units.MetresPerSecond
}

func (e *NoRoom) Error() string {
	return fmt.Sprintf("going from %s to %s takes %s, but the move is only %s long",
		e.Entry, e.Exit, e.Needs.Text(units.Metric), e.Length.Text(units.Metric))
}

// room is the error where the move is too short for its change of speed.
func (m Move) room() error {
	u, v := float64(m.Entry), float64(m.Exit)
	rate := float64(m.Accel)
	if v < u {
		rate = m.brake()
	}
	needs := math.Abs(v*v-u*u) / (2 * rate)
	if needs > float64(m.Length)*(1+1e-12) {
		return &NoRoom{m.Length, units.Metres(needs), m.Entry, m.Exit}
	}
	return nil
}

// Natural is the move at its pace: accelerate, cruise, brake; a triangle where
// the cruise isn't reached. Entry and exit speeds above the pace are braked
// from, or gathered to, at the ends. Where the length doesn't allow the change
// of speed it returns a NoRoom, and a profile that makes it more sharply.
func (m Move) Natural() (*Profile, error) {
	if err := m.check(); err != nil {
		return (&builder{}).profile(0, 0), err
	}
	if m.Length == 0 {
		return (&builder{}).profile(0, float64(m.Exit)), m.room()
	}
	if err := m.room(); err != nil {
		b := &builder{}
		b.run(float64(m.Length), float64(m.Entry), float64(m.Exit))
		return b.profile(float64(m.Length), float64(m.Exit)), err
	}
	return m.sampled().cruising(m.speed()), nil
}

// cruising is the profile at a cruise speed, which may be infinite.
func (m Move) cruising(cruise float64) *Profile {
	if m.Cap != nil {
		return m.capped(cruise)
	}
	return m.trapezoid(cruise)
}

// trapezoid changes from entry to cruise, cruises, and changes to exit; where
// the length doesn't allow the cruise, two changes that meet in the middle.
func (m Move) trapezoid(cruise float64) *Profile {
	length, entry, exit := float64(m.Length), float64(m.Entry), float64(m.Exit)
	a, b := float64(m.Accel), m.brake()
	// The lengths of the changes. Above the speeds at the ends the first is a
	// gathering and the second a braking; below them the other way round.
	change := func(from, to float64) float64 {
		if to > from {
			return (to*to - from*from) / (2 * a)
		}
		return (from*from - to*to) / (2 * b)
	}
	top := peak(length, entry, exit, a, b)
	cruise = min(cruise, top)
	if low := trough(length, entry, exit, a, b); cruise < low {
		cruise = low
	}
	up, down := change(entry, cruise), change(cruise, exit)
	level := length - up - down
	out := &builder{parts: make([]part, 0, 3)}
	out.run(up, entry, cruise)
	if level > 1e-12*length {
		out.run(level, cruise, cruise)
	}
	out.run(down, cruise, exit)
	return out.profile(length, exit)
}

// peak is the speed at which gathering from entry and braking to exit meet.
func peak(length, entry, exit, a, b float64) float64 {
	return max(max(entry, exit), math.Sqrt((2*a*b*length+b*entry*entry+a*exit*exit)/(a+b)))
}

// trough is the speed at which braking from entry and gathering to exit meet, 0
// where there is room to come to rest.
func trough(length, entry, exit, a, b float64) float64 {
	square := (a*entry*entry + b*exit*exit - 2*a*b*length) / (a + b)
	return min(min(entry, exit), math.Sqrt(max(0, square)))
}
