// Package plan is a plan with every name bound and every unit converted: what
// the text means, before anything is computed from it.
//
// A plan is made by bind and never changed after. What did not resolve is left
// out or marked Bad, and has been reported; later stages skip it, so that one
// typo yields one finding. Lengths are in metres, times in seconds, angles in
// degrees as units says; positions are geom.Vec in metres.
package plan

import (
	"longhand/lang/source"
	"longhand/lang/units"
)

// Plan is a whole take and its coverage.
type Plan struct {
	Files   []*source.File // the main file first, then those it uses
	Take    Take
	Set     Set
	Kit     Kit
	People  []*Person // in the order of the text
	Look    Look
	Beats   []*Beat
	Pickups []*Pickup
	// Actions is every line of every beat, in the order of the text;
	// Actions[i].Index == i. A pickup keeps its own.
	Actions []*Action
	// PaintOuts and Allows of all beats and pickups, in the order of the text.
	PaintOuts []*PaintOut
	Allows    []*Allow
	Notes     []*Note
}

// Ident is what everything with a name has.
type Ident struct {
	Name string
	At   source.Span // the name where it is declared
	Decl source.Span // the statement that declares it
	Bad  bool        // declared with a mistake that has been reported
}

// ID lets every kind of thing be asked for its name.
func (id *Ident) ID() *Ident { return id }

// Kind says what a thing is.
type Kind string

const (
	KindPerformer Kind = "performer"
	KindCrew      Kind = "crew"
	KindVehicle   Kind = "vehicle"
	KindRig       Kind = "rig"
	KindCamera    Kind = "camera"
	KindDoor      Kind = "door"
	KindMark      Kind = "mark"
	KindLens      Kind = "lens"
	KindLamp      Kind = "lamp"
	KindWash      Kind = "wash"
	KindCard      Kind = "card"
	KindHole      Kind = "hole"
	KindWall      Kind = "wall"
	KindWindow    Kind = "window"
	KindPillar    Kind = "pillar"
	KindBlock     Kind = "block"
	KindPlatform  Kind = "platform"
	KindStairs    Kind = "stairs"
	KindMirror    Kind = "mirror"
	KindGlow      Kind = "glow"
	KindGrid      Kind = "grid"
	KindSupply    Kind = "supply"
)

// Thing is anything declared: *Person, *Vehicle, *Rig, *Camera, *Door, *Mark, ...
type Thing interface {
	ID() *Ident
	Kind() Kind
}

// Take is what is being shot and how.
type Take struct {
	Title        string
	Span         source.Span // of the header
	Scene        string
	Rate         units.Rate // 24 fps unless given
	Aspect       float64    // width over height; 0 for the sensor's own
	Shutter      units.Degrees
	Sensitivity  int     // 0 unless given
	Pace         float64 // spoken words a minute
	Units        units.System
	Tempo        *Tempo
	Place        *LatLon
	Date         *Date
	Roll         *Window
	Reset        units.Seconds // 0 unless given
	Record       *Record
	Revision     string
	RevisionDate string
}

// Tempo makes counts and bars available.
type Tempo struct {
	BPM  float64
	In   int // counts a bar
	Span source.Span
}

// LatLon is a place on earth; north and east are positive.
type LatLon struct {
	Lat, Lon units.Degrees
	Span     source.Span
}

// Date is the day of the shoot and its clock's distance from UTC.
type Date struct {
	Year, Month, Day int
	Zone             units.Seconds
	Span             source.Span
}

// Window is the light a take has to be rolled in.
type Window struct {
	Name     string        // "civil-dusk", ...; "" for clock times
	From, To units.Seconds // since local midnight, where Name is ""
	Span     source.Span
}

// Record is the longest roll.
type Record struct {
	Duration units.Seconds // given, or of the film at the take's rate
	Gauge    string        // "" where no film was named
	Length   units.Metres
	Span     source.Span
}

// Person is a performer or one of the crew.
type Person struct {
	Ident
	Crew   bool
	Role   string
	Height units.Metres    // stature
	Weight units.Kilograms // crew; a default for performers
	Spread units.Percent   // of timing; negative unless given
	// HeightGiven is false where Height is the default.
	HeightGiven bool
}

func (p *Person) Kind() Kind {
	if p.Crew {
		return KindCrew
	}
	return KindPerformer
}

// Look is what this production does and never does.
type Look struct {
	NeverZoom     *source.Span
	NeverModern   *source.Span
	Tightest      *TightestRule
	OnlyLenses    *LensRule
	Blur          *LimitRule // per cent of frame width
	PanSeconds    *LimitRule // seconds a frame width
	ExposureStops *LimitRule
	UnderStops    *LimitRule // that a face may be under the stop
	Speeds        []SpeedRule
}

// TightestRule is `never tighter than SIZE`.
type TightestRule struct {
	Size string
	Span source.Span
}

// LensRule is `only lens NAME+`.
type LensRule struct {
	Lenses []*Lens
	Span   source.Span
}

// LimitRule is a limit with a number.
type LimitRule struct {
	Limit float64
	Span  source.Span
}

// SpeedRule is `speed CLASS at most SPEED [back SPEED]`.
type SpeedRule struct {
	Class string
	Speed units.MetresPerSecond
	Back  units.MetresPerSecond // 0 unless given
	Span  source.Span
}
