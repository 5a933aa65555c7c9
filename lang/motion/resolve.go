package motion

import (
	"context"
	"sync"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/plan"
)

// rounds is how often lengths and clock are made from each other at most.
const rounds = 6

// mutualRounds is how many it takes at least where things look at each other.
const mutualRounds = 4

// Resolver makes tracks of a plan, as often as one likes: it keeps what doesn't
// depend on the clock. Several goroutines may use one at once.
type Resolver struct {
	plan    *plan.Plan
	actions []*plan.Action
	graph   *clock.Graph
	ground  ground
	sketch  *lengths
	mutual  bool // a line looks at a camera
	hide    Limits

	limits  map[plan.Thing]Limits
	running map[plan.Thing]Limits

	once    sync.Once
	nominal *lengths

	mu     sync.Mutex
	routes map[*plan.Action]cached
}

// cached is a line's way as it was last asked for.
type cached struct {
	start           geom.Vec
	heading, radius float64
	route           route
	err             error
}

// NewResolver prepares a plan's take.
func NewResolver(p *plan.Plan) *Resolver { return newResolver(p, p.Actions, clock.Prepare(p)) }

// NewPickupResolver prepares a pickup, which has a clock of its own.
func NewPickupResolver(p *plan.Plan, pickup *plan.Pickup) *Resolver {
	return newResolver(p, pickup.Actions, clock.PreparePickup(p, pickup))
}

func newResolver(p *plan.Plan, actions []*plan.Action, graph *clock.Graph) *Resolver {
	r := &Resolver{
		plan: p, actions: actions,
		graph:  graph,
		ground: newGround(&p.Set),
		limits: make(map[plan.Thing]Limits), running: make(map[plan.Thing]Limits),
		routes: make(map[*plan.Action]cached),
	}
	for _, who := range p.People {
		r.limits[who], r.running[who] = LimitsOf(p, who, false), LimitsOf(p, who, true)
	}
	for _, v := range p.Kit.Vehicles {
		r.limits[v] = LimitsOf(p, v, false)
	}
	for _, rig := range p.Kit.Rigs {
		r.limits[rig] = LimitsOf(p, rig, false)
	}
	hide := body.RigOf(body.Hide)
	r.hide = Limits{Pan: hide.Pan, Low: hide.LensLow, High: hide.LensUp, Source: "a hidden camera, " + body.Practice}
	for _, a := range actions {
		r.mutual = r.mutual || looksAtCamera(a.Deed)
	}
	r.sketch = newSketch(r)
	return r
}

// Resolve makes the tracks of a plan. A context that is done ends the rounds
// early: what there is by then is whole, but may not have settled.
func Resolve(ctx context.Context, p *plan.Plan) *Tracks {
	return NewResolver(p).Resolve(ctx, nil)
}

// ResolvePickup makes the tracks of a pickup, on a clock of its own from 0.
func ResolvePickup(ctx context.Context, p *plan.Plan, pickup *plan.Pickup) *Tracks {
	return NewPickupResolver(p, pickup).Resolve(ctx, nil)
}

// Resolve makes the tracks of one playing of the take; nil plays it as planned.
func (r *Resolver) Resolve(ctx context.Context, vary *clock.Vary) *Tracks {
	lengths := r.sketch
	if vary != nil { // the take as planned is a better guess, and always the same
		lengths = r.planned(ctx)
	}
	return r.settle(ctx, vary, lengths)
}

// planned is the lengths of the take as planned.
func (r *Resolver) planned(ctx context.Context) *lengths {
	r.once.Do(func() { r.nominal = r.settle(ctx, nil, r.sketch).lengths })
	return r.nominal
}

// settle makes lengths and clock from each other until nothing moves.
func (r *Resolver) settle(ctx context.Context, vary *clock.Vary, lengths *lengths) *Tracks {
	var tracks *Tracks
	for round := 1; ; round++ {
		b := newBuilder(r, r.graph.Solve(lengths, vary), tracks)
		next := b.tracksOf()
		next.Rounds = round
		// What looks at a camera, or follows what follows it, needs those of the
		// round before.
		mutual := next.looped || r.mutual
		if mutual {
			b.place(next)
		}
		done := tracks != nil && settled(tracks, next)
		tracks = next
		if mutual && round < mutualRounds && ctx.Err() == nil {
			lengths = next.lengths
			continue
		}
		if done || round == rounds || ctx.Err() != nil || tracks.exact(lengths) {
			b.finish(tracks)
			return tracks
		}
		lengths = next.lengths
	}
}

func (r *Resolver) limitsOf(t plan.Thing, running bool) Limits {
	if running {
		if l, ok := r.running[t]; ok {
			return l
		}
	}
	return r.limits[t]
}

// limitsOfHold is what moves the lens of a hold.
func (r *Resolver) limitsOfHold(h *hold) Limits {
	if h == nil || h.rig == nil {
		return r.hide
	}
	return r.limitsOf(h.rig, false)
}

// route is the way of a line from where its subject is.
func (r *Resolver) route(a *plan.Action, start geom.Vec, heading, radius float64, d *plan.Move) (route, error) {
	r.mu.Lock()
	c, ok := r.routes[a]
	r.mu.Unlock()
	if radius <= 0 {
		heading = 0 // of no account
	}
	if ok && c.start == start && c.heading == heading && c.radius == radius {
		return c.route, c.err
	}
	c = cached{start: start, heading: heading, radius: radius}
	c.route, c.err = routeFor(start, heading, radius, &d.Path)
	r.mu.Lock()
	r.routes[a] = c
	r.mu.Unlock()
	return c.route, c.err
}

// looksAtCamera says that a line's target is a camera.
func looksAtCamera(d plan.Deed) bool {
	var to []plan.Target
	switch d := d.(type) {
	case *plan.Turn:
		if d.To != nil {
			to = append(to, *d.To)
		}
	case *plan.Move:
		if d.Path.Facing != nil {
			to = append(to, *d.Path.Facing)
		}
	case *plan.Stand:
		if d.Facing != nil {
			to = append(to, *d.Facing)
		}
	case *plan.See:
		to = d.Targets
	case *plan.Rack:
		if d.To != nil {
			to = append(to, *d.To)
		}
	default:
		to = append(to, targetOf(d))
	}
	for _, t := range to {
		if _, ok := t.Thing.(*plan.Camera); ok {
			return true
		}
	}
	return false
}
