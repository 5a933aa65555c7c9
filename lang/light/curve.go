package light

import (
	"math"
	"sort"

	"longhand/lang/units"
)

// Fade is one change of level: from whatever the level is at Start, in a
// straight line to To.
type Fade struct {
	Start, Over units.Seconds
	To          units.Percent
}

// Curve is a level over time: straight pieces between knots, steps where two
// knots share a time.
type Curve struct{ knots []knot }

type knot struct {
	t     units.Seconds
	level units.Percent
}

// Overlap is a fade that begins before another has ended, or with it, and takes
// over from it.
type Overlap struct {
	Earlier, Later int // places in the fades given
	From, To       units.Seconds
}

// NewCurve follows fades, in order of their starts, from a level. A fade that
// begins while another runs takes over from where the level is; the second
// result lists those. Levels are held to 0 to 100, a negative length is 0.
func NewCurve(level units.Percent, fades []Fade) (Curve, []Overlap) {
	order := make([]int, len(fades))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(a, b int) bool { return fades[order[a]].Start < fades[order[b]].Start })

	c := Curve{knots: []knot{{units.Seconds(math.Inf(-1)), hold(level)}}}
	var overlaps []Overlap
	for n, i := range order {
		f := fades[i]
		end := f.Start + max(f.Over, 0)
		if n > 0 {
			before := fades[order[n-1]]
			if until := before.Start + max(before.Over, 0); until > f.Start || before.Start == f.Start {
				overlaps = append(overlaps, Overlap{order[n-1], i, f.Start, min(until, end)})
			}
		}
		from := c.before(f.Start)
		for len(c.knots) > 1 && c.knots[len(c.knots)-1].t > f.Start {
			c.knots = c.knots[:len(c.knots)-1]
		}
		c.knots = append(c.knots, knot{f.Start, from}, knot{end, hold(f.To)})
	}
	return c, overlaps
}

func hold(p units.Percent) units.Percent { return max(0, min(100, p)) }

// At is the level at a time; at a step, the level after it.
func (c Curve) At(t units.Seconds) units.Percent {
	i := sort.Search(len(c.knots), func(i int) bool { return c.knots[i].t > t })
	return c.piece(i, t)
}

// before is the level as a time is approached; it differs from At at a step.
func (c Curve) before(t units.Seconds) units.Percent {
	i := sort.Search(len(c.knots), func(i int) bool { return c.knots[i].t >= t })
	return c.piece(i, t)
}

// piece is the level at t on the piece that ends at knot i.
func (c Curve) piece(i int, t units.Seconds) units.Percent {
	switch {
	case len(c.knots) == 0:
		return 0
	case i == 0:
		return c.knots[0].level
	case i == len(c.knots):
		return c.knots[i-1].level
	}
	a, b := c.knots[i-1], c.knots[i]
	if math.IsInf(float64(a.t), -1) || b.t <= a.t {
		return a.level
	}
	return a.level + (b.level-a.level)*units.Percent((t-a.t)/(b.t-a.t))
}

// Knots are the times at which the curve bends or steps, in order, each once.
func (c Curve) Knots() []units.Seconds {
	var out []units.Seconds
	for _, k := range c.knots {
		if !math.IsInf(float64(k.t), -1) && (len(out) == 0 || out[len(out)-1] != k.t) {
			out = append(out, k.t)
		}
	}
	return out
}

// Steepest is the fastest change of level on the curve, in per cent a second;
// infinite for a step.
func (c Curve) Steepest() float64 {
	fastest := 0.0
	for i := 2; i < len(c.knots); i++ {
		a, b := c.knots[i-1], c.knots[i]
		if d := math.Abs(float64(b.level - a.level)); d > 0 {
			fastest = math.Max(fastest, d/float64(b.t-a.t))
		}
	}
	return fastest
}
