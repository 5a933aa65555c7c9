package sheets

import (
	"fmt"
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/optics"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// framing is how a camera frames a person, or their reflection in a mirror, over a
// stretch.
type framing struct {
	glass          *plan.Mirror
	asked          string
	first, last    body.Size
	tight, loose   body.Size
	tightH, looseH units.Metres
	tightAt        units.Seconds
	near, far      units.Metres
	from, to       units.Seconds
	frames         int
}

// sizes is the size of each person a camera is told to see, per beat, as framed
// beside as asked for.
func (m *maker) sizes() *Table {
	t := table("sizes", "Sizes", beatColumn(), clockColumns(), untilColumns("until"),
		col("camera", "camera", "name"), col("target", "sees", "a person whose face is in frame"), col("asked", "asked", "size the plan asks for"),
		col("first", "begins", "size as it begins"), col("last", "ends", "size as it ends"),
		col("holds", "as asked", "whether it is, within the tolerance of an operator's eye, all the while"), col("tightest", "tightest", "size where the frame is tightest"), col("tightest_clock", "at", "when it is"),
		measure("frame_height", "frame height there", "m", "what the frame covers, top to bottom, at the person"),
		measure("near", "nearest", "m", "from the lens along its axis"), measure("far", "farthest", "m", "from the lens along its axis"))
	reflected := false
	t.Empty = "No rolling camera is told to see a person with a lens in this plan."
	for _, p := range m.parts {
		for _, s := range p.spans() {
			for _, ct := range p.cameras() {
				for _, who := range m.p.People {
					tr := p.tracks.Body(who)
					for _, f := range m.framings(p, ct, who, s) {
						asked := f.asked
						if asked == "" {
							asked = "any"
						}
						of := plan.Target{Thing: who, Glass: f.glass}
						t.add(nil, p.beatAt(s.From), m.clock(f.from), m.until(f.to), cells(word(ct.Camera.Name), word(of.Name()), word(asked), word(sizeName(f.first)), word(sizeName(f.last)), word(f.holds(tr.Stature)),
							word(sizeName(f.tight)), word(f.tightAt.Clock()), m.length(f.tightH), m.length(f.near), m.length(f.far)))
						reflected = reflected || f.glass != nil
					}
				}
			}
		}
	}
	if len(t.Rows) > 0 {
		t.note("a size is told from the height of frame at the person and the person's stature, upright")
	}
	if reflected {
		t.note(byWayOfGlass)
	}
	return t
}

// spans are a part's beats in order of time; a pickup is one.
func (p *part) spans() []clock.Span {
	out := p.clock.Spans()
	if len(out) == 0 {
		out = []clock.Span{{To: p.clock.Length}}
	}
	return out
}

func sizeName(s body.Size) string {
	if s == body.NoSize {
		return "tiny"
	}
	return s.String()
}

// byWayOfGlass says what a distance to a reflection is.
const byWayOfGlass = "distances to a reflection (in a mirror) run from the lens to the glass and on to the person: measure both legs"

// framings is how a camera frames somebody directly and in each mirror, where it does.
func (m *maker) framings(p *part, ct *motion.CameraTrack, who *plan.Person, s clock.Span) []framing {
	var out []framing
	for _, in := range append([]*plan.Mirror{nil}, m.p.Set.Mirrors...) {
		if f := m.framing(p, ct, who, in, s); f.frames > 0 {
			out = append(out, f)
		}
	}
	return out
}

func (m *maker) framing(p *part, ct *motion.CameraTrack, who *plan.Person, in *plan.Mirror, s clock.Span) framing {
	f := framing{glass: in, near: units.Metres(math.Inf(1)), tightH: units.Metres(math.Inf(1))}
	tr := p.tracks.Body(who)
	if tr == nil || ct.Frame.Height <= 0 {
		return f
	}
	for k := m.rate.From(s.From); m.rate.Time(k) < s.To; k++ {
		at := m.rate.Time(k)
		aim := ct.Aim(at)
		v := ct.At(at)
		if !ct.Rolling(at) || aim == nil || v.Focal <= 0 || !sees(aim.See, who, in) || at < aim.Done && aim.Start > 0 {
			continue
		}
		depth, ok := faceDepth(v, ct.Frame, motion.Image(in, tr.At(at)))
		if !ok {
			continue
		}
		_, high := ct.Frame.FieldSize(units.Millimetres(v.Focal), units.Metres(depth))
		size := body.SizeOf(high, tr.Stature)
		if f.frames == 0 {
			f.first, f.from = size, at
		}
		f.frames++
		f.last, f.to = size, at
		if aim.Size != body.NoSize {
			f.asked = aim.Size.String()
		}
		if high < f.tightH {
			f.tight, f.tightH, f.tightAt = size, high, at
		}
		if high > f.looseH {
			f.loose, f.looseH = size, high
		}
		f.near, f.far = min(f.near, units.Metres(depth)), max(f.far, units.Metres(depth))
	}
	return f
}

// holds says whether the size asked for is held.
func (f *framing) holds(stature units.Metres) string {
	size, err := body.ParseSize(f.asked)
	if err != nil {
		return ""
	}
	tight, loose := size.Fit(f.tightH, stature), size.Fit(f.looseH, stature)
	switch {
	case tight < 0 && loose > 0:
		return "tighter and looser"
	case tight < 0:
		return "tighter"
	case loose > 0:
		return "looser"
	}
	return "yes"
}

func sees(s *plan.See, who plan.Thing, in *plan.Mirror) bool {
	if s == nil {
		return false
	}
	for _, t := range s.Targets {
		if t.Thing == who && t.Glass == in {
			return true
		}
	}
	return false
}

// faceDepth is how far a person's face is from a lens, along its axis; false
// where it is not in frame.
func faceDepth(v motion.View, f optics.Frame, p motion.Pose) (float64, bool) {
	view := optics.View{At: geom.Vec3{X: v.X, Y: v.Y, Z: v.Z}, Pan: units.FromRadians(v.Pan), Tilt: units.FromRadians(v.Tilt), Focal: units.Millimetres(v.Focal)}
	face := geom.Vec3{X: float64(p.X), Y: float64(p.Y), Z: float64(p.Z) + float64(p.Height)*body.EyeFraction}
	i, ok := view.Project(face)
	return float64(i.Depth), ok && f.Holds(i)
}

// feetToo prints a length in metres and in feet and inches, as focus is called.
func feetToo(v units.Metres) string {
	if math.IsInf(float64(v), 1) {
		return "infinity"
	}
	inches := int(math.Round(float64(v / units.Inch)))
	return fmt.Sprintf("%d'%d\"", inches/12, inches%12)
}
