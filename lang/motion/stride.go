package motion

import (
	"math"

	"longhand/lang/units"
)

// lookEvery is how far apart looks at a track are, seconds.
const lookEvery = 0.25

// Stride is how many frames looks are apart.
func (t *Tracks) Stride() int {
	return max(1, int(math.Round(t.Rate.PerSecond()*lookEvery)))
}

// LookTimes are the times of the looks, from frame 0 on. Nobody may write to them.
func (t *Tracks) LookTimes() []units.Seconds {
	times := t.lookedAt()
	return times[:len(times)-1]
}

// lookedAt is LookTimes with the time of the last frame.
func (t *Tracks) lookedAt() []units.Seconds {
	t.looked.Do(func() {
		for f := 0; f < t.Frames; f += t.Stride() {
			t.lookTimes = append(t.lookTimes, t.Rate.Time(units.Frame(f)))
		}
		t.lookTimes = append(t.lookTimes, t.Rate.Time(units.Frame(t.Frames-1)))
	})
	return t.lookTimes
}

// Looks are a track's poses at every look and at the last frame of the take.
// Nobody may write to them.
func (t *Tracks) Looks(b *Track) []Pose {
	b.looked.Do(func() {
		times := t.lookedAt()
		b.looks = make([]Pose, len(times))
		b.Sample(times, b.looks)
	})
	return b.looks
}
