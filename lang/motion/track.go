package motion

import (
	"sync"

	"longhand/lang/body"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Pose is where a subject is: the middle of its footprint on the floor, the
// floor's height there, the way it faces and how high it is at the moment.
type Pose struct {
	X, Y, Z units.Metres
	Heading float64 // radians, in (-pi, pi]
	Height  units.Metres
}

// Point is the pose's place on the floor plan.
func (p Pose) Point() geom.Vec { return geom.Vec{X: float64(p.X), Y: float64(p.Y)} }

// Track is where a person, a vehicle or a rig is, from the take's first frame
// to its last. It never changes once resolved and may be asked from anywhere.
type Track struct {
	Thing    plan.Thing
	Segments []Segment // without gaps or overlaps, in order; never empty
	Radius   units.Metres
	Length   units.Metres // of a footprint with corners, ahead; 0 for a person
	Width    units.Metres
	Stature  units.Metres // its height standing

	heads   []head
	tangled bool // heads are not in the order of time
	spins   []spin
	poses   []pose
	deck    float64 // height of its floor over the ground, for riders
	once    sync.Once
	trail   *trail // made when first asked for
}

// At is the pose at a time; before the take it is that of its start, after it
// that of its end.
func (t *Track) At(at units.Seconds) Pose {
	p := t.point(float64(at))
	return Pose{
		X: units.Metres(p.X), Y: units.Metres(p.Y), Z: units.Metres(p.Z),
		Heading: wrap(t.heading(float64(at))),
		Height:  t.height(float64(at)),
	}
}

// Segment is the one that a time lies in: the later of two at their joint.
func (t *Track) Segment(at units.Seconds) *Segment {
	return &t.Segments[t.segmentAt(at)]
}

// segmentAt is the place of that segment, by halves.
func (t *Track) segmentAt(at units.Seconds) int {
	low, high := 0, len(t.Segments)
	for low+1 < high {
		if half := (low + high) / 2; t.Segments[half].Start > at {
			high = half
		} else {
			low = half
		}
	}
	return low
}

func (t *Track) point(at float64) geom.Vec3 {
	s := t.Segment(units.Seconds(at))
	return s.way.at(clamp(at, float64(s.Start), float64(s.End)))
}

// Velocity over the floor in m/s.
func (t *Track) Velocity(at units.Seconds) geom.Vec { return t.velocity(float64(at)) }

func (t *Track) velocity(at float64) geom.Vec {
	s := t.Segment(units.Seconds(at))
	from, to := s.span()
	if at < from || at > to {
		return geom.Vec{}
	}
	switch s.Kind {
	case Resting:
		return geom.Vec{}
	case Moving:
		if w, ok := s.way.(walk); ok {
			local := units.Seconds(at - w.start)
			return w.path.Tangent(w.s(at)).Mul(float64(w.profile.Speed(local)))
		}
	}
	return velocity(s.way, at, from, to)
}

// Speed over the floor.
func (t *Track) Speed(at units.Seconds) units.MetresPerSecond {
	return units.MetresPerSecond(t.velocity(float64(at)).Len())
}

// Carrier is what it rides at a time; nil on the ground.
func (t *Track) Carrier(at units.Seconds) plan.Thing { return t.Segment(at).Carrier }

// Deck is the height of its floor over the ground, for riders.
func (t *Track) Deck() units.Metres { return units.Metres(t.deck) }

// frame makes a track a carrier.
func (t *Track) frame(at float64) (geom.Vec3, float64) {
	p := t.point(at)
	p.Z += t.deck
	return p, t.heading(at)
}

// pose is a change of posture.
type pose struct {
	start, end float64
	to         body.Posture
	from       float64 // part of stature at the start
}

// Posture is what a person does, or is on the way to.
func (t *Track) Posture(at units.Seconds) body.Posture {
	for i := len(t.poses) - 1; i >= 0; i-- {
		if t.poses[i].start <= float64(at) {
			return t.poses[i].to
		}
	}
	return body.Standing
}

// height is the stature by posture, eased.
func (t *Track) height(at float64) units.Metres {
	return t.Stature * units.Metres(t.tall(at))
}

// tall is the part of its stature that it stands up at a time.
func (t *Track) tall(at float64) float64 {
	for i := len(t.poses) - 1; i >= 0; i-- {
		if p := t.poses[i]; p.start <= at {
			return p.from + (p.to.HeightFraction()-p.from)*eased(at, p.start, p.end)
		}
	}
	return 1
}

// wrap brings an angle to (-pi, pi].
func wrap(a float64) float64 { return geom.AngleDiff(0, a) }

// end is the end of the last segment.
func (t *Track) end() float64 { return float64(t.Segments[len(t.Segments)-1].End) }

func (t *Track) add(s Segment) { t.Segments = append(t.Segments, s) }

// cut ends the track at a time: what lies after is dropped.
func (t *Track) cut(at float64) {
	for len(t.Segments) > 0 {
		last := &t.Segments[len(t.Segments)-1]
		if float64(last.Start) < at || len(t.Segments) == 1 && float64(last.Start) <= at && at <= 0 {
			last.End = units.Seconds(min(float64(last.End), at))
			return
		}
		t.Segments = t.Segments[:len(t.Segments)-1]
	}
}

// tidy drops segments that take no time, but for one where there are no others.
func (t *Track) tidy() {
	last := len(t.Segments) - 1
	kept := t.Segments[:0]
	for i := range t.Segments {
		if s := &t.Segments[i]; s.End > s.Start || len(kept) == 0 && i == last {
			kept = append(kept, *s)
		}
	}
	t.Segments = kept
}
