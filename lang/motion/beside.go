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
	ahead float64 // of what carries the camera, from the target's heading
}

func (f flanking) want(t float64) geom.Vec {
	return f.g.point(t).Add(geom.Polar(f.by, f.swing.at(t)+f.angle))
}

func (f flanking) face(t float64) float64 { return f.swing.at(t) + f.ahead }

// beside keeps at a bearing from the target's heading; what carries the camera
// faces by the target's heading, too.
func (b *builder) beside(to plan.Target, angle, by, ahead float64, lim Limits, start, until float64) relation {
	g, ok := b.target(to)
	if !ok {
		return nil
	}
	arm := max(by, 0.1)
	pace, accel := max(float64(lim.Forward.Typical), 0.3), max(float64(lim.Accel.Typical), 0.3)
	return flanking{g, by, angle, newSway(g.heading, pace/arm, accel/arm, start, until), ahead}
}

// sway is a heading followed no faster than a rate and with no more than an
// acceleration: exactly where the target turns slower, late where it turns
// faster, slowing down as it catches up. It is worked out once at even times and
// is linear between them.
type sway struct {
	start  float64
	step   float64
	angles []float64
}

const (
	swayStep = 1.0 / 24
	swayEasy = 0.7 // of the acceleration, kept for slowing down
)

func newSway(heading func(float64) float64, rate, accel, start, until float64) sway {
	n, step := looks(until-start, swayStep)
	s := sway{start: start, step: step, angles: make([]float64, 0, n+1)}
	was := heading(start)
	at, turning := was, 0.0
	s.angles = append(s.angles, at)
	if step == 0 {
		return s
	}
	for i := 1; i <= n; i++ {
		now := heading(start + float64(i)*step)
		behind := geom.AngleDiff(at, was)
		target := geom.AngleDiff(was, now) / step // the target's own rate
		was = now
		change := accel * step
		need := target + behind/step // the rate that catches up in this step
		if math.Abs(need) <= rate && math.Abs(need-turning) <= change && math.Abs(need-target) <= change {
			at, turning = at+geom.AngleDiff(at, now), need
		} else {
			wanted := target + math.Copysign(math.Sqrt(2*swayEasy*accel*math.Abs(behind)), behind)
			wanted = clamp(wanted, -rate, rate)
			turning += clamp(wanted-turning, -change, change)
			at += turning * step
		}
		s.angles = append(s.angles, at)
	}
	return s
}

func (s sway) at(t float64) float64 {
	last := len(s.angles) - 1
	if s.step == 0 {
		return s.angles[0]
	}
	x := (t - s.start) / s.step
	switch {
	case !(x > 0):
		return s.angles[0]
	case x >= float64(last):
		return s.angles[last]
	}
	k := int(x)
	return s.angles[k] + (s.angles[k+1]-s.angles[k])*(x-float64(k))
}
