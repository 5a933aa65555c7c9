package syntax

// TakeHead starts the section that says what is being shot.
type TakeHead struct {
	Node
	Title *String `parser:"'take' @@"`
}

// Use takes the set, kit or people of another file.
type Use struct {
	Node
	File *String `parser:"'use' @@"`
}

// Scene is the scene's number. Text is as written, with quotes if it has them.
type Scene struct {
	Node
	Text string `parser:"'scene' @(String | Number | Quantity | Name | Mixed) @Name?"`
}

// FrameRate is how many frames are taken a second.
type FrameRate struct {
	Node
	Amount *Quantity `parser:"'rate' @@"`
}

// Aspect is the shape of the frame.
type Aspect struct {
	Node
	Ratio *Ratio `parser:"'aspect' @@"`
}

// Shutter is the shutter's open angle.
type Shutter struct {
	Node
	Angle *Quantity `parser:"'shutter' @@"`
}

// Sensitivity is the exposure index.
type Sensitivity struct {
	Node
	Index *Number `parser:"'sensitivity' @@"`
}

// Pace is how fast lines are spoken.
type Pace struct {
	Node
	Amount *Quantity `parser:"'pace' @@"`
}

// Units is how lengths are written and printed: metres or feet.
type Units struct {
	Node
	System *Word `parser:"'units' @@"`
}

// Tempo makes counts and bars available: 120 bpm in 4.
type Tempo struct {
	Node
	Amount *Quantity `parser:"'tempo' @@"`
	Beats  *Number   `parser:"( 'in' @@ )?"`
}

// Location is where on Earth the take is shot.
type Location struct {
	Node
	Lat *Bearing `parser:"'place' @@"`
	Lon *Bearing `parser:"','? @@"`
}

// Bearing is degrees from the equator or the first meridian: 56.05 N.
type Bearing struct {
	Node
	Amount string // with its letter, if that is written close to it
	Side   string // N, S, E, W, or "" if it is in Amount or missing
}

// Day is the date and the offset of the clocks.
type Day struct {
	Node
	Date *Date `parser:"'date' @@"`
	Zone *Zone `parser:"( 'zone' @@ )?"`
}

// Roll is the window the take must be shot in.
type Roll struct {
	Node
	Window *Window `parser:"'roll' @@"`
}

// Window is a part of the day by name, or from one time of day to another.
type Window struct {
	Node
	Name *Name     `parser:"'in' ( @@"`
	From *Quantity `parser:"| @@"`
	To   *Quantity `parser:"  'to' @@ )"`
}

// Reset is how long it takes to go back to first positions.
type Reset struct {
	Node
	Amount *Quantity `parser:"'reset' @@"`
}

// Record is the longest roll, as a time or as film.
type Record struct {
	Node
	Amount *Quantity `parser:"'record' ( @@"`
	Film   *Film     `parser:"| @@ )"` // instead of Amount
}

// Film is the longest roll, as film: 35mm-4perf 1000 ft.
type Film struct {
	Node
	Gauge  string    `parser:"'film' @(Mixed | Quantity)"`
	Length *Quantity `parser:"@@"`
}

// Revision names the state of the plan.
type Revision struct {
	Node
	Name *String `parser:"'revision' @@"`
	Date *Date   `parser:"@@?"`
}
