package geom

import "math"

// Ribbon is a wall drawn as a line: the polyline through points with a thickness,
// as one counter-clockwise quadrilateral a leg. Neighbours are mitred, sharing
// the edge between them. Where a mitre would run out further than sharpMitre
// half thicknesses, or past the middle of a leg, both end square instead, far
// enough to cover the corner. A closed ribbon joins its last point to its first.
func Ribbon(points []Vec, thickness float64, closed bool) []Polygon {
	line := distinctPoints(points)
	if closed && len(line) > 1 && line[0].Dist(line[len(line)-1]) <= joinSlop {
		line = line[:len(line)-1]
	}
	n := len(line)
	if n < 2 || !(thickness > 0) {
		return nil
	}
	closed = closed && n > 2
	legs := n - 1
	if closed {
		legs = n
	}
	half := thickness / 2
	quads := make([]Polygon, legs)
	for i := range legs {
		a, b := line[i], line[(i+1)%n]
		along := b.Sub(a).Unit()
		left := along.Left().Mul(half)
		quads[i] = Polygon{a.Sub(left), b.Sub(left), b.Add(left), a.Add(left)}
	}
	for i := range legs {
		next := i + 1
		if next == legs {
			if !closed {
				break
			}
			next = 0
		}
		join(quads[i], quads[next], line[i], line[(i+1)%n], line[(i+2)%n], half)
	}
	return quads
}

// sharpMitre is the longest mitre, in half thicknesses: that of a corner of
// about 29 degrees, the limit drawing programs use.
const sharpMitre = 4.0

// join shapes the end of one quadrilateral and the start of the next, of the
// legs a-b and b-c.
func join(before, after Polygon, a, b, c Vec, half float64) {
	u, v := b.Sub(a), c.Sub(b)
	turn := math.Abs(math.Atan2(u.Cross(v), u.Dot(v)))
	retreat := half * math.Tan(turn/2) // of the inner side, along the leg
	if retreat > min(u.Len(), v.Len())/2 || 1/math.Cos(turn/2) > sharpMitre {
		reach := min(half, retreat)
		ahead, back := u.Unit().Mul(reach), v.Unit().Mul(-reach)
		before[1], before[2] = before[1].Add(ahead), before[2].Add(ahead)
		after[0], after[3] = after[0].Add(back), after[3].Add(back)
		return
	}
	n1, n2 := u.Unit().Left(), v.Unit().Left()
	mitre := n1.Add(n2).Mul(half / (1 + n1.Dot(n2)))
	right, left := b.Sub(mitre), b.Add(mitre)
	before[1], before[2] = right, left
	after[0], after[3] = right, left
}

// distinctPoints drops points that repeat the one before.
func distinctPoints(points []Vec) []Vec {
	var line []Vec
	for _, p := range points {
		if len(line) == 0 || p.Dist(line[len(line)-1]) > joinSlop {
			line = append(line, p)
		}
	}
	return line
}
