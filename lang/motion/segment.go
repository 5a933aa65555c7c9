package motion

import (
	"math"

	"longhand/lang/geom"
	"longhand/lang/pace"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// Kind is what a subject does over a segment.
type Kind int

const (
	Resting  Kind = iota // stands where it is
	Moving               // along a path
	Riding               // aboard a carrier
	Stepping             // on or off a carrier, or from one hand to the other
	Relating             // kept somewhere relative to a target by a camera's line
	Braking              // coming to rest after a relation
)

var kindNames = [...]string{"resting", "moving", "riding", "stepping", "relating", "braking"}

func (k Kind) String() string { return kindNames[k] }

// Segment is a stretch of a track with one closed form.
type Segment struct {
	Kind       Kind
	Action     *plan.Action // nil for what follows from no line
	Start, End units.Seconds
	// Path and Profile are of Moving only: the way over the floor, and the
	// length along it from Start on.
	Path      *geom.Path
	Profile   *pace.Profile
	Backwards bool
	Limits    Limits       // of the subject, as it was loaded
	Carrier   plan.Thing   // of Riding
	Camera    *plan.Camera // of Relating: whose line it is

	way   way
	bends bends
}

// Straight says that the way of a Moving segment doesn't bend.
func (s *Segment) Straight() bool {
	_, plain := s.way.(walk)
	return plain && len(s.bends.kappa) == 0
}

// span is the segment's start and end as numbers.
func (s *Segment) span() (from, to float64) { return float64(s.Start), float64(s.End) }

// walk is a path in time.
type walk struct {
	path    *geom.Path
	profile *pace.Profile
	start   float64
	level   level
}

func (w walk) s(t float64) float64 { return float64(w.profile.At(units.Seconds(t - w.start))) }

func (w walk) at(t float64) geom.Vec3 {
	s := w.s(t)
	return w.path.At(s).At(w.level.at(s))
}

// along is the heading at a length of path; corners are rounded by whoever
// walks, so it turns over a stretch about each.
func (r route) along(s float64, corners []geom.Corner) float64 {
	h := r.path.Heading(s)
	for _, c := range corners {
		side := sideOf(c.Turn)
		if d := s - c.S; math.Abs(d) < side {
			k := turnEase.At((d + side) / (2 * side))
			if d < 0 {
				h += c.Turn * k
			} else {
				h -= c.Turn * (1 - k)
			}
		}
	}
	return h
}

// tightBend is the curvature above which somebody turns less quickly than their
// way does, 1/m; turnsIn is how quickly they turn, radians a metre of way: half
// round in a step, which at the pace of such a bend is 180 degrees a second.
const (
	tightBend = 4
	turnsIn   = 8
)

// facing is the heading along the path by the length gone; where that turns on
// the spot, as quickly as a body does.
func (r route) facing() func(s float64) float64 {
	if r.bends.tightest() < tightBend {
		return r.path.Heading
	}
	return r.memo.turning(func() sway {
		corners := r.path.Corners()
		return newSway(func(s float64) float64 { return r.along(s, corners) }, turnsIn, 8*turnsIn, 0, r.path.Length())
	}).at
}

// facing is the heading of who goes along a route, or backs along it.
func (w walk) facing(r route, back bool) direction {
	by := 0.0
	if back {
		by = math.Pi
	}
	if len(r.bends.kappa) == 0 {
		return fixed(r.path.Heading(0) + by)
	}
	along := r.facing()
	return turning(func(t float64) float64 { return along(w.s(t)) + by })
}

// levelled is a way over the floor at the floor's height, by time.
type levelled struct {
	flat  func(t float64) geom.Vec
	level level
}

func (l levelled) at(t float64) geom.Vec3 { return l.flat(t).At(l.level.at(t)) }
