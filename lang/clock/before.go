package clock

// findBefore works out which nodes a node can never come before, whatever the
// lengths: those it waits for by a way on which nothing counts backwards.
func (g *Graph) findBefore() {
	words := (len(g.nodes) + 63) / 64
	bits := make([]uint64, words*len(g.nodes))
	g.before = make([][]uint64, len(g.nodes))
	for _, n := range g.order {
		set := bits[int(n)*words : int(n+1)*words]
		set[n/64] |= 1 << (n % 64)
		for _, e := range g.in(n) {
			if e.add < 0 {
				continue
			}
			for w, b := range g.before[e.from] {
				set[w] |= b
			}
		}
		g.before[n] = set
	}
}

// neverBefore says whether n can never come before m.
func (g *Graph) neverBefore(n, m int32) bool { return g.before[n][m/64]&(1<<(m%64)) != 0 }
