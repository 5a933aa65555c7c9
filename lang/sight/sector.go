package sight

import "math"

// sector is a part of the floor about a lens that all of its frame lies in, cheaply
// told.
type sector struct {
	x, y     float64
	cos, sin float64 // of the pan
	co, si   float64 // of half its angle; both 0 for all of the floor
}

// newSector is the sector of a view. A ray of the frame is at most so far from the
// optical axis as its corners are, by an angle a; its bearing is at most as far off
// the pan as makes the sine of that sin a over the cosine of the tilt.
func newSector(c *Camera, v *View) sector {
	s := sector{x: v.X, y: v.Y}
	k := math.Sqrt(c.Width*c.Width+c.Height*c.Height) / (2 * v.Focal)
	level := 1 - v.Tilt*v.Tilt/2 // no more than the tilt's cosine
	sine := k / (math.Sqrt(1+k*k) * level)
	if !(level > 0) || !(sine < 1) {
		return s
	}
	s.sin, s.cos = math.Sincos(v.Pan)
	s.si, s.co = sine, math.Sqrt(1-sine*sine)
	return s
}

// misses is whether a circle about a pose's place is surely outside of it.
func (s *sector) misses(p Pose, reach float64) bool {
	dx, dy := p.X-s.x, p.Y-s.y
	q, l := dx*s.cos+dy*s.sin, dy*s.cos-dx*s.sin
	return math.Abs(l)*s.co-q*s.si > reach
}
