package lighting

import (
	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/light"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Unit is a wash, or all lamps placed under one name, moved as one.
type Unit struct {
	Name   string
	Wash   *plan.Wash         // nil for placed lamps
	Placed []*plan.PlacedLamp // nil for a wash
	Lamp   *plan.Lamp
	Count  int
	Curve  light.Curve
	Cues   []*plan.Action // that move it, in the order of time
	At     []geom.Vec3    // of each lamp
}

// Overlap is a cue that takes a unit over before an earlier one is done with it.
type Overlap struct {
	Unit           *Unit
	Earlier, Later *plan.Action
	From, To       units.Seconds
	Level          units.Percent // where the later one takes over
}

// Lighting is every unit of a take. It never changes once made.
type Lighting struct {
	Units    []Unit // washes first, each in the order of the text
	Overlaps []Overlap
	Length   units.Seconds
}

// Of is the lighting of a plan's take. Cues that never happen are left out.
func Of(p *plan.Plan, c *clock.Clock) *Lighting {
	l := &Lighting{Length: c.Length}
	for _, w := range p.Kit.Washes {
		if !w.Bad && w.Lamp != nil && w.Count > 0 {
			l.Units = append(l.Units, Unit{Name: w.Name, Wash: w, Lamp: w.Lamp, Count: w.Count, At: hung(w)})
		}
	}
	for _, lamp := range p.Kit.Lamps {
		u := Unit{Name: lamp.Name, Lamp: lamp}
		for _, at := range p.Set.Placed {
			if at.Lamp == lamp {
				u.Placed = append(u.Placed, at)
				u.At = append(u.At, standing(p, at))
			}
		}
		if u.Count = len(u.Placed); u.Count > 0 && !lamp.Bad {
			l.Units = append(l.Units, u)
		}
	}
	for i := range l.Units {
		l.follow(&l.Units[i], p, c)
	}
	return l
}

// follow makes the unit's curve of the cues that move it.
func (l *Lighting) follow(u *Unit, p *plan.Plan, c *clock.Clock) {
	var fades []light.Fade
	var cues []*plan.Action
	for _, a := range p.Actions {
		cue, ok := a.Deed.(*plan.Cue)
		i := c.Of(a)
		if !ok || !i.Placed {
			continue
		}
		for _, v := range cue.Levels {
			if u.Wash != nil && v.Wash == u.Wash || u.Wash == nil && v.Lamp == u.Lamp {
				fades = append(fades, light.Fade{Start: i.Start, Over: i.Length(), To: v.Per})
				cues = append(cues, a)
			}
		}
	}
	from := units.Percent(0)
	if len(fades) == 0 {
		from = 100
	}
	var overlaps []light.Overlap
	u.Curve, overlaps = light.NewCurve(from, fades)
	u.Cues = inTime(cues, c)
	for _, o := range overlaps {
		l.Overlaps = append(l.Overlaps, Overlap{Unit: u, Earlier: cues[o.Earlier], Later: cues[o.Later], From: o.From, To: o.To, Level: u.Curve.At(o.From)})
	}
}

func inTime(cues []*plan.Action, c *clock.Clock) []*plan.Action {
	for i := 1; i < len(cues); i++ { // few: insertion keeps equals in the order of the text
		for k := i; k > 0 && c.Of(cues[k]).Start < c.Of(cues[k-1]).Start; k-- {
			cues[k], cues[k-1] = cues[k-1], cues[k]
		}
	}
	return cues
}

// Unit is the one of a name; nil where there is none.
func (l *Lighting) Unit(name string) *Unit {
	for i := range l.Units {
		if l.Units[i].Name == name {
			return &l.Units[i]
		}
	}
	return nil
}

// Moves are the times at which some level begins or ends a change, in order,
// each once, from the take's start to its end.
func (l *Lighting) Moves() []units.Seconds { return light.Bends(l.Loads(), 0, l.Length) }

// Loads is what the units draw, one for each, lamps alike being one load.
func (l *Lighting) Loads() []light.Load {
	out := make([]light.Load, len(l.Units))
	for i := range l.Units {
		u := &l.Units[i]
		out[i] = light.Load{Full: u.Lamp.Power * units.Watts(u.Count), Law: light.Linear, Curve: u.Curve}
	}
	return out
}

// Level is a unit's level at a time.
func (u *Unit) Level(t units.Seconds) units.Percent { return u.Curve.At(t) }
