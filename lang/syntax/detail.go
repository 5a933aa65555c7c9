package syntax

// Detail is one optional part of a line outside the beats. They come in any
// order; one field is set. Statements hold what their details say in fields of
// their own, so only the folding reads these.
type Detail struct {
	Node
	High    *Range
	Thick   *Quantity
	At      *Goal
	Up      *Quantity
	Wide    *Quantity
	Round   *Quantity
	Width   *Quantity
	Rise    *Quantity
	Points  *Number
	Times   *Number
	Aims    *Place
	Squeeze *Number
	Weighs  *Quantity
	Stops   *Stops
	Close   *Quantity
	Carries *Range
	Size    *Size
	Reach   *Quantity
	Seats   *Number
	Speed   *Quantity
	Back    *Quantity
	Pan     *Quantity
	Colour  *Colour
	Height  *Quantity
	Spread  *Quantity
	Scale   *Ratio
	Zone    *Zone
	Cable   *Cable
	Flag    string
	Amount  *Quantity
}

// Range is a length, mass or the like, or two of them: 2.6 m to 3 m.
type Range struct {
	Node
	Low  *Quantity `parser:"@@"`
	High *Quantity `parser:"( 'to' @@ )?"` // nil if only one is given
}

// Stops are the widest and the smallest opening of a lens: T2 to T22.
type Stops struct {
	Node
	Wide  *Stop `parser:"@@"`
	Small *Stop `parser:"'to' @@"`
}

// Size is a length by a length: 24.9 mm x 14 mm.
type Size struct {
	Node
	Length *Quantity `parser:"@@"`
	Width  *Quantity `parser:"('x' | '×') @@"`
}

// Cable is a run of cable: how long it is, and how thick its wires are.
type Cable struct {
	Node
	Run     *Quantity `parser:"@@"`
	Section *Quantity `parser:"@@"`
}

// Colour is a colour's name or a temperature: amber, 3200 K. One is set.
type Colour struct {
	Node
	Kelvin *Quantity `parser:"  @@"`
	Name   *Name     `parser:"| @@"`
}

// Ratio is a plain number or one number to another: 1.85, 16:9, 1:50.
type Ratio struct {
	Node
	Text string
}

// Zone is the offset from universal time: +02:00.
type Zone struct {
	Node
	Text string
}

// Date is a day: 2026-08-20.
type Date struct {
	Node
	Text string
}
