package motion

import (
	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Facts is what happened on the way that a check may find fault with. Each list
// is in the order of time, then of the text. Actions may be nil where something
// follows from no one line.
type Facts struct {
	Jumps    []Jump
	Demands  []Demand
	Joins    []Join
	Handoffs []Handoff
	Loads    []Load
	Backing  []Backing
	Rides    []Ride
	Carries  []Carry
	Armed    []ArmShort
	Problems []Problem
}

// Jump is a subject told to begin, or to be, where it isn't.
type Jump struct {
	Subject  plan.Thing
	Action   *plan.Action
	At       units.Seconds
	From, To geom.Vec3 // where it is, where the text has it
	Gap      units.Metres
	Needs    units.Seconds // to get there at its usual pace
}

// Quantity is what a demand asks of a body or a rig.
type Quantity int

const (
	Speed     Quantity = iota // m/s forwards
	BackSpeed                 // m/s backwards
	Accel                     // m/s², gathering and losing speed
	Lateral                   // m/s² sideways in a curve
	TurnRate                  // deg/s of a body or a wheeled rig
	PanRate                   // deg/s of the lens
	TiltRate                  // deg/s of the lens
	RiseRate                  // m/s of the lens up or down
	FocusRate                 // m/s of the focus along the axis
	LensLow                   // m: the lens lower than the rig goes
	LensHigh                  // m: the lens higher than the rig goes
	Radius                    // m: a curve tighter than the rig's

	quantities = iota // how many there are
)

// Demand is the most that a line asks for of one quantity, with what is usual
// and what is the limit. Every move, relation, turn, lift, aim and rack has its
// demands listed, whether they are too much or not.
type Demand struct {
	Subject  plan.Thing // whose limit it is: a person, a vehicle, a rig, a camera
	Action   *plan.Action
	Quantity Quantity
	From, To units.Seconds // of the stretch asked for
	At       units.Seconds // of the peak
	Peak     float64
	Typical  float64
	Limit    float64
	Source   string // where the limit comes from, for people
	// Fixed is whether the text fixes the time or the pace, so that the plan
	// asks for it; otherwise it follows from what others do.
	Fixed bool
}

// Over says that the demand is over its limit (under, for a lens height too low
// and a curve too tight), but for rounding.
func (d Demand) Over() bool {
	const slop = 1e-6
	if d.Quantity == LensLow || d.Quantity == Radius {
		return d.Peak < d.Limit-slop
	}
	return d.Peak > d.Limit+slop
}

// Join is how a camera got to where a relation wants it.
type Join struct {
	Camera      *plan.Camera // nil for a spotter
	Subject     plan.Thing   // what moves: the operator or the rig
	Action      *plan.Action
	Gap         units.Metres // at the start
	Start, Done units.Seconds
	Cut         bool         // over before it was done: by its next move, or the take's end
	Left        units.Metres // what is left of the gap when it is over
	Peak        units.MetresPerSecond
	Limit       units.MetresPerSecond
	Source      string
	InPlace     bool // nothing had said where it was: it starts there
}

// Handoff is a camera changing hands.
type Handoff struct {
	Camera     *plan.Camera
	Action     *plan.Action // the handoff, or the mount that changed the rig in the take
	Written    bool         // as a handoff
	From, To   *plan.Rig
	Giver      *plan.Person // nil where nobody had it
	Taker      *plan.Person
	Start, End units.Seconds
	Way        body.Handoff
	// Between the lens's place on the old rig and on the new one.
	GapStart, GapEnd units.Metres
	Relative         units.MetresPerSecond // the most, between the two rigs
	Moving           units.MetresPerSecond // the most of either, over the floor
	Place            *plan.Place           // where the text has it; nil where it doesn't say
	Off              units.Metres          // how far the lens is from there at the start
	At, Onto         geom.Vec3             // of the lens on the old rig and on the new one, at the start
	Window           *plan.Pane            // that it goes through; nil for none
	Weight           *plan.Person          // steps on where the operator steps off
	StepsOff         bool                  // the operator steps off an arm or a deck
	Left             *plan.Rig             // the rig let go of, where it is left without an operator
}

// Load is a camera with its lens on a rig.
type Load struct {
	Camera     *plan.Camera
	Lens       *plan.Lens // nil where none is fitted
	Rig        *plan.Rig
	Operator   *plan.Person
	Action     *plan.Action // that put it there: Mount, Handoff or Fit
	Start, End units.Seconds
	Weight     units.Kilograms // camera and lens
}

// Backing is somebody walking backwards, or a rig going so.
type Backing struct {
	Who      plan.Thing
	Camera   *plan.Camera // held meanwhile; nil where none is
	Action   *plan.Action
	From, To units.Seconds
	Length   units.Metres
	Peak     units.MetresPerSecond
	Spotter  *plan.Person // nil where there is none all the while
	Away     units.Metres // the most that the spotter is from them
}

// Ride is somebody, or something, aboard a carrier.
type Ride struct {
	Who      plan.Thing
	Carrier  plan.Thing
	Action   *plan.Action
	At       geom.Vec // in the carrier's frame
	From, To units.Seconds
	Weight   bool // stands in for the weight of who stepped off
}

// Carry is an operator with a worn or held rig that has a camera on it.
type Carry struct {
	Who      *plan.Person
	Rig      *plan.Rig
	Camera   *plan.Camera
	From, To units.Seconds
	Load     units.Kilograms // camera and lens
}

// ArmShort is a relation that asks an arm, a rail or a tripod to be where it
// can't.
type ArmShort struct {
	Camera *plan.Camera
	Rig    *plan.Rig
	Action *plan.Action
	At     units.Seconds // of the worst
	Short  units.Metres
}

// Problem is a line that could not be followed.
type Problem struct {
	Kind    ProblemKind
	Subject plan.Thing
	Other   plan.Thing
	Action  *plan.Action
	Note    string // for people, lower case
}

// ProblemKind says what is wrong with a line.
type ProblemKind int

const (
	NoStart   ProblemKind = iota // nothing says where the subject is when it first moves
	NotAboard                    // leaves what it doesn't ride
	NoTarget                     // the target is nowhere
	NoBase                       // a camera on no rig is told to move
	NoWay                        // a path that can't be made
	Circular                     // two that follow each other
	TooFar                       // aboard from too far away
)
