package page

import (
	"slices"

	"longhand/lang/compile"
	"longhand/lang/plan"
	"longhand/render/sheets"
)

// departments tells which lines of the take each department has to know of: those
// that its sheet rests on. The sheets themselves take far longer to make than a
// page that is to keep up with somebody typing may take.
func (d *document) departments(r *compile.Result) {
	lines := inTime(r.Tracks.Clock)
	for _, id := range sheets.Departments() {
		dep := department{ID: string(id), Title: id.Title(), Lines: []int{}}
		for i, a := range lines {
			if concerns(id, a) {
				dep.Lines = append(dep.Lines, i)
			}
		}
		for _, n := range r.Plan.Notes {
			if of, err := sheets.ParseDepartment(n.Department); err == nil && of == id {
				dep.Notes = append(dep.Notes, n.Text)
			}
		}
		d.Depts = append(d.Depts, dep)
	}
}

// concerns says whether a department has to know of a line.
func concerns(d sheets.Department, a *plan.Action) bool {
	in := func(list ...sheets.Department) bool { return slices.Contains(list, d) }
	switch a.Deed.(type) {
	case *plan.Cue:
		return in(sheets.Electric, sheets.Camera, sheets.Ads, sheets.Script)
	case *plan.Say:
		return in(sheets.Sound, sheets.Script, sheets.Ads, sheets.Movement)
	case *plan.Cut, *plan.Roll:
		return in(sheets.Camera, sheets.Script, sheets.Ads)
	case *plan.Operate:
		return in(sheets.Art, sheets.Ads)
	case *plan.See, *plan.Fit, *plan.Rack, *plan.Swing:
		return in(sheets.Camera, sheets.Script)
	case *plan.Hide:
		return in(sheets.Camera, sheets.Grip, sheets.Art, sheets.Effects, sheets.Ads)
	case *plan.Handoff, *plan.Mount, *plan.Ride, *plan.Leave, *plan.Board:
		// Whoever steps on or off weighs on something and walks there.
		return in(sheets.Camera, sheets.Grip, sheets.Vehicles, sheets.Movement, sheets.Ads)
	case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Lift, *plan.Spot:
		return in(sheets.Camera, sheets.Grip, sheets.Movement, sheets.Ads)
	}
	switch a.Subject.(type) {
	case *plan.Person: // those who pull focus count on where people go
		return in(sheets.Camera, sheets.Movement, sheets.Script, sheets.Ads)
	case *plan.Vehicle:
		return in(sheets.Vehicles, sheets.Ads)
	case *plan.Rig:
		return in(sheets.Camera, sheets.Grip, sheets.Vehicles, sheets.Ads)
	case *plan.Camera:
		return in(sheets.Camera, sheets.Grip, sheets.Ads)
	}
	return in(sheets.Ads)
}
