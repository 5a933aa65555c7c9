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

// heading along the path; corners are rounded by whoever walks, so the heading
// turns over a stretch about each.
func (w walk) heading(t float64, corners []geom.Corner) float64 {
	s := w.s(t)
	h := w.path.Heading(s)
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
// way does, 1/m.
const tightBend = 4

// facing is the heading along the path; where that turns on the spot, as
// quickly as a body does.
func (w walk) facing(b bends, lim Limits) func(t float64) float64 {
	corners := w.path.Corners()
	along := func(t float64) float64 { return w.heading(t, corners) }
	if b.tightest() < tightBend {
		return along
	}
	rate := 2 * lim.turnRate()
	turn := newSway(along, rate, 3*rate, w.start, w.start+float64(w.profile.Duration()))
	return turn.at
}

// levelled is a way over the floor at the floor's height, by time.
type levelled struct {
	flat  func(t float64) geom.Vec
	level level
}

func (l levelled) at(t float64) geom.Vec3 { return l.flat(t).At(l.level.at(t)) }
