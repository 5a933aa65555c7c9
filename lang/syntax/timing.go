package syntax

// Time is a moment of the take: +9 s since the beat began, 1:04 on the take's
// clock, or bar 12.3. A Quantity without its plus is accepted here and left to
// the binder.
type Time struct {
	Node
	Bar    *Number   `parser:"  'bar' @@"`
	Amount *Quantity `parser:"| '+'? @@"`
}

// Event is something that happens: mina reaches M2, mina says "six", cue dusk,
// beat "The yard" ends.
type Event struct {
	Node
	Cue   *Name   `parser:"  'cue' @@"`
	Beat  *String `parser:"| 'beat' @@"`
	Edge  string  `parser:"  @('starts' | 'ends')"` // starts or ends, with Beat
	Who   *Name   `parser:"| @@"`
	Verb  string  `parser:"  ( @('reaches' | 'leaves')"` // reaches or leaves, with Who and Place
	Place *Place  `parser:"    @@"`
	Says  string  `parser:"  | @'says'"` // says, with Who and Line
	Line  *String `parser:"    @@ )"`
}

// Trigger is an event and the time before or after it.
type Trigger struct {
	Node
	Event *Event    `parser:"@@"`
	Plus  *Quantity `parser:"( 'plus' @@"`
	Minus *Quantity `parser:"| 'minus' @@ )?"`
}

// Moment is a time or an event. One of the two is set.
type Moment struct {
	Node
	Time  *Time  `parser:"  (?= Quantity | Clock | '+' | 'bar' Number) @@"`
	Event *Event `parser:"| @@"`
}

// Timing is when a line happens; what is not said is nil.
type Timing struct {
	Starting *Time
	When     *Trigger
	In       *Quantity // a duration
	For      *Quantity // a duration: for somebody who waits, rests, holds
	Speed    *Quantity // `at` with a speed
	By       *Time
	Until    *Moment
	With     *With // starts with the subject's line before it
}

// With is the word `with`, alone or with a name: with ida.
type With struct {
	Node
	Word string `parser:"@'with'"`
	Crew *Name  `parser:"@@?"`
}
