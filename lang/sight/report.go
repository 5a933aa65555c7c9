package sight

import (
	"sort"

	"longhand/lang/units"
)

// Report is what every rolling camera sees, worked out once for every frame.
// It is read-only; what it does not hold (boxes, distances, what stands
// behind) it works out when asked, for the frame asked about.
type Report struct {
	// Sight has a run for every stretch of consecutive frames in which a body
	// is in a camera's frame, by camera, body and first frame.
	Sight []Run
	// Reflected has the same for what a camera sees in a mirror, by camera,
	// mirror, body and first frame.
	Reflected []Run
	// Glares has one entry for each stretch of rolling and each glow, by
	// camera, glow and first frame.
	Glares []Glare

	stage  *stage
	grazes [][]graze // by camera
}

// NoMirror is Run.Mirror for what is seen directly.
const NoMirror = -1

// Run is a stretch of consecutive frames in which a body is in frame, also
// where something nearer hides all of it. Camera, Body and Mirror are indices
// in the scene.
type Run struct {
	Camera, Body, Mirror int
	Frames
	// Visible has, for each frame from From to To, the part of the body's
	// in-frame projected area that nothing nearer covers, 0 to 1. In a mirror
	// the area is that of its image within the mirror and the frame.
	Visible []float32
	// Share has the visible area over the frame's area, in per cent.
	Share []float32
}

// Moment is a frame of a run.
type Moment struct {
	Frame   units.Frame
	Visible float64 // 0 to 1
	Share   float64 // per cent of the frame
}

// Len is the number of frames of the run.
func (r *Run) Len() int { return len(r.Visible) }

// At is the run at a frame, which must be one of its frames.
func (r *Run) At(f units.Frame) Moment {
	i := int(f - r.From)
	return Moment{Frame: f, Visible: float64(r.Visible[i]), Share: float64(r.Share[i])}
}

// Peak is the first frame at which most of the picture shows the body.
func (r *Run) Peak() Moment {
	best := 0
	for i, s := range r.Share {
		if s > r.Share[best] {
			best = i
		}
	}
	return r.At(r.From + units.Frame(best))
}

// Least is the first frame at which the smallest part of the body is uncovered.
func (r *Run) Least() Moment {
	worst := 0
	for i, v := range r.Visible {
		if v < r.Visible[worst] {
			worst = i
		}
	}
	return r.At(r.From + units.Frame(worst))
}

// Showing lists the stretches in which more than least of the body is uncovered;
// with least 0, every frame in which anything of it shows at all.
func (r *Run) Showing(least float64) []Frames {
	return r.stretches(func(v float32) bool { return float64(v) > least })
}

// Hidden lists the stretches in which no more than most of the body is
// uncovered, though it is within the frame.
func (r *Run) Hidden(most float64) []Frames {
	return r.stretches(func(v float32) bool { return float64(v) <= most })
}

func (r *Run) stretches(in func(float32) bool) []Frames {
	var out []Frames
	open := false
	for i, v := range r.Visible {
		f := r.From + units.Frame(i)
		switch {
		case !in(v):
			open = false
		case open:
			out[len(out)-1].To = f
		default:
			open, out = true, append(out, Frames{f, f})
		}
	}
	return out
}

// Cut is the part of the run within the frames given, sharing its numbers, and
// whether there is any.
func (r *Run) Cut(to Frames) (Run, bool) {
	from, last := max(r.From, to.From), min(r.To, to.To)
	if from > last {
		return Run{}, false
	}
	c := *r
	c.Frames = Frames{from, last}
	c.Visible = r.Visible[from-r.From : last-r.From+1]
	c.Share = r.Share[from-r.From : last-r.From+1]
	return c, true
}

// Of is the runs of a body in a camera's frame, by first frame.
func (r *Report) Of(camera, body int) []Run { return pick(r.Sight, camera, NoMirror, body) }

// In is the runs of a body in a camera's frame as a mirror shows it.
func (r *Report) In(mirror, camera, body int) []Run { return pick(r.Reflected, camera, mirror, body) }

func pick(runs []Run, camera, mirror, body int) []Run {
	at := func(b int) int {
		return sort.Search(len(runs), func(i int) bool {
			r := &runs[i]
			if r.Camera != camera {
				return r.Camera > camera
			}
			if r.Mirror != mirror {
				return r.Mirror > mirror
			}
			return r.Body >= b
		})
	}
	return runs[at(body):at(body+1)]
}

// Moment is a body in a camera's frame at a frame, and whether it is in frame.
func (r *Report) Moment(camera, body int, f units.Frame) (Moment, bool) {
	for _, run := range r.Of(camera, body) {
		if run.From <= f && f <= run.To {
			return run.At(f), true
		}
	}
	return Moment{Frame: f}, false
}

// Box is a part of the frame, in fractions of its width and height from the
// left and from the bottom.
type Box struct{ Left, Bottom, Right, Top float64 }

// Sighting is a body in a frame.
type Sighting struct {
	Body     int
	Mirror   int     // NoMirror, or the mirror it is seen in
	Visible  float64 // 0 to 1
	Share    float64 // per cent of the frame
	Box      Box     // of what shows of it; zero where it is wholly hidden
	Distance float64 // metres on the floor from the lens to its middle
	Depth    float64 // metres along the optical axis to its middle
}

// Backing is something that stands behind a body: what the lens would see
// there were the body gone.
type Backing struct {
	Name     string // of the solid's statement or the body; empty for none
	Kind     string // as of Solid or Body; empty where the view is open
	Share    float64
	Distance float64 // metres along the ray to the nearest part of it
}

// Glare is a glow before a camera over a stretch of rolling, one number a frame.
type Glare struct {
	Camera, Glow int
	Frames
	Share []float32 // of the frame its uncovered part fills, per cent
	Off   []float32 // degrees from the frame's edge to its nearest point; 0 in frame
	// Facing is the cosine of the angle between the way it shines, to the left
	// of the way from A to B, and the way to the lens: below 0 the lens is
	// behind it. Share, Off and Open take no notice of it.
	Facing []float32
	// Open is the part of it that nothing hides from the lens, 0 to 1: within
	// the frame, or of all of it where it is out of frame.
	Open []float32
}
