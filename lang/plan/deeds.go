package plan

import (
	"longhand/lang/geom"
	"longhand/lang/source"
	"longhand/lang/units"
)

// Deed is what a line does. The types below are all there are.
type Deed interface{ deed() }

type (
	// Move: NAME walks|runs|drives|moves PATH.
	Move struct {
		Path Path
		Run  bool
	}
	// Stand: NAME stands|waits [at PLACE] [facing TARGET]. A camera that stands
	// stays where it is and follows nobody any more.
	Stand struct {
		At     *Place
		Facing *Target
	}
	// Turn: NAME turns to TARGET|ANGLE. One of the two is set; Angle is a
	// direction on paper.
	Turn struct {
		To    *Target
		Angle *units.Degrees
	}
	// Spin: NAME spins ANGLE left|right, on the spot or while walking.
	Spin struct {
		Angle units.Degrees
		Turn  Side
	}
	// Ride: NAME rides CARRIER [at POINT]. At is in the carrier's frame: x
	// ahead, y to its left, from its centre.
	Ride struct {
		Carrier Thing // *Vehicle or *Rig
		At      geom.Vec
		AtGiven bool
	}
	// Leave: NAME leaves CARRIER [to PLACE].
	Leave struct {
		Carrier Thing
		To      *Place
	}
	// Board: NAME boards CARRIER [at POINT], as weight. At is in the carrier's
	// frame; nil unless given.
	Board struct {
		Carrier Thing
		At      *geom.Vec
	}
	// Spot: NAME spots CREW, walking behind who backs up.
	Spot struct{ Whom *Person }
	// Pose: NAME sits|kneels|crouches|rises. Posture is "sitting", "kneeling",
	// "crouching" or "standing".
	Pose struct{ Posture string }
	// Operate: NAME opens|shuts DOOR, or door NAME opens|shuts (then the
	// action's Subject is the door itself).
	Operate struct {
		Door *Door
		Open bool
	}
	// Say: NAME says STRING.
	Say struct {
		Text  string
		Words int
	}

	// Mount: CAMERA on RIG [with CREW] [up LENGTH] [at POINT].
	Mount struct {
		Rig  *Rig
		With *Person
		Up   *units.Metres
		At   *geom.Vec // in the rig's frame
	}
	// Fit: CAMERA takes LENS [LENGTH] [STOP].
	Fit struct {
		Lens  *Lens
		Focal units.Millimetres // 0: the lens's own, or what it was
		Stop  units.Stop        // 0 unless given
	}
	// See: CAMERA sees TARGET [in MIRROR], ... [SIZE] [fifty-fifty].
	See struct {
		Targets  []Target
		Size     string // "" unless given
		SizeSpan source.Span
		Even     bool
	}
	// Keep: CAMERA leads|follows TARGET by LENGTH.
	Keep struct {
		Target Target
		Lead   bool
		By     units.Metres
	}
	// Beside: CAMERA beside TARGET left|right LENGTH.
	Beside struct {
		Target Target
		Side   Side // the target's own
		By     units.Metres
	}
	// Circle: CAMERA circles TARGET ANGLE left|right at LENGTH; Counter:
	// CAMERA counters TARGET at LENGTH, against the target's spin.
	Circle struct {
		Target  Target
		Angle   units.Degrees
		Turn    Side
		At      units.Metres // 0: the distance it has
		Counter bool
	}
	// Travel: CAMERA pushes|pulls LENGTH, towards or away from what it sees.
	Travel struct {
		By   units.Metres
		Pull bool
	}
	// Lift: CAMERA rises|lowers to LENGTH, the lens's height over the floor.
	Lift struct{ To units.Metres }
	// Swing: CAMERA pans|tilts ANGLE left|right|up|down.
	Swing struct {
		Angle units.Degrees
		Turn  Side
	}
	// Rack: CAMERA racks to TARGET [in MIRROR]|LENGTH. One of the two is set.
	Rack struct {
		To       *Target
		Distance *units.Metres
	}
	// Hide: CAMERA hides behind HOLE [card CARD].
	Hide struct {
		Hole *Hole
		Card *Card
	}
	// Roll: CAMERA rolls|rests.
	Roll struct{ On bool }

	// Handoff: handoff CAMERA from RIG to RIG [at PLACE] [when EVENT] [weight CREW].
	Handoff struct {
		Camera   *Camera
		From, To *Rig
		At       *Place
		Weight   *Person // steps on where the operator steps off
		With     *Person // who takes it; nil: the one who had it
	}
	// Cut: cut to CAMERA.
	Cut struct{ Camera *Camera }
	// Cue: cue NAME WASH NUMBER %[, ...] over DURATION.
	Cue struct {
		Name   string
		Levels []Level
		Over   units.Seconds
	}
)

// Level is where a cue takes a wash, or a lamp placed in the set.
type Level struct {
	Wash *Wash
	Lamp *Lamp // for a lamp that is placed, not hung; nil for a wash
	Per  units.Percent
}

func (*Move) deed()    {}
func (*Stand) deed()   {}
func (*Turn) deed()    {}
func (*Spin) deed()    {}
func (*Ride) deed()    {}
func (*Leave) deed()   {}
func (*Board) deed()   {}
func (*Spot) deed()    {}
func (*Pose) deed()    {}
func (*Operate) deed() {}
func (*Say) deed()     {}
func (*Mount) deed()   {}
func (*Fit) deed()     {}
func (*See) deed()     {}
func (*Keep) deed()    {}
func (*Beside) deed()  {}
func (*Circle) deed()  {}
func (*Travel) deed()  {}
func (*Lift) deed()    {}
func (*Swing) deed()   {}
func (*Rack) deed()    {}
func (*Hide) deed()    {}
func (*Roll) deed()    {}
func (*Handoff) deed() {}
func (*Cut) deed()     {}
func (*Cue) deed()     {}
