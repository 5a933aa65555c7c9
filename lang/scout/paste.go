package scout

import (
	"fmt"
	"strings"

	"longhand/lang/body"
	"longhand/lang/plan"
)

// Line is a line to paste into the plan: into its set, its kit or its beat.
type Line struct{ Section, Text string }

// Paste is what the plan would say for a camera to be at a place.
func (r *Report) Paste(p *Place, lens *plan.Lens) []Line {
	a := &r.Ask
	sys := a.Plan.Take.Units
	var out []Line
	name, fit := "", ""
	if a.Except != nil {
		name = a.Except.Name
	} else {
		name = unused(a.Plan, "B")
		if c := a.Like; c != nil {
			out = append(out, Line{"kit", fmt.Sprintf("camera %s sensor %s x %s", name, c.Width, c.Height)})
		}
	}
	if lens != nil {
		fit = name + " takes " + lens.Name
		if lens.Zoom() {
			fit += " " + a.Focal.String()
		}
		fit += " " + a.stop().String()
	}
	var who []string
	for _, t := range a.Sees {
		who = append(who, t.ID().Name)
	}
	sees := name + " sees " + strings.Join(who, ", ")
	if p.Wall != nil {
		hole := unused(a.Plan, "peep")
		out = append(out,
			Line{"set", fmt.Sprintf("hole %s %s wide %s", hole, p.In(sys), p.Hole)},
			Line{"beat", name + " hides behind " + hole})
	} else {
		rig, declared := sticksOf(a.Plan)
		if !declared {
			out = append(out, Line{"kit", "rig " + rig + " sticks"})
		}
		out = append(out,
			Line{"beat", rig + " stands at " + point(p.At, sys)},
			Line{"beat", fmt.Sprintf("%s on %s up %s", name, rig, p.Up.Text(sys))})
	}
	if fit != "" {
		out = append(out, Line{"beat", fit})
	}
	return append(out, Line{"beat", sees})
}

// sticksOf is a rig of legs: one of the kit that no camera is on, or a new name.
func sticksOf(p *plan.Plan) (name string, declared bool) {
	busy := map[*plan.Rig]bool{}
	for _, a := range p.Actions {
		if m, ok := a.Deed.(*plan.Mount); ok {
			busy[m.Rig] = true
		}
	}
	for _, r := range p.Kit.Rigs {
		if class, err := body.ParseClass(r.Class); err == nil && class == body.Sticks && !busy[r] {
			return r.Name, true
		}
	}
	return unused(p, "legs"), false
}

// unused is a name that nothing in the plan has.
func unused(p *plan.Plan, name string) string {
	taken := map[string]bool{}
	s, k := &p.Set, &p.Kit
	take(taken, s.Walls)
	take(taken, s.Doors)
	take(taken, s.Windows)
	take(taken, s.Holes)
	take(taken, s.Pillars)
	take(taken, s.Blocks)
	take(taken, s.Platforms)
	take(taken, s.Stairs)
	take(taken, s.Mirrors)
	take(taken, s.Glows)
	take(taken, s.Marks)
	take(taken, s.Grids)
	take(taken, s.Supplies)
	take(taken, k.Cameras)
	take(taken, k.Lenses)
	take(taken, k.Rigs)
	take(taken, k.Vehicles)
	take(taken, k.Lamps)
	take(taken, k.Washes)
	take(taken, k.Cards)
	take(taken, p.People)
	for n := 1; ; n++ {
		try := name
		if n > 1 {
			try = fmt.Sprintf("%s-%d", name, n)
		}
		if !taken[try] {
			return try
		}
	}
}

func take[T plan.Thing](taken map[string]bool, list []T) {
	for _, x := range list {
		taken[strings.ToLower(x.ID().Name)] = true
	}
}
