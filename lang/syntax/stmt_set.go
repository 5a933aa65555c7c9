package syntax

// SetHead starts the section of what stands still.
type SetHead struct {
	Node
	Title *String `parser:"'set' @@"`
}

// Plan takes walls and blocks from a drawing.
type Plan struct {
	Node
	File    *String   `parser:"'plan' @@"`
	Details []*Detail `parser:"@@*"`
	Scale   *Ratio
}

// Corners are the points of a line or an outline.
type Corners struct {
	Points []*Corner `parser:"@@+"`
}

// Corner is a point, or a mark's name where a detail's word does not stand.
type Corner struct {
	Node
	Point *Point // or
	Name  *Name
	Plus  *Point // nil if not given
}

// Wall is a wall along its points.
type Wall struct {
	Node
	Name *Name `parser:"'wall' @@"`
	Corners
	Details []*Detail `parser:"@@*"`
	High    *Range
	Thick   *Quantity
	Wild    bool
	Glass   bool
}

// Opening is a stretch of a wall: street 4.8 m to 7.4 m.
type Opening struct {
	Node
	Wall *Name     `parser:"'on' @@"`
	From *Quantity `parser:"@@"`
	To   *Quantity `parser:"'to' @@"`
}

// SetDoor is a door in a wall.
type SetDoor struct {
	Node
	Name    *Name     `parser:"'door' @@"`
	On      *Opening  `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	High    *Range
	Open    bool
	Shut    bool
}

// SetWindow is a window in a wall.
type SetWindow struct {
	Node
	Name    *Name     `parser:"'window' @@"`
	On      *Opening  `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	High    *Range
}

// Hole is a hole in a wall for a lens.
type Hole struct {
	Node
	Name    *Name     `parser:"'hole' @@"`
	Wall    *Name     `parser:"'on' @@"`
	Details []*Detail `parser:"@@*"`
	At      *Quantity // along the wall
	Up      *Quantity
	Wide    *Quantity
}

// Pillar is a round pillar.
type Pillar struct {
	Node
	Name    *Name     `parser:"'pillar' @@"`
	At      *Place    `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	Round   *Quantity // across
	High    *Range
}

// Block is anything solid.
type Block struct {
	Node
	Name *Name `parser:"'block' @@"`
	Corners
	Details []*Detail `parser:"@@*"`
	High    *Range
}

// Platform is a floor to stand on.
type Platform struct {
	Node
	Name *Name `parser:"'platform' @@"`
	Corners
	Details []*Detail `parser:"@@*"`
	High    *Range
}

// Stairs lead from their foot, the first point, to their head.
type Stairs struct {
	Node
	Name *Name `parser:"'stairs' @@"`
	Corners
	Details []*Detail `parser:"@@*"`
	Width   *Quantity
	Rise    *Quantity
}

// Mirror is a mirror on a wall.
type Mirror struct {
	Node
	Name    *Name     `parser:"'mirror' @@"`
	On      *Opening  `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	High    *Range
}

// Glow is a bright opening in a wall.
type Glow struct {
	Node
	Name      *Name     `parser:"'glow' @@"`
	On        *Opening  `parser:"@@"`
	Details   []*Detail `parser:"@@*"`
	High      *Range
	Luminance *Quantity // cd/m2
}

// Mark is a named point on the floor.
type Mark struct {
	Node
	Name *Name  `parser:"'mark' @@"`
	At   *Place `parser:"@@"`
}

// Grid is where lamps hang.
type Grid struct {
	Node
	Name *Name `parser:"'grid' @@"`
	Corners
	Details []*Detail `parser:"@@*"`
	High    *Range
	Hang    *Number // hanging points
}

// Supply is where power comes from.
type Supply struct {
	Node
	Name    *Name     `parser:"'supply' @@"`
	Volts   *Quantity `parser:"@@"`
	Amperes *Quantity `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	Times   *Number   // lines of it; nil is one
	Cable   *Cable    // of each line, from there to its lamps
	Three   bool      // the line has three phases
}

// PlaceLamp puts a lamp on its stand or hook.
type PlaceLamp struct {
	Node
	Lamp    *Name     `parser:"'place' @@"`
	Details []*Detail `parser:"@@*"`
	At      *Place
	Up      *Quantity
	Aims    *Place
}
