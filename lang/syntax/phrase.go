package syntax

// Phrase is one optional part of a line of a beat. They come in any order; one
// field is set. Statements hold what their phrases say in fields of their own,
// so only the folding reads these.
type Phrase struct {
	Node
	From      *Place    `parser:"  'from' @@"`
	Via       []*Place  `parser:"| 'via' @@ ( ',' @@ )*"`
	To        *Goal     `parser:"| 'to' @@"`
	Round     *Round    `parser:"| @@"`
	Eight     *Eight    `parser:"| @@"`
	Shape     string    `parser:"| @('straight' | 'curved')"`
	Facing    *Target   `parser:"| 'facing' @@"`
	Backwards bool      `parser:"| @'backwards'"`
	Starting  *Time     `parser:"| 'starting' @@"`
	When      *Trigger  `parser:"| 'when' @@"`
	In        *Quantity `parser:"| 'in' @@"`
	For       *Quantity `parser:"| 'for' @@"`
	At        *Goal     `parser:"| 'at' @@"`
	By        *Time     `parser:"| 'by' @@"`
	Until     *Moment   `parser:"| 'until' @@"`
	With      *With     `parser:"| @@"`
	Over      *Quantity `parser:"| 'over' @@"`
	Card      *Name     `parser:"| 'card' @@"`
	Weight    *Name     `parser:"| 'weight' @@"`
	Fifty     bool      `parser:"| @'fifty-fifty'"`
	Size      string    `parser:"| @('wide' | 'full' | 'knee' | 'thigh' | 'waist' | 'chest' | 'shoulders' | 'face' | 'eyes')"`
	Stop      *Stop     `parser:"| @@"`
	Measure   *Measure  `parser:"| @@"`
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
