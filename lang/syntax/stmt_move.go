package syntax

// Move is somebody or something going somewhere.
type Move struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('walks' | 'runs' | 'drives' | 'moves')"`
	Timed
	Path Path
}

// Stand is somebody staying where they are, or at a place.
type Stand struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('stands' | 'waits')"`
	Timed
	At     *Place
	Facing *Target
}

// Turn is a turn to face something, or to an angle. One of the two is set.
type Turn struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'turns'"`
	Timed
	To *Goal
}

// Spin is a turn by an angle.
type Spin struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'spins'"`
	Timed
	Turn *Measure
}

// Ride is somebody carried by a vehicle or a rig.
type Ride struct {
	Node
	Who     *Name  `parser:"@@"`
	Verb    string `parser:"@'rides'"`
	Carrier *Name  `parser:"@@"`
	Timed
	At *Place // in the carrier's frame
}

// Leave is somebody getting off what carries them.
type Leave struct {
	Node
	Who     *Name  `parser:"@@"`
	Verb    string `parser:"@'leaves'"`
	Carrier *Name  `parser:"@@"`
	Timed
	To *Place
}

// Board is somebody getting on a rig to take over a weight.
type Board struct {
	Node
	Who     *Name  `parser:"@@"`
	Verb    string `parser:"@'boards'"`
	Carrier *Name  `parser:"@@"`
	Timed
	At *Place
}

// Spot is somebody walking behind one who backs up.
type Spot struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@'spots'"`
	Crew *Name  `parser:"@@"`
	Timed
}

// Pose is a change of height: sits, kneels, crouches, and rises or lowers,
// which a camera does too.
type Pose struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('sits' | 'kneels' | 'crouches' | 'rises' | 'lowers')"`
	Timed
	To *Quantity // the height; nil if not said
	At *Place
}

// Operate is somebody opening or shutting a door.
type Operate struct {
	Node
	Who  *Name  `parser:"@@"`
	Verb string `parser:"@('opens' | 'shuts' | 'closes')"`
	Door *Name  `parser:"@@"`
	Timed
}

// Say is a spoken line.
type Say struct {
	Node
	Who  *Name   `parser:"@@"`
	Verb string  `parser:"@'says'"`
	Line *String `parser:"@@"`
	Timed
}
