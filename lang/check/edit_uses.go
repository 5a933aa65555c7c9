package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
)

// noteEdit says so where the cuts of the plan have another camera's picture in
// all the frames of a finding: it is in the rushes, and not in the film.
func (p *Pass) noteEdit(d *diag.Diagnostic, camera *plan.Camera) {
	cuts := p.Tracks.Cuts
	if len(cuts) == 0 || len(d.Frames) == 0 {
		return
	}
	var other *plan.Camera
	for _, r := range d.Frames {
		for f := r.From; f <= r.To; f++ {
			t := p.Tracks.Rate.Time(f)
			var used *plan.Camera
			for _, c := range cuts {
				if c.At <= t {
					used = c.Camera
				}
			}
			if used == nil || used == camera {
				return
			}
			other = used
		}
	}
	d.Note("the cuts have %s's picture then", other.Name)
}
