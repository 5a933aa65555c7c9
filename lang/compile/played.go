package compile

import (
	"context"

	"longhand/lang/check"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/staging"
)

// Played is a take, or a pickup, played through once: everybody's tracks, the
// scene they make, what every lens sees of it, and what the plan accepts of what
// was found. What was not asked for, or could not be computed, is nil.
type Played struct {
	Tracks   *motion.Tracks
	Stage    *staging.Stage
	Sight    *sight.Report
	Accepted []check.Accepted
}

// playing is how the stages after the tracks go about it.
type playing struct {
	upTo       check.Stage
	sight      sight.Options
	before     *sight.Report                  // of nearly the same scene; nil for none
	rolls      func(camera *plan.Camera) bool // false for one that doesn't; nil where all do
	errorsOnly bool                           // leave out rules that never make a check fail
	room       *staging.Room                  // for the scene; nil for memory of its own
	doing      func(stage string)             // told what is about to be done; nil for nobody
}

// play takes the tracks through the stages that are left, as far as asked, and
// returns what the rules found. The error is ctx's.
func (r *Played) play(ctx context.Context, p *plan.Plan, o playing) (diag.Bag, error) {
	if o.doing == nil {
		o.doing = func(string) {}
	}
	pass := &check.Pass{Ctx: ctx, Plan: p, ErrorsOnly: o.errorsOnly}
	if t := r.Tracks; t != nil {
		pass.Tracks, pass.Clock = t, t.Clock
		if t.Frames > check.MostFrames {
			o.upTo = min(o.upTo, check.Timed)
		}
	}
	if o.upTo >= check.Seen {
		o.doing("working out what the cameras see")
		if err := r.look(ctx, pass, o); err != nil {
			return diag.Bag{}, err
		}
	}
	o.doing("checking")
	found, err := check.Run(ctx, pass, o.upTo)
	r.Accepted = pass.Accepted
	return found, err
}

// look stages the tracks and sees what there is to see.
func (r *Played) look(ctx context.Context, pass *check.Pass, o playing) (err error) {
	r.Stage = staging.BuildOn(pass.Plan, r.Tracks, o.sight.Workers, o.room)
	pass.Stage = r.Stage
	if o.errorsOnly {
		o.sight.Watch = func(camera, body int) bool { return pass.Watches(r.Stage.Cameras[camera], r.Stage.Things[body]) }
		o.sight.NoGlares = true // they make no check fail
		o.sight.Trusted = true
	}
	if o.rolls != nil {
		for i, c := range r.Stage.Cameras {
			if !o.rolls(c) {
				r.Stage.Scene.Cameras[i].Rolls = nil
			}
		}
	}
	if o.before != nil {
		r.Sight, err = sight.Again(ctx, o.before, r.Stage.Scene, o.sight)
	} else {
		r.Sight, err = sight.See(ctx, r.Stage.Scene, o.sight)
	}
	pass.Sight = r.Sight
	return err
}
