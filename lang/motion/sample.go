package motion

import (
	"longhand/lang/pace"
	"longhand/lang/units"
)

// Sample puts the pose at each of some times, which are in order, into as many
// poses: the same as At, found without looking for each.
func (t *Track) Sample(times []units.Seconds, poses []Pose) {
	if len(times) == 0 {
		return
	}
	t.points(times, poses)
	t.headings(times, poses)
	t.heights(times, poses)
}

// points are where the track is, segment by segment.
func (t *Track) points(times []units.Seconds, poses []Pose) {
	for k, i := t.segmentAt(times[0]), 0; i < len(times); k++ {
		end := len(times)
		if k+1 < len(t.Segments) {
			end = until(times, i, t.Segments[k+1].Start)
		}
		t.Segments[k].points(times[i:end], poses[i:end])
		i = end
	}
}

// until is the first of some times, from one on, that isn't before another.
func until(times []units.Seconds, from int, at units.Seconds) int {
	for from < len(times) && times[from] < at {
		from++
	}
	return from
}

func (s *Segment) points(times []units.Seconds, poses []Pose) {
	from, to := s.span()
	switch w := s.way.(type) {
	case rest:
		still := Pose{X: units.Metres(w.p.X), Y: units.Metres(w.p.Y), Z: units.Metres(w.p.Z)}
		for i := range poses {
			poses[i] = still
		}
	case walk:
		along := pace.Cursor{Profile: w.profile}
		for i, at := range times {
			length := float64(along.At(units.Seconds(clamp(float64(at), from, to) - w.start)))
			p := w.path.At(length)
			poses[i] = Pose{X: units.Metres(p.X), Y: units.Metres(p.Y), Z: units.Metres(w.level.at(length))}
		}
	default:
		for i, at := range times {
			p := s.way.at(clamp(float64(at), from, to))
			poses[i] = Pose{X: units.Metres(p.X), Y: units.Metres(p.Y), Z: units.Metres(p.Z)}
		}
	}
}

// headings are the ways the track faces, stretch by stretch.
func (t *Track) headings(times []units.Seconds, poses []Pose) {
	first, last := float64(t.Segments[0].Start), t.end()
	if t.tangled || len(t.heads) == 0 || len(t.spins) > 0 {
		for i, at := range times {
			poses[i].Heading = wrap(t.heading(float64(at)))
		}
		return
	}
	k := t.headAt(clamp(float64(times[0]), first, last), len(t.heads))
	settled := false // it faces one way up to the next stretch
	var facing float64
	for i, time := range times {
		at := clamp(float64(time), first, last)
		for k+1 < len(t.heads) && t.heads[k+1].from <= at {
			k++
			settled = false
		}
		if !settled {
			h := &t.heads[k]
			facing = wrap(h.at(at))
			settled = h.dir.by == nil && (h.off == 0 || at >= h.from+h.time)
		}
		poses[i].Heading = facing
	}
}

// heights are how tall what has the track is.
func (t *Track) heights(times []units.Seconds, poses []Pose) {
	if len(t.poses) == 0 {
		for i := range poses {
			poses[i].Height = t.Stature
		}
		return
	}
	for i, at := range times {
		poses[i].Height = t.height(float64(at))
	}
}
