package compare

import (
	"longhand/lang/departments"
	"longhand/lang/plan"
)

// concern is departments put in order, each once.
func concern(list ...departments.Name) []departments.Name {
	has := map[departments.Name]bool{}
	for _, d := range list {
		has[d] = true
	}
	var out []departments.Name
	for _, d := range departments.All() {
		if has[d] {
			out = append(out, d)
		}
	}
	return out
}

// ofThing is whom a change of something declared concerns: who builds, rigs or
// carries it, and who reckons with it (common practice, no source).
func ofThing(t plan.Thing) []departments.Name {
	switch t.Kind() {
	case plan.KindPerformer:
		return concern(departments.Movement, departments.Ads, departments.Script)
	case plan.KindCrew:
		return concern(departments.Camera, departments.Grip, departments.Ads)
	case plan.KindVehicle:
		return concern(departments.Vehicles, departments.Ads, departments.Art)
	case plan.KindRig:
		return concern(departments.Grip, departments.Camera)
	case plan.KindCamera, plan.KindLens:
		return concern(departments.Camera)
	case plan.KindDoor:
		return concern(departments.Art, departments.Ads, departments.Grip)
	case plan.KindMark:
		return concern(departments.Grip, departments.Camera, departments.Ads, departments.Movement)
	case plan.KindLamp, plan.KindWash, plan.KindGrid, plan.KindSupply:
		return concern(departments.Electric)
	case plan.KindCard, plan.KindHole:
		return concern(departments.Camera, departments.Art)
	case plan.KindMirror, plan.KindGlow, plan.KindWindow:
		return concern(departments.Art, departments.Camera, departments.Electric)
	}
	return concern(departments.Art, departments.Grip, departments.Camera)
}
