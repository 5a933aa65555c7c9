package check

import (
	"context"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/staging"
	"longhand/lang/units"
)

// Pass is a plan with all that is computed from it, for rules to read.
type Pass struct {
	Ctx    context.Context
	Plan   *plan.Plan
	Clock  *clock.Clock
	Tracks *motion.Tracks
	Stage  *staging.Stage // the scene and what its parts stand for
	Sight  *sight.Report

	// ErrorsOnly leaves out the rules of which no finding makes a check fail, and
	// of the findings of the others what takes long and is for people alone.
	ErrorsOnly bool

	// Accepted is what a paint out or an allow of the plan covers, in the order
	// of those lines: paint outs first.
	Accepted []Accepted

	rule *Rule
	bag  diag.Bag
	told map[int]told // by place in the bag

	knows *known

	// Worked out when first asked for, by the rules about movement alone.
	bodies *movers
	narrow map[*mover][]gap
	met    map[[2]*mover][]contact
}

// When says a stretch of frames for people: "0:12.3–0:14.0 (frames 295–336)".
func (p *Pass) When(f diag.Frames) string {
	rate := p.Plan.Take.Rate
	if f.From == f.To {
		return rate.Time(f.From).Clock() + " (frame " + itoa(f.From) + ", one frame)"
	}
	from, to := rate.Time(f.From).Clock(), rate.Time(f.To).Clock()
	if from == to { // the same tenth
		return from + " (frames " + itoa(f.From) + "–" + itoa(f.To) + ")"
	}
	return from + "–" + to + " (frames " + itoa(f.From) + "–" + itoa(f.To) + ")"
}

// Length prints a length in the plan's own system.
func (p *Pass) Length(m units.Metres) string { return m.Text(p.Plan.Take.Units) }

// Speed prints a speed in the plan's own system.
func (p *Pass) Speed(v units.MetresPerSecond) string { return v.Text(p.Plan.Take.Units) }

// BeatAt is the beat that a time belongs to; nil outside of all.
func (p *Pass) BeatAt(t units.Seconds) *plan.Beat { return p.Clock.BeatAt(t) }

func itoa(f units.Frame) string { return units.Number(float64(f), 0) }
