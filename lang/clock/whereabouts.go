package clock

import (
	"longhand/lang/body"
	"longhand/lang/plan"
)

// findOrigins works out from the text where each move begins: at its `from`, or
// where the subject's last line left it.
func (g *Graph) findOrigins() {
	g.origins = make(map[*plan.Action]*plan.Place)
	here := make(map[plan.Thing]*plan.Place)
	for _, a := range g.acts {
		who := a.Subject
		if who == nil {
			continue
		}
		switch d := a.Deed.(type) {
		case *plan.Move:
			from := d.Path.From
			if from == nil {
				from = here[who]
			}
			if from != nil {
				g.origins[a] = from
			}
			here[who] = d.Path.To
		case *plan.Stand:
			if d.At != nil {
				here[who] = d.At
			}
		case *plan.Leave:
			here[who] = d.To
		case *plan.Ride, *plan.Board:
			delete(here, who)
		}
	}
}

// carriers is a subject and then all that may carry it, in the order of the
// text: what it rides or boards, the rigs a camera is on, who wears them.
func (g *Graph) carriers(of plan.Thing) []plan.Thing {
	out := []plan.Thing{of}
	add := func(t plan.Thing) {
		for _, have := range out {
			if have == t {
				return
			}
		}
		out = append(out, t)
	}
	addRig := func(r *plan.Rig) {
		if r != nil {
			add(r)
		}
	}
	addPerson := func(p *plan.Person) {
		if p != nil {
			add(p)
		}
	}
	for i := 0; i < len(out); i++ {
		for _, a := range g.acts {
			switch d := a.Deed.(type) {
			case *plan.Ride:
				if a.Subject == out[i] && d.Carrier != nil {
					add(d.Carrier)
				}
			case *plan.Board:
				if a.Subject == out[i] && d.Carrier != nil {
					add(d.Carrier)
				}
			case *plan.Mount:
				if a.Subject == out[i] {
					addRig(d.Rig)
				}
				if r, ok := out[i].(*plan.Rig); ok && r == d.Rig && worn(r) {
					addPerson(d.With)
				}
			case *plan.Handoff:
				if c, ok := out[i].(*plan.Camera); ok && c == d.Camera {
					addRig(d.From)
					addRig(d.To)
				}
				if r, ok := out[i].(*plan.Rig); ok && r == d.To && worn(r) {
					addPerson(d.With)
				}
			}
		}
	}
	return out
}

// worn says whether a rig's operator is its feet.
func worn(r *plan.Rig) bool {
	class, err := body.ParseClass(r.Class)
	return err == nil && body.RigOf(class).Crewing == body.Worn
}
