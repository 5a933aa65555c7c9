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
		if d := s - c.S; math.Abs(d) < cornerSide {
			k := turnEase.At((d + cornerSide) / (2 * cornerSide))
			if d < 0 {
				h += c.Turn * k
			} else {
				h -= c.Turn * (1 - k)
			}
		}
	}
	return h
}

// levelled is a way over the floor at the floor's height, by time.
type levelled struct {
	flat  func(t float64) geom.Vec
	level level
}

func (l levelled) at(t float64) geom.Vec3 { return l.flat(t).At(l.level.at(t)) }
