// Package label finds places for the labels of a drawing: near what they name,
// off each other, off the paths and people drawn, and tied to their point by a
// leader where they had to be pushed away.
//
// The search is the same for the same input: there is no chance in it. It takes
// the labels in order of priority, gives each the cheapest free place, then moves
// single labels to better places and makes room for those that found none. It
// draws nothing. It may import render/scene and render/fonts.
package label

import "longhand/render/scene"

// Side is where a label prefers to stand, seen from its point.
type Side uint8

const (
	UpperRight Side = iota
	UpperLeft
	LowerLeft
	LowerRight
	Right
	Above
	Left
	Below
)

// sides is the order of preference where a request names none: that of
// Christensen, Marks and Shieber, "An empirical study of algorithms for
// point-feature label placement", 1995 (from memory).
var sides = []Side{UpperRight, UpperLeft, LowerLeft, LowerRight, Right, Above, Left, Below}

// degrees is the direction of a side, counter-clockwise as seen.
func (s Side) degrees() float64 {
	return [...]float64{45, 135, 225, 315, 0, 90, 180, 270}[s%8]
}

// Request is a label that wants a place.
type Request struct {
	ID       string        // for the report
	At       scene.Point   // what it names
	Also     []scene.Point // other points it may stand at instead, such as further along a path
	Radius   float64       // mm around the point that its own mark takes up
	W, H     float64       // mm, the label's size before it is turned
	Priority int           // higher ones are placed first
	Sides    []Side        // preferred, best first; empty for the usual order. Others are tried after them
	Turns    []float64     // degrees it may be turned by, best first; empty for upright only
	Reach    float64       // mm it may be pushed away; 0 for 60
	// Tight forbids a leader: the label stands at its point or not at all.
	Tight bool
}

// Obstacle is something already drawn. Exactly one of its shapes counts, the
// first that is set.
type Obstacle struct {
	Line   []scene.Point // open line of a width
	Area   []scene.Point // closed ring, inside included
	Box    *scene.Box
	Circle *Circle
	Width  float64 // mm, of Line
	// Cost is what covering it costs, in millimetres of distance that a label
	// would rather be pushed; 0 forbids it.
	Cost float64
}

// Circle is round, such as a person seen from above.
type Circle struct {
	Center scene.Point
	Radius float64
}

// Field is where labels are placed.
type Field struct {
	Within    scene.Box
	Obstacles []Obstacle
	Clear     float64 // mm kept free around each label; 0 for 0.4
}

// Place is what a request got.
type Place struct {
	ID     string
	OK     bool          // false when nothing was free; the rest is then zero
	Center scene.Point   // of the label
	Turn   float64       // degrees
	At     scene.Point   // the point it stands at, of those it could
	Leader []scene.Point // from the mark's edge to the label, nil where it stands next to it
	Quad   [4]scene.Point
	Cost   float64
}

// Arrange finds a place for each request, in the order of the requests, and
// lists the ids of those that have none.
func Arrange(f Field, requests []Request) (places []Place, unplaced []string) {
	s := newSearch(f, requests)
	s.run()
	for i, p := range s.placed {
		if p == nil {
			places = append(places, Place{ID: requests[i].ID})
			unplaced = append(unplaced, requests[i].ID)
			continue
		}
		places = append(places, Place{
			ID: requests[i].ID, OK: true, Center: p.center, Turn: p.turn, At: p.at,
			Leader: p.leader, Quad: p.quad, Cost: p.total,
		})
	}
	return places, unplaced
}
