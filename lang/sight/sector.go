package sight

import "math"

// sector is a part of the floor about a lens that all of its frame lies in, cheaply
// told.
type sector struct {
	x, y     float64
	cos, sin float64 // of the pan
	co, si   float64 // of half its angle; both 0 for all of the floor
}

// newSector is the sector of a view that the eye is set to. A ray of the frame is at
// most so far from the optical axis as its corners are, by an angle a; its bearing is
// at most as far off the pan as makes the sine of that sin a over the cosine of the
// tilt.
func newSector(e *eye, v *View) sector {
	s := sector{x: v.X, y: v.Y}
	k := math.Sqrt(e.tx*e.tx + e.ty*e.ty)
	level := 1 - v.Tilt*v.Tilt/2 // no more than the tilt's cosine
	sine := k / (math.Sqrt(1+k*k) * level)
	if !(level > 0) || !(sine < 1) {
		return s
	}
	s.sin, s.cos = e.sin, e.cos
	s.si, s.co = sine, math.Sqrt(1-sine*sine)
	return s
}

// makeSectors makes room for the sectors of all cameras; those that nothing has
// changed for are the earlier report's.
func (st *stage) makeSectors(d *changes) {
	st.sectors = make([][]sector, len(st.scene.Cameras))
	for c := range st.sectors {
		if d != nil {
			if d.alike[c] && d.old.scene.Frames == st.scene.Frames && d.rollsAsBefore(c) {
				st.sectors[c] = d.old.sectors[d.cameras[c]]
				continue
			}
		}
		st.sectors[c] = make([]sector, st.scene.Frames)
	}
}

// misses is whether a circle about a pose's place is surely outside of it.
func (s *sector) misses(p Pose, reach float64) bool {
	dx, dy := p.X-s.x, p.Y-s.y
	q, l := dx*s.cos+dy*s.sin, dy*s.cos-dx*s.sin
	return math.Abs(l)*s.co-q*s.si > reach
}
