package clock

import (
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Graph is a plan's starts and ends and what each waits for, with its events
// found and its nodes in topological order. It is made once and solved as often
// as one likes, by several goroutines at once.
type Graph struct {
	plan   *plan.Plan
	pickup *plan.Pickup // nil for the take
	acts   []*plan.Action
	index  map[*plan.Action]int
	scopes []scope
	home   []int // by action: its scope
	length []lengthRule
	sound  []bool // by action: not in a loop, not waiting for what never happens

	soundBeat []bool // by scope, likewise

	nodes []node
	edges []edge  // in-edges, node after node
	order []int32 // nodes, each after all it waits for
	place []int32 // by node: where in order

	before [][]uint64 // by node: a bit for each node it can never come before

	origins   map[*plan.Action]*plan.Place // where each move begins, where that is known
	lanes     []lane
	cameras   []base
	deadlines []deadline
	loops     []Loop
	unmatched []Unmatched
}

// scope is a beat, or the one stretch of a pickup.
type scope struct {
	beat *plan.Beat // nil for a pickup
	acts []int
}

type nodeKind uint8

const (
	latest nodeKind = iota // the latest of its in-edges
	passing
	spoken
)

// node is a moment: a start, an end, or an event in the middle of a line.
type node struct {
	kind        nodeKind
	first, last int32 // in-edges: edges[first:last]
	act         int32 // the line it belongs to, or -1
	end         bool  // of the line: its end
	stop        int32 // passing: which stop
	frac        float64
	stretch     bool // passing, spoken: the line's end isn't a fixed time after its start
}

// edge says that a node is not before another, plus a length.
type edge struct {
	from  int32
	act   int32 // the line whose length is added; -1: none
	add   float64
	floor bool // only keeps an end from coming before its start: nobody reacts to it
	cue   bool // stated by an event; what a loop can be broken at
	cause Cause
}

// Fixed nodes: the take's first moment and its end; then three a scope, then two
// a line.
const (
	origin  int32 = 0
	takeEnd int32 = 1
)

func (g *Graph) beatStart(s int) int32   { return int32(2 + 3*s) }
func (g *Graph) beatContent(s int) int32 { return int32(3 + 3*s) } // the latest end of its lines
func (g *Graph) beatEnd(s int) int32     { return int32(4 + 3*s) }
func (g *Graph) start(a int) int32       { return int32(2 + 3*len(g.scopes) + 2*a) }
func (g *Graph) end(a int) int32         { return g.start(a) + 1 }

// lengthRule is how a line's length is found.
type lengthRule uint8

const (
	none    lengthRule = iota // instant
	stated                    // `in`, or a light cue's `over`
	natural                   // asked of Lengths
	bounded                   // its end is: until, or that of the spin it counters
)

// deadline is a stated limit: node u must not be later than node v plus c.
type deadline struct {
	u, v int32
	c    float64
	kind deadlineKind
	a, b int32 // lines, or a scope
}

type deadlineKind uint8

const (
	byLimit deadlineKind = iota
	untilLimit
	beforeTake
	overLength
	rollOut
	oneAtATime
)

// context is from where an event is asked for.
type context struct {
	scope  int
	act    int  // not to be found itself; -1: none
	header bool // a beat's header: its own beat comes last
}

func (g *Graph) contextOf(a *plan.Action) context {
	if i, ok := g.index[a]; ok && a != nil {
		return context{scope: g.home[i], act: i}
	}
	return context{scope: -1, act: -1}
}

// timeOf is when a hit happens.
func (g *Graph) timeOf(h hit, t []float64, l Lengths) float64 {
	switch h.kind {
	case hitBeatStart:
		return t[g.beatStart(h.scope)]
	case hitBeatEnd:
		return t[g.beatEnd(h.scope)]
	case hitStart:
		return t[g.start(h.act)]
	case hitEnd:
		return t[g.end(h.act)]
	}
	s, e := t[g.start(h.act)], t[g.end(h.act)]
	if h.kind == hitWord {
		return s + h.frac*(e-s)
	}
	return s + g.pass(l, h.act, h.stop, e-s)
}

// pass is the time to a stop, kept inside the move whatever Lengths says.
func (g *Graph) pass(l Lengths, act, stop int, took float64) float64 {
	return min(max(tidy(l.Passing(g.acts[act], stop, units.Seconds(took))), 0), took)
}
