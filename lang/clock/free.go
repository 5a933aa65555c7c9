package clock

import (
	"math"

	"longhand/lang/units"
)

// free works out how much later each line could happen before anything else
// does: the free float of the critical path method. What counts as anything is
// the start and end of other lines, the start of a beat, and the end of the
// take; the ends of beats and places on the way only pass lateness on.
func (g *Graph) free(c *Clock, ts *times) {
	t := ts.t
	room := make([]float64, len(g.nodes)) // how late it may be without moving others
	for n := range room {
		room[n] = math.Inf(1)
	}
	for k := len(g.order) - 1; k >= 0; k-- {
		n := g.order[k]
		nd := &g.nodes[n]
		for i := nd.first; i < nd.last; i++ {
			from := g.edges[i].from
			bound := room[n]
			if own := nd.act >= 0 && g.nodes[from].act == nd.act; !own && g.fixture(n) {
				bound = t[n]
			}
			room[from] = min(room[from], bound-g.gap(n, i, ts))
		}
	}
	for a := range c.Actions {
		start, end := g.start(a), g.end(a)
		spare := units.Seconds(min(room[start]-t[start], room[end]-t[end]))
		c.Actions[a].Free = max(min(spare, c.Actions[a].Slack), 0)
	}
}

// fixture says whether a node is a time people see: not one that only passes
// lateness on.
func (g *Graph) fixture(n int32) bool {
	nd := &g.nodes[n]
	switch {
	case nd.act >= 0:
		return nd.kind == latest
	case n == takeEnd:
		return true
	}
	return n != origin && (n-2)%3 == 0
}
