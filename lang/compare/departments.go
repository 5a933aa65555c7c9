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

// ofLine is whom a line concerns.
func ofLine(a *plan.Action) []departments.Name {
	switch d := a.Deed.(type) {
	case *plan.Move, *plan.Stand, *plan.Turn, *plan.Spin, *plan.Pose:
		return ofMover(a.Subject)
	case *plan.Ride:
		return concern(append(ofMover(d.Carrier), departments.Ads, departments.Movement)...)
	case *plan.Leave:
		return concern(append(ofMover(d.Carrier), departments.Ads, departments.Movement)...)
	case *plan.Board:
		return concern(append(ofMover(d.Carrier), departments.Ads)...)
	case *plan.Spot:
		return concern(departments.Grip, departments.Camera)
	case *plan.Operate:
		return concern(departments.Art, departments.Ads)
	case *plan.Say:
		return concern(departments.Sound, departments.Script, departments.Ads)
	case *plan.Mount, *plan.Handoff:
		return concern(departments.Camera, departments.Grip, departments.Ads)
	case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Lift:
		return concern(departments.Camera, departments.Grip)
	case *plan.See, *plan.Roll, *plan.Cut:
		return concern(departments.Camera, departments.Script)
	case *plan.Hide:
		return concern(departments.Camera, departments.Art)
	case *plan.Cue:
		return concern(departments.Electric, departments.Ads)
	}
	return concern(departments.Camera)
}

// ofMover is whom the way of something concerns.
func ofMover(t plan.Thing) []departments.Name {
	switch t := t.(type) {
	case *plan.Person:
		if t.Crew {
			return concern(departments.Grip, departments.Camera, departments.Ads)
		}
		return concern(departments.Movement, departments.Ads)
	case *plan.Vehicle:
		return concern(departments.Vehicles, departments.Ads)
	case *plan.Rig, *plan.Camera:
		return concern(departments.Grip, departments.Camera)
	}
	return concern(departments.Ads)
}
