package syntax

// Mount puts a camera on a rig.
type Mount struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'on'"`
	Rig  *Name  `parser:"@@"`
	Timed
	Crew *Name     // with
	Up   *Quantity // lens height
	At   *Place    // in the rig's frame
}

// TakeLens puts a lens on a camera, or sets a zoom or a stop.
type TakeLens struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'takes'"`
	Lens *Name  `parser:"@@"`
	Timed
	Focal *Quantity
	Stop  *Stop
}

// See says what a camera must see, and how.
type See struct {
	Node
	Who     *Name   `parser:"@@"`
	Verb    string  `parser:"@'sees'"`
	Targets []*Seen `parser:"@@ ( ',' @@ )*"`
	Timed
	Size  string // "" or one of Sizes
	Fifty bool
}

// Seen is one of what a camera sees: mina, or mina in glass.
type Seen struct {
	Node
	What  *Target
	Glass *Name // the mirror that shows it; nil where it is seen directly
}

// Lead is a camera keeping its distance in front of or behind somebody.
type Lead struct {
	Node
	Who    *Name   `parser:"@@"`
	Verb   string  `parser:"@('leads' | 'follows')"`
	Target *Target `parser:"@@"`
	Timed
	Distance *Quantity // `by` with a length
}

// Beside is a camera keeping to somebody's side.
type Beside struct {
	Node
	Who    *Name   `parser:"@@"`
	Verb   string  `parser:"@'beside'"`
	Target *Target `parser:"@@"`
	Timed
	Side *Measure // left or right, and how far
}

// Circle is a camera going round somebody.
type Circle struct {
	Node
	Who    *Name   `parser:"@@"`
	Verb   string  `parser:"@'circles'"`
	Target *Target `parser:"@@"`
	Timed
	Turn   *Measure
	Radius *Quantity // `at` with a length
}

// Counter is a camera circling against somebody's spin.
type Counter struct {
	Node
	Who    *Name   `parser:"@@"`
	Verb   string  `parser:"@'counters'"`
	Target *Target `parser:"@@"`
	Timed
	Radius *Quantity // `at` with a length
}

// Push is a camera going forward or backward along its own view.
type Push struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('pushes' | 'pulls')"`
	Timed
	Distance *Quantity
}

// Pan is a camera turning where it is.
type Pan struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('pans' | 'tilts')"`
	Timed
	Turn *Measure
}

// Rack is a change of focus.
type Rack struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'racks'"`
	Timed
	To    *Goal
	Glass *Name // the mirror in which it is focused on
}

// Hide puts a camera behind a hole in the set.
type Hide struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'hides'"`
	Hole *Name  `parser:"'behind' @@"`
	Timed
	Card *Name
}

// RollCamera starts or stops a camera's recording.
type RollCamera struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('rolls' | 'rests')"`
	Timed
}
