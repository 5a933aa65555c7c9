package rehearse

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"longhand/lang/clock"
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

// What a change may be.
const (
	calmer     = 0.5 // the part of the spread that is left after more rehearsal
	quicker    = 0.9 // the part of the length that is left if it goes faster
	helpLines  = 6   // lines tried: those with the least to spare
	helpPeople = 6
)

// Help tries what would help and returns the n changes that help most. Each line
// that often has nothing to spare is cued sooner, and done a tenth quicker;
// whoever does one is rehearsed until their timing varies half as much; each
// stated time that breaks is stated more generously. Whether a body can go that
// much quicker is for the player to say: by the clock alone everything can.
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
	for k, t := range trials {
		again := *s
		if o.Trying != nil {
			again.o.Progress = func(done int) { o.Trying(k*len(runs)+done, len(trials)*len(runs)) }
		}
		again.roles = slices.Clone(s.roles)
		t.change(again.roles)
		tried := again.playAll(ctx)
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

// trial is a change and what it does to the drawing of runs.
type trial struct {
	Change
	change func([]role)
}

// trials are the changes worth a try.
func (s *staging) trials(base *clock.Clock, r *Report) []trial {
	var out []trial
	who := newCast(base.Lines())
	var people []string
	of := make(map[string][]int)
	name := func(i int) string {
		a := base.Lines()[i]
		if p := who.performer(a); p != nil {
			return p.Name
		}
		if t := clock.SubjectOf(a); t != nil {
			return t.ID().Name
		}
		return ""
	}
	for i := range s.roles {
		of[name(i)] = append(of[name(i)], i)
	}
	lines := 0
	for _, m := range r.Tightest(len(r.Margins)) {
		if m.Broken == 0 {
			break
		}
		i := indexOf(base, m.Action)
		if who := name(i); who != "" && !slices.Contains(people, who) {
			people = append(people, who)
		}
		if lines++; lines > helpLines {
			continue
		}
		what := clock.Describe(m.Action)
		if s.roles[i].cued {
			by := min(tenthUp(float64(-m.Slack.P5)), float64(m.Start.P5))
			if by > 0 {
				out = append(out, trial{
					Change{What: fmt.Sprintf("cue %s sooner: %s", seconds(units.Seconds(by)), what), Action: m.Action, By: units.Seconds(by)},
					func(roles []role) { roles[i].sooner = by },
				})
			}
		}
		if hasLength(m.Action) {
			by := units.Seconds((1 - quicker) * float64(base.Actions[i].Length()))
			out = append(out, trial{
				Change{What: fmt.Sprintf("%s quicker: %s", seconds(by), what), Action: m.Action, By: by},
				func(roles []role) { roles[i].length.mean *= quicker; roles[i].length.sd *= quicker },
			})
		}
	}
	for _, p := range people[:min(len(people), helpPeople)] {
		out = append(out, trial{
			Change{What: fmt.Sprintf("rehearse %s until the timing varies half as much", p)},
			func(roles []role) {
				for _, i := range of[p] {
					roles[i].length.sd *= calmer
					roles[i].react.sd *= calmer
				}
			},
		})
	}
	return out
}

func indexOf(c *clock.Clock, a *plan.Action) int { return slices.Index(c.Lines(), a) }

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
