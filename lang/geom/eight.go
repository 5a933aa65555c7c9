package geom

import (
	"errors"
	"fmt"
	"math"
)

// NewEight is a figure of eight from start back to start, once round a and once
// round b in the opposite sense: arcs of the given radius about both, joined by
// lines that touch them and cross between them. It has no corner on the way; it
// ends in the heading it began with where start lies on the eight itself,
// otherwise start hangs on it by the two lines that touch the nearest arc. Of
// the ways that fit, it is the shortest; of two as long, a first, to the left.
//
// The radius shrinks to what fits: half way between a and b, and no further
// from either than start is. Zero or less asks for a quarter of the way from a
// to b. It is an error where a, b and start are not three different points.
func NewEight(start, a, b Vec, radius float64) (*Path, error) {
	apart := a.Dist(b)
	switch {
	case !(apart > 1e-6):
		return nil, errors.New("a figure of eight needs two points, but both are in the same place")
	case !(start.Dist(a) > 1e-6 && start.Dist(b) > 1e-6):
		return nil, errors.New("a figure of eight starts beside the points it goes round, not on one")
	}
	if !(radius > 0) {
		radius = apart / 4
	}
	radius = max(radius, min(leastTurn, apart/4))
	ra, rb := min(radius, start.Dist(a)), min(radius, start.Dist(b))
	if k := apart / (ra + rb); k < 1 {
		ra, rb = ra*k, rb*k
	}
	var best *Path
	for _, sense := range []float64{1, -1} {
		first, second := turn{a, ra, sense}, turn{b, rb, -sense}
		for _, way := range [][]turn{
			{first, second}, {second, first},
			{first, second, first}, {second, first, second},
		} {
			for full := range 1 << len(way) {
				path := beltPath(start, way, full)
				if !goesRound(path, a, sense) || !goesRound(path, b, -sense) {
					continue
				}
				if best == nil || path.length < best.length-joinSlop {
					best = path
				}
			}
		}
	}
	if best == nil {
		return nil, fmt.Errorf("no figure of eight from (%.2f, %.2f) fits round both points", start.X, start.Y)
	}
	return best, nil
}

// leastTurn is the least radius of a figure of eight where there is room for
// it, metres.
const leastTurn = 1e-3

// turn is a circle to be rounded in a sense: 1 left, -1 right.
type turn struct {
	centre        Vec
	radius, sense float64
}

// beltPath runs from start round each turn and back to start, like a belt: arcs
// joined by the lines that touch them. Where an arc leaves its turn just where
// it arrived, the bits of full say whether it goes once round or not at all.
func beltPath(start Vec, way []turn, full int) *Path {
	point := turn{centre: start, sense: 1} // a turn of no radius
	stations := append(append([]turn{point}, way...), point)
	var pieces []piece
	arriving := 0.0 // direction from the centre at which the belt arrives
	for i := 1; i < len(stations); i++ {
		from, to := stations[i-1], stations[i]
		heading := beltHeading(from, to)
		leaving := heading - from.sense*math.Pi/2
		if i > 1 {
			sweep := beltSweep(arriving, leaving, from.sense, full>>(i-2)&1 == 1)
			pieces = append(pieces, newArc(from.centre, from.radius, arriving, sweep))
		}
		arriving = heading - to.sense*math.Pi/2
		p, q := from.centre.Add(Polar(from.radius, leaving)), to.centre.Add(Polar(to.radius, arriving))
		if p.Dist(q) > joinSlop {
			pieces = append(pieces, newLine(p, q))
		}
	}
	pieces = dropEmpty(pieces)
	pieces[0].a, pieces[len(pieces)-1].b = start, start // to the last digit
	path := newPath(pieces, nil)
	path.stops = []float64{0, path.length}
	return path
}

// beltHeading is the direction of the line that leaves one turn and enters the
// next. The signed radii's difference over the distance is the sine by which it
// leans from the line between the centres.
func beltHeading(from, to turn) float64 {
	between := to.centre.Sub(from.centre)
	lean := (from.sense*from.radius - to.sense*to.radius) / between.Len()
	return between.Angle() + math.Asin(max(-1, min(lean, 1)))
}

// beltSweep is the turn from one direction to another in a sense, less than
// once round; where they are the same, all or none of it.
func beltSweep(from, to, sense float64, full bool) float64 {
	sweep := math.Mod((to-from)*sense, 2*math.Pi)
	if sweep < 0 {
		sweep += 2 * math.Pi
	}
	if sweep < 1e-6 || sweep > 2*math.Pi-1e-6 {
		sweep = 0
		if full {
			sweep = 2 * math.Pi
		}
	}
	return sense * sweep
}

// goesRound says that a closed path goes once round a point in a sense.
func goesRound(p *Path, centre Vec, sense float64) bool {
	points := p.Points(math.Inf(1))
	total := 0.0
	for i := 1; i < len(points); i++ {
		u, v := points[i-1].Sub(centre), points[i].Sub(centre)
		total += math.Atan2(u.Cross(v), u.Dot(v))
	}
	return math.Abs(total-sense*2*math.Pi) < 1e-3
}
