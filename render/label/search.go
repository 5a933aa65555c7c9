package label

import (
	"cmp"
	"math"
	"slices"

	"longhand/render/scene"
)

type search struct {
	field    Field
	clear    float64
	requests []Request
	grid     *grid
	options  [][]candidate // of each request, those found so far: beside it, then ring by ring
	rings    []int         // of each request, how many rings were looked at
	placed   []*candidate  // of each request, nil for none
	order    []int         // requests, the most important first
}

func newSearch(f Field, requests []Request) *search {
	n := len(requests)
	s := &search{field: f, clear: f.Clear, requests: requests,
		options: make([][]candidate, n), rings: make([]int, n), placed: make([]*candidate, n)}
	if s.clear <= 0 {
		s.clear = 0.4
	}
	s.grid = newGrid(f.Within, pieces(f.Obstacles))
	for i := range requests {
		s.order = append(s.order, i)
		if r := &requests[i]; r.W > 0 && r.H > 0 {
			s.take(i, s.beside(r))
		} else {
			s.rings[i] = math.MaxInt // nothing to place, so no place
		}
	}
	// Of equal importance, those with fewer places go first, then as given.
	slices.SortStableFunc(s.order, func(a, b int) int {
		if d := requests[b].Priority - requests[a].Priority; d != 0 {
			return d
		}
		return len(s.options[a]) - len(s.options[b])
	})
	return s
}

// take keeps the places that lie on nothing they may not cover, the cheapest
// first, and adds what the others cover to their cost, once for all: obstacles
// do not move.
func (s *search) take(i int, cs []candidate) {
	from := len(s.options[i])
	for _, c := range cs {
		if s.field.Within.Contains(c.box) && s.price(&c) {
			s.options[i] = append(s.options[i], c)
		}
	}
	slices.SortStableFunc(s.options[i][from:], func(a, b candidate) int { return cmp.Compare(a.base, b.base) })
}

// more looks at the next ring, unless all it can offer costs the limit or more.
func (s *search) more(i int, limit float64) bool {
	k := s.rings[i]
	if k >= s.requests[i].rings() || ringCost(k) >= limit {
		return false
	}
	s.rings[i]++
	s.take(i, s.ring(&s.requests[i], k))
	return true
}

// price adds what a place covers to its base; false when it may not be.
func (s *search) price(c *candidate) bool {
	ok := true
	counted := map[int]bool{} // an obstacle of many pieces costs once
	s.grid.near(c.box.Grow(confusing), func(p *piece) bool {
		if !p.covers(c.kept[:]) {
			c.base += s.confusion(p, c)
			return true
		}
		if p.cost == 0 {
			ok = false
			return false
		}
		if !counted[p.obstacle] {
			counted[p.obstacle] = true
			c.base += p.cost
		}
		return true
	})
	if !ok || c.leader == nil {
		return ok
	}
	a, b := c.leader[0], c.leader[1]
	clear(counted)
	s.grid.near(c.along, func(p *piece) bool {
		if counted[p.obstacle] || !p.struck(a, b) || s.own(p, c.at) {
			return true
		}
		counted[p.obstacle] = true
		switch {
		case p.cost > 0:
			c.base += math.Min(p.cost, crossingCost) / 2
		case p.kind == segment:
			c.base += crossingCost
		default:
			ok = false // through a person or another mark it would name that one
			return false
		}
		return true
	})
	return ok
}

// confusion is the cost of standing so near to another mark that the label seems
// to name that one.
func (s *search) confusion(p *piece, c *candidate) float64 {
	if p.kind != round || s.own(p, c.at) {
		return 0
	}
	d := quadDistance(p.a, c.quad[:]) - p.radius
	return confusionCost * math.Max(0, 1-d/confusing)
}

// own is whether the piece is what the leader starts from.
func (s *search) own(p *piece, at scene.Point) bool {
	switch p.kind {
	case round:
		return at.Dist(p.a) < p.radius
	case segment:
		return segmentDistance(at, p.a, p.b) <= p.radius+1e-6
	default:
		return inRing(at, p.points)
	}
}

// against is what other labels add to a place; blockers are those it cannot
// stand with.
func (s *search) against(i int, c *candidate, limit int) (extra float64, blockers []int) {
	for j, o := range s.placed {
		if o == nil || j == i {
			continue
		}
		if s.clash(c, o) {
			blockers = append(blockers, j)
			if len(blockers) > limit {
				return 0, blockers
			}
			continue
		}
		if c.leader != nil && o.leader != nil && crosses(c.leader[0], c.leader[1], o.leader[0], o.leader[1]) {
			extra += leadersCross
		}
	}
	return extra, blockers
}

// clash is whether two labels, or the one's leader and the other, overlap.
func (s *search) clash(a, b *candidate) bool {
	if a.box.Overlaps(b.box) && overlap(a.kept[:], b.quad[:]) {
		return true
	}
	return pierces(a, b) || pierces(b, a)
}

// pierces is whether a's leader goes through b.
func pierces(a, b *candidate) bool {
	return a.leader != nil && a.along.Grow(1e-6).Overlaps(b.box) && crossesQuad(a.leader[0], a.leader[1], b.kept[:])
}

// best is the cheapest place a request can have now.
func (s *search) best(i int) *candidate {
	var best *candidate
	limit := math.Inf(1)
	for k := 0; k < len(s.options[i]) || s.more(i, limit); k++ {
		if k >= len(s.options[i]) {
			k-- // the ring had nothing, look at the next
			continue
		}
		c := &s.options[i][k]
		if c.base >= limit {
			continue
		}
		extra, blockers := s.against(i, c, 0)
		if len(blockers) > 0 || c.base+extra >= limit {
			continue
		}
		found := *c // the list may move as it grows
		found.total = c.base + extra
		limit, best = found.total, &found
	}
	return best
}

func (s *search) run() {
	for _, i := range s.order {
		s.placed[i] = s.best(i)
	}
	const passes = 3
	for range passes {
		moved := false
		for _, i := range s.order {
			if s.placed[i] == nil {
				moved = s.makeRoom(i) || moved
			} else {
				moved = s.improve(i) || moved
			}
		}
		if !moved {
			return
		}
	}
}

// improve moves one label to a cheaper place, if the others leave it one.
func (s *search) improve(i int) bool {
	old := s.placed[i]
	extra, _ := s.against(i, old, len(s.placed))
	now := old.base + extra
	b := s.best(i)
	if b != nil && b.total < now-1e-9 {
		s.placed[i] = b
		return true
	}
	old.total = now
	return false
}

// makeRoom places a label by moving at most two others that are no more
// important; all of them must find a place.
func (s *search) makeRoom(i int) bool {
	const tries = 150
	for k := 0; k < len(s.options[i]) && k < tries; k++ {
		c := s.options[i][k]
		extra, blockers := s.against(i, &c, 2)
		if len(blockers) > 2 || slices.ContainsFunc(blockers, func(j int) bool { return s.requests[j].Priority > s.requests[i].Priority }) {
			continue
		}
		saved := slices.Clone(s.placed)
		for _, j := range blockers {
			s.placed[j] = nil
		}
		c.total = c.base + extra
		s.placed[i] = &c
		all := true
		for _, j := range blockers {
			s.placed[j] = s.best(j)
			all = all && s.placed[j] != nil
		}
		if all {
			return true
		}
		s.placed = saved
	}
	return false
}
