package check

import (
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

var doorApart = &Rule{
	Entry: diag.Entry{
		Code:     "door-apart",
		Title:    "a door opened by somebody who isn't there",
		Severity: diag.Error,
		At:       []string{"beat opens", "set door"},
		Explain: `A line lets somebody open or shut a door, and when it begins they are further from
it than 1.2 m: an arm's length and a step (common practice, no source).

To mend it: let them walk there first, or let the door be worked from outside the
picture: "door dock opens when mina reaches M1".`,
		Bad: `take "Sesame"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4 m to 5 m high 2.1 m shut
  mark M1 (4.5, -4)
  mark M2 (4.5, 3)
people
  performer mina
beat "In"
  mina stands at M1
  mina opens dock
  mina walks to M2
`,
		Good: `take "Sesame"
  rate 24 fps
set "Hall"
  wall street (0, 0) (24, 0) high 5 m
  door dock on street 4 m to 5 m high 2.1 m shut
  mark M1 (4.5, -4)
  mark M2 (4.5, 3)
people
  performer mina
beat "In"
  mina walks from M1 to (4.5, -0.8)
  mina opens dock
  mina walks to M2
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, a := range p.Plan.Actions {
			op, ok := a.Deed.(*plan.Operate)
			if !ok || op.Door == nil || op.Door.Wall == nil {
				continue
			}
			t := p.Tracks.Body(a.Subject)
			if t == nil || personOf(a.Subject) == nil {
				continue
			}
			i := p.Clock.Of(a)
			from, to := op.Door.Ends()
			gap := metres(geom.Segment{A: from, B: to}.Distance(t.At(i.Start).Point()))
			if gap <= doorReach {
				continue
			}
			p.foundOn(a, a.Subject, i.Start, i.End, "%s is %s from door %s at %s, %s beyond the %s of an arm and a step",
				a.Who(), p.Length(gap), op.Door.Name, i.Start.Clock(), p.Length(gap-doorReach), p.Length(doorReach)).
				Relate(op.Door.Decl, "door %s", op.Door.Name).
				Note("in: %s", clock.Describe(a))
		}
	},
}

// doorReach is how far from a door somebody works it (common practice, no
// source).
const doorReach metres = 1.2
