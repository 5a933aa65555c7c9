package scene

// ArrowHead is a filled head whose tip is at a point and which points in a
// direction in degrees; length and width in millimetres.
func ArrowHead(class string, tip Point, direction, length, width float64) *Polygon {
	base := tip.Polar(-length, direction)
	return &Polygon{Class: class, Points: []Point{
		tip,
		base.Polar(width/2, direction+90),
		tip.Polar(-0.75*length, direction), // notched, so that it is no triangle of the set
		base.Polar(-width/2, direction+90),
	}}
}

// OpenHead is the same as two strokes.
func OpenHead(class string, tip Point, direction, length, width float64) *Polyline {
	base := tip.Polar(-length, direction)
	return &Polyline{Class: class, Points: []Point{
		base.Polar(width/2, direction+90), tip, base.Polar(-width/2, direction+90),
	}}
}

// Along is the place and direction in degrees at a length in millimetres from
// the start of a line through points; it stops at the ends. A line without
// length has the direction 0.
func Along(points []Point, length float64) (at Point, direction float64) {
	if len(points) == 0 {
		return Point{}, 0
	}
	at = points[0]
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		d := a.Dist(b)
		if d == 0 {
			continue
		}
		direction = a.Towards(b)
		if length <= d {
			return a.lerp(b, max(0, length)/d), direction
		}
		length -= d
		at = b
	}
	return at, direction
}

// LengthOf is the length of a line through points, in millimetres.
func LengthOf(points []Point) float64 {
	sum := 0.0
	for i := 1; i < len(points); i++ {
		sum += points[i-1].Dist(points[i])
	}
	return sum
}
