package light

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/units"
)

// Throw is the light a lamp of an intensity, at a level of its law, gives at a
// point on a surface that faces a way (the inverse square and cosine laws). A
// zero facing is a surface turned to the lamp. The lamp is a point that shines
// evenly all round; a surface turned away gets nothing.
func Throw(lamp geom.Vec3, i units.Candela, point, facing geom.Vec3) units.Lux {
	to := lamp.Sub(point)
	d := to.Len()
	if d == 0 {
		return units.Lux(math.Inf(1))
	}
	cos := 1.0
	if n := facing.Len(); n > 0 {
		cos = math.Max(0, to.Dot(facing)/(d*n))
	}
	return units.Lux(float64(i) * cos / (d * d))
}

// Swing is how far apart the brightest and the darkest of some lights are, in
// stops; infinite where one is dark and another is not, 0 for fewer than two.
func Swing(lights []units.Lux) float64 {
	if len(lights) == 0 {
		return 0
	}
	low, high := lights[0], lights[0]
	for _, e := range lights {
		low, high = min(low, e), max(high, e)
	}
	if high == low {
		return 0
	}
	return math.Log2(float64(high / low))
}
