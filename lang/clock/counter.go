package clock

import "longhand/lang/plan"

// findSpins pairs each line that counters with the spin of its target it is
// written beside: the nearest in the same beat, the earlier of two as near. It
// begins with the spin and lasts as long.
func (b *builder) findSpins() {
	g := b.g
	b.spins = make(map[int]int)
	for _, sc := range g.scopes {
		for i, a := range sc.acts {
			d, ok := g.acts[a].Deed.(*plan.Circle)
			if !ok || !d.Counter || d.Target.Thing == nil {
				continue
			}
			best, far := -1, len(sc.acts)+1
			for k, s := range sc.acts {
				if _, spins := g.acts[s].Deed.(*plan.Spin); !spins || g.acts[s].Subject != d.Target.Thing {
					continue
				}
				if dist := max(i-k, k-i); dist < far {
					best, far = s, dist
				}
			}
			if best >= 0 {
				b.spins[a] = best
			}
		}
	}
}
