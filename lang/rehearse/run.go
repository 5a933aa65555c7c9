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
	// Evaluate adds what breaks in a run that the clock alone does not show. It
	// is called from several goroutines at once, for each run once; the clock is
	// its own. Nil adds nothing.
	Evaluate func(run int, c *clock.Clock) []Broken
	// Progress is told how many runs are done, now and then, from one goroutine
	// at a time.
	Progress func(done int)
}

// Broken is something in one run that does not hold.
type Broken struct {
	At   units.Seconds // when it shows, on the take's clock
	What string        // the same words in every run in which it breaks
	By   units.Seconds // how much is missing; 0 where that is no time
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

// Run plays the take. If ctx is cancelled the report is of the runs done so far,
// from the first on without a gap.
func Run(ctx context.Context, p *plan.Plan, l clock.Lengths, o Options) *Report {
	return play(ctx, clock.Prepare(p), p.Actions, l, o)
}

// RunPickup plays a pickup.
func RunPickup(ctx context.Context, p *plan.Plan, pickup *plan.Pickup, l clock.Lengths, o Options) *Report {
	return play(ctx, clock.PreparePickup(p, pickup), pickup.Actions, l, o)
}

func play(ctx context.Context, g *clock.Graph, actions []*plan.Action, l clock.Lengths, o Options) *Report {
	if o.Runs <= 0 {
		o.Runs = DefaultRuns
	}
	workers := o.Workers
	if workers <= 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	base := g.Solve(l, nil)
	roles := rolesOf(actions, base, &o)
	watched := watch(base)
	runs := make([]run, o.Runs)
	var next, done atomic.Int64
	var tell sync.Mutex
	var wait sync.WaitGroup
	for range min(workers, o.Runs) {
		wait.Go(func() {
			v := clock.Vary{
				Length: make([]float64, len(actions)),
				Start:  make([]units.Seconds, len(actions)),
				End:    make([]units.Seconds, len(actions)),
			}
			for ctx.Err() == nil {
				i := int(next.Add(1)) - 1
				if i >= o.Runs {
					return
				}
				vary(roles, &o, i, &v)
				c := g.Solve(l, &v)
				runs[i] = keep(c, watched, o.Evaluate, i)
				if n := done.Add(1); o.Progress != nil && (n%64 == 0 || int(n) == o.Runs) {
					tell.Lock()
					o.Progress(int(n))
					tell.Unlock()
				}
			}
		})
	}
	wait.Wait()
	whole := 0
	for whole < len(runs) && runs[whole].done {
		whole++
	}
	return report(base, watched, runs[:whole], &o)
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

func keep(c *clock.Clock, watched []int, evaluate func(int, *clock.Clock) []Broken, i int) run {
	r := run{done: true, length: float64(c.Length)}
	values := make([]float64, 2*len(watched)+len(c.Beats))
	r.start, values = values[:len(watched)], values[len(watched):]
	r.slack, r.beats = values[:len(watched)], values[len(watched):]
	for k, a := range watched {
		r.start[k], r.slack[k] = float64(c.Actions[a].Start), float64(c.Actions[a].Slack)
	}
	for b := range c.Beats {
		r.beats[b] = float64(c.Beats[b].Start)
	}
	r.broken = brokenBy(c)
	if evaluate != nil {
		r.broken = append(r.broken, evaluate(i, c)...)
	}
	inOrder(r.broken)
	return r
}
