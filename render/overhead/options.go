package overhead

import (
	"fmt"

	"longhand/lang/departments"
	"longhand/lang/units"
	"longhand/render/scene"
)

// Turn is how the paper lies.
type Turn int

const (
	Auto Turn = iota // whichever allows the larger drawing
	Landscape
	Portrait
)

// Options is how a drawing is made; the zero value is A4, turned and scaled to
// fit, for everybody, in black and white.
type Options struct {
	Paper scene.Paper // zero for A4
	Turn  Turn
	// Scale is N of 1:N; 0 for the largest of the usual scales that fits.
	Scale float64
	// Department is whom it is drawn for: what that department looks for stands out
	// and the rest is grey. "" for everybody.
	Department departments.Name
	// NeverSeen hatches the floor that no rolling camera sees.
	NeverSeen bool
	// Page is the number of the first sheet and Pages how many there are in all;
	// 0 counts the drawing's own sheets only.
	Page, Pages int
	Colour      bool
}

func (o Options) paper() scene.Paper {
	if o.Paper.Width <= 0 || o.Paper.Height <= 0 {
		return scene.A4
	}
	return o.Paper
}

// metric and imperial are the scales of drawings: ISO 5455 with the surveyors'
// 1:25 and 1:250, and the architects' 1/2, 1/4, 1/8 and 1/16 inch to a foot
// (common practice, no source), each with what follows when all are too large.
var (
	metric   = []float64{20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000, 10000}
	imperial = []float64{24, 48, 96, 192, 384, 768, 1536, 3072, 12288}
)

func scales(s units.System) []float64 {
	if s == units.Feet {
		return imperial
	}
	return metric
}

// scaleText is a scale as drawings say it: 1:50, or 1/4" = 1'-0" (1:48).
func scaleText(n float64, s units.System) string {
	ratio := "1:" + units.Number(n, 1)
	if s != units.Feet {
		return ratio
	}
	for inch, scale := range map[string]float64{"1": 12, "1/2": 24, "1/4": 48, "1/8": 96, "1/16": 192, "1/32": 384, "1/64": 768} {
		if scale == n {
			return fmt.Sprintf("%s\" = 1'-0\" (%s)", inch, ratio)
		}
	}
	return ratio
}
