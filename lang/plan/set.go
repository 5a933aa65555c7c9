package plan

import (
	"longhand/lang/geom"
	"longhand/lang/source"
	"longhand/lang/units"
)

// Set is what stands still.
type Set struct {
	Title     string
	Span      source.Span // of the first header
	Drawings  []*Drawing
	Walls     []*Wall
	Doors     []*Door
	Windows   []*Pane
	Holes     []*Hole
	Pillars   []*Pillar
	Blocks    []*Block
	Platforms []*Platform
	Stairs    []*Stairs
	Mirrors   []*Mirror
	Glows     []*Glow
	Marks     []*Mark
	Grids     []*Grid
	Supplies  []*Supply
	Placed    []*PlacedLamp
}

// Range is a range of heights above the set's floor.
type Range struct{ Low, High units.Metres }

// Drawing is a floor plan to take walls and blocks from.
type Drawing struct {
	Path  string
	Scale int // 50 for 1:50
	Span  source.Span
}

// Wall stands on a polyline.
type Wall struct {
	Ident
	Line       []geom.Vec
	High       Range
	Thick      units.Metres
	ThickGiven bool
	Wild       bool // can be taken out between takes
	Glass      bool // can be seen through
}

// On is a stretch of a wall's length, from the wall's first point.
type On struct {
	Wall     *Wall
	From, To units.Metres
}

// Ends are the two points of the stretch on the wall's line.
func (o On) Ends() (a, b geom.Vec) {
	return along(o.Wall.Line, float64(o.From)), along(o.Wall.Line, float64(o.To))
}

// Middle is the point halfway along the stretch and the wall's direction there.
func (o On) Middle() (at, dir geom.Vec) {
	a, b := o.Ends()
	return along(o.Wall.Line, float64(o.From+o.To)/2), b.Sub(a).Unit()
}

// faceGap keeps what hangs on a wall clear of the wall's own face, metres.
const faceGap = 1e-3

// Face is the ends of the stretch on one face of its wall, just clear of it: the
// face is to the left of the way from a to b. With left it is the one to the left
// of the wall's line, else the other.
func (o On) Face(left bool) (a, b geom.Vec) {
	a, b = o.Ends()
	out := b.Sub(a).Unit().Left().Mul(float64(o.Wall.Thick)/2 + faceGap)
	if left {
		return a.Add(out), b.Add(out)
	}
	return b.Sub(out), a.Sub(out)
}

func along(line []geom.Vec, s float64) geom.Vec {
	for i := 0; i+1 < len(line); i++ {
		l := line[i].Dist(line[i+1])
		if s <= l || i+2 == len(line) {
			if l == 0 {
				return line[i]
			}
			return line[i].Lerp(line[i+1], s/l)
		}
		s -= l
	}
	if len(line) == 0 {
		return geom.Vec{}
	}
	return line[0]
}

// Door is an opening that can be shut.
type Door struct {
	Ident
	On
	High Range
	Open bool // at the take's first frame
}

// Pane is a window: an opening in a wall that is seen and not walked through.
type Pane struct {
	Ident
	On
	High Range
}

// Hole is a lens hole, square, in front of its own camera only.
type Hole struct {
	Ident
	Wall  *Wall
	Along units.Metres // of its centre, from the wall's first point
	Up    units.Metres // of its centre
	Wide  units.Metres
}

// Pillar is round and solid.
type Pillar struct {
	Ident
	Centre geom.Vec
	Round  units.Metres // diameter
	High   Range
}

// Block is anything solid.
type Block struct {
	Ident
	Polygon []geom.Vec
	High    Range
}

// Platform is a floor to stand on; people stand at High.High.
type Platform struct {
	Ident
	Polygon []geom.Vec
	High    Range
}

// Stairs rise from foot to head.
type Stairs struct {
	Ident
	Foot, Head geom.Vec
	FootZ      units.Metres
	Width      units.Metres
	Rise       units.Metres // from foot to head
}

// Mirror reflects, on both faces of its wall.
type Mirror struct {
	Ident
	On
	High Range
}

// Glow is a bright opening.
type Glow struct {
	Ident
	On
	High Range
	Nits units.Nits
}

// Mark is a place with a name. Z is nil unless the text gives a height.
type Mark struct {
	Ident
	Point geom.Vec
	Z     *units.Metres
}

// Grid holds lamps over the floor.
type Grid struct {
	Ident
	Polygon []geom.Vec
	High    Range
	Points  int
}

// Supply feeds lamps.
type Supply struct {
	Ident
	Volts   units.Volts
	Amperes units.Amperes
	Count   int // circuits of that size
	// ThreePhase says that each circuit has three phases, Volts being between two
	// of them.
	ThreePhase bool
	Cable      *Cable // of each circuit, from there to its lamps; nil unless given
}

// Cable is a run of copper cable.
type Cable struct {
	Run     units.Metres
	Section units.SquareMillimetres
	Gauge   string      // as written, where that is a wire gauge: "10 AWG"
	Span    source.Span // of the section
}

// Thick is the cable's cross-section in words: "6 mm²" or "10 AWG (5.26 mm²)".
func (c *Cable) Thick() string {
	if c.Gauge != "" {
		return c.Gauge + " (" + c.Section.String() + ")"
	}
	return c.Section.String()
}

// PlacedLamp is a lamp that stands in the set.
type PlacedLamp struct {
	Lamp *Lamp
	At   Place
	Up   units.Metres
	Aims *Place
	Span source.Span
}

func (*Wall) Kind() Kind     { return KindWall }
func (*Door) Kind() Kind     { return KindDoor }
func (*Pane) Kind() Kind     { return KindWindow }
func (*Hole) Kind() Kind     { return KindHole }
func (*Pillar) Kind() Kind   { return KindPillar }
func (*Block) Kind() Kind    { return KindBlock }
func (*Platform) Kind() Kind { return KindPlatform }
func (*Stairs) Kind() Kind   { return KindStairs }
func (*Mirror) Kind() Kind   { return KindMirror }
func (*Glow) Kind() Kind     { return KindGlow }
func (*Mark) Kind() Kind     { return KindMark }
func (*Grid) Kind() Kind     { return KindGrid }
func (*Supply) Kind() Kind   { return KindSupply }
