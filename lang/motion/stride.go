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

// LookTimes are the times of the looks, from frame 0 on.
func (t *Tracks) LookTimes() []units.Seconds {
	stride := t.Stride()
	out := make([]units.Seconds, 0, (t.Frames+stride-1)/stride)
	for f := 0; f < t.Frames; f += stride {
		out = append(out, t.Rate.Time(units.Frame(f)))
	}
	return out
}

// Looks are a track's poses at every look and at the last frame of the take.
// Nobody may write to them.
func (t *Tracks) Looks(b *Track) []Pose {
	b.looked.Do(func() {
		times := append(t.LookTimes(), t.Rate.Time(units.Frame(t.Frames-1)))
		b.looks = make([]Pose, len(times))
		b.Sample(times, b.looks)
	})
	return b.looks
}
