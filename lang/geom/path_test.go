package geom

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// KIN-1: length, chord and sagitta of a quarter circle of 3 m (closed forms).
func TestArc(t *testing.T) {
	p := NewArc(Vec{1, 2}, 3, 0, math.Pi/2)
	assert.InDelta(t, 4.712389, p.Length(), 1e-6)
	chord := p.End().Sub(p.Start())
	assert.InDelta(t, 4.242641, chord.Len(), 1e-6)
	middle := p.At(p.Length() / 2).Sub(p.Start())
	assert.InDelta(t, 0.878680, math.Abs(middle.Cross(chord.Unit())), 1e-6)
	assert.InDelta(t, 1.0/3, p.Curvature(1), 1e-12)
	assert.InDelta(t, math.Pi/2, p.Heading(0), 1e-12)
	assert.InDelta(t, math.Pi, p.Heading(p.Length()), 1e-12)
}

func TestEightGoesOnceRoundEach(t *testing.T) {
	a, b := Vec{0, 0}, Vec{4, 0}
	for _, start := range []Vec{{-1, 0}, {2, 0}, {5, 0}, {0.5, 0.2}, {1, 3}, {-1, -3}, {4, 1}, {2, 0.5}} {
		p, err := NewEight(start, a, b, 1)
		require.NoError(t, err)
		assert.Equal(t, start, p.Start())
		assert.Equal(t, start, p.End())
		assert.Empty(t, p.Corners())
		assert.Equal(t, []float64{0, p.Length()}, p.Stops())
		assert.True(t, goesRound(p, a, 1) && goesRound(p, b, -1) || goesRound(p, a, -1) && goesRound(p, b, 1))
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b, start := drawPoint(t, "a"), drawPoint(t, "b"), drawPoint(t, "start")
		if rapid.Bool().Draw(t, "from the middle") {
			start = a.Lerp(b, 0.5)
		}
		if min(a.Dist(b), start.Dist(a), start.Dist(b)) < 1e-3 {
			return
		}
		p, err := NewEight(start, a, b, rapid.Float64Range(0, 20).Draw(t, "radius"))
		require.NoError(t, err)
		assert.Empty(t, p.Corners())
		assert.Equal(t, start, p.End())
	})
	_, err := NewEight(Vec{1, 1}, a, a, 1)
	assert.ErrorContains(t, err, "same place")
	_, err = NewEight(a, a, b, 1)
	assert.ErrorContains(t, err, "beside")
}

// KIN-13: rounding a right corner with r saves (4 - π)r/2 of the way; with 2 m,
// 0.858407 m.
func TestRoundedCorner(t *testing.T) {
	corner := []Vec{{0, 0}, {10, 0}, {10, 10}}
	p := NewRounded(2, corner...)
	assert.InDelta(t, 20-0.858407, p.Length(), 1e-6)
	assert.Empty(t, p.Corners())
	assert.Len(t, NewStraight(corner...).Corners(), 1)
	assert.InDelta(t, math.Pi/2, NewStraight(corner...).Corners()[0].Turn, 1e-12)
	assert.InDelta(t, p.Length()/2, p.Stops()[1], 1e-9)
	assert.Equal(t, []float64{0, 10, 10, 20}, NewRounded(0, Vec{}, Vec{10, 0}, Vec{10, 0}, Vec{10, 10}).Stops())
	tight := NewRounded(50, Vec{}, Vec{4, 0}, Vec{4, 4}, Vec{8, 4}, Vec{8, 8})
	assert.Empty(t, tight.Corners())
	assert.Equal(t, Vec{8, 8}, tight.End())
}

func drawPoint(t *rapid.T, name string) Vec {
	return Vec{rapid.Float64Range(-20, 20).Draw(t, name+" x"), rapid.Float64Range(-20, 20).Draw(t, name+" y")}
}

// drawPoints is marks of a path, some of them twice, some on a coarse grid.
func drawPoints(t *rapid.T) []Vec {
	var points []Vec
	for i := range rapid.IntRange(1, 6).Draw(t, "points") {
		switch rapid.IntRange(0, 3).Draw(t, "kind") {
		case 0:
			if i > 0 {
				points = append(points, points[i-1])
				continue
			}
			fallthrough
		case 1:
			points = append(points, Vec{float64(rapid.IntRange(0, 3).Draw(t, "gx")), float64(rapid.IntRange(0, 3).Draw(t, "gy"))})
		default:
			points = append(points, drawPoint(t, "point"))
		}
	}
	return points
}

func drawPath(t *rapid.T) (*Path, []Vec) {
	points := drawPoints(t)
	switch rapid.SampledFrom([]string{"straight", "curved", "from", "rounded", "arc", "eight", "joined"}).Draw(t, "kind") {
	case "straight":
		return NewStraight(points...), points
	case "curved":
		return NewCurved(points...), points
	case "from":
		return NewCurvedFrom(rapid.Float64Range(-4, 4).Draw(t, "heading"), points...), points
	case "rounded":
		return NewRounded(rapid.Float64Range(0, 3).Draw(t, "radius"), points...), nil
	case "eight":
		if p, err := NewEight(drawPoint(t, "start"), drawPoint(t, "a"), drawPoint(t, "b"), rapid.Float64Range(0, 5).Draw(t, "radius")); err == nil {
			return p, nil
		}
	case "joined":
		return NewCurved(points...).Append(drawArc(t), NewStraight(drawPoint(t, "p"), drawPoint(t, "q"))), nil
	}
	return drawArc(t), nil
}

func drawArc(t *rapid.T) *Path {
	return NewArc(drawPoint(t, "centre"), rapid.Float64Range(0.1, 5).Draw(t, "radius"),
		rapid.Float64Range(-7, 7).Draw(t, "start"), rapid.Float64Range(-9, 9).Draw(t, "sweep"))
}

// A path is where its marks are, moves a metre a metre, faces the way it goes,
// and is the same whichever way it is cut.
func TestPathProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, marks := drawPath(t)
		length := p.Length()
		stops := p.Stops()
		for i, mark := range marks {
			assert.LessOrEqual(t, p.At(stops[i]).Dist(mark), joinSlop)
		}
		assert.IsNonDecreasing(t, append([]float64{0}, stops...))
		assert.Equal(t, p.At(0), p.At(-3))
		assert.Equal(t, p.At(length), p.At(length+3))
		assert.InDelta(t, 0, p.AtExtended(-2).Dist(p.Start().Sub(p.Tangent(0).Mul(2))), 1e-9)
		assert.InDelta(t, 0, p.AtExtended(length+2).Dist(p.End().Add(p.Tangent(length).Mul(2))), 1e-9)
		if length == 0 {
			return
		}
		s := rapid.Float64Range(0, 1).Draw(t, "s") * length
		h := 1e-5
		step := p.At(s + h).Dist(p.At(s))
		assert.LessOrEqual(t, step, h*(1+1e-2), "never faster than along itself")
		if s > 2*h && s+2*h < length && math.Abs(p.Curvature(s)) < 10 && cornerFree(p, s, 3*h) {
			assert.InDelta(t, h, step, h*2e-2)
			assert.InDelta(t, 0, AngleDiff(p.Heading(s), p.At(s+h).Sub(p.At(s-h)).Angle()), 1e-3)
			turn := AngleDiff(p.Heading(s-h), p.Heading(s+h)) / (2 * h)
			if near := math.Max(math.Abs(p.Curvature(s-h)-p.Curvature(s)), math.Abs(p.Curvature(s+h)-p.Curvature(s))); near < 0.1 {
				assert.InDelta(t, turn, p.Curvature(s), 0.2+1e-2*math.Abs(turn))
			}
		}
		// Cut, and turned round.
		other := rapid.Float64Range(0, 1).Draw(t, "other") * length
		part := p.Sub(s, other)
		assert.InDelta(t, math.Abs(other-s), part.Length(), 1e-7)
		middle := part.Length() / 2
		assert.InDelta(t, 0, part.At(middle).Dist(p.At(s+math.Copysign(middle, other-s))), 1e-6)
		back := p.Reverse()
		assert.InDelta(t, 0, back.At(length-s).Dist(p.At(s)), 1e-6)
		assert.Len(t, back.Stops(), len(stops))
		whole := p.Sub(0, s).Append(p.Sub(s, length))
		assert.InDelta(t, length, whole.Length(), 1e-7)
		assert.InDelta(t, 0, whole.At(other).Dist(p.At(other)), 1e-6)
		// Polylines for drawing.
		points := p.Points(0.2)
		assert.Equal(t, p.Start(), points[0])
		assert.Equal(t, p.End(), points[len(points)-1])
		low, high := p.Bounds()
		for _, q := range points {
			assert.True(t, q.X >= low.X-1e-9 && q.Y >= low.Y-1e-9 && q.X <= high.X+1e-9 && q.Y <= high.Y+1e-9)
		}
	})
}

func cornerFree(p *Path, s, near float64) bool {
	for _, start := range p.starts {
		if math.Abs(start-s) < near {
			return false
		}
	}
	return true
}

// A spline has no corner, unless it comes straight back.
func TestCurvedIsSmooth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var points []Vec
		for range rapid.IntRange(2, 7).Draw(t, "n") {
			p := drawPoint(t, "p")
			if n := len(points); n == 0 || p.Dist(points[n-1]) > 1e-3 {
				points = append(points, p)
			}
		}
		p := NewCurved(points...)
		for _, corner := range p.Corners() {
			i := slices.Index(p.starts, corner.S)
			in, out := points[i].Sub(points[i-1]), points[i+1].Sub(points[i])
			assert.InDelta(t, math.Pi, math.Abs(math.Atan2(in.Cross(out), in.Dot(out))), 1e-6)
		}
	})
	there := NewCurved(Vec{0, 0}, Vec{4, 0}, Vec{0, 0})
	assert.InDelta(t, 8, there.Length(), 1e-9)
	assert.Len(t, there.Corners(), 1)
	assert.InDelta(t, 0.7, NewCurvedFrom(0.7, Vec{0, 0}, Vec{5, 5}, Vec{9, 0}).Heading(0), 1e-12)
}

func TestNearestAndCrossings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawPath(t)
		q := drawPoint(t, "q")
		s, d := p.Nearest(q)
		assert.InDelta(t, d, p.At(s).Dist(q), 1e-9)
		line := Segment{q, drawPoint(t, "end")}
		hits := p.Crossings(line)
		assert.Equal(t, len(hits) > 0, p.IntersectsSegment(line))
		sl, dl := p.NearestSegment(line)
		assert.InDelta(t, dl, line.Distance(p.At(sl)), hitSlop)
		for _, hit := range hits {
			assert.LessOrEqual(t, line.Distance(p.At(hit.S)), hitSlop)
			assert.LessOrEqual(t, line.At(hit.On).Dist(hit.At), hitSlop)
		}
		// Brute force: the path as a polyline.
		const steps = 800
		h := p.Length() / steps
		for k := range steps {
			a, b := p.At(float64(k)*h), p.At(float64(k+1)*h)
			assert.LessOrEqual(t, d, a.Dist(q)+1e-9)
			assert.LessOrEqual(t, dl, line.Distance(a)+1e-9)
			sideA, sideB := line.B.Sub(line.A).Unit().Cross(a.Sub(line.A)), line.B.Sub(line.A).Unit().Cross(b.Sub(line.A))
			bent := p.At((float64(k)+0.5)*h).Dist(a.Lerp(b, 0.5)) > 1e-3 // the chord may cross elsewhere
			if sideA*sideB < 0 && line.Length() > 1 && !bent {
				if on := (Segment{a, b}).At(sideA / (sideA - sideB)); line.Closest(on) > 0.01 && line.Closest(on) < 0.99 &&
					line.Distance(on) < 1e-6 {
					found := false
					for _, hit := range hits {
						found = found || hit.S >= float64(k)*h-1e-6 && hit.S <= float64(k+1)*h+1e-6
					}
					assert.True(t, found, "the crossing between %v and %v", a, b)
				}
			}
		}
	})
}

// Two turns and a half round the origin cross a spoke three times, or twice.
func TestCrossingsOfManyTurns(t *testing.T) {
	p := NewArc(Vec{}, 2, 0.5, 5*math.Pi)
	lengths := func(t Segment) (out []float64) {
		for _, hit := range p.Crossings(t) {
			out = append(out, hit.S)
		}
		return out
	}
	up := 2 * (math.Pi/2 - 0.5)
	assert.InDeltaSlice(t, []float64{up, up + 4*math.Pi, up + 8*math.Pi}, lengths(Segment{Vec{0, 0}, Vec{0, 3}}), 1e-9)
	down := up + 2*math.Pi
	assert.InDeltaSlice(t, []float64{down, down + 4*math.Pi}, lengths(Segment{Vec{0, 0}, Vec{0, -3}}), 1e-9)
	assert.Empty(t, lengths(Segment{Vec{0, 0}, Vec{1, 1}}))
	assert.InDeltaSlice(t, []float64{up, up + 4*math.Pi, up + 8*math.Pi}, lengths(Segment{Vec{-3, 2}, Vec{3, 2}}), 1e-6, "grazing")
}

func TestPathOfNothing(t *testing.T) {
	for _, p := range []*Path{NewStraight(), NewCurved(), NewCurved(Vec{2, 3}, Vec{2, 3}), NewRounded(1, Vec{2, 3}), NewArc(Vec{2, 3}, 0, 1, 2)} {
		assert.Zero(t, p.Length())
		assert.InDelta(t, 0, p.At(0).Dist(p.AtExtended(5).Sub(p.Tangent(0).Mul(5))), 1e-12)
		assert.NotPanics(t, func() {
			p.Sub(0, 1).Reverse().Append(p).Points(0.1)
			p.Nearest(Vec{1, 1})
			p.Crossings(Segment{Vec{0, 0}, Vec{4, 6}})
			p.Bounds()
		})
	}
	bad := Vec{math.NaN(), 1}
	assert.NotPanics(t, func() {
		p := NewCurved(bad, Vec{1, 1}, Vec{2, 5}, bad, Vec{math.Inf(1), 0}, Vec{4, 4})
		p.At(1)
		p.Sub(0.2, math.NaN()).Points(0.1)
		p.Nearest(Vec{1, 1})
		p.Crossings(Segment{bad, Vec{4, 6}})
	})
}
