package plan

import (
	"slices"

	"longhand/lang/departments"
)

// Concerns is the departments that have to know of a line, in the order of the
// book: those that act on it, and those whose work rests on it (common practice, no
// source).
func (a *Action) Concerns() []departments.Name {
	switch a.Deed.(type) {
	case *Cue:
		return []departments.Name{departments.Camera, departments.Electric, departments.Ads, departments.Script}
	case *Say:
		return []departments.Name{departments.Sound, departments.Ads, departments.Movement, departments.Script}
	case *Cut, *Roll:
		return []departments.Name{departments.Camera, departments.Ads, departments.Script}
	case *Operate:
		return []departments.Name{departments.Art, departments.Ads}
	case *See, *Fit, *Rack, *Swing:
		return []departments.Name{departments.Camera, departments.Script}
	case *Hide:
		return []departments.Name{departments.Camera, departments.Grip, departments.Art, departments.Effects, departments.Ads}
	case *Handoff, *Mount, *Ride, *Leave, *Board:
		// Whoever steps on or off weighs on something and walks there.
		return []departments.Name{departments.Camera, departments.Grip, departments.Ads, departments.Movement, departments.Vehicles}
	case *Keep, *Beside, *Circle, *Travel, *Lift, *Spot:
		return []departments.Name{departments.Camera, departments.Grip, departments.Ads, departments.Movement}
	}
	switch who := a.Subject.(type) {
	case *Person: // those who pull focus count on where people go
		if who.Crew {
			return []departments.Name{departments.Camera, departments.Grip, departments.Ads, departments.Movement, departments.Script}
		}
		return []departments.Name{departments.Camera, departments.Ads, departments.Movement, departments.Script}
	case *Vehicle:
		return []departments.Name{departments.Ads, departments.Vehicles}
	case *Rig:
		return []departments.Name{departments.Camera, departments.Grip, departments.Ads, departments.Vehicles}
	case *Camera:
		return []departments.Name{departments.Camera, departments.Grip, departments.Ads}
	}
	return []departments.Name{departments.Ads}
}

// ConcernsDepartment is whether a department has to know of a line.
func (a *Action) ConcernsDepartment(d departments.Name) bool {
	return slices.Contains(a.Concerns(), d)
}
