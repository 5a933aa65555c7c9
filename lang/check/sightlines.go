package check

import (
	"math"
	"slices"

	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// sightlines answers whether something of the set stands between two points.
// People and machines don't count: they come and go.
type sightlines struct {
	solids []sight.Solid
	low    []geom.Vec // of each one's bounds
	high   []geom.Vec
}

func (p *Pass) sightlines() *sightlines {
	return p.known().lines.get(func() *sightlines {
		l := &sightlines{solids: p.Stage.Scene.Solids}
		for i := range l.solids {
			low, high := geom.Bounds(l.solids[i].Polygon)
			l.low, l.high = append(l.low, low), append(l.high, high)
		}
		return l
	})
}

// blocked is the first solid, in the order of the text, that stands between two
// points at a frame; nil for a free line. With roofed, walls and what fills their
// openings go on up for ever, as they do for someone under a roof.
func (l *sightlines) blocked(a, b geom.Vec3, f units.Frame, roofed bool) *sight.Solid {
	p, q := a.Floor(), b.Floor()
	lowX, highX := math.Min(p.X, q.X), math.Max(p.X, q.X)
	lowY, highY := math.Min(p.Y, q.Y), math.Max(p.Y, q.Y)
	for i := range l.solids {
		s := &l.solids[i]
		if l.high[i].X < lowX || l.low[i].X > highX || l.high[i].Y < lowY || l.low[i].Y > highY || !there(s, f) {
			continue
		}
		if stops(s, p, q, a.Z, b.Z, roofed && wallish(s) && s.Z[1] > a.Z) {
			return s
		}
	}
	return nil
}

// roomHigh is how high a wall is that may hold a roof, metres (common practice, no
// source).
const roomHigh = 2.2

// walled says whether a wall as high as a room's, or an opening in one, lies
// between two places on the floor.
func (l *sightlines) walled(a, b geom.Vec3) bool {
	p, q := a.Floor(), b.Floor()
	for i := range l.solids {
		s := &l.solids[i]
		if !wallish(s) || s.Z[1] < roomHigh || l.high[i].X < math.Min(p.X, q.X) || l.low[i].X > math.Max(p.X, q.X) || l.high[i].Y < math.Min(p.Y, q.Y) || l.low[i].Y > math.Max(p.Y, q.Y) {
			continue
		}
		if stops(s, p, q, s.Z[0], s.Z[1], true) {
			return true
		}
	}
	return false
}

func wallish(s *sight.Solid) bool { return s.Kind == string(plan.KindWall) }

// there says whether a solid is there at a frame: a door only while it is shut.
func there(s *sight.Solid, f units.Frame) bool {
	if s.Shut == nil {
		return true
	}
	for _, r := range s.Shut {
		if r.From <= f && f <= r.To {
			return true
		}
	}
	return false
}

// stops says whether a solid stands in the way from p at height za to q at zb.
func stops(s *sight.Solid, p, q geom.Vec, za, zb float64, endless bool) bool {
	poly := geom.Polygon(s.Polygon)
	d := q.Sub(p)
	var room [10]float64 // enough for a wall's piece, without asking for memory
	at := append(room[:0], 0, 1)
	for i := range poly {
		e := poly.Edge(i)
		side := e.B.Sub(e.A)
		den := d.Cross(side)
		if den == 0 {
			continue
		}
		t, u := e.A.Sub(p).Cross(side)/den, e.A.Sub(p).Cross(d)/den
		if t > 0 && t < 1 && u >= 0 && u <= 1 {
			at = append(at, t)
		}
	}
	if len(at) == 2 && !poly.Contains(p.Lerp(q, 0.5)) {
		return false
	}
	slices.Sort(at)
	for k := 0; k+1 < len(at); k++ {
		t0, t1 := at[k], at[k+1]
		if t1-t0 < 1e-12 || !poly.Contains(p.Lerp(q, (t0+t1)/2)) {
			continue
		}
		z0, z1 := za+(zb-za)*t0, za+(zb-za)*t1
		low, high := math.Min(z0, z1), math.Max(z0, z1)
		if high > s.Z[0] && (low < s.Z[1] || endless) {
			return true
		}
	}
	return false
}
