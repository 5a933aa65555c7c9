package syntax

// Timed is the end of most lines of a beat: when it happens.
type Timed struct {
	Phrases []*Phrase `parser:"@@*"`
	Timing  Timing
}

// BeatHead starts a beat.
type BeatHead struct {
	Node
	Title *String   `parser:"'beat' @@"`
	Start *Time     `parser:"( (?= Quantity | Clock | '+' | 'bar') @@ )?"`
	Said  []*Phrase `parser:"@@*"`
	When  *Trigger
	For   *Quantity
}

// PickupHead starts the coverage shot after the take.
type PickupHead struct {
	Node
	Title  *String `parser:"'pickup' @@"`
	How    string  `parser:"@('after' | 'into')"` // after or into
	Beat   *String `parser:"@@"`
	Window *Window `parser:"( 'roll' @@ )?"`
}

// Cue changes washes.
type Cue struct {
	Node
	Name   *Name       `parser:"'cue' @@"`
	Levels []*CueLevel `parser:"@@ ( ',' @@ )*"`
	Timed
	Over *Quantity
}

// CueLevel is what one wash goes to.
type CueLevel struct {
	Node
	Wash  *Name     `parser:"@@"`
	Level *Quantity `parser:"@@"` // percent
}

// DoorMoves is a door that opens or shuts by itself.
type DoorMoves struct {
	Node
	Door *Name  `parser:"'door' @@"`
	Verb string `parser:"@('opens' | 'shuts' | 'closes')"`
	Timed
}

// DeptNote is a word to a department.
type DeptNote struct {
	Node
	Department *Word   `parser:"'note' @@"`
	Text       *String `parser:"@@"`
}

// PaintOut accepts that a thing is in frame and sends it to visual effects.
type PaintOut struct {
	Node
	What    *Name     `parser:"'paint' 'out' @@"`
	Excuses []*Excuse `parser:"@@*"`
	Camera  *Name
	During  []*String // titles of beats; none is all
	Because *String
}

// Allow accepts a finding.
type Allow struct {
	Node
	Code    *Name     `parser:"'allow' @@"`
	What    *Name     `parser:"@@?"`
	Excuses []*Excuse `parser:"@@*"`
	Camera  *Name
	During  []*String // titles of beats; none is all
	Because *String
}

// Excuse is one part of what a paint-out or an allowance is held to. One field
// is set.
type Excuse struct {
	Node
	From    *Name     `parser:"  'from' @@"`
	In      *Name     `parser:"| 'in' @@"`
	During  []*String `parser:"| 'during' @@ ( ',' @@ )*"`
	Because *String   `parser:"| 'because' @@"`
}

// Handoff passes a camera from one rig to another.
type Handoff struct {
	Node
	Camera *Name `parser:"'handoff' @@"`
	From   *Name `parser:"'from' @@"`
	To     *Name `parser:"'to' @@"`
	Timed
	At     *Place
	Crew   *Name // with: who takes it; nil: who had it
	Weight *Name
}

// Cut is which camera the edit uses.
type Cut struct {
	Node
	Camera *Name `parser:"'cut' 'to' @@"`
	Timed
}
