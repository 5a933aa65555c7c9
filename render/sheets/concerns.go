package sheets

import (
	"slices"

	"longhand/lang/departments"
	"longhand/lang/plan"
)

// Concerns says whether a department has to know of a line: those that its sheet
// rests on.
func Concerns(d departments.Name, a *plan.Action) bool {
	in := func(list ...departments.Name) bool { return slices.Contains(list, d) }
	switch a.Deed.(type) {
	case *plan.Cue:
		return in(departments.Electric, departments.Camera, departments.Ads, departments.Script)
	case *plan.Say:
		return in(departments.Sound, departments.Script, departments.Ads, departments.Movement)
	case *plan.Cut, *plan.Roll:
		return in(departments.Camera, departments.Script, departments.Ads)
	case *plan.Operate:
		return in(departments.Art, departments.Ads)
	case *plan.See, *plan.Fit, *plan.Rack, *plan.Swing:
		return in(departments.Camera, departments.Script)
	case *plan.Hide:
		return in(departments.Camera, departments.Grip, departments.Art, departments.Effects, departments.Ads)
	case *plan.Handoff, *plan.Mount, *plan.Ride, *plan.Leave, *plan.Board:
		// Whoever steps on or off weighs on something and walks there.
		return in(departments.Camera, departments.Grip, departments.Vehicles, departments.Movement, departments.Ads)
	case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Lift, *plan.Spot:
		return in(departments.Camera, departments.Grip, departments.Movement, departments.Ads)
	}
	switch a.Subject.(type) {
	case *plan.Person: // those who pull focus count on where people go
		return in(departments.Camera, departments.Movement, departments.Script, departments.Ads)
	case *plan.Vehicle:
		return in(departments.Vehicles, departments.Ads)
	case *plan.Rig:
		return in(departments.Camera, departments.Grip, departments.Vehicles, departments.Ads)
	case *plan.Camera:
		return in(departments.Camera, departments.Grip, departments.Ads)
	}
	return in(departments.Ads)
}
