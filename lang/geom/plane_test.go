package geom

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// MIR-4, by p - 2((p-q)·n/|n|²)n; MIR-5, the law of reflection by the image.
func TestMirror(t *testing.T) {
	near := func(want, got Vec) { t.Helper(); assert.InDelta(t, 0, want.Dist(got), 1e-12) }
	near(Vec{8, 3}, Segment{Vec{5, 0}, Vec{5, 1}}.Mirror(Vec{2, 3}))
	near(Vec{3, 2}, Segment{Vec{0, 0}, Vec{1, 1}}.Mirror(Vec{2, 3}))
	near(Vec{2, 3}, Segment{Vec{1, 1}, Vec{1, 1}}.Mirror(Vec{2, 3}))
	image := MirrorInPlane(Vec3{1, 2, 3}, Vec3{1, 0, 0}, Vec3{1, 1, 1})
	assert.InDelta(t, 0, image.Dist(Vec3{-7.0 / 3, -4.0 / 3, -1.0 / 3}), 1e-12)

	glass := Segment{Vec{-10, 3}, Vec{10, 3}}
	camera, subject := Vec{}, Vec{4, 0}
	way := Segment{camera, glass.Mirror(subject)}
	assert.InDelta(t, 7.211103, way.Length(), 1e-6)
	k, _, ok := way.Intersect(glass)
	assert.True(t, ok)
	near(Vec{2, 3}, way.At(k))
	// MIR-6: a mirror turned by 10 degrees turns the image by 20.
	turned := Segment{Vec{}, Polar(1, 10*math.Pi/180)}.Mirror(Vec{5, 0})
	assert.InDelta(t, 20, turned.Angle()*180/math.Pi, 1e-12)
}

// KIN-20, by the projection onto the segment.
func TestPointToSegment(t *testing.T) {
	s := Segment{Vec{0, 0}, Vec{8, 6}}
	assert.InDelta(t, 0.8, s.Distance(Vec{4, 4}), 1e-12)
	assert.InDelta(t, 0.56, s.Closest(Vec{4, 4}), 1e-12)
	assert.InDelta(t, 5, s.Distance(Vec{12, 9}), 1e-12)
}

// LOS-10: a post beside a line of sight (a distance less a radius).
func TestPostBesideALine(t *testing.T) {
	sight, post := Segment{Vec{0, 0}, Vec{8, 0}}, Vec{4, 0.2}
	assert.Less(t, sight.Distance(post), 0.25)
	assert.InDelta(t, 0.05, sight.Distance(post)-0.15, 1e-12)
}

func TestSegmentsMeet(t *testing.T) {
	s := Segment{Vec{0, 0}, Vec{4, 0}}
	for _, c := range []struct {
		name    string
		t       Segment
		meeting Meeting
		onS     float64
	}{
		{"across", Segment{Vec{1, -1}, Vec{1, 1}}, Crossing, 0.25},
		{"tee", Segment{Vec{2, 0}, Vec{2, 1}}, Touching, 0.5},
		{"corner", Segment{Vec{4, 0}, Vec{4, 1}}, Touching, 1},
		{"along", Segment{Vec{3, 0}, Vec{6, 0}}, Touching, 0.75},
		{"along, backwards", Segment{Vec{3, 0}, Vec{1, 0}}, Touching, 0.25},
		{"in line", Segment{Vec{5, 0}, Vec{6, 0}}, Apart, 0},
		{"short of it", Segment{Vec{1, 1e-300}, Vec{1, 1}}, Apart, 0},
		{"beside", Segment{Vec{0, 1}, Vec{4, 1}}, Apart, 0},
	} {
		assert.Equal(t, c.meeting, s.Meets(c.t), c.name)
		assert.Equal(t, c.meeting, c.t.Meets(s), c.name)
		k, l, ok := s.Intersect(c.t)
		assert.Equal(t, c.meeting != Apart, ok, c.name)
		if ok {
			assert.InDelta(t, c.onS, k, 1e-12, c.name)
			assert.InDelta(t, 0, s.At(k).Dist(c.t.At(l)), 1e-12, c.name)
		}
	}
	_, _, d := s.ClosestTo(Segment{Vec{5, 1}, Vec{9, 7}})
	assert.InDelta(t, math.Sqrt2, d, 1e-12)
}

func TestOrient(t *testing.T) {
	// Points a rounding off a line, where a plain determinant fails (Kettner,
	// Mehlhorn et al. 2008, "Classroom examples of robustness problems").
	const ulp = 1.0 / (1 << 53)
	for i := range 32 {
		for j := range 32 {
			p := Vec{0.5 + float64(i)*ulp, 0.5 + float64(j)*ulp}
			want := Turn(0)
			if j > i {
				want = Left
			} else if j < i {
				want = Right
			}
			assert.Equal(t, want, Orient(Vec{12, 12}.Mul(-1), Vec{24, 24}, p))
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := drawPoint(t, "a"), drawPoint(t, "b"), drawPoint(t, "c")
		if rapid.Bool().Draw(t, "on the line") {
			c = a.Lerp(b, rapid.Float64Range(-1, 2).Draw(t, "k"))
		}
		o := Orient(a, b, c)
		assert.Equal(t, o, Orient(b, c, a))
		assert.Equal(t, o, Orient(c, a, b))
		assert.Equal(t, -o, Orient(b, a, c))
		assert.Equal(t, o, orientExact(a, b, c))
	})
	assert.Equal(t, Straight, Orient(Vec{math.NaN(), 0}, Vec{1, 1}, Vec{2, 2}))
}

// KIN-19, as collision warnings do it: the least of a quadratic.
func TestClosestApproach(t *testing.T) {
	a, b := Mover{Vec{0, 0}, Vec{1.2, 0}}, Mover{Vec{6, -4}, Vec{0, 0.9}}
	time, distance := ClosestApproach(a, b, math.Inf(1))
	assert.InDelta(t, 4.8, time, 1e-9)
	assert.InDelta(t, 0.4, distance, 1e-9)
	time, _ = ClosestApproach(a, b, 2)
	assert.InDelta(t, 2, time, 0)
	time, distance = ClosestApproach(a, Mover{Vec{3, 4}, Vec{1.2, 0}}, 9)
	assert.Zero(t, time)
	assert.InDelta(t, 5, distance, 1e-12)
}

func TestFirstContact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Mover{drawPoint(t, "a"), drawPoint(t, "va").Mul(0.1)}
		b := Mover{drawPoint(t, "b"), drawPoint(t, "vb").Mul(0.1)}
		reach := rapid.Float64Range(0.1, 3).Draw(t, "reach")
		time, ok := FirstContact(a, b, reach, 30)
		gap := func(t float64) float64 { return a.Position(t).Dist(b.Position(t)) }
		closest, least := ClosestApproach(a, b, 30)
		if math.Abs(least-reach) > 1e-9 {
			assert.Equal(t, least < reach, ok)
		}
		if ok {
			assert.LessOrEqual(t, time, closest+1e-6)
			if time > 0 {
				assert.InDelta(t, reach, gap(time), 1e-9)
				assert.GreaterOrEqual(t, gap(time/2), reach-1e-9)
			}
		}
		// Against a wall, by small steps.
		wall := Segment{drawPoint(t, "from"), drawPoint(t, "to")}
		time, ok = FirstContactSegment(a, wall, reach, 30)
		if ok {
			if time > 0 {
				assert.InDelta(t, reach, wall.Distance(a.Position(time)), 1e-7)
			}
		} else {
			time = 30
		}
		block := Polygon{wall.A, wall.B, wall.A.Lerp(wall.B, 0.5).Add(wall.B.Sub(wall.A).Left())}
		hit, met := FirstContactPolygon(a, block, reach, 30)
		if met && hit > 0 {
			assert.InDelta(t, reach, block.Distance(a.Position(hit)), 1e-7)
		} else if !met {
			hit = 30
		}
		for k := range 60 {
			assert.GreaterOrEqual(t, block.Distance(a.Position(hit*float64(k)/60)), min(reach, block.Distance(a.At))-1e-7)
			assert.GreaterOrEqual(t, wall.Distance(a.Position(time*float64(k)/60)), min(reach, wall.Distance(a.At))-1e-7)
		}
	})
}
