package page

import (
	"longhand/lang/compile"
	"longhand/lang/departments"
)

// departments tells which lines of the take each department has to know of: those
// that its sheet rests on. The sheets themselves take far longer to make than a
// page that is to keep up with somebody typing may take.
func (d *document) departments(r *compile.Result) {
	lines := inTime(r.Tracks.Clock)
	for _, id := range departments.All() {
		dep := department{ID: string(id), Title: id.Title(), Lines: []int{}}
		for i, a := range lines {
			if a.ConcernsDepartment(id) {
				dep.Lines = append(dep.Lines, i)
			}
		}
		for _, n := range r.Plan.Notes {
			if n.Department == id {
				dep.Notes = append(dep.Notes, n.Text)
			}
		}
		d.Depts = append(d.Depts, dep)
	}
}
