package sheets

import (
	"strings"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// says is a line's deed in full, without its subject: "walks via M1 to M2 facing
// otto", "follows mina by 2.4 m".
func (m *maker) says(a *plan.Action) string {
	switch d := a.Deed.(type) {
	case *plan.Move:
		return a.Verb + " " + m.way(&d.Path)
	case *plan.Stand:
		return join(a.Verb, prefixed("at", d.At), facing(d.Facing))
	case *plan.Turn:
		if d.To != nil {
			return a.Verb + " to " + d.To.Name()
		}
		if d.Angle != nil {
			return a.Verb + " to " + d.Angle.String()
		}
	case *plan.Spin:
		return join(a.Verb, d.Angle.String(), d.Turn.String())
	case *plan.Ride:
		return join(a.Verb, nameOf(d.Carrier))
	case *plan.Leave:
		return join(a.Verb, nameOf(d.Carrier), prefixed("to", d.To))
	case *plan.Board:
		return join(a.Verb, nameOf(d.Carrier), "as weight")
	case *plan.Spot:
		return join(a.Verb, name(d.Whom))
	case *plan.Operate:
		if _, self := a.Subject.(*plan.Door); !self {
			return join(a.Verb, name(d.Door))
		}
	case *plan.Say:
		return a.Verb + ` "` + d.Text + `"`
	case *plan.Cue:
		return "cue " + d.Name + ": " + levels(d) + over(d.Over)
	case *plan.Cut:
		return "cut to " + name(d.Camera)
	}
	return m.saysCamera(a)
}

func (m *maker) saysCamera(a *plan.Action) string {
	switch d := a.Deed.(type) {
	case *plan.Mount:
		s := "on " + name(d.Rig)
		if d.With != nil {
			s += " with " + d.With.Name
		}
		if d.Up != nil {
			s += ", lens up " + m.metres(*d.Up)
		}
		return s
	case *plan.Fit:
		return "takes " + m.fitted(d)
	case *plan.See:
		s := "sees " + targets(d.Targets)
		if d.Size != "" {
			s += " " + d.Size
		}
		if d.Even {
			s += " fifty-fifty"
		}
		return s
	case *plan.Keep:
		return join(a.Verb, d.Target.Name(), "by", m.metres(d.By))
	case *plan.Beside:
		return join("beside", d.Target.Name(), d.Side.String(), m.metres(d.By))
	case *plan.Circle:
		s := join(a.Verb, d.Target.Name())
		if !d.Counter {
			s = join(s, d.Angle.String(), d.Turn.String())
		}
		if d.At > 0 {
			s += " at " + m.metres(d.At)
		}
		return s
	case *plan.Travel:
		return join(a.Verb, m.metres(d.By))
	case *plan.Lift:
		return join(a.Verb, "to", m.metres(d.To))
	case *plan.Swing:
		return join(a.Verb, d.Angle.String(), d.Turn.String())
	case *plan.Rack:
		if d.To != nil {
			return "racks to " + d.To.Name()
		}
		if d.Distance != nil {
			return "racks to " + m.metres(*d.Distance)
		}
	case *plan.Hide:
		s := "hides behind " + name(d.Hole)
		if d.Card != nil {
			s += ", card " + d.Card.Name
		}
		return s
	case *plan.Handoff:
		s := join("handoff", name(d.Camera), "from", name(d.From), "to", name(d.To), prefixed("at", d.At))
		if d.Weight != nil {
			s += ", weight " + d.Weight.Name
		}
		return s
	}
	return a.Verb
}

// fitted is a lens as the assistant would call for it: "w35, 35 mm, T2.8".
func (m *maker) fitted(d *plan.Fit) string {
	if d.Lens == nil {
		return ""
	}
	s := d.Lens.Name
	if d.Focal > 0 {
		s += " at " + d.Focal.String()
	}
	if d.Stop > 0 {
		s += ", " + d.Stop.String()
	}
	return s
}

// way is a path as written, lengths in the plan's unit.
func (m *maker) way(p *plan.Path) string {
	var s []string
	switch p.Shape {
	case plan.Round:
		s = append(s, "round", p.Centre.Text, p.Angle.String(), p.Turn.String())
	case plan.Eight:
		s = append(s, "an eight round "+p.Centre.Text+" and "+p.Other.Text)
	}
	if p.Radius > 0 {
		s = append(s, "at", m.metres(p.Radius))
	}
	if p.From != nil {
		s = append(s, "from", p.From.Text)
	}
	if len(p.Via) > 0 {
		via := make([]string, len(p.Via))
		for i, v := range p.Via {
			via[i] = v.Text
		}
		s = append(s, "via", strings.Join(via, ", "))
	}
	s = append(s, prefixed("to", p.To))
	if p.Shape == plan.Straight {
		s = append(s, "straight")
	}
	s = append(s, facing(p.Facing))
	if p.Backwards {
		s = append(s, "backwards")
	}
	return join(s...)
}

func facing(t *plan.Target) string {
	if t == nil {
		return ""
	}
	return "facing " + t.Name()
}

func prefixed(word string, p *plan.Place) string {
	if p == nil {
		return ""
	}
	return word + " " + p.Text
}

func targets(list []plan.Target) string {
	names := make([]string, len(list))
	for i, t := range list {
		names[i] = t.Name()
	}
	return listed(names)
}

func levels(d *plan.Cue) string {
	var out []string
	for _, l := range d.Levels {
		if n := levelName(l); n != "" {
			out = append(out, n+" "+l.Per.String())
		}
	}
	return strings.Join(out, ", ")
}

// levelName is the wash or the lamp that a cue takes somewhere.
func levelName(l plan.Level) string {
	if l.Wash != nil {
		return l.Wash.Name
	}
	return name(l.Lamp)
}

func over(s units.Seconds) string {
	if s <= 0 {
		return ", at once"
	}
	return " over " + s.String()
}

func join(parts ...string) string {
	var kept []string
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, " ")
}
