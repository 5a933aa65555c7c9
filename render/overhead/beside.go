package overhead

import (
	"math"

	"longhand/render/scene"
)

// Ways that run along each other would print as one line. The later one is drawn a
// little to the side, as routes are on maps; its ends stay where they are.
const (
	together = 0.6 // mm apart within which two lines are one
	aside    = 1.1 // mm
)

// spread moves ways aside that run along others.
func spread(movers []*mover) {
	var drawn [][]scene.Point
	for _, kind := range []string{"performer", "crew", "rig", "vehicle"} {
		for _, m := range movers {
			if m.kind != kind {
				continue
			}
			for i := range m.ways {
				w := &m.ways[i]
				for _, by := range []float64{0, aside, -aside, 2 * aside, -2 * aside} {
					moved := shifted(w.points, by)
					if by == -2*aside || along(moved, drawn) < 0.3 {
						w.aside, w.points = by, moved
						break
					}
				}
			}
			for _, w := range m.ways {
				drawn = append(drawn, w.points)
			}
		}
	}
}

// along is the part of a line's length that runs along any of others.
func along(line []scene.Point, others [][]scene.Point) float64 {
	l := scene.LengthOf(line)
	n := int(math.Max(4, l/2))
	hits := 0
	for i := range n {
		p, _ := scene.Along(line, l*(float64(i)+0.5)/float64(n))
		for _, o := range others {
			if near(p, o) {
				hits++
				break
			}
		}
	}
	return float64(hits) / float64(n)
}

func near(p scene.Point, line []scene.Point) bool {
	for i := 1; i < len(line); i++ {
		if offLine(p, line[i-1], line[i]) < together {
			return true
		}
	}
	return false
}

// shifted is a line moved to the right of its way by millimetres, its ends drawn
// back to where they were.
func shifted(ps []scene.Point, by float64) []scene.Point {
	if by == 0 || len(ps) < 2 {
		return ps
	}
	out := []scene.Point{ps[0]}
	for i, p := range ps {
		a, b := ps[max(0, i-1)], ps[min(len(ps)-1, i+1)]
		if a == b {
			continue
		}
		q := p.Polar(by, a.Towards(b)-90)
		if i == 0 { // a short slant at either end
			q = q.Polar(math.Min(1.5, a.Dist(b)/3), a.Towards(b))
		}
		if i == len(ps)-1 {
			q = q.Polar(-math.Min(1.5, a.Dist(b)/3), a.Towards(b))
		}
		out = append(out, q)
	}
	return append(out, ps[len(ps)-1])
}
