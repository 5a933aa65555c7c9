package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

var underload = &Rule{
	Entry: diag.Entry{
		Code:     "underload",
		Title:    "a rig carries less than it needs to be steady",
		Severity: diag.Warning,
		At:       []string{"beat on", "beat handoff", "kit rig"},
		Explain: `A body rig's springs and a gimbal's motors are made for a range of weights. With
less than the least of it the arm won't stay down and the picture floats.

It is found only where both the camera and its lens are weighed in the kit.

To mend it: put weight on, take a heavier lens, or take a lighter rig: state its
range in the kit, "rig vest body-rig carries 3 kg to 14 kg".`,
		Bad: `take "Floating"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 1.6 kg
  lens w35 35 mm weighs 0.4 kg
  rig vest body-rig carries 8 kg to 20 kg
people
  crew ida
beat "Stand"
  ida stands at C1
  A on vest with ida
  A takes w35 T4
  ida waits in 4 s
`,
		Good: `take "Steady"
  rate 24 fps
set "Yard"
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm weighs 7 kg
  lens w35 35 mm weighs 1.4 kg
  rig vest body-rig carries 8 kg to 20 kg
people
  crew ida
beat "Stand"
  ida stands at C1
  A on vest with ida
  A takes w35 T4
  ida waits in 4 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, l := range p.Tracks.Loads {
			least, source := leastOn(l.Rig)
			if l.Lens == nil || l.Camera.Weight == 0 || l.Lens.Weight == 0 || l.Weight >= least {
				continue
			}
			p.foundOn(l.Action, l.Rig, l.Start, l.End, "%s with %s weighs %s on %s, %s less than the %s it needs",
				l.Camera.Name, l.Lens.Name, l.Weight, l.Rig.Name, least-l.Weight, least).
				Relate(l.Rig.Decl, "rig %s", l.Rig.Name).
				Note("the limit is of %s", source)
		}
	},
}

// leastOn is the least that a rig carries steadily, and who says so. What a
// class usually needs counts for rigs that float only.
func leastOn(r *plan.Rig) (units.Kilograms, string) {
	if r.CarriesMin > 0 {
		return r.CarriesMin, "rig " + r.Name + ", carries in the plan"
	}
	if r.CarriesMax > 0 {
		return 0, "" // the plan knows the rig and names no least
	}
	c, _ := body.ParseClass(r.Class)
	return body.RigOf(c).Payload.Min, "a " + r.Class + ", " + body.Practice
}
