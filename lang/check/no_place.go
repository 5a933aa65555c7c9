package check

import (
	"strings"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
)

var noPlace = &Rule{
	Entry: diag.Entry{
		Code:     "no-place",
		Title:    "nothing says where somebody is",
		Severity: diag.Error,
		At:       these(beingThere, "beat turns", "beat sees", "beat racks"),
		Explain: `Somebody is told to move and no line has said where they are, or a line looks at,
follows or boards somebody who is nowhere in the take.

Where somebody first is follows from "from", "stands at", the rig they are on, or
what they ride; that is where they are from the first frame on.

To mend it: say where they begin: "walks from M1 to M2", "stands at M1".`,
		Bad: `take "From where"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
people
  performer mina
beat "Across"
  mina walks to M2
`,
		Good: `take "From here"
  rate 24 fps
set "Yard"
  mark M1 (0, 0)
  mark M2 (6, 0)
people
  performer mina
beat "Across"
  mina walks from M1 to M2
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, x := range p.Tracks.Problems {
			switch x.Kind {
			case motion.NoStart:
				p.lineProblem(x, "nothing says where %s is before: %s", nameOf(x.Subject), describe(x.Action)).
					Note("say where: from PLACE, or a line before it, %s stands at PLACE", nameOf(x.Subject))
			case motion.NoTarget:
				other := nameOf(x.Other)
				if x.Other == nil {
					other = "what it is about"
				}
				p.lineProblem(x, "%s is nowhere, and %s has to know where for: %s", other, nameOf(x.Subject), describe(x.Action)).
					Note("say where: %s stands at PLACE, or the line that brings it in", other)
			}
		}
		for _, c := range p.Plan.Kit.Cameras {
			if p.Tracks.Camera(c) == nil {
				p.cameraNowhere(c)
			}
		}
	},
}

// cameraNowhere finds a camera whose rig, or whoever has it on, is nowhere.
func (p *Pass) cameraNowhere(c *plan.Camera) {
	for _, a := range p.Plan.Actions {
		d, ok := a.Deed.(*plan.Mount)
		if !ok || a.Subject != plan.Thing(c) || d.Rig == nil {
			continue
		}
		base := plan.Thing(d.Rig)
		if class, _ := body.ParseClass(d.Rig.Class); body.RigOf(class).Crewing == body.Worn && d.With != nil {
			base = d.With
		}
		if p.Tracks.Body(base) != nil {
			return // what is wrong is something else
		}
		at := p.Clock.Of(a).Start
		f := p.foundOn(a, c, at, at, "nothing says where %s is, so camera %s is nowhere", nameOf(base), c.Name)
		f.Note("say where: %s stands at PLACE", nameOf(base))
		if d.At != nil {
			f.Note("at (x, y) on this line is a place on the rig: x ahead, y to its left")
		}
		return
	}
}

// lineProblem files a finding about a line that couldn't be followed.
func (p *Pass) lineProblem(x motion.Problem, format string, args ...any) *diag.Diagnostic {
	at := p.Tracks.Length()
	if x.Action != nil {
		at = p.Clock.Of(x.Action).Start
	}
	return p.foundOn(x.Action, x.Subject, at, at, format, args...)
}

func describe(a *plan.Action) string {
	if a == nil {
		return "what comes next"
	}
	return clock.Describe(a)
}

// saidSo adds what the tracks say about a problem, where it is more than the
// message already has.
func saidSo(d *diag.Diagnostic, note string) {
	if note = strings.TrimSpace(note); note != "" && !strings.Contains(d.Message, note) {
		d.Note("%s", note)
	}
}
