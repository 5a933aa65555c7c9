package scene

import "math"

// Point is a place on the sheet in millimetres, x right and y down.
type Point struct{ X, Y float64 }

// Pt is short for a Point.
func Pt(x, y float64) Point { return Point{x, y} }

func (p Point) Add(q Point) Point    { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) Sub(q Point) Point    { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) Mul(k float64) Point  { return Point{p.X * k, p.Y * k} }
func (p Point) Dot(q Point) float64  { return p.X*q.X + p.Y*q.Y }
func (p Point) Dist(q Point) float64 { return math.Hypot(p.X-q.X, p.Y-q.Y) }
func (p Point) Len() float64         { return math.Hypot(p.X, p.Y) }
func (p Point) finite() bool         { return finite(p.X) && finite(p.Y) }
func (p Point) lerp(q Point, k float64) Point {
	return Point{p.X + (q.X-p.X)*k, p.Y + (q.Y-p.Y)*k}
}

// Polar is the point at a distance and a direction in degrees,
// counter-clockwise as seen, from p.
func (p Point) Polar(distance, degrees float64) Point {
	s, c := math.Sincos(degrees * math.Pi / 180)
	return Point{p.X + distance*c, p.Y - distance*s}
}

// Towards is the direction from p to q in degrees, counter-clockwise as seen.
func (p Point) Towards(q Point) float64 {
	return math.Atan2(p.Y-q.Y, q.X-p.X) * 180 / math.Pi
}

// Box is an upright rectangle; Min is its top left corner.
type Box struct{ Min, Max Point }

// BoxAt is the box with a corner and a size.
func BoxAt(x, y, w, h float64) Box { return Box{Point{x, y}, Point{x + w, y + h}} }

func (b Box) Width() float64  { return b.Max.X - b.Min.X }
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }
func (b Box) Center() Point   { return b.Min.lerp(b.Max, 0.5) }

// Grow is the box with a margin added on every side.
func (b Box) Grow(by float64) Box {
	return Box{Point{b.Min.X - by, b.Min.Y - by}, Point{b.Max.X + by, b.Max.Y + by}}
}

// Union is the smallest box around both.
func (b Box) Union(c Box) Box {
	return Box{
		Point{math.Min(b.Min.X, c.Min.X), math.Min(b.Min.Y, c.Min.Y)},
		Point{math.Max(b.Max.X, c.Max.X), math.Max(b.Max.Y, c.Max.Y)},
	}
}

// Overlaps is whether the boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.Min.X < c.Max.X && c.Min.X < b.Max.X && b.Min.Y < c.Max.Y && c.Min.Y < b.Max.Y
}

// Contains is whether c lies wholly inside b, edges included.
func (b Box) Contains(c Box) bool {
	return b.Min.X <= c.Min.X && b.Min.Y <= c.Min.Y && c.Max.X <= b.Max.X && c.Max.Y <= b.Max.Y
}

// Corners go clockwise as seen, from the top left.
func (b Box) Corners() []Point {
	return []Point{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}}
}

// BoundsOf is the smallest box around the points; ok is false for none.
func BoundsOf(points []Point) (b Box, ok bool) {
	for i, p := range points {
		if i == 0 {
			b = Box{p, p}
		}
		b = b.Union(Box{p, p})
	}
	return b, len(points) > 0
}
