package clock

import "longhand/lang/plan"

// Faculty is the part of a subject a line uses. A subject does one thing at a
// time with each.
type Faculty int

const (
	NoFaculty Faculty = iota
	Feet              // where it is; a camera's with its rig and operator
	Facing            // which way it looks; a camera's aim
	Voice
	Body  // posture
	Hands // doors
	Height
	Focus
	Lens
	Recording
	Edit
	Light
)

var facultyNames = [...]string{"nothing", "feet", "facing", "voice", "body", "hands", "height", "focus", "lens", "recording", "edit", "light"}

func (f Faculty) String() string {
	if f < 0 || int(f) >= len(facultyNames) {
		return facultyNames[0]
	}
	return facultyNames[f]
}

// FacultyOf is the faculty a line's deed uses.
func FacultyOf(d plan.Deed) Faculty {
	switch d.(type) {
	case *plan.Move, *plan.Stand, *plan.Ride, *plan.Leave, *plan.Board, *plan.Spot,
		*plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Mount, *plan.Hide, *plan.Handoff:
		return Feet
	case *plan.Turn, *plan.Spin, *plan.See, *plan.Swing:
		return Facing
	case *plan.Say:
		return Voice
	case *plan.Pose:
		return Body
	case *plan.Operate:
		return Hands
	case *plan.Lift:
		return Height
	case *plan.Rack:
		return Focus
	case *plan.Fit:
		return Lens
	case *plan.Roll:
		return Recording
	case *plan.Cut:
		return Edit
	case *plan.Cue:
		return Light
	}
	return NoFaculty
}

// Instant reports whether a line takes no time of its own: it sets something up
// that lasts until the subject is told otherwise. A line whose text states a
// length or an end is never instant.
func Instant(a *plan.Action) bool {
	if a.Timing.In != nil || a.Timing.Until != nil {
		return false
	}
	switch a.Deed.(type) {
	case *plan.Mount, *plan.Fit, *plan.See, *plan.Hide, *plan.Roll, *plan.Cut, *plan.Ride, *plan.Spot,
		*plan.Stand, *plan.Keep, *plan.Beside:
		return true
	}
	return false
}

// SubjectOf is whose lines a line is one of: a handoff's is its camera; nil for
// cues and cuts.
func SubjectOf(a *plan.Action) plan.Thing {
	if a.Subject != nil {
		return a.Subject
	}
	if h, ok := a.Deed.(*plan.Handoff); ok && h.Camera != nil {
		return h.Camera
	}
	return nil
}
