package label

import (
	"math"
	"slices"

	"longhand/render/scene"
)

// Costs, in millimetres a label would rather be pushed.
const (
	besideCost    = 0.8 // each step down the list of preferred sides
	turnCost      = 4.0 // each step down the list of turns
	alsoCost      = 0.5 // each step down the list of other points
	leaderCost    = 6.0 // needing a leader at all
	crossingCost  = 8.0 // a leader across a line that labels may not cover
	leadersCross  = 25.0
	confusionCost = 5.0  // touching another mark
	farthest      = 60.0 // mm, the usual reach
	gap           = 0.7  // mm between a mark and its label
	stride        = 2.5  // mm between the rings of the search
	confusing     = 2.0  // mm from another mark within which a label may be taken for that one's
)

// candidate is a place a label could have; base is what it costs for itself,
// total with what it covers.
type candidate struct {
	center scene.Point
	turn   float64
	at     scene.Point
	quad   quad      // as it is drawn
	kept   quad      // with the space kept free around it
	box    scene.Box // around kept
	leader []scene.Point
	along  scene.Box // around the leader
	base   float64
	total  float64
}

// beside lists the places next to a request's points, on each of the sides.
func (s *search) beside(r *Request) []candidate {
	var out []candidate
	order := r.sideOrder()
	for pi, at := range append([]scene.Point{r.At}, r.Also...) {
		for ti, turn := range r.turns() {
			for rank, side := range order {
				c := s.stand(r, at, turn, side.degrees(), gap)
				c.base = alsoCost*float64(pi) + turnCost*float64(ti) + besideCost*float64(rank)
				out = append(out, c)
			}
		}
	}
	return out
}

// ring lists the places at the k-th distance away, each with its leader. They
// go with the first point only, the one that names best.
func (s *search) ring(r *Request, k int) []candidate {
	d := ringDistance(k)
	n := 8 * int(math.Ceil(d/10)) // so that neighbours on a ring keep about 8 mm apart
	order := r.sideOrder()
	var out []candidate
	for ti, turn := range r.turns() {
		for i := range n {
			degrees := 360 * float64(i) / float64(n)
			c := s.stand(r, r.At, turn, degrees, d)
			c.leader = leader(r.At, r.Radius, c.quad)
			c.along = boundsOf(c.leader)
			c.base = ringCost(k) + turnCost*float64(ti) + besideCost*sideRank(order, degrees)
			out = append(out, c)
		}
	}
	return out
}

func ringDistance(k int) float64 { return gap + stride*float64(k+1) }

// ringCost is the least a place of a ring can cost.
func ringCost(k int) float64 { return leaderCost + ringDistance(k) - gap }

// rings is how many there are for a request.
func (r *Request) rings() int {
	reach := r.Reach
	if r.Tight {
		return 0
	}
	if reach <= 0 {
		reach = farthest
	}
	return int((math.Min(reach, 1000) - gap) / stride)
}

func (r *Request) turns() []float64 {
	if len(r.Turns) == 0 {
		return []float64{0}
	}
	return r.Turns
}

// stand puts the label's box at a distance from the mark's edge in a direction:
// the corner or the edge that faces the point is what has the distance.
func (s *search) stand(r *Request, at scene.Point, turn, degrees, distance float64) candidate {
	d := scene.Pt(0, 0).Polar(1, degrees-turn) // in the label's own frame
	lean := func(v float64) float64 { return math.Max(-1, math.Min(1, 1.42*v)) }
	dx, dy := lean(d.X)*r.W/2, -lean(d.Y)*r.H/2
	center := at.Polar(r.Radius+distance, degrees).Polar(dx, turn).Polar(dy, turn+90)
	c := candidate{center: center, turn: turn, at: at}
	c.quad = makeQuad(center, r.W, r.H, turn)
	c.kept = makeQuad(center, r.W+2*s.clear, r.H+2*s.clear, turn)
	c.box = boundsOf(c.kept[:])
	return c
}

// leader goes from the mark's edge to the middle of the label's nearest edge.
func leader(at scene.Point, radius float64, q quad) []scene.Point {
	best := math.Inf(1)
	var to scene.Point
	for i, a := range q {
		m := a.Add(q[(i+1)%4]).Mul(0.5)
		if d := at.Dist(m); d < best {
			best, to = d, m
		}
	}
	from := at
	if best > radius {
		from = at.Polar(radius, at.Towards(to))
	}
	return []scene.Point{from, to}
}

// sideOrder is the wanted sides, then the others.
func (r *Request) sideOrder() []Side {
	out := slices.Clone(r.Sides)
	for _, s := range sides {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

// sideRank is the place in the order of the side nearest to a direction.
func sideRank(order []Side, degrees float64) float64 {
	rank, best := 0, math.Inf(1)
	for i, s := range order {
		d := math.Abs(math.Mod(degrees-s.degrees()+540, 360) - 180)
		if d < best-1e-9 {
			rank, best = i, d
		}
	}
	return float64(rank)
}
