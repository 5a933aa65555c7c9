package syntax

// Phrase is one optional part of a line of a beat. They come in any order; one
// field is set. Statements hold what their phrases say in fields of their own,
// so only the folding reads these.
type Phrase struct {
	Node
	From      *Place
	Via       []*Place
	To        *Goal
	Round     *Round
	Eight     *Eight
	Shape     string
	Facing    *Target
	Backwards bool
	Starting  *Time
	When      *Trigger
	In        *Quantity
	Glass     *Name // `in` with a name
	For       *Quantity
	At        *Goal
	By        *Time
	Until     *Moment
	With      *With
	Over      *Quantity
	Card      *Name
	Weight    *Name
	Fifty     bool
	Size      string
	Stop      *Stop
	Measure   *Measure
}

// Round is a walk round a place: round M1 180 deg left.
type Round struct {
	Node
	Word string   `parser:"@'round'"`
	What *Place   `parser:"@@"`
	Turn *Measure `parser:"@@?"`
}

// Eight is a figure of eight round two places: eight round M1, M2.
type Eight struct {
	Node
	Word   string `parser:"@'eight' 'round'"`
	First  *Place `parser:"@@"`
	Second *Place `parser:"',' @@"`
}

// Path is where somebody goes; what is not said is nil.
type Path struct {
	From      *Place
	Via       []*Place
	To        *Place
	Round     *Round
	Eight     *Eight
	Radius    *Quantity // `at` with a length, with Round and Eight
	Shape     string    // "", straight or curved
	Facing    *Target
	Backwards bool
}
