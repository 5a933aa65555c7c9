package rehearse

import (
	"cmp"
	"math"
	"slices"

	"longhand/lang/clock"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Report is what came of many runs.
type Report struct {
	Seed  uint64
	Asked int // runs asked for
	Runs  int // runs done: fewer where it was interrupted
	Odds  Odds
	// AsPlanned is what breaks even if everybody is exactly on time: it is to be
	// mended first.
	AsPlanned []Broken
	// Causes are what broke in any run, what breaks a take first most often
	// first.
	Causes  []Cause
	Margins []Margin // in order of the text
	Beats   []BeatTimes
	Planned units.Seconds // length of the take as planned
	Length  Quantiles

	runs []run
}

// Cause is something that broke.
type Cause struct {
	What  string
	First int           // runs in which it was the first thing to break
	Runs  int           // runs in which it broke at all
	By    units.Seconds // how much was missing when it did: the median
	// At is where in the take it shows, on the plan's clock: over the runs in
	// which it is the first thing to break, or over all in which it breaks where
	// it never is. A run that is late by then is put back to the plan's time.
	At Quantiles

	lines map[int]int // the lines it came of, and in how many runs
}

// Margin is how much a line has to spare before something that waits for it
// breaks.
type Margin struct {
	Action  *plan.Action
	Cue     string        // what it starts on, in words
	Planned units.Seconds // as planned
	Slack   Quantiles     // over the runs; below zero it was broken by that much
	Start   Quantiles     // when it began
	Broken  int           // runs with less than nothing to spare
}

// BeatTimes is when a beat begins.
type BeatTimes struct {
	Beat    *plan.Beat // nil in a pickup
	Planned units.Seconds
	Start   Quantiles
}

func report(base *clock.Clock, watched []int, runs []run, o *Options) *Report {
	r := &Report{Seed: o.Seed, Asked: o.Runs, Runs: len(runs), Planned: base.Length, runs: runs}
	held := 0
	lengths := make([]float64, len(runs))
	for i := range runs {
		lengths[i] = runs[i].length
		if len(runs[i].broken) == 0 {
			held++
		}
	}
	r.Odds = NewOdds(held, len(runs))
	r.Length = quantilesOf(lengths)
	r.Causes = causes(base, runs)
	column := make([]float64, len(runs))
	collect := func(of func(*run) float64) Quantiles {
		for i := range runs {
			column[i] = of(&runs[i])
		}
		return quantilesOf(column)
	}
	actions := base.Lines()
	for k, a := range watched {
		m := Margin{Action: actions[a], Cue: base.Words(actions[a]), Planned: base.Actions[a].Slack}
		m.Slack = collect(func(r *run) float64 { return r.slack[k] })
		for _, s := range column {
			if s < -1e-6 {
				m.Broken++
			}
		}
		m.Start = collect(func(r *run) float64 { return r.start[k] })
		r.Margins = append(r.Margins, m)
	}
	for b := range base.Beats {
		t := BeatTimes{Beat: base.Beat(b), Planned: base.Beats[b].Start}
		t.Start = collect(func(r *run) float64 { return r.beats[b] })
		r.Beats = append(r.Beats, t)
	}
	return r
}

// causes counts what broke.
func causes(base *clock.Clock, runs []run) []Cause {
	at := make(map[string]int)
	var list []Cause
	var by, first, shown [][]float64
	for i := range runs {
		counted := make(map[string]bool, len(runs[i].broken))
		for k, b := range runs[i].broken {
			c, ok := at[b.What]
			if !ok {
				c = len(list)
				at[b.What] = c
				list = append(list, Cause{What: b.What})
				by, first, shown = append(by, nil), append(first, nil), append(shown, nil)
			}
			when := planned(base, &runs[i], float64(b.At))
			if k == 0 {
				list[c].First++
				first[c] = append(first[c], when)
			}
			if !counted[b.What] {
				counted[b.What] = true
				list[c].Runs++
				by[c] = append(by[c], float64(b.By))
				shown[c] = append(shown[c], when)
				for _, a := range b.Lines {
					if i := indexOf(base, a); i >= 0 {
						if list[c].lines == nil {
							list[c].lines = make(map[int]int)
						}
						list[c].lines[i]++
					}
				}
			}
		}
	}
	for c := range list {
		list[c].By = quantilesOf(by[c]).P50
		if len(first[c]) == 0 {
			first[c] = shown[c]
		}
		list[c].At = quantilesOf(first[c])
	}
	slices.SortFunc(list, func(a, b Cause) int {
		return cmp.Or(cmp.Compare(b.First, a.First), cmp.Compare(b.Runs, a.Runs), cmp.Compare(a.What, b.What))
	})
	return list
}

// planned is the moment of the plan that a moment of a run stands for: beats
// begin where they begin, and between two of them time goes evenly.
func planned(base *clock.Clock, r *run, at float64) float64 {
	from, to := 0.0, r.length
	planFrom, planTo := 0.0, float64(base.Length)
	for b, start := range r.beats {
		if math.IsInf(start, 0) || math.IsNaN(start) {
			continue
		}
		switch {
		case start <= at && start >= from:
			from, planFrom = start, float64(base.Beats[b].Start)
		case start > at && start < to:
			to, planTo = start, float64(base.Beats[b].Start)
		}
	}
	if to <= from {
		return planFrom
	}
	part := min(max((at-from)/(to-from), 0), 1)
	return planFrom + part*(planTo-planFrom)
}

// Tightest are the margins with the least to spare in the bad runs, at most n of
// them.
func (r *Report) Tightest(n int) []Margin {
	out := slices.Clone(r.Margins)
	slices.SortStableFunc(out, func(a, b Margin) int { return cmp.Compare(a.Slack.P5, b.Slack.P5) })
	return out[:max(0, min(n, len(out)))]
}

// Share is a number of the runs as a part of all.
func (r *Report) Share(runs int) units.Percent {
	if r.Runs == 0 {
		return 0
	}
	return units.Percent(math.Round(1e6*float64(runs)/float64(r.Runs)) / 1e4)
}
