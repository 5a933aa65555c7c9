package clock

import (
	"math"

	"longhand/lang/plan"
	"longhand/lang/units"
)

// Vary is how one playing of a take differs from the plan. Each slice is by
// plan.Action.Index; a nil slice changes nothing.
type Vary struct {
	Length []float64       // factor on the line's length, whether stated or natural
	Start  []units.Seconds // later than its cause; may be negative
	End    []units.Seconds // later than the cause of its `until`
}

// tidy makes a length out of anything: lengths are finite and not negative.
func tidy(s units.Seconds) float64 { return max(tidyOffset(s), 0) }

func tidyOffset(s units.Seconds) float64 {
	f := float64(s)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return 0
	}
	return f
}

// times is one solution: nodes, lengths, and the in-edge each node waited for.
type times struct {
	t      []float64 // by node
	length []float64 // by action; of bounded ones, what came out
	later  []float64 // by node: added to its cause
	cause  []int32   // by node: the edge that came last
}

// Solve is every time there is, with lengths as l gives them, varied where vary
// is not nil. The graph does not change: many may solve it at once.
func (g *Graph) Solve(l Lengths, vary *Vary) *Clock {
	floats := make([]float64, 2*len(g.nodes)+len(g.acts))
	ts := times{
		t:      floats[:len(g.nodes)],
		later:  floats[len(g.nodes) : 2*len(g.nodes)],
		length: floats[2*len(g.nodes):],
		cause:  make([]int32, len(g.nodes)),
	}
	g.lengths(&ts, l, vary)
	g.times(&ts, l)
	c := &Clock{g: g, t: ts.t, lengths: l, Loops: g.loops, Unmatched: g.unmatched}
	g.read(c, &ts)
	g.judge(c, &ts)
	return c
}

func (g *Graph) lengths(ts *times, l Lengths, vary *Vary) {
	for a, act := range g.acts {
		var s units.Seconds
		switch g.length[a] {
		case stated:
			if cue, ok := act.Deed.(*plan.Cue); ok && act.Timing.In == nil {
				s = cue.Over
			} else {
				s = *act.Timing.In
			}
		case natural:
			s = l.Natural(act)
		}
		ts.length[a] = tidy(s)
		if vary == nil {
			continue
		}
		if a < len(vary.Length) {
			ts.length[a] *= tidy(units.Seconds(vary.Length[a]))
		}
		if a < len(vary.Start) {
			ts.later[g.start(a)] = tidyOffset(vary.Start[a])
		}
		if a < len(vary.End) && g.length[a] == bounded {
			ts.later[g.end(a)] = tidyOffset(vary.End[a])
		}
	}
}

// times is the one pass: every node after all it waits for.
func (g *Graph) times(ts *times, l Lengths) {
	t := ts.t
	for _, n := range g.order {
		nd := &g.nodes[n]
		switch nd.kind {
		case passing, spoken:
			a := int(nd.act)
			took := ts.length[a]
			if nd.stretch {
				took = t[g.end(a)] - t[g.start(a)]
			}
			if nd.kind == spoken {
				t[n] = t[g.start(a)] + nd.frac*took
			} else {
				t[n] = t[g.start(a)] + g.pass(l, a, int(nd.stop), took)
			}
			ts.cause[n] = nd.first
			continue
		}
		// The first edge of several that come at once is the cause: the order in
		// which they were joined is that in which one would name them.
		at, cause := math.Inf(-1), int32(-1)
		for i := nd.first; i < nd.last; i++ {
			if v := t[g.edges[i].from] + g.weight(n, i, ts); v > at {
				at, cause = v, i
			}
		}
		if cause < 0 || at < 0 {
			at = 0
		}
		t[n], ts.cause[n] = at, cause
	}
}

// weight is what an edge into a node adds.
func (g *Graph) weight(n, i int32, ts *times) float64 {
	e := &g.edges[i]
	w := e.add
	if e.act >= 0 {
		w += ts.length[e.act]
	}
	if !e.floor {
		w += ts.later[n]
	}
	return w
}

// read fills the intervals.
func (g *Graph) read(c *Clock, ts *times) {
	c.Length = units.Seconds(ts.t[takeEnd])
	c.Actions = make([]Interval, len(g.acts))
	for a := range g.acts {
		start, end := g.start(a), g.end(a)
		i := &c.Actions[a]
		i.Start, i.End = units.Seconds(ts.t[start]), units.Seconds(ts.t[end])
		i.Placed = g.sound[a]
		i.Slack = units.Seconds(math.Inf(1))
		i.Open = g.length[a] == none && g.acts[a].Deed != nil
		if e := ts.cause[start]; e >= 0 {
			i.Cause = g.edges[e].cause
		}
	}
	c.Beats = make([]Interval, len(g.scopes))
	for s := range g.scopes {
		start := g.beatStart(s)
		i := &c.Beats[s]
		i.Start, i.End = units.Seconds(ts.t[start]), units.Seconds(ts.t[g.beatEnd(s)])
		i.Placed = g.soundBeat[s]
		i.Slack = units.Seconds(math.Inf(1))
		if e := ts.cause[start]; e >= 0 {
			i.Cause = g.edges[e].cause
		}
	}
}
