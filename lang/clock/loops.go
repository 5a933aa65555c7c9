package clock

import (
	"slices"

	"longhand/lang/units"
)

// sort puts the nodes in topological order. If some wait for themselves it
// returns one way around for each knot of them instead, as nodes each of which
// waits for the next.
func (g *Graph) sort() [][]int32 {
	t := tarjan{g: g, number: make([]int32, len(g.nodes)), low: make([]int32, len(g.nodes)), on: make([]bool, len(g.nodes))}
	for n := range g.nodes {
		if t.number[n] == 0 {
			t.visit(int32(n))
		}
	}
	var ways [][]int32
	g.order = g.order[:0]
	for _, knot := range t.knots {
		if len(knot) == 1 && !g.waitsFor(knot[0], knot[0]) {
			g.order = append(g.order, knot[0])
			continue
		}
		ways = append(ways, g.shortestWay(knot))
	}
	slices.SortFunc(ways, func(a, b []int32) int { return int(a[0] - b[0]) })
	g.place = make([]int32, len(g.nodes))
	for i, n := range g.order {
		g.place[n] = int32(i)
	}
	return ways
}

func (g *Graph) in(n int32) []edge { return g.edges[g.nodes[n].first:g.nodes[n].last] }

func (g *Graph) waitsFor(n, m int32) bool {
	return slices.ContainsFunc(g.in(n), func(e edge) bool { return e.from == m })
}

// tarjan finds the strongly connected components of the graph of what waits for
// what; they come out each after all it waits for (R. Tarjan, "Depth-first
// search and linear graph algorithms", SIAM J. Comput. 1, 1972). It keeps its
// own stack of frames, so that a long plan cannot exhaust the machine's.
type tarjan struct {
	g      *Graph
	number []int32 // from 1 in order of first visit
	low    []int32
	on     []bool
	stack  []int32
	next   int32
	knots  [][]int32
}

func (t *tarjan) visit(root int32) {
	type frame struct {
		n int32
		i int
	}
	var frames []frame
	push := func(n int32) {
		t.next++
		t.number[n], t.low[n] = t.next, t.next
		t.stack = append(t.stack, n)
		t.on[n] = true
		frames = append(frames, frame{n: n})
	}
	push(root)
	for len(frames) > 0 {
		f := &frames[len(frames)-1]
		n, in := f.n, t.g.in(f.n)
		if f.i < len(in) {
			m := in[f.i].from
			f.i++
			if t.number[m] == 0 {
				push(m)
			} else if t.on[m] {
				t.low[n] = min(t.low[n], t.number[m])
			}
			continue
		}
		frames = frames[:len(frames)-1]
		if len(frames) > 0 {
			p := frames[len(frames)-1].n
			t.low[p] = min(t.low[p], t.low[n])
		}
		if t.low[n] == t.number[n] {
			at := slices.Index(t.stack, n)
			knot := slices.Clone(t.stack[at:])
			t.stack = t.stack[:at]
			for _, m := range knot {
				t.on[m] = false
			}
			t.knots = append(t.knots, knot)
		}
	}
}

// shortestWay is the shortest way around inside a knot, from the node that
// comes first in the text among the shortest.
func (g *Graph) shortestWay(knot []int32) []int32 {
	inside := make(map[int32]bool, len(knot))
	for _, n := range knot {
		inside[n] = true
	}
	slices.Sort(knot)
	var best []int32
	for _, from := range knot {
		came := map[int32]int32{}
		queue := []int32{from}
		found := false
		for len(queue) > 0 && !found {
			n := queue[0]
			queue = queue[1:]
			for _, e := range g.in(n) {
				if !inside[e.from] {
					continue
				}
				if e.from == from {
					came[from] = n
					found = true
					break
				}
				if _, seen := came[e.from]; !seen {
					came[e.from] = n
					queue = append(queue, e.from)
				}
			}
		}
		if !found {
			continue
		}
		// Back from the end: n waits for the node after it.
		way := []int32{from}
		for n := came[from]; n != from; n = came[n] {
			way = append(way, n)
		}
		slices.Reverse(way[1:])
		if best == nil || len(way) < len(best) {
			best = way
		}
	}
	return best
}

// breakCues notes the starts and ends on a way around that wait for a cue.
func (g *Graph) breakCues(way []int32, broken map[int32]bool) {
	for i, n := range way {
		next := way[(i+1)%len(way)]
		if slices.ContainsFunc(g.in(n), func(e edge) bool { return e.cue && e.from == next }) {
			broken[n] = true
		}
	}
}

// wayAround tells a way around as lines and beats, each once.
func (g *Graph) wayAround(way []int32) Loop {
	var loop Loop
	for i, n := range way {
		next := way[(i+1)%len(way)]
		step := g.stepOf(n)
		after := g.stepOf(next)
		if !sameStep(step, after) {
			step.Waits = g.waits(n, next, after)
		}
		if k := len(loop.Steps); k > 0 && sameStep(loop.Steps[k-1], step) {
			loop.Steps[k-1] = step
			continue
		}
		loop.Steps = append(loop.Steps, step)
	}
	if k := len(loop.Steps); k > 1 && sameStep(loop.Steps[0], loop.Steps[k-1]) {
		loop.Steps = loop.Steps[:k-1]
	} else if k == 1 {
		// It waits for itself.
		for _, n := range way {
			for _, e := range g.in(n) {
				if e.cue && slices.Contains(way, e.from) {
					loop.Steps[0].Waits = words(e.cause)
				}
			}
		}
	}
	return loop
}

func (g *Graph) stepOf(n int32) Step {
	if a := g.nodes[n].act; a >= 0 {
		return Step{Action: g.acts[a], Beat: g.acts[a].Beat}
	}
	return Step{Beat: g.scopes[(n-2)/3].beat}
}

func sameStep(a, b Step) bool { return a.Action == b.Action && (a.Action != nil || a.Beat == b.Beat) }

// waits says why a node waits for another, which is part of the step after.
func (g *Graph) waits(n, next int32, after Step) string {
	for _, e := range g.in(n) {
		switch {
		case e.from != next:
		case e.cue:
			return words(e.cause)
		case g.nodes[n].act < 0 && after.Action != nil:
			return "ends with " + after.name()
		case e.cause.Kind == BeatBegins && e.cause.Offset != 0:
			return units.Number(float64(e.cause.Offset), 2) + " s into " + after.name()
		case e.cause.Kind == BeatBegins:
			return "in " + after.name()
		case e.cause.Kind == WithLine:
			return "with " + after.name()
		}
	}
	return "after " + after.name()
}
