package rehearse

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// DefaultRuns is how often a take is played where nobody says: enough for a
// chance to be known to about three in a hundred.
const DefaultRuns = 1000

// Options say how to rehearse.
type Options struct {
	Runs    int    // DefaultRuns where 0
	Seed    uint64 // the same seed, the same report
	Workers int    // as many as there are cores where 0; the report does not depend on it
	Shape   Shape
	// Spread replaces the spread of a line, which is handed over as worked out
	// from the plan and the defaults. Nil leaves all as they are.
	Spread func(a *plan.Action, s Spread) Spread
	// Times are measured rehearsal times; they win over spreads.
	Times *Times
	// Evaluate adds what breaks in a run to what the player and the clock say. It
	// is called from several goroutines at once, for each run once. Nil adds
	// nothing.
	Evaluate func(run int, c *clock.Clock) []Broken
	// Progress is told how many runs are done after each, by one goroutine at a
	// time.
	Progress func(done int)
	// Trying is told the same of [Help]: how many runs are done, of how many.
	Trying func(done, all int)
}

// Broken is something in one run that does not hold.
type Broken struct {
	At   units.Seconds // when it shows, on the take's clock
	What string        // the same words in every run in which it breaks
	By   units.Seconds // how much is missing; 0 where that is no time
	// Lines are those it came of, where the clock doesn't show it: what [Help]
	// tries to change.
	Lines []*plan.Action

	stated bool // it is a stated time, which could be stated more generously
}

// run is what is kept of one.
type run struct {
	done   bool
	broken []Broken // in order of time
	length float64
	start  []float64 // by watched line
	slack  []float64
	beats  []float64
}

// Player plays a take once, varied as told (nil: as planned), and returns its
// clock and what breaks besides what the clock shows. Several goroutines call it
// at once. If ctx is done it may return early; such a run does not count.
type Player func(ctx context.Context, v *clock.Vary) (*clock.Clock, []Broken)

// ByClock plays the take by its clock alone.
func ByClock(p *plan.Plan, l clock.Lengths) Player { return byGraph(clock.Prepare(p), l) }

// PickupByClock plays a pickup by its clock alone.
func PickupByClock(p *plan.Plan, pickup *plan.Pickup, l clock.Lengths) Player {
	return byGraph(clock.PreparePickup(p, pickup), l)
}

func byGraph(g *clock.Graph, l clock.Lengths) Player {
	return func(_ context.Context, v *clock.Vary) (*clock.Clock, []Broken) { return g.Solve(l, v), nil }
}

// Run plays a take over and over. If ctx is cancelled the report is of the runs
// done so far, from the first on without a gap.
func Run(ctx context.Context, play Player, o Options) *Report {
	base, flaws := play(ctx, nil)
	s := newStaging(base, play, o)
	runs := s.play(ctx, upTo(s.o.Runs))
	r := report(base, s.watched, runs, &s.o)
	r.AsPlanned = append(brokenBy(base), flaws...)
	inOrder(r.AsPlanned)
	return r
}

// staging is what all runs have in common.
type staging struct {
	player  Player
	o       Options
	roles   []role
	watched []int
}

func newStaging(base *clock.Clock, play Player, o Options) *staging {
	if o.Runs <= 0 {
		o.Runs = DefaultRuns
	}
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	return &staging{player: play, o: o, roles: rolesOf(base, &o), watched: watch(base)}
}

// upTo are the runs from the first to the nth.
func upTo(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i
	}
	return out
}

// play plays the runs that are asked for, by their numbers, or the first of them.
func (s *staging) play(ctx context.Context, which []int) []run {
	runs := make([]run, len(which))
	var next atomic.Int64
	var wait sync.WaitGroup
	var tell sync.Mutex
	done := 0
	for range min(s.o.Workers, len(which)) {
		wait.Go(func() {
			v := newVary(len(s.roles))
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= len(which) {
					return
				}
				vary(s.roles, &s.o, which[i], v)
				c, more := s.player(ctx, v)
				if ctx.Err() != nil {
					return
				}
				runs[i] = s.keep(c, more, which[i])
				if s.o.Progress == nil {
					continue
				}
				tell.Lock()
				done++
				s.o.Progress(done)
				tell.Unlock()
			}
		})
	}
	wait.Wait()
	whole := 0
	for whole < len(runs) && runs[whole].done {
		whole++
	}
	return runs[:whole]
}

// watch picks the lines whose slack means something: those that something waits
// for.
func watch(base *clock.Clock) []int {
	var out []int
	for i := range base.Actions {
		if base.Actions[i].Placed && !math.IsInf(float64(base.Actions[i].Slack), 1) {
			out = append(out, i)
		}
	}
	return out
}

func (s *staging) keep(c *clock.Clock, more []Broken, i int) run {
	r := run{done: true, length: float64(c.Length)}
	n := len(s.watched)
	values := make([]float64, 2*n+len(c.Beats))
	r.start, r.slack, r.beats = values[:n], values[n:2*n], values[2*n:]
	for k, a := range s.watched {
		r.start[k], r.slack[k] = float64(c.Actions[a].Start), float64(c.Actions[a].Slack)
	}
	for b := range c.Beats {
		r.beats[b] = float64(c.Beats[b].Start)
	}
	r.broken = append(brokenBy(c), more...)
	if s.o.Evaluate != nil {
		r.broken = append(r.broken, s.o.Evaluate(i, c)...)
	}
	inOrder(r.broken)
	return r
}
