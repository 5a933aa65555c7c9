package geom

import "math"

// NewCurved is the smooth path through all points: a centripetal Catmull-Rom
// spline (Barry & Goldman 1988; Yuksel, Schaefer & Keyser 2011: no cusp and no
// loop of its own within a leg), measured by arc length. It sets out towards
// the second point and arrives from the last but one. Two points make a line. A
// point that the path comes back from the way it went is a corner.
func NewCurved(points ...Vec) *Path {
	return throughLegs(points, func(distinct []Vec) []piece { return spline(distinct, nil) })
}

// NewCurvedFrom is NewCurved, but setting out in the given heading, radians: a
// move that takes over from another without a corner.
func NewCurvedFrom(heading float64, points ...Vec) *Path {
	return throughLegs(points, func(distinct []Vec) []piece { return spline(distinct, &heading) })
}

func spline(points []Vec, heading *float64) []piece {
	legs := len(points) - 1
	step := make([]float64, legs) // of the parameter: the square root of the chord
	slope := make([]Vec, legs)    // of each chord
	for i := range legs {
		chord := points[i+1].Sub(points[i])
		step[i] = math.Sqrt(chord.Len())
		slope[i] = chord.Mul(1 / step[i])
	}
	tangent := make([]Vec, legs+1)
	tangent[0], tangent[legs] = slope[0], slope[legs-1]
	if heading != nil {
		tangent[0] = Polar(slope[0].Len(), *heading)
	}
	for i := 1; i < legs; i++ {
		tangent[i] = slope[i-1].Mul(step[i]).Add(slope[i].Mul(step[i-1])).Mul(1 / (step[i-1] + step[i]))
	}
	pieces := make([]piece, legs)
	for i := range legs {
		if along(tangent[i], slope[i]) && along(tangent[i+1], slope[i]) {
			pieces[i] = newLine(points[i], points[i+1])
			continue
		}
		pieces[i] = newCubic(hermite(points[i], points[i+1], tangent[i].Mul(step[i]), tangent[i+1].Mul(step[i])))
	}
	return pieces
}

// along says that a points the way b does, to rounding.
func along(a, b Vec) bool {
	return a.Dot(b) > 0 && math.Abs(a.Cross(b)) <= 1e-14*a.Len()*b.Len()
}
