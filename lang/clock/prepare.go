package clock

import "longhand/lang/plan"

// Prepare finds what every start and end of the take waits for.
func Prepare(p *plan.Plan) *Graph {
	scopes := make([]scope, len(p.Beats))
	index := make(map[*plan.Action]int, len(p.Actions))
	home := make([]int, len(p.Actions))
	for i, a := range p.Actions {
		index[a] = i
		home[i] = -1
	}
	for s, b := range p.Beats {
		scopes[s].beat = b
		for _, a := range b.Actions {
			if i, ok := index[a]; ok && home[i] < 0 {
				home[i] = s
				scopes[s].acts = append(scopes[s].acts, i)
			}
		}
	}
	return prepare(&Graph{plan: p, acts: p.Actions, index: index, scopes: scopes, home: home})
}

// PreparePickup finds what every start and end of a pickup waits for. Its clock
// is its own: nothing of the take happens on it.
func PreparePickup(p *plan.Plan, pickup *plan.Pickup) *Graph {
	g := &Graph{
		plan: p, pickup: pickup,
		acts:   pickup.Actions,
		index:  make(map[*plan.Action]int, len(pickup.Actions)),
		scopes: make([]scope, 1),
		home:   make([]int, len(pickup.Actions)),
	}
	for i, a := range pickup.Actions {
		g.index[a] = i
		g.scopes[0].acts = append(g.scopes[0].acts, i)
	}
	return prepare(g)
}

func prepare(g *Graph) *Graph {
	g.findOrigins()
	g.soundBeat = make([]bool, len(g.scopes))
	for s := range g.soundBeat {
		g.soundBeat[s] = true
	}
	g.sound = make([]bool, len(g.acts))
	for a := range g.sound {
		g.sound[a] = g.home[a] >= 0
	}
	// A loop is broken where its cues are and what is left is looked at again,
	// until nothing waits for itself. Without cues every line waits for earlier
	// text only, so this ends.
	broken := make(map[int32]bool)
	for {
		b := &builder{g: g, broken: broken, passes: make(map[hit]int32)}
		b.build()
		loops := g.sort()
		if len(loops) == 0 {
			break
		}
		for _, way := range loops {
			g.loops = append(g.loops, g.wayAround(way))
			for _, n := range way {
				if a := g.nodes[n].act; a >= 0 {
					g.sound[a] = false
				} else if s := int(n-2) / 3; n == g.beatStart(s) {
					g.soundBeat[s] = false
				}
			}
			g.breakCues(way, broken)
		}
	}
	g.findBefore()
	g.findLanes()
	return g
}
