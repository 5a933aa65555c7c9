package compare

import (
	"longhand/lang/plan"
)

// Department is the short name of a department, as the sheets have it.
type Department string

// The departments.
const (
	Camera   Department = "camera"
	Grip     Department = "grip"
	Electric Department = "electric"
	Art      Department = "art"
	Sound    Department = "sound"
	Effects  Department = "vfx"
	Ads      Department = "ads"
	Movement Department = "movement"
	Vehicles Department = "vehicles"
	Script   Department = "script"
)

// Departments lists the departments in the order of the book.
func Departments() []Department {
	return []Department{Camera, Grip, Electric, Art, Sound, Effects, Ads, Movement, Vehicles, Script}
}

// concern is departments put in order, each once.
func concern(list ...Department) []Department {
	has := map[Department]bool{}
	for _, d := range list {
		has[d] = true
	}
	var out []Department
	for _, d := range Departments() {
		if has[d] {
			out = append(out, d)
		}
	}
	return out
}

// noted are the departments as a plan's `note` calls them.
var noted = map[string]Department{"effects": Effects, "directors": Ads}

// ofNote is whom a note is for; everybody where its word is no department's.
func ofNote(word string) []Department {
	if d, ok := noted[word]; ok {
		return concern(d)
	}
	for _, d := range Departments() {
		if string(d) == word {
			return concern(d)
		}
	}
	return Departments()
}

// ofThing is whom a change of something declared concerns: who builds, rigs or
// carries it, and who reckons with it (common practice, no source).
func ofThing(t plan.Thing) []Department {
	switch t.Kind() {
	case plan.KindPerformer:
		return concern(Movement, Ads, Script)
	case plan.KindCrew:
		return concern(Camera, Grip, Ads)
	case plan.KindVehicle:
		return concern(Vehicles, Ads, Art)
	case plan.KindRig:
		return concern(Grip, Camera)
	case plan.KindCamera, plan.KindLens:
		return concern(Camera)
	case plan.KindDoor:
		return concern(Art, Ads, Grip)
	case plan.KindMark:
		return concern(Grip, Camera, Ads, Movement)
	case plan.KindLamp, plan.KindWash, plan.KindGrid, plan.KindSupply:
		return concern(Electric)
	case plan.KindCard, plan.KindHole:
		return concern(Camera, Art)
	case plan.KindMirror, plan.KindGlow, plan.KindWindow:
		return concern(Art, Camera, Electric)
	}
	return concern(Art, Grip, Camera)
}

// ofLine is whom a line concerns.
func ofLine(a *plan.Action) []Department {
	switch d := a.Deed.(type) {
	case *plan.Move, *plan.Stand, *plan.Turn, *plan.Spin, *plan.Pose:
		return ofMover(a.Subject)
	case *plan.Ride:
		return concern(append(ofMover(d.Carrier), Ads, Movement)...)
	case *plan.Leave:
		return concern(append(ofMover(d.Carrier), Ads, Movement)...)
	case *plan.Board:
		return concern(append(ofMover(d.Carrier), Ads)...)
	case *plan.Spot:
		return concern(Grip, Camera)
	case *plan.Operate:
		return concern(Art, Ads)
	case *plan.Say:
		return concern(Sound, Script, Ads)
	case *plan.Mount, *plan.Handoff:
		return concern(Camera, Grip, Ads)
	case *plan.Keep, *plan.Beside, *plan.Circle, *plan.Travel, *plan.Lift:
		return concern(Camera, Grip)
	case *plan.See, *plan.Roll, *plan.Cut:
		return concern(Camera, Script)
	case *plan.Hide:
		return concern(Camera, Art)
	case *plan.Cue:
		return concern(Electric, Ads)
	}
	return concern(Camera)
}

// ofMover is whom the way of something concerns.
func ofMover(t plan.Thing) []Department {
	switch t := t.(type) {
	case *plan.Person:
		if t.Crew {
			return concern(Grip, Camera, Ads)
		}
		return concern(Movement, Ads)
	case *plan.Vehicle:
		return concern(Vehicles, Ads)
	case *plan.Rig, *plan.Camera:
		return concern(Grip, Camera)
	}
	return concern(Ads)
}
