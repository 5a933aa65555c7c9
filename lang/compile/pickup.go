package compile

import (
	"context"
	"fmt"

	"longhand/lang/check"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
)

// Shot is a pickup, worked out like a take of its own, on a clock of its own
// from 0: everybody is where its own lines put them, and only the cameras that
// it names roll.
type Shot struct {
	Pickup *plan.Pickup
	Plan   *plan.Plan // the plan with this pickup's lines for its lines
	Played
}

// takeOnly is the plan without what is written in pickups.
func takeOnly(p *plan.Plan) *plan.Plan { return excuses(p, nil) }

// excuses is the plan with the paint outs and allows of one pickup, or of the
// beats where it is nil.
func excuses(p *plan.Plan, u *plan.Pickup) *plan.Plan {
	out := *p
	out.PaintOuts, out.Allows = nil, nil
	for _, o := range p.PaintOuts {
		if o.Pickup == u {
			out.PaintOuts = append(out.PaintOuts, o)
		}
	}
	for _, a := range p.Allows {
		if a.Pickup == u {
			out.Allows = append(out.Allows, a)
		}
	}
	return &out
}

// shot works out a pickup as far as asked.
func shot(ctx context.Context, p *plan.Plan, u *plan.Pickup, upTo check.Stage, o sight.Options) (*Shot, diag.Bag, error) {
	s := &Shot{Pickup: u, Plan: excuses(p, u)}
	s.Plan.Beats, s.Plan.Pickups, s.Plan.Actions = nil, nil, u.Actions
	if upTo < check.Timed {
		return s, diag.Bag{}, nil
	}
	named := map[*plan.Camera]bool{}
	for _, a := range u.Actions {
		if c, ok := clock.SubjectOf(a).(*plan.Camera); ok {
			named[c] = true
		}
	}
	how := playing{upTo: upTo, sight: o, rolls: func(c *plan.Camera) bool { return named[c] }}
	s.Tracks = motion.ResolvePickup(ctx, p, u)
	found, err := s.play(ctx, s.Plan, how)
	if err != nil {
		return nil, diag.Bag{}, err
	}
	var bag diag.Bag
	for _, d := range found.Sorted() {
		if !ofTheTake[d.Code] {
			d.Message = fmt.Sprintf("in pickup %q, %s", u.Title, d.Message)
			d.Pickup = u.Title
			bag.Add(d)
		}
	}
	return s, bag, nil
}

// ofTheTake are findings about the take or the plan as a whole, which a pickup
// would only say again.
var ofTheTake = map[diag.Code]bool{
	"light-window": true, "pickup-light": true, "grid-full": true, "over-current": true,
}
