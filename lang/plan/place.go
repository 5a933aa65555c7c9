package plan

import (
	"longhand/lang/geom"
	"longhand/lang/source"
	"longhand/lang/units"
)

// Place is a place on the floor as the text names it. Left and right of a mark
// are as on paper: right is +x.
type Place struct {
	Point geom.Vec
	Z     *units.Metres // nil: whatever floor is there
	Mark  *Mark         // the mark named, where the place is a mark or is told from one
	// Before is how far short of Point, along the way there, the place lies;
	// negative is past it. 0 for all other places.
	Before units.Metres
	Text   string // as written: "M1", "2 m left of M1"
	Span   source.Span
}

// Exact reports whether the place is its mark itself, not told from it.
func (p *Place) Exact() bool { return p.Mark != nil && p.Text == p.Mark.Name }

// Target is what one looks at, turns to, circles or sees: a thing, or a place.
type Target struct {
	Thing Thing  // *Person, *Vehicle, *Rig, *Camera, *Door, ...; nil for a place
	Place *Place // nil for a thing
	// Glass is the mirror in which a camera sees it; nil where it sees it directly.
	Glass *Mirror
	Span  source.Span
}

// Name is the thing's name or the place as written, with the mirror it is seen in.
func (t Target) Name() string {
	if t.Glass != nil {
		return t.Itself() + " in " + t.Glass.Name
	}
	return t.Itself()
}

// Itself is the thing's name or the place as written, wherever it is seen.
func (t Target) Itself() string {
	if t.Thing != nil {
		return t.Thing.ID().Name
	}
	if t.Place != nil {
		return t.Place.Text
	}
	return ""
}

// Side is a person's own, or the camera's.
type Side int

const (
	Left Side = iota
	Right
	Up
	Down
)

func (s Side) String() string { return [...]string{"left", "right", "up", "down"}[s] }

// Shape is the kind of way a path takes.
type Shape int

const (
	Curved   Shape = iota // through its places, without corners
	Straight              // from place to place
	Round                 // an arc round a place
	Eight                 // once round each of two places
)

// Path is a way over the floor. It starts where its subject is, or at From.
type Path struct {
	Shape     Shape
	From      *Place
	Via       []Place
	To        *Place // nil for round and eight without an end
	Centre    Place  // round, and the first of an eight
	Other     Place  // the second of an eight
	Angle     units.Degrees
	Turn      Side         // left is counter-clockwise
	Radius    units.Metres // of round and eight; 0: from where the subject is
	Facing    *Target
	Backwards bool
	Span      source.Span
}

// Stops are the places the path is sure to touch, in order: via, then to.
func (p *Path) Stops() []Place {
	stops := append([]Place(nil), p.Via...)
	if p.To != nil {
		stops = append(stops, *p.To)
	}
	return stops
}
