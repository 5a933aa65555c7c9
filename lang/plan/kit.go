package plan

import "longhand/lang/units"

// Kit is what shoots and lights.
type Kit struct {
	Cameras  []*Camera
	Lenses   []*Lens
	Rigs     []*Rig
	Vehicles []*Vehicle
	Lamps    []*Lamp
	Washes   []*Wash
	Cards    []*Card
}

// Camera is a body with a sensor.
type Camera struct {
	Ident
	Width, Height units.Millimetres // of the sensor
	Squeeze       float64           // 1 unless given
	Weight        units.Kilograms   // 0 unless given
}

// Lens is a prime, or a zoom where Long is above Short.
type Lens struct {
	Ident
	Short, Long     units.Millimetres
	Widest, Closest units.Stop // widest opening and smallest; 0 unless given
	Weight          units.Kilograms
	Close           units.Metres // nearest focus from the lens; 0 unless given
}

// Zoom reports whether the focal length can change.
func (l *Lens) Zoom() bool { return l.Long > l.Short }

// Rig carries a camera. Fields are 0 unless given in the text; what is not
// given comes from the class (package body).
type Rig struct {
	Ident
	Class      string
	CarriesMin units.Kilograms
	CarriesMax units.Kilograms
	Length     units.Metres // ahead
	Width      units.Metres
	High       units.Metres
	Reach      units.Metres
	Seats      int
	Speed      units.MetresPerSecond
	Back       units.MetresPerSecond
	Pan        units.DegreesPerSecond
}

// Vehicle drives.
type Vehicle struct {
	Ident
	Length, Width units.Metres
	High          Range
	Gear          bool // must not be seen
}

// Lamp gives light.
type Lamp struct {
	Ident
	Power   units.Watts
	Colour  string       // a name; "" where Kelvin is given or nothing is
	Kelvin  units.Kelvin // 0 unless given
	Changes bool         // can take any colour
	Modern  bool
	Candela units.Candela // 0 unless given
	Seen    bool          // may be in frame: a practical
}

// Wash is many lamps of a kind on a grid, moved as one.
type Wash struct {
	Ident
	Lamp  *Lamp
	Count int
	Grid  *Grid
}

// Card covers a lens or a rig.
type Card struct {
	Ident
	Width, Height units.Metres
	Colour        string
}

func (*Camera) Kind() Kind  { return KindCamera }
func (*Lens) Kind() Kind    { return KindLens }
func (*Rig) Kind() Kind     { return KindRig }
func (*Vehicle) Kind() Kind { return KindVehicle }
func (*Lamp) Kind() Kind    { return KindLamp }
func (*Wash) Kind() Kind    { return KindWash }
func (*Card) Kind() Kind    { return KindCard }
