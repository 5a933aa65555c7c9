package plan

import (
	"longhand/lang/departments"
	"longhand/lang/source"
	"longhand/lang/units"
)

// Beat is a part of the take.
type Beat struct {
	Index   int
	Title   string
	Span    source.Span // of the header
	Start   *Moment     // nil: when the beat before it ends
	For     units.Seconds
	ForSpan source.Span // invalid where no length is stated
	Actions []*Action
}

// Pickup is coverage after the take.
type Pickup struct {
	Index   int
	Title   string
	Span    source.Span
	Into    bool  // leads into the beat; otherwise it follows it
	Beat    *Beat // nil where it did not resolve
	Roll    *Window
	Actions []*Action
}

// Action is one line of a beat: who does what, and when.
type Action struct {
	Index   int     // in Plan.Actions; in Pickup.Actions for a pickup's
	Beat    *Beat   // nil in a pickup
	Pickup  *Pickup // nil in a beat
	Subject Thing   // *Person, *Vehicle, *Rig, *Camera or *Door; nil for cues, cuts and handoffs
	Verb    string  // as written
	Deed    Deed
	Timing  Timing
	With    bool // starts with its subject's line before it, not after
	Span    source.Span
}

// Who is the subject's name, or "".
func (a *Action) Who() string {
	if a.Subject == nil {
		return ""
	}
	return a.Subject.ID().Name
}

// Timing is when a line happens, as far as it says so.
type Timing struct {
	Start  *Moment
	In     *units.Seconds
	InSpan source.Span
	At     *units.MetresPerSecond
	AtSpan source.Span
	By     *Moment
	Until  *Moment
	Span   source.Span
}

// Moment is a point in time as the text tells it.
type Moment struct {
	Kind   MomentKind
	Offset units.Seconds // since the beat began, on the take's clock, or from the event
	Event  *Event
	Span   source.Span
	Text   string // as written: `when otto reaches M4 plus 1 s` without its first word
}

// MomentKind says what a Moment counts from.
type MomentKind int

const (
	SinceBeat MomentKind = iota // +9 s
	OnClock                     // 1:04, bar 12.3
	OnEvent                     // when ...
)

// Event is something that happens, for others to wait for.
type Event struct {
	Kind    EventKind
	Subject Thing  // of Reaches, Leaves and Says
	Place   *Place // of Reaches and Leaves; Carrier instead for `leaves van`
	Carrier Thing
	Text    string // of Says: part of a line
	Cue     string // of CueFires
	Beat    *Beat  // of BeatStarts and BeatEnds
	Span    source.Span
}

// EventKind is what happens.
type EventKind int

const (
	Reaches EventKind = iota
	Leaves
	Says
	CueFires
	BeatStarts
	BeatEnds
)

// Note is a line for a department.
type Note struct {
	Department departments.Name
	Text       string
	Beat       *Beat // nil in a pickup
	Span       source.Span
}

// PaintOut accepts that a thing is in frame and sends it to visual effects.
type PaintOut struct {
	Thing   Thing
	Camera  *Camera
	During  []*Beat // nil: the whole take
	Because string
	Beat    *Beat   // it is written in; nil in a pickup
	Pickup  *Pickup // it is written in; nil in a beat
	Span    source.Span
}

// Allow accepts a finding.
type Allow struct {
	Code    string
	Thing   Thing // nil: any
	Camera  *Camera
	During  []*Beat
	Because string
	Beat    *Beat   // it is written in; nil in a pickup
	Pickup  *Pickup // it is written in; nil in a beat
	Span    source.Span
}
