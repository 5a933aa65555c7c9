package clock

import (
	"strings"

	"longhand/lang/plan"
)

// Describe says a line in a few words, without lengths: "mina walks to M2",
// `otto says "Wait."`, "cue dusk".
func Describe(a *plan.Action) string {
	if a == nil {
		return ""
	}
	switch d := a.Deed.(type) {
	case *plan.Handoff:
		return join("handoff", name(d.Camera), "from", name(d.From), "to", name(d.To))
	case *plan.Cut:
		return join("the cut to", name(d.Camera))
	case *plan.Cue:
		return join("cue", d.Name)
	}
	if _, door := a.Subject.(*plan.Door); door {
		return join(a.Who(), a.Verb)
	}
	return join(a.Who(), a.Verb, object(a.Deed))
}

func object(d plan.Deed) string {
	switch d := d.(type) {
	case *plan.Move:
		return moveTo(&d.Path)
	case *plan.Stand:
		at, facing := "", ""
		if d.At != nil {
			at = join("at", d.At.Text)
		}
		if d.Facing != nil {
			facing = join("facing", d.Facing.Name())
		}
		return join(at, facing)
	case *plan.Turn:
		switch {
		case d.To != nil:
			return "to " + d.To.Name()
		case d.Angle != nil:
			return "to " + d.Angle.String()
		}
	case *plan.Spin:
		return d.Angle.String() + " " + d.Turn.String()
	case *plan.Ride:
		return thing(d.Carrier)
	case *plan.Leave:
		if d.To != nil {
			return thing(d.Carrier) + " to " + d.To.Text
		}
		return thing(d.Carrier)
	case *plan.Board:
		return thing(d.Carrier)
	case *plan.Spot:
		return name(d.Whom)
	case *plan.Operate:
		return name(d.Door)
	case *plan.Say:
		return quoted(d.Text)
	case *plan.Mount:
		return name(d.Rig)
	case *plan.Fit:
		return name(d.Lens)
	case *plan.See:
		names := make([]string, 0, len(d.Targets))
		for _, t := range d.Targets {
			names = append(names, t.Name())
		}
		return strings.Join(names, ", ")
	case *plan.Keep:
		return d.Target.Name()
	case *plan.Beside:
		return d.Target.Name()
	case *plan.Circle:
		return d.Target.Name()
	case *plan.Swing:
		return d.Angle.String() + " " + d.Turn.String()
	case *plan.Rack:
		if d.To != nil {
			return "to " + d.To.Name()
		}
	case *plan.Hide:
		return "behind " + name(d.Hole)
	}
	return ""
}

func moveTo(p *plan.Path) string {
	switch {
	case p.To != nil:
		return "to " + p.To.Text
	case p.Shape == plan.Round:
		return "round " + p.Centre.Text
	case p.Shape == plan.Eight:
		return "an eight round " + p.Centre.Text + ", " + p.Other.Text
	}
	return ""
}

func thing(t plan.Thing) string {
	if t == nil {
		return ""
	}
	return t.ID().Name
}

// name is a declared thing's name; "" for none, of whatever kind.
func name[T any, P interface {
	*T
	plan.Thing
}](p P) string {
	if p == nil {
		return ""
	}
	return p.ID().Name
}

func join(parts ...string) string {
	kept := parts[:0]
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, " ")
}
