package scene

import (
	"math"

	"longhand/lang/geom"
)

// View lays a floor plan onto the sheet: metres to millimetres.
type View struct {
	Scale float64  // of the drawing: 50 for 1:50, where a metre is 20 mm
	Plan  geom.Vec // a point of the plan...
	Paper Point    // ...and where it lies on the sheet
	Turn  float64  // degrees the plan is turned by, counter-clockwise as seen
}

// Length is a length of the plan in metres as millimetres on paper.
func (v View) Length(metres float64) float64 { return metres * 1000 / v.Scale }

// Point is where a point of the plan lies on the sheet.
func (v View) Point(p geom.Vec) Point {
	d := p.Sub(v.Plan).Rotate(v.Turn * math.Pi / 180).Mul(1000 / v.Scale)
	return Point{v.Paper.X + d.X, v.Paper.Y - d.Y}
}

// Points does so for many.
func (v View) Points(ps []geom.Vec) []Point {
	out := make([]Point, len(ps))
	for i, p := range ps {
		out[i] = v.Point(p)
	}
	return out
}

// Degrees is a direction on the plan, in radians, as degrees on the sheet.
func (v View) Degrees(radians float64) float64 { return radians*180/math.Pi + v.Turn }

// Floor is the point of the plan that lies under a point of the sheet.
func (v View) Floor(p Point) geom.Vec {
	d := geom.Vec{X: p.X - v.Paper.X, Y: v.Paper.Y - p.Y}
	return d.Mul(v.Scale / 1000).Rotate(-v.Turn * math.Pi / 180).Add(v.Plan)
}
