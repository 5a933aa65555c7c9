package clock

import (
	"math"

	"longhand/lang/units"
)

// hair is how much two ways of adding up the same lengths may differ.
const hair = 1e-9

// slack works out, for every line and beat, how much later all of it could
// happen before a limit is passed, or passed by more than it is already.
//
// A limit says T(u) <= T(v) + c. If x is d later, then u is at
// max(T(u), T(x)+d+L(x,u)) with L the longest way from x to u, and v likewise.
// Where v is the take's first moment it never moves, and all such limits go in
// one pass backwards (the late times of the critical path method). Any other
// needs L(x,u) and L(x,v) of all x from which u is reached other than by v:
// d = T(v) + c - T(x) - L(x,u), unless v is moved as much as u, which never
// breaks anything.
func (g *Graph) slack(c *Clock, ts *times, limits []deadline) {
	s := slacker{g: g, c: c, ts: ts}
	n := len(g.nodes)
	floats := make([]float64, 3*n)
	s.latest, s.u, s.v = floats[:n], floats[n:2*n], floats[2*n:]
	s.forced = make([]bool, n)
	for i := range n {
		s.latest[i], s.u[i], s.v[i] = math.Inf(1), math.Inf(-1), math.Inf(-1)
	}
	fixed := false
	for i := range limits {
		if d := &limits[i]; d.v == origin {
			s.latest[d.u] = min(s.latest[d.u], ts.t[origin]+d.c)
			fixed = true
		}
	}
	if fixed {
		s.fixed()
	}
	for i := range limits {
		if d := &limits[i]; d.v != origin && d.u != origin {
			s.moving(d)
		}
	}
}

type slacker struct {
	g      *Graph
	c      *Clock
	ts     *times
	latest []float64 // by node: the latest time all fixed limits allow
	u, v   []float64 // by node: longest way to u and to v of the limit at hand
	forced []bool    // by node: a start to be looked at though it is fine itself
	seen   []int32
}

func (s *slacker) fixed() {
	g, t := s.g, s.ts.t
	for k := len(g.order) - 1; k >= 0; k-- {
		n := g.order[k]
		l := s.latest[n]
		if math.IsInf(l, 1) {
			continue
		}
		nd := &g.nodes[n]
		for i := nd.first; i < nd.last; i++ {
			from := g.edges[i].from
			s.latest[from] = min(s.latest[from], l-g.gap(n, i, s.ts))
		}
	}
	for a := range s.c.Actions {
		start, end := g.start(a), g.end(a)
		s.tighten(&s.c.Actions[a], min(s.latest[start]-t[start], s.latest[end]-t[end]))
	}
	for b := range s.c.Beats {
		start := g.beatStart(b)
		s.tighten(&s.c.Beats[b], s.latest[start]-t[start])
	}
}

func (s *slacker) tighten(i *Interval, to float64) {
	i.Slack = min(i.Slack, units.Seconds(to))
}

// moving handles one limit that itself may move.
func (s *slacker) moving(d *deadline) {
	g, t := s.g, s.ts.t
	limit := t[d.v] + d.c
	most := max(d.c, t[d.u]-t[d.v]) + hair // u may be this far behind v
	pending := 0
	broken := func(n int32) bool {
		return s.forced[n] || s.u[n]-s.v[n] > most || math.IsInf(s.v[n], -1) && !math.IsInf(s.u[n], -1)
	}
	touch := func(n int32, u, v float64) {
		was := broken(n)
		if math.IsInf(s.u[n], -1) && math.IsInf(s.v[n], -1) && !s.forced[n] {
			s.seen = append(s.seen, n)
		}
		s.u[n], s.v[n] = max(s.u[n], u), max(s.v[n], v)
		if now := broken(n); now != was {
			if now {
				pending++
			} else {
				pending--
			}
		}
	}
	inf := math.Inf(-1)
	touch(d.u, 0, inf)
	touch(d.v, inf, 0)
	for k := max(g.place[d.u], g.place[d.v]); k >= 0 && pending > 0; k-- {
		n := g.order[k]
		u, v := s.u[n], s.v[n]
		if math.IsInf(u, -1) && math.IsInf(v, -1) && !s.forced[n] {
			continue
		}
		bad := broken(n)
		if bad {
			pending--
		}
		nd := &g.nodes[n]
		if bad || s.forced[n] {
			s.report(n, u, v, limit, most)
		}
		for i := nd.first; i < nd.last; i++ {
			gap := g.gap(n, i, s.ts)
			touch(g.edges[i].from, u+gap, v+gap)
		}
		if nd.end && bad && g.length[nd.act] == bounded {
			// The line's start has to be looked at together with its end.
			start := g.start(int(nd.act))
			was := broken(start)
			s.forced[start] = true
			if !was {
				pending++
			}
		}
	}
	for _, n := range s.seen {
		s.u[n], s.v[n], s.forced[n] = inf, inf, false
	}
	s.seen = s.seen[:0]
}

// report tightens what a node is the start of.
func (s *slacker) report(n int32, u, v, limit, most float64) {
	g, t := s.g, s.ts.t
	nd := &g.nodes[n]
	if nd.act >= 0 {
		if nd.end || nd.kind != latest {
			return
		}
		if g.length[nd.act] == bounded {
			// All of it is late: its end as much as its start.
			end := g.end(int(nd.act))
			took := t[end] - t[n]
			u, v = max(u, s.u[end]+took), max(v, s.v[end]+took)
		}
		if u-v > most || math.IsInf(v, -1) {
			s.tighten(&s.c.Actions[nd.act], limit-t[n]-u)
		}
		return
	}
	if n >= 2 && (n-2)%3 == 0 {
		s.tighten(&s.c.Beats[(n-2)/3], limit-t[n]-u)
	}
}

// gap is what an in-edge adds to its node's time, lateness included.
func (g *Graph) gap(n, i int32, ts *times) float64 {
	if g.nodes[n].kind != latest {
		return ts.t[n] - ts.t[g.edges[i].from]
	}
	return g.weight(n, i, ts)
}
