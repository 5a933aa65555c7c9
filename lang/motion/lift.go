package motion

import (
	"math"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// lift is the height of a lens over the floor its base stands on, in time:
// stretches that begin at a time and ease to a height.
type lift struct{ steps []rise }

// rise goes from one height to another.
type rise struct {
	start, end float64
	from, to   float64
	action     *plan.Action // nil for the height it is set to first
}

func (l *lift) at(t float64) float64 {
	for i := len(l.steps) - 1; i >= 0; i-- {
		if r := &l.steps[i]; r.start <= t || i == 0 {
			return r.from + (r.to-r.from)*eased(t, r.start, r.end)
		}
	}
	return 0
}

// set puts the lens at a height at once; move takes it there.
func (l *lift) set(at, to float64) {
	l.steps = append(l.steps, rise{start: at, end: at, from: to, to: to})
}

func (l *lift) move(a *plan.Action, start, end, to float64) {
	l.steps = append(l.steps, rise{start, end, l.at(start), to, a})
}

// lifts is what a camera's lines say of its height during one hold.
func (b *builder) lifts(camera *plan.Camera, h *hold, last bool) *lift {
	l := &lift{}
	l.set(min(h.start, h.taken), h.up)
	if h.action == nil || h.start <= 1e-9 {
		l.steps[0].start, l.steps[0].end = 0, 0
	}
	for _, a := range b.inTime {
		d, ok := a.Deed.(*plan.Lift)
		if !ok || a.Subject != plan.Thing(camera) {
			continue
		}
		iv := b.c.Of(a)
		start, end := float64(iv.Start), float64(iv.End)
		if start < h.start-1e-9 || start >= h.end-1e-9 && !last {
			continue
		}
		from := l.at(start)
		l.move(a, start, end, float64(d.To))
		lim := b.r.limitsOfHold(h)
		b.lengths.natural[a] = lim.riseTime(math.Abs(float64(d.To) - from))
	}
	return l
}

// riseTime is how long a rise takes at the usual rate.
func (l Limits) riseTime(height float64) units.Seconds {
	rate := float64(l.Rise.Typical)
	if rate <= 0 {
		rate = usualRise
	}
	return units.Seconds(turnEase.Time(height, rate, 0))
}

// usualRise is the rate of a lens on a rig that isn't built to rise, m/s.
const usualRise = 0.2

// liftOf is the height of the lens on a rig, whichever camera is on it; after
// the last it stays.
func (b *builder) liftOf(rig *plan.Rig) *lift {
	l := &lift{}
	for _, camera := range b.p.Kit.Cameras {
		for i := range b.holds[camera] {
			h := &b.holds[camera][i]
			if h.rig != rig {
				continue
			}
			one := b.lifts(camera, h, i == len(b.holds[camera])-1)
			l.steps = append(l.steps, one.steps...)
		}
	}
	if len(l.steps) == 0 {
		l.set(0, float64(classOf(rig).Lens))
		return l
	}
	sortRises(l.steps)
	l.steps[0].start = min(l.steps[0].start, 0)
	return l
}

func sortRises(steps []rise) {
	for i := 1; i < len(steps); i++ {
		for k := i; k > 0 && steps[k].start < steps[k-1].start; k-- {
			steps[k], steps[k-1] = steps[k-1], steps[k]
		}
	}
}
