package geom

import "slices"

// IsSimple says that no two edges of the polygon meet but neighbours at their
// corner, and that it has an area.
func (p Polygon) IsSimple() bool {
	n := len(p)
	if n < 3 || p.SignedArea() == 0 {
		return false
	}
	for i := range n {
		for j := i + 1; j < n; j++ {
			meeting := p.Edge(i).Meets(p.Edge(j))
			neighbours := j == i+1 || i == 0 && j == n-1
			if meeting == Crossing || meeting == Touching && !neighbours {
				return false
			}
			if neighbours && p.folds(i, j) {
				return false
			}
		}
	}
	return true
}

// folds says that two neighbouring edges lie on each other.
func (p Polygon) folds(i, j int) bool {
	if j != i+1 {
		i, j = j, i
	}
	a, b, c := p[i], p[j], p[(j+1)%len(p)]
	return Orient(a, b, c) == Straight && b.Sub(a).Dot(c.Sub(b)) <= 0
}

// ConvexParts cuts a simple polygon into convex ones, counter-clockwise, that
// share edges only: ears clipped one by one (Meisters 1975), then put together
// again across every cut that both ends can spare (Hertel & Mehlhorn 1983, at
// most four times as many parts as need be). ok is false where the polygon
// isn't simple; the parts are then what could be clipped.
func (p Polygon) ConvexParts() (parts []Polygon, ok bool) {
	q := p.Clean()
	if q.IsConvex() {
		return []Polygon{q}, true
	}
	triangles, ok := q.ears()
	for _, part := range q.merge(triangles) {
		corners := make(Polygon, len(part))
		for i, corner := range part {
			corners[i] = q[corner]
		}
		parts = append(parts, corners)
	}
	return parts, ok && q.IsSimple()
}

// ears triangulates a counter-clockwise polygon, by corner numbers.
func (p Polygon) ears() (triangles [][]int, ok bool) {
	left := make([]int, len(p))
	for i := range p {
		left[i] = i
	}
	for len(left) > 3 {
		ear := -1
		for i := range left {
			if p.isEar(left, i) {
				ear = i
				break
			}
		}
		if ear < 0 {
			return triangles, false
		}
		n := len(left)
		triangles = append(triangles, []int{left[(ear+n-1)%n], left[ear], left[(ear+1)%n]})
		left = slices.Delete(left, ear, ear+1)
		left = p.dropStraight(left)
	}
	if len(left) == 3 && Orient(p[left[0]], p[left[1]], p[left[2]]) == Left {
		triangles = append(triangles, left)
	}
	return triangles, true
}

// dropStraight leaves out corners that clipping has left on a fold back over
// the same line: they hold no area.
func (p Polygon) dropStraight(left []int) []int {
	for i := 0; i < len(left) && len(left) > 3; i++ {
		n := len(left)
		a, b, c := p[left[(i+n-1)%n]], p[left[i]], p[left[(i+1)%n]]
		if Orient(a, b, c) == Straight && b.Sub(a).Dot(c.Sub(b)) < 0 {
			left = slices.Delete(left, i, i+1)
			i = -1
		}
	}
	return left
}

func (p Polygon) isEar(left []int, i int) bool {
	n := len(left)
	a, b, c := p[left[(i+n-1)%n]], p[left[i]], p[left[(i+1)%n]]
	if Orient(a, b, c) != Left {
		return false
	}
	for _, k := range left {
		q := p[k]
		if q == a || q == b || q == c {
			continue
		}
		if Orient(a, b, q) != Right && Orient(b, c, q) != Right && Orient(c, a, q) != Right {
			return false
		}
	}
	return true
}

// merge puts neighbouring parts together while the result stays convex.
func (p Polygon) merge(parts [][]int) [][]int {
	for i := 0; i < len(parts); i++ {
		for j := i + 1; j < len(parts); j++ {
			if joined, ok := p.joined(parts[i], parts[j]); ok {
				parts[i] = joined
				parts = slices.Delete(parts, j, j+1)
				j = i // what didn't fit before may fit now
			}
		}
	}
	return parts
}

func (p Polygon) joined(a, b []int) ([]int, bool) {
	for i := range a {
		from, to := a[i], a[(i+1)%len(a)]
		j := slices.Index(b, to)
		if j < 0 || b[(j+1)%len(b)] != from {
			continue
		}
		// a from `to` round to `from`, then b after `from` round to before `to`.
		var joined []int
		for k := range a {
			joined = append(joined, a[(i+1+k)%len(a)])
		}
		for k := 2; k < len(b); k++ {
			joined = append(joined, b[(j+k)%len(b)])
		}
		n, m := len(joined), len(a)
		convexAt := func(k int) bool {
			return Orient(p[joined[(k+n-1)%n]], p[joined[k]], p[joined[(k+1)%n]]) == Left
		}
		return joined, convexAt(0) && convexAt(m-1)
	}
	return nil, false
}
