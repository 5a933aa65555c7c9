package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
)

// Watches is whether a rule of the pass, which needs to have no more than the tracks
// yet, asks what a camera sees of a thing.
func (p *Pass) Watches(camera *plan.Camera, thing plan.Thing) bool {
	for _, r := range Rules {
		if r.Needs == Seen && !p.leavesOut(r) && (r.Watches == nil || r.Watches(p, camera, thing)) {
			return true
		}
	}
	return false
}

// leavesOut is whether the pass doesn't run a rule.
func (p *Pass) leavesOut(r *Rule) bool { return p.ErrorsOnly && r.Severity != diag.Error }

// watchesNothing is for rules about lenses, and those that look for themselves.
func watchesNothing(*Pass, *plan.Camera, plan.Thing) bool { return false }

// watchesForbidden is for what must not be in frame at all.
func watchesForbidden(_ *Pass, _ *plan.Camera, thing plan.Thing) bool { return forbidden(thing) }

// watchesSubjects is for what the camera is told to see.
func watchesSubjects(p *Pass, camera *plan.Camera, thing plan.Thing) bool {
	track := p.Tracks.Camera(camera)
	if track == nil {
		return false
	}
	for i := range track.Aims {
		if see := track.Aims[i].See; see != nil {
			for _, t := range see.Targets {
				if t.Thing == thing {
					return true
				}
			}
		}
	}
	return false
}
