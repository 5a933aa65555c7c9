package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// flanking is at a bearing from the target's own heading, at a distance. Where
// the target turns faster than what carries the camera could run round it, the
// bearing lags and catches up.
type flanking struct {
	g     target
	by    float64
	angle float64
	swing sway
}

func (f flanking) want(t float64) geom.Vec {
	return f.g.point(t).Add(geom.Polar(f.by, f.swing.at(t)+f.angle))
}

func (f flanking) face(t float64) float64 { return f.swing.at(t) }

func (b *builder) beside(to plan.Target, angle, by, pace, start, until float64) relation {
	g, ok := b.target(to)
	if !ok {
		return nil
	}
	return flanking{g, by, angle, newSway(g.heading, pace/math.Max(by, 0.1), start, until)}
}

// sway is a heading followed no faster than a rate: exactly where it turns
// slower, late where it turns faster, slowing down as it catches up. It is
// worked out once at even times and is linear between them.
type sway struct {
	start  float64
	angles []float64
}

const swayStep = 1.0 / 96

func newSway(heading func(float64) float64, rate, start, until float64) sway {
	n := max(1, int(math.Ceil((until-start)/swayStep)))
	s := sway{start: start}
	brake := 2 * rate // radians/s²: full rate is lost in half a second
	was := heading(start)
	at := was
	lag := false
	for i := 0; i <= n; i++ {
		now := heading(start + float64(i)*swayStep)
		turned := geom.AngleDiff(was, now)
		was = now
		off := geom.AngleDiff(at, now)
		switch {
		case !lag && math.Abs(turned) <= rate*swayStep:
			at += off // follows exactly
		default:
			lag = true
			// Catching up on top of what the target itself turns; off has
			// this step's turn in it already.
			behind := off - turned
			step := turned + math.Copysign(math.Min(math.Sqrt(2*brake*math.Abs(behind))*swayStep, math.Abs(behind)), behind)
			at += clamp(step, -rate*swayStep, rate*swayStep)
			if math.Abs(geom.AngleDiff(at, now)) < 1e-6 {
				lag = false
			}
		}
		s.angles = append(s.angles, at)
	}
	return s
}

func (s sway) at(t float64) float64 {
	x := (t - s.start) / swayStep
	last := len(s.angles) - 1
	switch {
	case !(x > 0):
		return s.angles[0]
	case x >= float64(last):
		return s.angles[last]
	}
	k := int(x)
	return s.angles[k] + (s.angles[k+1]-s.angles[k])*(x-float64(k))
}
