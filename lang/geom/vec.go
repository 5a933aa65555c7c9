// Package geom is the plane and solid geometry of a floor plan: vectors,
// segments, polygons, paths and what can be seen from a point.
//
// Lengths are in metres and angles in radians, counter-clockwise from +x,
// unless a name says otherwise; x runs to the right on paper, y up, z off the
// floor. Coordinates that are not finite give answers of no meaning, never a
// panic.
//
// Side, meeting and place (Orient, Segment.Meets, Polygon.Locate) are exact for
// the coordinates given and tell touching from crossing; lengths and distances
// are rounded. Points within a nanometre count as one where paths, walls and
// ribbons join.
//
// It knows nothing of plans, times or heights of bodies, and imports nothing of
// the project.
package geom

import "math"

// Vec is a point or a direction on the floor.
type Vec struct{ X, Y float64 }

// Vec3 is a point or a direction in space.
type Vec3 struct{ X, Y, Z float64 }

func (a Vec) Add(b Vec) Vec             { return Vec{a.X + b.X, a.Y + b.Y} }
func (a Vec) Sub(b Vec) Vec             { return Vec{a.X - b.X, a.Y - b.Y} }
func (a Vec) Mul(k float64) Vec         { return Vec{a.X * k, a.Y * k} }
func (a Vec) Dot(b Vec) float64         { return a.X*b.X + a.Y*b.Y }
func (a Vec) Dist(b Vec) float64        { return a.Sub(b).Len() }
func (a Vec) Lerp(b Vec, k float64) Vec { return Vec{a.X + (b.X-a.X)*k, a.Y + (b.Y-a.Y)*k} }

// Len is the length. It doesn't guard against squares that overflow, which no
// floor needs and which would take four times as long.
func (a Vec) Len() float64 { return math.Sqrt(a.X*a.X + a.Y*a.Y) }

// Cross is positive where b lies to the left of a.
func (a Vec) Cross(b Vec) float64 { return a.X*b.Y - a.Y*b.X }

// Left is the direction a quarter turn to the left (counter-clockwise).
func (a Vec) Left() Vec { return Vec{-a.Y, a.X} }

// Unit is the direction with length 1; the zero vector stays zero.
func (a Vec) Unit() Vec {
	if l := a.Len(); l > 0 {
		return a.Mul(1 / l)
	}
	return Vec{}
}

// Angle is the direction in radians, in (-pi, pi].
func (a Vec) Angle() float64 { return math.Atan2(a.Y, a.X) }

// Rotate turns the vector by an angle in radians, counter-clockwise.
func (a Vec) Rotate(angle float64) Vec {
	s, c := math.Sincos(angle)
	return Vec{a.X*c - a.Y*s, a.X*s + a.Y*c}
}

// Polar is the vector of the given length in a direction.
func Polar(length, angle float64) Vec {
	s, c := math.Sincos(angle)
	return Vec{length * c, length * s}
}

// At lifts the point to a height.
func (a Vec) At(z float64) Vec3 { return Vec3{a.X, a.Y, z} }

// Floor drops the height.
func (a Vec3) Floor() Vec { return Vec{a.X, a.Y} }

func (a Vec3) Add(b Vec3) Vec3     { return Vec3{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }
func (a Vec3) Sub(b Vec3) Vec3     { return Vec3{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }
func (a Vec3) Mul(k float64) Vec3  { return Vec3{a.X * k, a.Y * k, a.Z * k} }
func (a Vec3) Dot(b Vec3) float64  { return a.X*b.X + a.Y*b.Y + a.Z*b.Z }
func (a Vec3) Len() float64        { return math.Sqrt(a.Dot(a)) }
func (a Vec3) Dist(b Vec3) float64 { return a.Sub(b).Len() }

// AngleDiff is the turn from a to b in radians, in (-pi, pi].
func AngleDiff(a, b float64) float64 {
	d := b - a
	if -math.Pi < d && d <= math.Pi { // as nearly always
		return d
	}
	d = math.Mod(d, 2*math.Pi)
	switch {
	case d > math.Pi:
		d -= 2 * math.Pi
	case d <= -math.Pi:
		d += 2 * math.Pi
	}
	return d
}
