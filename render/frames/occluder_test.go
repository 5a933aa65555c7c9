package frames

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"longhand/lang/geom"
	"longhand/lang/sight"
	"longhand/render/scene"
)

// meetsBox is whether the way from the origin to p meets the inside of an upright
// prism that is so much larger on every side, by cutting the way with its faces:
// another method than the occluder's.
func meetsBox(from, to geom.Vec3, p geom.Polygon, z [2]float64, larger float64) bool {
	t0, t1 := 0.0, 1.0
	cut := func(fa, fb float64) bool {
		fa, fb = fa+larger, fb+larger
		switch {
		case fa < 0 && fb < 0:
			return false
		case fa < 0:
			t0 = math.Max(t0, fa/(fa-fb))
		case fb < 0:
			t1 = math.Min(t1, fa/(fa-fb))
		}
		return t0 < t1
	}
	for i := range p {
		n := sideNormal(p, i)
		if !cut(n.Dot(p[i].At(0).Sub(from)), n.Dot(p[i].At(0).Sub(to))) {
			return false
		}
	}
	return cut(z[1]-from.Z, z[1]-to.Z) && cut(from.Z-z[0], to.Z-z[0])
}

// What an occluder takes out of a line is just what the solid stands before.
func TestHiddenIsWhatASolidStandsBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		var points []geom.Vec
		for range rapid.IntRange(3, 7).Draw(t, "corners") {
			points = append(points, geom.Vec{X: f(2, 6, "x"), Y: f(-2, 2, "y")})
		}
		h := geom.Hull(points)
		pr, ok := newPrism(h, f(0, 1, "low"), f(1.2, 3, "high"), false)
		if !ok || h.Area() < 0.2 || len(pr.parts) != 1 {
			t.Skip()
		}
		l := newLens(sight.View{X: f(-2, 0, "cx"), Y: f(-1, 1, "cy"), Z: f(0.2, 4, "cz"), Focal: 20}, 25, scene.BoxAt(0, 0, 100, 60))
		hiders, ok := pr.occluders(l)
		if !ok {
			t.Skip()
		}
		a := geom.Vec3{X: f(1.5, 12, "ax"), Y: f(-4, 4, "ay"), Z: f(0, 3, "az")}
		b := geom.Vec3{X: f(1.5, 12, "bx"), Y: f(-4, 4, "by"), Z: f(0, 3, "bz")}
		t0, t1, hit := hiders[0].hides(l.see(a), l.see(b))
		for i := range 21 {
			k := float64(i) / 20
			p := lerp(a, b, k)
			inside := hit && k >= t0 && k <= t1
			const unsure = 5 * slack
			if inside && !meetsBox(l.at, p, pr.polygon, pr.z, unsure) {
				t.Fatalf("at %v the line is taken out, and nothing stands before it", k)
			}
			if !inside && meetsBox(l.at, p, pr.polygon, pr.z, -unsure) {
				t.Fatalf("at %v the line shows through the solid", k)
			}
		}
	})
}

func TestShownLeavesTheEndsOfALineBehindAPost(t *testing.T) {
	l := newLens(sight.View{Z: 1, Focal: 25}, 25, scene.BoxAt(0, 0, 100, 60))
	post, ok := newPrism([]geom.Vec{{X: 2, Y: -0.1}, {X: 2.2, Y: -0.1}, {X: 2.2, Y: 0.1}, {X: 2, Y: 0.1}}, 0, 3, false)
	assert.True(t, ok)
	hiders, _ := post.occluders(l)
	a, b := l.see(geom.Vec3{X: 4, Y: -1, Z: 1}), l.see(geom.Vec3{X: 4, Y: 1, Z: 1})
	left := shown(a, b, hiders)
	assert.Len(t, left, 2)
	// Similar triangles: the front face, 0.2 m wide at 2 m, hides 0.4 m at 4 m.
	hidden := 2 - left[0][1].Sub(left[0][0]).Len() - left[1][1].Sub(left[1][0]).Len()
	assert.InDelta(t, 0.4, hidden, 2*2*slack)
	before := shown(l.see(geom.Vec3{X: 1, Y: -1, Z: 1}), l.see(geom.Vec3{X: 1, Y: 1, Z: 1}), hiders)
	assert.Len(t, before, 1, "what stands before the post is whole")
}

func TestSeamsOfAWallGoAndItsCornersStay(t *testing.T) {
	left, _ := newPrism([]geom.Vec{{X: 0, Y: 0}, {X: 2, Y: 0}, {X: 2, Y: 0.1}, {X: 0, Y: 0.1}}, 0, 3, false)
	sill, _ := newPrism([]geom.Vec{{X: 2, Y: 0}, {X: 3, Y: 0}, {X: 3, Y: 0.1}, {X: 2, Y: 0.1}}, 0, 1, false)
	upright := func(es []edge, x float64) (length float64) {
		for _, e := range es {
			if math.Abs(e.a.X-x) < 1e-9 && math.Abs(e.b.X-x) < 1e-9 && e.a.Y == 0 && e.b.Y == 0 {
				length += math.Abs(e.b.Z - e.a.Z)
			}
		}
		return length
	}
	assert.InDelta(t, 3, upright(left.edges(), 2), 1e-9)
	es := withoutSeams(left.edges(), []*prism{&sill})
	assert.InDelta(t, 2, upright(es, 2), 2*touch, "only above the sill is there an edge")
	assert.InDelta(t, 3, upright(es, 0), 1e-9)
}

func TestRoomsHaveCorners(t *testing.T) {
	a, _ := newPrism([]geom.Vec{{X: 0, Y: -0.1}, {X: 4, Y: -0.1}, {X: 4, Y: 0.1}, {X: 0, Y: 0.1}}, 0, 3, false)
	b, _ := newPrism([]geom.Vec{{X: -0.1, Y: 0}, {X: 0.1, Y: 0}, {X: 0.1, Y: 4}, {X: -0.1, Y: 4}}, 0, 2, false)
	var corner, rim float64
	for _, e := range meeting(&a, &b) {
		if e.a.X == e.b.X && e.a.Y == e.b.Y {
			if e.a.X > 0.05 { // the room's side; the other one is outside
				assert.InDelta(t, 0.1, e.a.X, 1e-9)
				assert.InDelta(t, 0.1, e.a.Y, 1e-9)
				corner += e.b.Z - e.a.Z
			}
		} else {
			assert.Equal(t, 2.0, e.a.Z)
			rim += e.b.Sub(e.a).Len()
		}
	}
	assert.InDelta(t, 2, corner, 1e-9)
	assert.Positive(t, rim, "the lower wall's top meets the higher one's face")
}
