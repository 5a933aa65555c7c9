package check

import (
	"longhand/lang/diag"
	"longhand/lang/plan"
)

// Watch is which bodies of the scene the rules of a pass ask about: whether any
// asks what a camera sees of a body. It is for a pass that has everything but
// what is seen.
func Watch(p *Pass) func(camera, body int) bool {
	asked := make([]map[plan.Thing]bool, len(p.Stage.Cameras))
	for camera := range asked {
		asked[camera] = map[plan.Thing]bool{}
		for _, thing := range p.Stage.Things {
			asked[camera][thing] = asked[camera][thing] || p.watches(camera, thing)
		}
	}
	return func(camera, body int) bool { return asked[camera][p.Stage.Things[body]] }
}

func (p *Pass) watches(camera int, thing plan.Thing) bool {
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
func watchesNothing(*Pass, int, plan.Thing) bool { return false }

// watchesForbidden is for what must not be in frame at all.
func watchesForbidden(_ *Pass, _ int, thing plan.Thing) bool { return forbidden(thing) }

// watchesSubjects is for what the camera is told to see.
func watchesSubjects(p *Pass, camera int, thing plan.Thing) bool {
	track := p.Tracks.Camera(p.cameraAt(camera))
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
