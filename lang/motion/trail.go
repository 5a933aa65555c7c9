package motion

import (
	"math"
	"sort"

	"longhand/lang/geom"
)

// trail is the way a body goes over the floor in the whole take, by the length
// it has gone, with its corners rounded: where it walked or will walk, somebody
// else can walk, behind it or ahead.
type trail struct {
	legs    []leg
	length  float64
	corners []rounding
	start   geom.Vec
	facing  float64 // of a body that never goes anywhere
}

// leg is a stretch of a trail: a path, or a polyline of what was sampled.
type leg struct {
	from, to   float64 // length of trail
	start, end float64 // time
	seg        *Segment
	path       *geom.Path
	sampled    []float64 // length gone at even times, where there is no profile
}

// rounding is a corner that is cut: a cubic from before it to after it.
type rounding struct {
	from, to float64
	curve    hermite
}

// roundSide is how far from a corner its rounding begins, metres.
const roundSide = 0.6

// trailStep is the time between samples of a way with no path of its own.
const trailStep = 1.0 / 24

// newTrail collects where a track goes.
func newTrail(t *Track) *trail {
	tr := &trail{start: t.point(float64(t.Segments[0].Start)).Floor(), facing: t.heading(float64(t.Segments[0].Start))}
	for i := range t.Segments {
		s := &t.Segments[i]
		_, traced := s.way.(tracer) // else it leaves its path, as where a move was cut short by another
		switch {
		case s.Kind == Resting, s.End <= s.Start:
		case s.Path != nil && traced:
			if s.Path.Length() > 0 {
				tr.addPath(s)
			}
		default:
			tr.addSampled(s)
		}
	}
	tr.roundCorners()
	return tr
}

func (tr *trail) addPath(s *Segment) {
	// What was cut short went only part of the way.
	gone := float64(s.Profile.At(s.End - s.Start))
	if gone <= 1e-9 {
		return
	}
	path := s.Path
	if gone < path.Length() {
		path = path.Sub(0, gone)
	}
	from, to := s.span()
	tr.add(leg{seg: s, path: path, start: from, end: to}, gone)
}

func (tr *trail) addSampled(s *Segment) {
	from, to := s.span()
	n, _ := looks(to-from, trailStep)
	points := make([]geom.Vec, 0, n+1)
	lengths := make([]float64, n+1)
	for i := range n + 1 {
		p := s.way.at(from + (to-from)*float64(i)/float64(n)).Floor()
		if i > 0 {
			lengths[i] = lengths[i-1] + p.Dist(points[i-1])
		}
		points = append(points, p)
	}
	if lengths[n] < 1e-6 {
		return
	}
	tr.add(leg{seg: s, path: geom.NewStraight(points...), start: from, end: to, sampled: lengths}, lengths[n])
}

func (tr *trail) add(l leg, length float64) {
	l.from, l.to = tr.length, tr.length+length
	tr.length = l.to
	tr.legs = append(tr.legs, l)
}

// gone is the length of trail behind at a time.
func (tr *trail) gone(t float64) float64 {
	i := sort.Search(len(tr.legs), func(i int) bool { return tr.legs[i].end > t })
	if i == len(tr.legs) {
		return tr.length
	}
	l := &tr.legs[i]
	if t <= l.start {
		return l.from
	}
	if l.sampled == nil {
		return l.from + float64(l.seg.way.(tracer).s(t))
	}
	x := (t - l.start) / (l.end - l.start) * float64(len(l.sampled)-1)
	k := min(int(x), len(l.sampled)-2)
	return l.from + l.sampled[k] + (l.sampled[k+1]-l.sampled[k])*(x-float64(k))
}

// tracer is a way that knows the length it has gone.
type tracer interface{ s(t float64) float64 }

// raw is the point at a length of trail, corners and all, and the direction of
// travel there; straight on past the ends.
func (tr *trail) raw(s float64) (geom.Vec, geom.Vec) {
	if len(tr.legs) == 0 {
		d := geom.Polar(1, tr.facing)
		return tr.start.Add(d.Mul(s)), d
	}
	i := sort.Search(len(tr.legs)-1, func(i int) bool { return tr.legs[i+1].from > s })
	l := &tr.legs[i]
	return l.path.AtExtended(s - l.from), l.path.Tangent(s - l.from)
}

// at is the point and the direction of travel at a length of trail.
func (tr *trail) at(s float64) (geom.Vec, geom.Vec) {
	if c := tr.corner(s); c != nil {
		u := (s - c.from) / (c.to - c.from)
		p, d := c.curve.at(u)
		if l := d.Len(); l > 1e-9 {
			return p, d.Mul(1 / l)
		}
		_, d = c.curve.at(min(u+0.01, 1))
		return p, d.Unit()
	}
	return tr.raw(s)
}

func (tr *trail) corner(s float64) *rounding {
	i := sort.Search(len(tr.corners), func(i int) bool { return tr.corners[i].to > s })
	if i < len(tr.corners) && tr.corners[i].from < s {
		return &tr.corners[i]
	}
	return nil
}

// roundCorners finds where the direction jumps, within a leg and between two,
// and cuts the corners. Two that are near share the way between them.
func (tr *trail) roundCorners() {
	var at []float64
	for i, l := range tr.legs {
		if i > 0 {
			before := tr.legs[i-1].path
			in, out := before.Tangent(before.Length()), l.path.Tangent(0)
			if math.Abs(math.Atan2(in.Cross(out), in.Dot(out))) > 1e-3 {
				at = append(at, l.from)
			}
		}
		if l.sampled == nil {
			for _, c := range l.path.Corners() {
				at = append(at, l.from+c.S)
			}
		}
	}
	for i, s := range at {
		before, after := roundSide, roundSide
		if i > 0 {
			before = min(before, (s-at[i-1])/2)
		}
		if i+1 < len(at) {
			after = min(after, (at[i+1]-s)/2)
		}
		if before < 1e-6 || after < 1e-6 {
			continue
		}
		p, d := tr.raw(s - before)
		q, e := tr.raw(s + after)
		k := before + after
		tr.corners = append(tr.corners, rounding{s - before, s + after, hermite{p, q, d.Mul(k), e.Mul(k)}})
	}
}

// hermite is the cubic from p to q with the derivatives m and n there.
type hermite struct{ p, q, m, n geom.Vec }

// at is the point and the derivative at u in [0, 1].
func (h hermite) at(u float64) (geom.Vec, geom.Vec) {
	d := h.q.Sub(h.p)
	c2 := d.Mul(3).Sub(h.m.Mul(2)).Sub(h.n)
	c3 := h.m.Add(h.n).Sub(d.Mul(2))
	p := h.p.Add(h.m.Mul(u)).Add(c2.Mul(u * u)).Add(c3.Mul(u * u * u))
	v := h.m.Add(c2.Mul(2 * u)).Add(c3.Mul(3 * u * u))
	return p, v
}
