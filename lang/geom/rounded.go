package geom

import "math"

// NewRounded is the polyline through points with its corners rounded off by
// arcs of a radius, the way wheels take them: smooth, but passing its corners by
// on the inside. Where a leg is too short for the arcs at its ends, theirs is
// the greatest radius that fits in its half. A point that the way comes straight
// back from stays a corner. Its stops at rounded points are the middles of their
// arcs.
func NewRounded(radius float64, points ...Vec) *Path {
	line := distinctPoints(points)
	if len(line) < 3 || !(radius > 0) {
		return NewStraight(points...)
	}
	var pieces []piece
	middles := []float64{0}
	here, length := line[0], 0.0
	add := func(p piece) {
		if p.length > 0 {
			pieces = append(pieces, p)
			length += p.length
		}
	}
	for i := 1; i+1 < len(line); i++ {
		u, v := line[i].Sub(line[i-1]), line[i+1].Sub(line[i])
		turn := math.Atan2(u.Cross(v), u.Dot(v))
		tangent := math.Tan(math.Abs(turn) / 2)
		cut := min(radius*tangent, legShare(line, i-1, u), legShare(line, i, v))
		if math.Abs(turn) <= cornerSlop || math.Abs(turn) >= math.Pi-cornerSlop {
			add(newLine(here, line[i]))
			here, middles = line[i], append(middles, length)
			continue
		}
		from, to := line[i].Sub(u.Unit().Mul(cut)), line[i].Add(v.Unit().Mul(cut))
		add(newLine(here, from))
		inward := u.Unit().Left().Mul(math.Copysign(1, turn))
		r := cut / tangent
		arc := newArc(from.Add(inward.Mul(r)), r, inward.Mul(-1).Angle(), turn)
		arc.a, arc.b = from, to
		middles = append(middles, length+arc.length/2)
		add(arc)
		here = to
	}
	add(newLine(here, line[len(line)-1]))
	if len(pieces) == 0 { // no lengths at all: not numbers
		return NewStraight(points...)
	}
	path := newPath(pieces, nil)
	path.stops = spread(points, append(middles, path.length))
	return path
}

// legShare is how much of leg i an arc at one of its ends may take: half, or
// all of it where it is the first or the last.
func legShare(line []Vec, i int, leg Vec) float64 {
	share := 1.0
	if i > 0 && i+2 < len(line) {
		share = 0.5
	}
	return leg.Len() * share
}

// spread gives every point, also those that repeat the one before, the length
// of its distinct point.
func spread(points []Vec, lengths []float64) []float64 {
	stops := make([]float64, len(points))
	k := 0
	last := points[0]
	for i, p := range points {
		if p.Dist(last) > joinSlop {
			k++
			last = p
		}
		stops[i] = lengths[k]
	}
	return stops
}
