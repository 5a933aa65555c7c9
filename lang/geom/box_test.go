package geom

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestBoxesApart(t *testing.T) {
	a := BoxAt(Vec{1, 2}).With(Vec{3, 1}).With(Vec{2, 4})
	assert.Equal(t, Box{Vec{1, 1}, Vec{3, 4}}, a)
	assert.Equal(t, 2.0, a.Apart(BoxAt(Vec{5, 3})))
	assert.Equal(t, 3.0, a.Apart(BoxAt(Vec{0, 7})))
	assert.Equal(t, -1.0, a.Apart(BoxAt(Vec{2, 3})))
}

// No two points of two boxes are nearer than the boxes are apart.
func TestBoxesAreNoFurtherApartThanTheirPoints(t *testing.T) {
	point := func(t *rapid.T) Vec {
		return Vec{rapid.Float64Range(-9, 9).Draw(t, "x"), rapid.Float64Range(-9, 9).Draw(t, "y")}
	}
	rapid.Check(t, func(t *rapid.T) {
		p, q := point(t), point(t)
		a, b := BoxAt(point(t)).With(p), BoxAt(point(t)).With(q)
		require.LessOrEqual(t, a.Apart(b), p.Dist(q)+1e-12)
		require.Equal(t, a.Apart(b), b.Apart(a))
	})
}
