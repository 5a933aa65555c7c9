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

// Resolver makes tracks of a plan, as often as one likes: it keeps what doesn't
// depend on the clock. Several goroutines may use one at once.
type Resolver struct {
	plan    *plan.Plan
	actions []*plan.Action
	graph   *clock.Graph
	ground  ground
	sketch  *lengths
	hide    Limits

	limits  map[plan.Thing]Limits
	running map[plan.Thing]Limits

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

// NewResolver prepares a plan.
func NewResolver(p *plan.Plan) *Resolver {
	r := &Resolver{
		plan: p, actions: p.Actions,
		graph:  clock.Prepare(p),
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
	r.sketch = newSketch(r)
	return r
}

// Resolve makes the tracks of a plan. A context that is done ends the rounds
// early: what there is by then is whole, but may not have settled.
func Resolve(ctx context.Context, p *plan.Plan) *Tracks {
	return NewResolver(p).Resolve(ctx, nil)
}

// Resolve makes the tracks of one playing of the take; nil plays it as planned.
func (r *Resolver) Resolve(ctx context.Context, vary *clock.Vary) *Tracks {
	var tracks *Tracks
	lengths := r.sketch
	for round := range rounds {
		next := newBuilder(r, r.graph.Solve(lengths, vary), tracks).tracksOf()
		done := tracks != nil && settled(tracks, next)
		tracks = next
		tracks.Rounds = round + 1
		if done || ctx.Err() != nil || tracks.exact(lengths) {
			break
		}
		lengths = next.lengths
	}
	return tracks
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
