package rehearse

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// Change is something that would make the take hold more often, tried with the
// same luck as the rehearsal it is to better.
type Change struct {
	What   string
	Action *plan.Action // the line it is about; nil where it is about somebody or a stated time
	By     units.Seconds
	Odds   Odds
	Gain   float64 // Odds.Chance more than without it
}

// finalists are how many changes are played in all runs, for each that is asked
// for; which they are, a part of the runs decides.
const finalists = 2

// sample is how many runs decide it: about as many that hold as that don't.
const sample = 40

// Help tries what would help and returns the n changes that help most. Each line
// that often has nothing to spare is cued sooner, and done a tenth quicker;
// whoever does one is rehearsed until their timing varies half as much; each
// stated time that breaks is stated more generously. What the lenses find has no
// time to spare: the lines it came of, and those of its subjects before them, are
// begun a step sooner and later, and done a tenth quicker and slower. Whether a
// body can do that is for the player to say: by the clock alone everything can.
//
// It takes the player and options of the rehearsal r came of. If ctx is
// cancelled, what was tried until then is ranked.
func Help(ctx context.Context, play Player, o Options, r *Report, n int) []Change {
	runs := r.runs
	base, _ := play(ctx, nil)
	o.Runs, o.Progress = len(runs), nil
	s := newStaging(base, play, o)
	out := allowed(runs, r)
	trials := s.trials(base, r)
	some, last := few(runs), min(len(trials), finalists*max(n, 1))
	if len(trials)*len(some)+last*len(runs) >= len(trials)*len(runs) {
		some, last = nil, len(trials) // no quicker than all of them
	}
	all, done := len(trials)*len(some)+last*len(runs), 0
	try := func(t *trial, which []int) []run {
		again := *s
		if o.Trying != nil {
			before := done
			again.o.Progress = func(n int) { o.Trying(before+n, all) }
		}
		again.roles = slices.Clone(s.roles)
		t.change(again.roles)
		done += len(which)
		return again.play(ctx, which)
	}
	if some != nil {
		for k := range trials {
			tried := try(&trials[k], some)
			if len(tried) < len(some) {
				trials = trials[:k] // interrupted
				break
			}
			trials[k].promise = promise(runs, some, tried)
		}
		slices.SortStableFunc(trials, func(a, b trial) int { return cmp.Compare(b.promise, a.promise) })
		trials = trials[:min(last, len(trials))]
	}
	for k := range trials {
		t := &trials[k]
		tried := try(t, upTo(len(runs)))
		if len(tried) < len(runs) {
			break // interrupted
		}
		t.Odds = NewOdds(holding(tried, nil), len(tried))
		out = append(out, t.Change)
	}
	for i := range out {
		out[i].Gain = out[i].Odds.Chance - r.Odds.Chance
	}
	out = slices.DeleteFunc(out, func(c Change) bool { return c.Gain <= 0 })
	slices.SortStableFunc(out, func(a, b Change) int { return cmp.Compare(b.Gain, a.Gain) })
	return out[:max(0, min(n, len(out)))]
}

// few are the runs that changes are first tried in: those in which something
// breaks, which a change may mend, and those in which nothing does, which it may
// spoil, half of each where there are so many.
func few(runs []run) []int {
	var broke, held []int
	for i := range runs {
		if len(runs[i].broken) > 0 {
			broke = append(broke, i)
		} else {
			held = append(held, i)
		}
	}
	b := min(len(broke), max(sample/2, sample-len(held)))
	h := min(len(held), sample-b)
	out := append(slices.Clone(broke[:b]), held[:h]...)
	slices.Sort(out)
	return out
}

// promise is how many runs more would hold, by what a change made of some.
func promise(runs []run, some []int, tried []run) float64 {
	var all, of, other [2]float64 // of runs that held, and of those that broke
	kind := func(r *run) int { return min(len(r.broken), 1) }
	for i := range runs {
		all[kind(&runs[i])]++
	}
	for k, i := range some {
		was := kind(&runs[i])
		of[was]++
		if kind(&tried[k]) != was {
			other[was]++
		}
	}
	gain := 0.0
	if of[1] > 0 {
		gain += other[1] / of[1] * all[1]
	}
	if of[0] > 0 {
		gain -= other[0] / of[0] * all[0]
	}
	return gain
}

// allowed looks at what would hold if a stated time were stated more generously,
// by as much as would do in 95 of 100 runs in which it breaks. Nothing has to be
// played again for it: nobody waits for a limit.
func allowed(runs []run, r *Report) []Change {
	var out []Change
	for _, c := range r.Causes {
		var by []float64
		for i := range runs {
			for _, b := range runs[i].broken {
				if b.What == c.What && b.stated {
					by = append(by, float64(b.By))
				}
			}
		}
		if len(by) == 0 {
			continue
		}
		more := units.Seconds(tenthUp(float64(quantilesOf(by).P95)))
		held := holding(runs, func(b Broken) bool { return b.stated && b.What == c.What && b.By <= more })
		out = append(out, Change{What: fmt.Sprintf("allow %s more where %s", seconds(more), c.What), By: more, Odds: NewOdds(held, len(runs))})
	}
	return out
}

// holding counts the runs in which nothing breaks but what is forgiven.
func holding(runs []run, forgiven func(Broken) bool) int {
	n := 0
	for i := range runs {
		breaks := func(b Broken) bool { return forgiven == nil || !forgiven(b) }
		if !slices.ContainsFunc(runs[i].broken, breaks) {
			n++
		}
	}
	return n
}

// tenthUp rounds up to a tenth of a second.
func tenthUp(s float64) float64 { return math.Ceil(s*10-1e-9) / 10 }
