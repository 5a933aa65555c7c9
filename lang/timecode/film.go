package timecode

import (
	"fmt"
	"strings"

	"longhand/lang/units"
)

// Gauge is a width of film and how many perforations a frame takes.
type Gauge struct {
	Name string
	// FramesPerFoot as a fraction: 64/3 for three perforations of 35 mm.
	num, den int
	// Loads are the usual lengths of a roll.
	Loads []units.Metres
}

// gauges lists the gauges a plan can name. A foot of 35 mm film has 64
// perforations and of 16 mm film 40 (SMPTE ST 139, ST 109, nominal pitch); 65 mm
// film has the pitch of 35 mm.
var gauges = []Gauge{
	{"35mm-4perf", 64, 4, feet(400, 1000)},
	{"35mm-3perf", 64, 3, feet(400, 1000)},
	{"35mm-2perf", 64, 2, feet(400, 1000)},
	{"35mm-8perf", 64, 8, feet(400, 1000)},
	{"16mm", 40, 1, feet(100, 400, 800)},
	{"super16", 40, 1, feet(100, 400, 800)},
	{"65mm-5perf", 64, 5, feet(400, 1000)},
}

func feet(lengths ...int) []units.Metres {
	out := make([]units.Metres, len(lengths))
	for i, l := range lengths {
		out[i] = units.Metres(l) * units.Foot
	}
	return out
}

// Gauges lists the names of the gauges.
func Gauges() []string {
	names := make([]string, len(gauges))
	for i, g := range gauges {
		names[i] = g.Name
	}
	return names
}

// ParseGauge is the gauge of a name.
func ParseGauge(name string) (Gauge, error) {
	for _, g := range gauges {
		if g.Name == name {
			g.Loads = append([]units.Metres(nil), g.Loads...)
			return g, nil
		}
	}
	return Gauge{}, fmt.Errorf("unknown film gauge %q; the gauges are %s", name, strings.Join(Gauges(), ", "))
}

// FramesPerFoot is how many frames a foot of film holds.
func (g Gauge) FramesPerFoot() float64 { return float64(g.num) / float64(g.den) }

// Frames is how many frames fit on a length of film.
func (g Gauge) Frames(length units.Metres) float64 {
	return float64(length/units.Foot) * g.FramesPerFoot()
}

// Runs is how long a length of film runs.
func (g Gauge) Runs(length units.Metres, rate units.Rate) units.Seconds {
	return units.Seconds(g.Frames(length) / rate.PerSecond())
}

// Length is how much film a time runs through.
func (g Gauge) Length(t units.Seconds, rate units.Rate) units.Metres {
	return units.Metres(float64(t)*rate.PerSecond()/g.FramesPerFoot()) * units.Foot
}

// UsableFilm is the part of a roll that can hold a take, after lacing and
// before run-out: common practice, no source, from memory.
const UsableFilm = 0.96

// MediaSize is how many bytes a stream of so many bits a second fills in a time.
func MediaSize(bitsPerSecond float64, t units.Seconds) float64 { return bitsPerSecond * float64(t) / 8 }

// MediaRuns is how long a stream of so many bits a second takes to fill bytes.
func MediaRuns(bytes, bitsPerSecond float64) units.Seconds {
	return units.Seconds(bytes * 8 / bitsPerSecond)
}
