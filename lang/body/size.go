package body

import (
	"fmt"
	"math"

	"longhand/lang/units"
)

// Size is a shot size: how much of a person the frame holds.
type Size int

// The sizes, loosest first. The zero value says that none was asked for.
const (
	NoSize Size = iota
	Wide
	Full
	Knee
	Thigh
	Waist
	Chest
	Shoulders
	Face
	Eyes
)

// Sizes lists them, loosest to tightest.
func Sizes() []Size {
	return []Size{Wide, Full, Knee, Thigh, Waist, Chest, Shoulders, Face, Eyes}
}

// Cut is where a size cuts a standing person, as parts of stature, and how
// much of the frame it leaves free.
type Cut struct {
	Lower    float64 // at the lower edge of frame, of stature
	Landmark string  // what is there: "mid-thigh"
	Headroom float64 // above the head, of the frame's height; negative cuts into the hair
	FootRoom float64 // below the feet, of the frame's height
	Source   string
}

// The face and the eyes are framed from their upper cut, not from headroom:
// the face from the chin to the hair line, the eyes from below the nose to the
// brow. The widest size begins where a person is a third of the frame.
var cuts = [...]struct {
	name string
	Cut
}{
	NoSize:    {"", Cut{}},
	Wide:      {"wide", Cut{0, "feet, a person at most a third of the frame", 1.0 / 3, 1.0 / 3, Practice}},
	Full:      {"full", Cut{0, "feet", 0.10, 0.05, Practice}},
	Knee:      {"knee", Cut{0.30, "just above the knee", 0.08, 0, Practice}},
	Thigh:     {"thigh", Cut{0.40, "mid-thigh", 0.08, 0, Practice}},
	Waist:     {"waist", Cut{0.60, "waist", 0.08, 0, Practice}},
	Chest:     {"chest", Cut{0.72, "chest", 0.06, 0, Practice}},
	Shoulders: {"shoulders", Cut{0.82, "shoulders", 0.04, 0, Practice}},
	Face:      {"face", Cut{0.87, "chin", -0.034, 0, Practice}},
	Eyes:      {"eyes", Cut{0.90, "below the nose", -0.818, 0, Practice}},
}

// String is the word for it; empty for NoSize.
func (s Size) String() string {
	if s < 0 || int(s) >= len(cuts) {
		return ""
	}
	return cuts[s].name
}

// ParseSize reads a size's word.
func ParseSize(word string) (Size, error) {
	for _, s := range Sizes() {
		if s.String() == word {
			return s, nil
		}
	}
	return NoSize, fmt.Errorf("unknown shot size %q; from loosest to tightest they are wide, full, knee, thigh, waist, chest, shoulders, face, eyes", word)
}

// TighterThan says whether s shows less of a person than o. Nothing is tighter
// than a size not asked for.
func (s Size) TighterThan(o Size) bool { return s != NoSize && o != NoSize && s > o }

// Cut is where the size cuts; the zero Cut for NoSize.
func (s Size) Cut() Cut {
	if s.String() == "" {
		return Cut{}
	}
	return cuts[s].Cut
}

// ratio is the frame's height over the stature.
func (s Size) ratio() float64 {
	c := s.Cut()
	return (1 - c.Lower) / (1 - c.Headroom - c.FootRoom)
}

// FrameHeight is the height of frame, at the subject's distance, that gives
// someone of a stature this size; 0 for NoSize. For Wide it is the least height.
func (s Size) FrameHeight(stature units.Metres) units.Metres {
	if s.String() == "" {
		return 0
	}
	return stature * units.Metres(s.ratio())
}

// SizeOf says which size a framing is: the size whose own frame height is
// nearest to the one given, as a proportion (so that twice too tall is as far
// as half too tall). It is NoSize where a person is less than a twentieth of
// the frame, or where a length is not positive.
func SizeOf(frameHeight, stature units.Metres) Size {
	if !(frameHeight > 0) || !(stature > 0) || math.IsInf(float64(frameHeight), 0) {
		return NoSize
	}
	r := float64(frameHeight / stature)
	if r > 1/SmallestPerson {
		return NoSize
	}
	sizes := Sizes()
	for i, s := range sizes[:len(sizes)-1] {
		if r >= boundary(s, sizes[i+1]) {
			return s
		}
	}
	return Eyes
}

// SmallestPerson is the part of the frame's height below which a framing is no
// longer a shot of a person.
const SmallestPerson = 1.0 / 20

func boundary(looser, tighter Size) float64 { return math.Sqrt(looser.ratio() * tighter.ratio()) }

// SizeTolerance is how far past the border to the next size a framing may
// stray, as a proportion of frame height, before it is called off size: an
// operator's eye is no ruler.
const SizeTolerance = 0.05

// Fit says how a framing holds the size asked for: 0 when it does (within
// [SizeTolerance] of its borders); above 0 when it is too loose, below 0 when
// too tight, as the logarithm to base 2 of how far the frame's height is past
// the border. Anything fits NoSize.
func (s Size) Fit(frameHeight, stature units.Metres) float64 {
	if s.String() == "" || !(frameHeight > 0) || !(stature > 0) {
		return 0
	}
	r := float64(frameHeight / stature)
	upper, lower := 1/SmallestPerson, 0.0
	if s > Wide {
		upper = boundary(s-1, s)
	}
	if s < Eyes {
		lower = boundary(s, s+1)
	}
	switch upper, lower = upper*(1+SizeTolerance), lower/(1+SizeTolerance); {
	case r > upper:
		return math.Log2(r / upper)
	case r < lower:
		return math.Log2(r / lower)
	}
	return 0
}

// BadCut says whether a lower edge of frame, as a part of a standing person's
// stature, falls on a joint, where a cut looks like an amputation, and on which.
func BadCut(lower float64) (joint string, bad bool) {
	switch {
	case lower >= 0.26 && lower <= 0.29:
		return "knee", true
	case lower >= 0.46 && lower <= 0.49:
		return "crotch", true
	}
	return "", false
}

// HeadroomTolerance is how much the headroom may wander while the camera or
// the subject moves, as a part of the frame's height.
const HeadroomTolerance = 0.03

func (l *list) sizes() {
	p := Anybody()
	for _, s := range Sizes() {
		c := s.Cut()
		l.add(c.Source, "shot size, "+s.String(), "cuts at %s of stature, %s; frame %s high for %s", percent(c.Lower), c.Landmark,
			l.length(s.FrameHeight(p.Stature)), l.length(p.Stature))
	}
	l.add(Practice, "shot size, tolerance", "%s of frame height past the border to the next size", percent(SizeTolerance))
	l.add(Practice, "headroom while moving, tolerance", "%s of frame height", percent(HeadroomTolerance))
}
