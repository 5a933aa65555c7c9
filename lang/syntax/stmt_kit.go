package syntax

// KitHead starts the section of what shoots and lights.
type KitHead struct {
	Node
	Word string `parser:"@'kit'"`
}

// Camera is a camera body.
type Camera struct {
	Node
	Name    *Name     `parser:"'camera' @@"`
	Sensor  *Size     `parser:"( 'sensor' @@ )?"`
	Details []*Detail `parser:"@@*"`
	Squeeze *Number
	Weighs  *Quantity
}

// Lens is a prime, or a zoom if it has two focal lengths.
type Lens struct {
	Node
	Name    *Name     `parser:"'lens' @@"`
	Focal   *Range    `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	Stops   *Stops
	Weighs  *Quantity
	Close   *Quantity
}

// Rig is what carries a camera.
type Rig struct {
	Node
	Name    *Name     `parser:"'rig' @@"`
	Class   *Word     `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	Carries *Range
	Size    *Size
	High    *Range
	Reach   *Quantity
	Seats   *Number
	Speed   *Quantity
	Back    *Quantity
	Pan     *Quantity
}

// Vehicle is a car, a van, a boat.
type Vehicle struct {
	Node
	Name    *Name     `parser:"'vehicle' @@"`
	Size    *Size     `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	High    *Range
	Gear    bool
}

// Lamp is a kind of lamp.
type Lamp struct {
	Node
	Name      *Name     `parser:"'lamp' @@"`
	Details   []*Detail `parser:"@@*"`
	Power     *Quantity
	Intensity *Quantity // cd
	Colour    *Colour
	Changes   bool
	Modern    bool
	Seen      bool
}

// Wash is a group of lamps on a grid.
type Wash struct {
	Node
	Name  *Name   `parser:"'wash' @@"`
	Lamp  *Name   `parser:"@@"`
	Times *Number `parser:"( ('x' | '×') @@ )?"`
	Grid  *Name   `parser:"'on' @@"`
}

// Card is a cover round a lens or a rig.
type Card struct {
	Node
	Name    *Name     `parser:"'card' @@"`
	Size    *Size     `parser:"@@"`
	Details []*Detail `parser:"@@*"`
	Colour  *Colour
}

// PeopleHead starts the section of who is there.
type PeopleHead struct {
	Node
	Word string `parser:"@'people'"`
}

// Performer is somebody the cameras may see.
type Performer struct {
	Node
	Name    *Name     `parser:"'performer' @@"`
	Role    *String   `parser:"@@?"`
	Details []*Detail `parser:"@@*"`
	Height  *Quantity
	Spread  *Quantity
}

// Crew is somebody the cameras must not see.
type Crew struct {
	Node
	Name    *Name     `parser:"'crew' @@"`
	Role    *String   `parser:"@@?"`
	Details []*Detail `parser:"@@*"`
	Height  *Quantity
	Weighs  *Quantity
	Spread  *Quantity
}
