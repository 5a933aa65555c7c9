package geom

import (
	"math"
	"sort"
)

// Path is a way across the floor, measured along itself: s is the metres walked
// since its start. It is made of lines, arcs and cubics, each known in closed
// form; lengths are good to 1e-9 of themselves. A Path never changes once made
// and may be shared.
type Path struct {
	pieces []piece
	starts []float64 // length before each piece
	length float64
	stops  []float64 // length at each point the path was made through
}

// joinSlop is how near two points are to count as one, metres: far below what
// a tape can measure, far above the rounding of coordinates.
const joinSlop = 1e-9

func newPath(pieces []piece, stops []float64) *Path {
	p := &Path{pieces: pieces, starts: make([]float64, len(pieces)), stops: stops}
	for i := range pieces {
		p.starts[i] = p.length
		p.length += pieces[i].length
	}
	return p
}

// NewStraight is the polyline through points, in order. One point, or none (the
// origin), makes a path of no length.
func NewStraight(points ...Vec) *Path {
	return throughLegs(points, func(distinct []Vec) []piece {
		legs := make([]piece, 0, len(distinct))
		for i := 1; i < len(distinct); i++ {
			legs = append(legs, newLine(distinct[i-1], distinct[i]))
		}
		return legs
	})
}

// NewArc goes round centre at radius, from the point in direction start, by
// sweep radians: positive to the left (counter-clockwise). A sweep may be more
// than a turn.
func NewArc(centre Vec, radius, start, sweep float64) *Path {
	arc := newArc(centre, radius, start, sweep)
	return newPath([]piece{arc}, []float64{0, arc.length})
}

// throughLegs makes a path through points of which neighbours may coincide: one
// leg between two distinct points, and a stop for each point given.
func throughLegs(points []Vec, legs func(distinct []Vec) []piece) *Path {
	if len(points) == 0 {
		points = []Vec{{}}
	}
	distinct := []Vec{points[0]}
	index := make([]int, len(points))
	for i, p := range points {
		if p.Dist(distinct[len(distinct)-1]) > joinSlop {
			distinct = append(distinct, p)
		}
		index[i] = len(distinct) - 1
	}
	if len(distinct) == 1 {
		return newPath([]piece{newLine(points[0], points[0])}, make([]float64, len(points)))
	}
	path := newPath(legs(distinct), nil)
	ends := append(path.starts[:len(path.starts):len(path.starts)], path.length)
	for _, i := range index {
		path.stops = append(path.stops, ends[i])
	}
	return path
}

// Length of the whole path in metres.
func (p *Path) Length() float64 { return p.length }

// Start is the first point.
func (p *Path) Start() Vec { return p.At(0) }

// End is the last point.
func (p *Path) End() Vec { return p.At(p.length) }

// Stops is the length at each point the path was made through, in order; two
// points that coincide share theirs. A fresh slice.
func (p *Path) Stops() []float64 { return append([]float64(nil), p.stops...) }

// locate finds the piece at s and the length into it. At a joint it is the
// later piece. s outside the path is clamped.
func (p *Path) locate(s float64) (*piece, float64) {
	if !(s > 0) { // also NaN
		s = 0
	}
	last := len(p.pieces) - 1
	if s >= p.length {
		return &p.pieces[last], p.pieces[last].length
	}
	if last == 0 {
		return &p.pieces[0], s
	}
	i := sort.Search(len(p.starts)-1, func(i int) bool { return p.starts[i+1] > s })
	return &p.pieces[i], s - p.starts[i]
}

// At is the point s metres along; before the start it is the start, past the
// end the end. It takes about 0.1 us and no memory.
func (p *Path) At(s float64) Vec {
	piece, into := p.locate(s)
	return piece.at(into)
}

// AtExtended is At, but going on straight before the start and past the end.
func (p *Path) AtExtended(s float64) Vec {
	switch {
	case s < 0:
		return p.At(0).Add(p.Tangent(0).Mul(s))
	case s > p.length:
		return p.At(p.length).Add(p.Tangent(p.length).Mul(s - p.length))
	}
	return p.At(s)
}

// Tangent is the unit direction of travel at s, also past the ends. At a corner
// it is the direction of leaving. It is zero on a path of no length.
func (p *Path) Tangent(s float64) Vec {
	piece, into := p.locate(s)
	return piece.tangent(into)
}

// Heading is the direction of travel at s in (-pi, pi].
func (p *Path) Heading(s float64) float64 { return p.Tangent(s).Angle() }

// Curvature at s in 1/m, positive to the left: one over the radius of the turn.
// A corner has none of its own (see Corners).
func (p *Path) Curvature(s float64) float64 {
	piece, into := p.locate(s)
	return piece.curvature(into)
}

// A Corner is where a path turns on the spot.
type Corner struct {
	S    float64 // length before it
	Turn float64 // radians, positive to the left, in (-pi, pi]
}

// cornerSlop is the least turn that counts as a corner, radians: below it the
// joint of a spline may differ by rounding.
const cornerSlop = 1e-6

// Corners lists where the heading jumps, in order.
func (p *Path) Corners() []Corner {
	var corners []Corner
	for i := 1; i < len(p.pieces); i++ {
		before, after := &p.pieces[i-1], &p.pieces[i]
		in, out := before.tangent(before.length), after.tangent(0)
		turn := math.Atan2(in.Cross(out), in.Dot(out))
		if math.Abs(turn) > cornerSlop {
			corners = append(corners, Corner{p.starts[i], turn})
		}
	}
	return corners
}
