package geom

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

// run is a curve for tests, by its speed and the derivative of that.
type run struct{ v, dv func(u float64) float64 }

func (r run) speed(u float64) float64 { return r.v(u) }
func (r run) swell(u float64) float64 { return r.dv(u) }

// ellipse with half axes a (x) and b (y), by the angle.
func ellipse(a, b float64) run {
	v := func(u float64) float64 { return math.Hypot(a*math.Sin(u), b*math.Cos(u)) }
	return run{v, func(u float64) float64 { return (a*a - b*b) * math.Sin(u) * math.Cos(u) / v(u) }}
}

// Closed forms, and gonum's quadrature for each.
func TestLengths(t *testing.T) {
	quarter := 4 * (math.Sqrt2 - 1) / 3 // the cubic Bézier's arms for a quarter circle
	bezier := hermite(Vec{1, 0}, Vec{0, 1}, Vec{0, 3 * quarter}, Vec{-3 * quarter, 0})
	parabola := cubic{b: Vec{1, 0}, c: Vec{0, 1}, end: Vec{1, 1}}
	for _, c := range []struct {
		id     string
		curve  run
		u1     float64
		length float64
		slop   float64
	}{
		// Published error of the arms 4(√2-1)/3; length computed with it.
		{"KIN-2", run{bezier.speed, bezier.swell}, 1, 1.5710167, 1e-7},
		// √5/2 + asinh(2)/4.
		{"KIN-3", run{parabola.speed, parabola.swell}, 1, 1.4789428575446, 1e-9},
		// 4aE(e), the complete elliptic integral.
		{"KIN-4", ellipse(2, 1), 2 * math.Pi, 9.68844822054768, 1e-9},
		{"KIN-5", ellipse(5, 3), 2 * math.Pi, 25.526998863398, 1e-9},
		// A cycloid's arch is eight radii (Wren 1658); it stands still at its ends.
		{"KIN-6", run{
			func(u float64) float64 { return 2 * math.Sin(u/2) },
			func(u float64) float64 { return math.Cos(u / 2) },
		}, 2 * math.Pi, 8, 1e-9},
		// A spiral stair: √((2πr)² + pitch²).
		{"KIN-7", run{
			func(float64) float64 { return math.Hypot(3, 2/(2*math.Pi)) },
			func(float64) float64 { return 0 },
		}, 2 * math.Pi, 18.955362, 1e-6},
		// The clothoid ∫cos t², ∫sin t² has its parameter for a length
		// (planetmath.org).
		{"KIN-10", run{
			func(u float64) float64 { return math.Hypot(math.Cos(u*u), math.Sin(u*u)) },
			func(float64) float64 { return 0 },
		}, 2, 2, 1e-9},
	} {
		t.Run(c.id, func(t *testing.T) {
			r := measure(c.curve, 0, c.u1)
			assert.InDelta(t, c.length, r.length, c.slop)
			assert.InDelta(t, quad.Fixed(c.curve.v, 0, c.u1, 200, quad.Legendre{}, 0), r.length, 1e-8*r.length)
			for k := range 101 { // the inverse, against the same quadrature
				s := r.length * float64(k) / 100
				u := r.param(s)
				assert.InDelta(t, s, quad.Fixed(c.curve.v, 0, u, 200, quad.Legendre{}, 0), 1e-8*r.length)
			}
		})
	}
	radial := 0.0
	for u := 0.0; u <= 1; u += 1e-4 {
		radial = math.Max(radial, bezier.at(u).Len()-1)
	}
	assert.InDelta(t, 2.7253e-4, radial, 1e-7, "KIN-2: radial error")
	assert.InDelta(t, 0.5522847498, quarter, 1e-9, "KIN-2: arms")
}

// The rule against tabulated integrals.
func TestQuadrature(t *testing.T) {
	integral := func(f func(float64) float64, to float64) float64 {
		sum := 0.0
		for k := range 8 {
			sum += gauss(run{v: f}, to*float64(k)/8, to*float64(k+1)/8)
		}
		return sum
	}
	fresnelC := func(u float64) float64 { return math.Cos(math.Pi / 2 * u * u) }
	fresnelS := func(u float64) float64 { return math.Sin(math.Pi / 2 * u * u) }
	// KIN-8, KIN-9: Abramowitz & Stegun, table 7.7.
	assert.InDelta(t, 0.7798934004, integral(fresnelC, 1), 1e-9)
	assert.InDelta(t, 0.4382591474, integral(fresnelS, 1), 1e-9)
	assert.InDelta(t, 0.4923442259, integral(fresnelC, 0.5), 1e-9)
	assert.InDelta(t, 0.0647324329, integral(fresnelS, 0.5), 1e-9)
	// The end of a clothoid that reaches radius R after a length L, computed
	// apart from the project: KIN-11 an entry of 4 m, KIN-12 a road's.
	for _, c := range []struct{ radius, length, x, y, degrees, slop float64 }{
		{4, 6, 5.671176, 1.440800, 42.9718, 1e-5},
		{100, 60, 59.46225, 5.96154, 17.18873, 1e-4},
	} {
		heading := func(s float64) float64 { return s * s / (2 * c.radius * c.length) }
		assert.InDelta(t, c.x, integral(func(s float64) float64 { return math.Cos(heading(s)) }, c.length), c.slop)
		assert.InDelta(t, c.y, integral(func(s float64) float64 { return math.Sin(heading(s)) }, c.length), c.slop)
		assert.InDelta(t, c.degrees, heading(c.length)*180/math.Pi, 5e-5)
	}
}

func TestSplineLengthAgainstQuadrature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := NewCurved(drawPoints(t)...)
		for i := range p.pieces {
			c := &p.pieces[i].cubic
			if p.pieces[i].kind != cubicPiece {
				continue
			}
			// Cut where the speed is least: a near-cusp needs the points there.
			want, parts := 0.0, 64
			for k := range parts {
				want += quad.Fixed(c.speed, float64(k)/float64(parts), float64(k+1)/float64(parts), 60, quad.Legendre{}, 0)
			}
			assert.InEpsilon(t, want, p.pieces[i].length, 1e-8)
		}
	})
}

// A curve on which the square of a speed is no number here and there is as good as a
// point, and is not cut without end.
func TestMeasureOfAlmostEndlessCurves(t *testing.T) {
	for _, far := range []float64{1e149, 5e153, 1e300} {
		p := NewCurved(Vec{-far, far}, Vec{-1.84 * far, 0}, Vec{-far, 1.84 * far})
		for i := range p.pieces {
			assert.LessOrEqual(t, len(p.pieces[i].ruler.stretches), 1<<10, "%g", far)
		}
	}
}
