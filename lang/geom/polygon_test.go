package geom

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// drawPolygon is simple: corners in the order of their direction from the
// middle, at distances of any ratio; clockwise as often as not.
func drawPolygon(t *rapid.T) Polygon {
	n := rapid.IntRange(3, 12).Draw(t, "corners")
	centre := drawPoint(t, "centre")
	var p Polygon
	for i := range n {
		p = append(p, centre.Add(Polar(rapid.Float64Range(0.3, 5).Draw(t, "radius"), 2*math.Pi*(float64(i)+0.3)/float64(n))))
	}
	if rapid.Bool().Draw(t, "clockwise") {
		slices.Reverse(p)
	}
	return p
}

func TestPolygonProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPolygon(t)
		assert.True(t, p.IsSimple())
		assert.Positive(t, p.CCW().SignedArea())
		q := drawPoint(t, "q")
		if rapid.Bool().Draw(t, "near") {
			q = p.Centroid().Add(q.Mul(0.1))
		}
		switch p.Locate(q) {
		case Inside:
			assert.Equal(t, 1, p.CCW().Winding(q))
			assert.Zero(t, p.Distance(q))
			assert.True(t, p.MeetsCircle(q, 0))
		case Outside:
			assert.Zero(t, p.Winding(q))
			assert.Positive(t, p.Distance(q))
		}
		for i := range p {
			assert.Equal(t, OnEdge, p.Locate(p[i]))
		}
		edge := p.Edge(rapid.IntRange(0, len(p)-1).Draw(t, "edge"))
		assert.InDelta(t, 0, p.EdgeDistance(edge.At(0.4)), 1e-12)
		// Moving it changes neither area nor how a moved point lies.
		heading := rapid.Float64Range(-4, 4).Draw(t, "heading")
		at := drawPoint(t, "at")
		moved := p.Placed(at, heading)
		assert.InEpsilon(t, p.Area(), moved.Area(), 1e-9)
		assert.InDelta(t, p.EdgeDistance(q), moved.EdgeDistance(q.Rotate(heading).Add(at)), 1e-9)
		// The hull.
		hull := Hull(p)
		assert.True(t, hull.IsConvex())
		assert.GreaterOrEqual(t, hull.Area(), p.Area()-1e-9)
		for _, corner := range p {
			assert.True(t, hull.Contains(corner))
		}
		if p.IsConvex() {
			assert.InEpsilon(t, p.Area(), hull.Area(), 1e-9)
		}
		// Convex parts fill it and don't overlap: they add up.
		parts, ok := p.ConvexParts()
		assert.True(t, ok)
		sum, within := 0.0, 0
		for _, part := range parts {
			assert.True(t, part.IsConvex())
			assert.Positive(t, part.SignedArea())
			sum += part.SignedArea()
			if part.Locate(q) == Inside {
				within++
			}
		}
		assert.InEpsilon(t, p.Area(), sum, 1e-9)
		if p.Locate(q) == Outside {
			assert.Zero(t, within)
		}
		assert.LessOrEqual(t, len(parts), len(p)-2)
	})
}

func TestPolygonDistances(t *testing.T) {
	box := Rectangle(Vec{4, 2}, Vec{0, 0})
	wedge := Polygon{{0, 0}, {4, 0}, {4, 2}}
	assert.Equal(t, OnEdge, wedge.Locate(Vec{2, 1}), "on the slant")
	assert.Equal(t, Inside, wedge.Locate(Vec{2, math.Nextafter(1, 0)}))
	assert.Equal(t, Outside, wedge.Locate(Vec{2, math.Nextafter(1, 2)}))
	assert.Equal(t, OnEdge, wedge.Locate(Vec{4, 1}))
	assert.InDelta(t, 5, box.Distance(Vec{7, 6}), 1e-12)
	assert.InDelta(t, 5, box.DistanceTo(Polygon{{7, 6}, {9, 6}, {9, 8}}), 1e-12)
	assert.Zero(t, box.DistanceTo(Rectangle(Vec{1, 0.5}, Vec{2, 1})))
	assert.Zero(t, Rectangle(Vec{1, 0.5}, Vec{2, 1}).DistanceTo(box))
	assert.Zero(t, box.DistanceTo(Rectangle(Vec{-1, 0.5}, Vec{9, 1})), "a cross")
	assert.True(t, box.MeetsCircle(Vec{5, 1}, 1))
	assert.False(t, box.MeetsCircle(Vec{5, 1}, 0.99))
	for _, c := range []struct {
		name string
		s    Segment
		want Meeting
	}{
		{"through", Segment{Vec{-1, 1}, Vec{5, 1}}, Crossing},
		{"within", Segment{Vec{1, 1}, Vec{2, 1}}, Crossing},
		{"along an edge", Segment{Vec{-1, 0}, Vec{5, 0}}, Touching},
		{"past a corner", Segment{Vec{3, 3}, Vec{5, 1}}, Touching},
		{"corner to corner", Segment{Vec{-1, -0.5}, Vec{6, 3}}, Crossing},
		{"diagonal", Segment{Vec{0, 0}, Vec{4, 2}}, Crossing},
		{"by", Segment{Vec{-1, 3}, Vec{5, 3}}, Apart},
	} {
		assert.Equal(t, c.want, box.MeetsSegment(c.s), c.name)
	}
	assert.Equal(t, Polygon{{0, 0}, {2, 0}, {2, 2}, {0, 2}}, Polygon{{0, 2}, {2, 2}, {2, 1}, {2, 0}, {2, 0}, {1, 0}, {0, 0}}.Clean().from(Vec{}))
	bow := Polygon{{0, 0}, {2, 2}, {2, 0}, {0, 2}}
	assert.False(t, bow.IsSimple())
	assert.False(t, bow.IsConvex())
	assert.NotPanics(t, func() {
		_, ok := bow.ConvexParts()
		assert.False(t, ok)
	})
	// A star goes round twice: every corner turns left, yet it isn't convex.
	var star Polygon
	for i := range 5 {
		star = append(star, Polar(1, float64(i)*4*math.Pi/5))
	}
	assert.False(t, star.IsConvex())
	assert.Equal(t, 2, star.Winding(Vec{}))
	assert.Equal(t, Vec{1.5, 1}, Rectangle(Vec{}, Vec{3, 2}).Centroid())
}

// from begins the polygon at a corner.
func (p Polygon) from(corner Vec) Polygon {
	i := slices.Index(p, corner)
	return append(slices.Clone(p[i:]), p[:i]...)
}

// A mitred ribbon's area is its length times its thickness: what the mitres add
// outside they take inside. Closed, it is the ring between two rectangles.
func TestRibbon(t *testing.T) {
	total := func(quads []Polygon) float64 {
		sum := 0.0
		for _, q := range quads {
			sum += q.SignedArea()
		}
		return sum
	}
	line := []Vec{{0, 0}, {4, 0}, {4, 0}, {4, 3}, {9, 5}}
	open := Ribbon(line, 0.2, false)
	assert.Len(t, open, 3)
	assert.InDelta(t, 0.2*NewStraight(line...).Length(), total(open), 1e-12)
	assert.Equal(t, open[0][2], open[1][3])
	ring := Ribbon(Rectangle(Vec{}, Vec{4, 3}), 0.2, true)
	assert.Len(t, ring, 4)
	assert.InDelta(t, 4.2*3.2-3.8*2.8, total(ring), 1e-12)
	assert.Nil(t, Ribbon([]Vec{{1, 1}, {1, 1}}, 0.2, false))
	assert.Nil(t, Ribbon(line, 0, false))

	// A hairpin doesn't grow a spike: nothing is further out than a square end.
	for _, q := range Ribbon([]Vec{{0, 0}, {5, 0}, {0, 0.4}}, 0.2, false) {
		for _, corner := range q {
			assert.LessOrEqual(t, corner.X, 5.2)
		}
	}

	rapid.Check(t, func(t *rapid.T) {
		points := drawPoints(t)
		quads := Ribbon(points, 0.2, rapid.Bool().Draw(t, "closed"))
		for _, q := range quads {
			assert.True(t, q.IsConvex() && q.SignedArea() > 0)
		}
		// The middle of the wall is covered everywhere, joints too.
		way := NewStraight(points...)
		if way.Length() == 0 {
			return
		}
		s := rapid.Float64Range(0, 1).Draw(t, "s") * way.Length()
		nearest := math.Inf(1)
		for _, q := range quads {
			nearest = min(nearest, q.Distance(way.At(s)))
		}
		assert.LessOrEqual(t, nearest, 1e-9)
	})
}
