package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/solid"
)

// level is the height of the floor along something: along a path by its
// length, along any other way by time. It is linear between samples.
type level struct {
	from, step float64
	z          []float64 // at least one
}

func (l level) at(x float64) float64 {
	last := len(l.z) - 1
	if last == 0 {
		return l.z[0]
	}
	i := (x - l.from) / l.step
	switch {
	case !(i > 0):
		return l.z[0]
	case i >= float64(last):
		return l.z[last]
	}
	k := int(i)
	return l.z[k] + (l.z[k+1]-l.z[k])*(i-float64(k))
}

// ground knows the floors of the set.
type ground struct {
	floors *solid.Floors
	flat   bool // nothing to stand on but the ground
}

const (
	levelStep = 0.05 // metres of way between samples of the floor
	climbRate = 1.5  // m/s up or down, at most (common practice, no source)
	tread     = 0.3  // metres over which a step up or down is taken (common practice, no source)
)

// along is the floor along a path for somebody who starts at height z. A step
// up or down is spread over a tread.
func (g ground) along(path *geom.Path, z float64) level {
	if g.flat && z == 0 {
		return level{step: 1, z: []float64{0}}
	}
	n, step := looks(path.Length(), levelStep)
	zs := make([]float64, n+1)
	zs[0] = z
	for i := 1; i <= n; i++ {
		z = g.floors.Under(path.At(step*float64(i)), z)
		zs[i] = z
	}
	if step == 0 {
		step = 1
	}
	return level{0, step, spread(zs, int(math.Round(tread/2/step)))}
}

// over is the floor under a way from start to end, sampled by time.
func (g ground) over(at func(t float64) geom.Vec, start, end, z float64) level {
	if g.flat && z == 0 || !(end > start) {
		return level{start, 1, []float64{z}}
	}
	const every = 0.04
	n, step := looks(end-start, every)
	zs := make([]float64, n+1)
	zs[0] = z
	for i := 1; i <= n; i++ {
		z = g.floors.Under(at(start+step*float64(i)), z)
		zs[i] = z
	}
	zs = spread(zs, int(math.Round(0.15/step)))
	for i := 1; i < len(zs); i++ { // nobody climbs or drops faster than this
		zs[i] = clamp(zs[i], zs[i-1]-climbRate*step, zs[i-1]+climbRate*step)
	}
	return level{start, step, zs}
}

// spread averages each sample with half as many on either side as it has, but
// no more than half; the ends keep their values.
func spread(zs []float64, half int) []float64 {
	sums := make([]float64, len(zs)+1)
	flat := true
	for i, z := range zs {
		sums[i+1] = sums[i] + z
		flat = flat && z == zs[0]
	}
	if flat {
		return zs[:1]
	}
	out := make([]float64, len(zs))
	for i := range zs {
		h := min(half, i, len(zs)-1-i)
		out[i] = (sums[i+h+1] - sums[i-h]) / float64(2*h+1)
	}
	return out
}

// tilted adds a ramp so that the level ends at z.
func (l level) tilted(length, z float64) level {
	miss := z - l.at(length)
	if miss == 0 {
		return l
	}
	if len(l.z) == 1 {
		return level{0, max(length, 1e-9), []float64{l.z[0], l.z[0] + miss}}
	}
	out := make([]float64, len(l.z))
	for i := range out {
		out[i] = l.z[i] + miss*float64(i)/float64(len(l.z)-1)
	}
	return level{l.from, l.step, out}
}

// raised ends the level at z by a ramp over the last of it, no longer than a step.
func (l level) raised(length, z float64) level {
	const step = 0.7
	from := max(0, length-step)
	n, dx := looks(length, levelStep)
	out := make([]float64, n+1)
	for i := range out {
		x := dx * float64(i)
		out[i] = l.at(l.from + x)
		if x > from {
			out[i] += (z - out[i]) * (x - from) / (length - from)
		}
	}
	return level{l.from, max(dx, 1e-9), out}
}
