package rehearse

import (
	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Spread is how much the timing of one line differs from try to try.
type Spread struct {
	// Length is the standard deviation of the line's length as a part of it.
	Length units.Percent
	// React is the mean time from a cue to the start it calls for, which the
	// plan takes to be none; ReactSD its standard deviation.
	React, ReactSD units.Seconds
}

// Still is no spread at all: the line is played as planned.
var Still = Spread{}

// scaled is the spread with all of it as many times as large.
func (s Spread) scaled(by float64) Spread {
	return Spread{
		Length:  s.Length * units.Percent(by),
		React:   s.React * units.Seconds(by),
		ReactSD: s.ReactSD * units.Seconds(by),
	}
}

// Reactions are to a cue that was rehearsed and is waited for: somewhat above
// the simple reactions of the laboratory, 0.16 s to a sound and 0.19 s to a light
// (R. S. Woodworth and H. Schlosberg, Experimental Psychology, 1954, from
// memory), as a body has to set off. How much lengths vary is common practice,
// no source, from memory.
var (
	people  = Spread{Length: body.Anybody().Spread, React: 0.3, ReactSD: 0.12}
	drivers = Spread{Length: 5, React: 0.5, ReactSD: 0.2}
	pushed  = Spread{Length: 5, React: 0.4, ReactSD: 0.15}
	remote  = Spread{Length: 2, React: 0.3, ReactSD: 0.12}
	doors   = Spread{Length: 10, React: 0.4, ReactSD: 0.15}
	desk    = Spread{Length: 0, React: 0.3, ReactSD: 0.12} // a fade runs as it was set
)

// Defaults lists the spreads taken for granted.
func Defaults() []body.Default {
	var out []body.Default
	for _, d := range []struct {
		name string
		s    Spread
	}{
		{"performers and crew", people}, {"drivers", drivers}, {"rigs moved by hand or ridden", pushed},
		{"rigs moved from a distance", remote}, {"doors", doors}, {"light cues", desk},
	} {
		out = append(out, body.Default{
			Name:   "spread of timing, " + d.name,
			Value:  d.s.String(),
			Source: body.Practice + "; reactions from the simple reaction times in Woodworth and Schlosberg, Experimental Psychology (1954), from memory",
		})
	}
	return out
}

// String says a spread: "5 % of each length, 0.3 s ± 0.12 s after a cue".
func (s Spread) String() string {
	return s.Length.String() + " of each length, " + seconds(s.React) + " ± " + seconds(s.ReactSD) + " after a cue"
}

func seconds(s units.Seconds) string { return units.Number(float64(s), 2) + " s" }

// spreadOf is the spread of a line: its performer's own where the plan states
// one, which scales reactions as it does lengths, else that of the class.
func (c *cast) spreadOf(a *plan.Action) Spread {
	if p := c.performer(a); p != nil {
		if p.Spread >= 0 {
			return people.scaled(float64(p.Spread / people.Length))
		}
		return people
	}
	switch s := a.Subject.(type) {
	case *plan.Vehicle:
		return drivers
	case *plan.Rig:
		return spreadOfRig(s)
	case *plan.Camera:
		return spreadOfRig(c.on[a])
	case *plan.Door:
		return doors
	}
	if _, ok := a.Deed.(*plan.Cue); ok {
		return desk
	}
	return people
}

func spreadOfRig(r *plan.Rig) Spread {
	if r == nil {
		return people
	}
	class, err := body.ParseClass(r.Class)
	if err == nil && body.RigOf(class).Crewing == body.Unattended {
		return remote
	}
	return pushed
}

// cast is who performs each line: a camera's are its operator's, a worn rig's
// whoever wears it.
type cast struct {
	who map[*plan.Action]*plan.Person
	on  map[*plan.Action]*plan.Rig
}

func (c *cast) performer(a *plan.Action) *plan.Person { return c.who[a] }

func newCast(actions []*plan.Action) *cast {
	c := &cast{who: make(map[*plan.Action]*plan.Person), on: make(map[*plan.Action]*plan.Rig)}
	operator := make(map[*plan.Camera]*plan.Person)
	rigs := make(map[*plan.Camera]*plan.Rig)
	wearer := make(map[*plan.Rig]*plan.Person)
	for _, a := range actions {
		camera, _ := clock.SubjectOf(a).(*plan.Camera)
		switch d := a.Deed.(type) {
		case *plan.Mount:
			operator[camera], rigs[camera] = d.With, d.Rig
			wearer[d.Rig] = d.With
		case *plan.Handoff:
			if d.With != nil {
				operator[camera] = d.With
			}
			rigs[camera] = d.To
			wearer[d.To] = operator[camera]
		case *plan.Hide:
			operator[camera], rigs[camera] = nil, nil
		}
		switch s := a.Subject.(type) {
		case *plan.Person:
			c.who[a] = s
		case *plan.Rig:
			class, err := body.ParseClass(s.Class)
			if err == nil && body.RigOf(class).Crewing == body.Worn {
				c.who[a] = wearer[s]
			}
		default:
			if camera != nil {
				c.who[a], c.on[a] = operator[camera], rigs[camera]
			}
		}
	}
	return c
}
