package solid

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/plan"
)

// stepHeight is the usual rise of a step, in metres (common practice, no
// source: 0.16 to 0.19 m is what stairs are built to).
const stepHeight = 0.17

// stairs are solid from the foot's floor up, a block for each step.
func stairs(s *plan.Stairs) []Piece {
	n := steps(s)
	dir := s.Head.Sub(s.Foot)
	side := dir.Unit().Left().Mul(float64(s.Width) / 2)
	var out []Piece
	for i := range n {
		a := s.Foot.Add(dir.Mul(float64(i) / float64(n)))
		b := s.Foot.Add(dir.Mul(float64(i+1) / float64(n)))
		out = append(out, Piece{
			Name: s.Name, Thing: s,
			Polygon: geom.Polygon{a.Sub(side), b.Sub(side), b.Add(side), a.Add(side)}.CCW(),
			Z:       [2]float64{float64(s.FootZ), float64(s.FootZ) + float64(s.Rise)*float64(i+1)/float64(n)},
		})
	}
	return out
}

func steps(s *plan.Stairs) int {
	return max(1, int(math.Round(math.Abs(float64(s.Rise))/stepHeight)))
}

// Floors answers how high the floor is under a place.
type Floors struct {
	platforms []*plan.Platform
	stairs    []*plan.Stairs
}

// NewFloors collects what can be stood on.
func NewFloors(set *plan.Set) *Floors {
	f := &Floors{}
	for _, p := range set.Platforms {
		if !p.Bad && len(p.Polygon) >= 3 {
			f.platforms = append(f.platforms, p)
		}
	}
	for _, s := range set.Stairs {
		if !s.Bad && s.Foot.Dist(s.Head) > 0 {
			f.stairs = append(f.stairs, s)
		}
	}
	return f
}

// stepUp is how much higher or lower a floor may be for somebody to walk onto
// it without being told to: two steps of a stair.
const stepUp = 0.4

// Under is the height of the floor under p for somebody who stood at height z
// just before: the highest floor within a step of z, else the highest one below
// z, and 0 where there is none. Somebody at the ground next to a gallery stays
// on the ground.
func (f *Floors) Under(p geom.Vec, z float64) float64 {
	best := math.Inf(-1)
	try := func(h float64) {
		if h <= z+stepUp && h > best {
			best = h
		}
	}
	try(0)
	for _, pl := range f.platforms {
		if contains(pl.Polygon, p) {
			try(float64(pl.High.High))
		}
	}
	for _, s := range f.stairs {
		if h, on := on(s, p); on {
			try(h)
		}
	}
	if math.IsInf(best, -1) {
		return 0
	}
	return best
}

// Stand is the height at which somebody stands who is put at p without a height
// being said: on top of a platform that stands on the ground, else on stairs,
// else on the ground, under any gallery.
func (f *Floors) Stand(p geom.Vec) float64 {
	best := 0.0
	for _, pl := range f.platforms {
		if pl.High.Low <= 0 && contains(pl.Polygon, p) {
			best = max(best, float64(pl.High.High))
		}
	}
	for _, s := range f.stairs {
		if h, on := on(s, p); on && s.FootZ <= 0 {
			best = max(best, h)
		}
	}
	return best
}

// on is the height of a flight of stairs at p; people climb it as a slope, which
// is within half a step of the treads.
func on(s *plan.Stairs, p geom.Vec) (float64, bool) {
	dir := s.Head.Sub(s.Foot)
	l := dir.Len()
	u := dir.Unit()
	k := p.Sub(s.Foot).Dot(u) / l
	off := math.Abs(u.Cross(p.Sub(s.Foot)))
	if k < 0 || k > 1 || off > float64(s.Width)/2 {
		return 0, false
	}
	return float64(s.FootZ) + k*float64(s.Rise), true
}

// contains includes the polygon's edge, so that a mark on the edge of a platform
// is on it.
func contains(poly []geom.Vec, p geom.Vec) bool {
	const edge = 1e-9
	in := false
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		if d := b.Sub(a); math.Abs(d.Unit().Cross(p.Sub(a))) < edge {
			if k := p.Sub(a).Dot(d); k >= -edge && k <= d.Dot(d)+edge {
				return true
			}
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
