package page

import (
	"slices"

	"longhand/lang/compile"
	"longhand/lang/departments"
	"longhand/lang/plan"
)

// departments tells which lines of the take each department has to know of: those
// that its sheet rests on. The sheets themselves take far longer to make than a
// page that is to keep up with somebody typing may take.
func (d *document) departments(r *compile.Result) {
	lines := inTime(r.Tracks.Clock)
	for _, id := range departments.All() {
		dep := department{ID: string(id), Title: id.Title(), Lines: []int{}}
		for i, a := range lines {
			if concerns(id, a) {
				dep.Lines = append(dep.Lines, i)
			}
		}
		for _, n := range r.Plan.Notes {
			if of, err := departments.Parse(n.Department); err == nil && of == id {
				dep.Notes = append(dep.Notes, n.Text)
			}
		}
		d.Depts = append(d.Depts, dep)
	}
}

// concerns says whether a department has to know of a line.
func concerns(d departments.Name, a *plan.Action) bool {
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
