package check

import (
	"math"

	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
)

var onlyLens = &Rule{
	Entry: diag.Entry{
		Code:     "only-lens",
		Title:    "a lens that the look leaves out",
		Severity: diag.Error,
		At:       []string{"beat takes", "look only"},
		Explain: `The look names the lenses of this production ("only lens w24 w32"), and a camera
that rolls takes another one.

To mend it: take one of those named, and go nearer or farther so that the size
holds; or add the lens to the look.`,
		Bad: `take "Another lens"
  rate 24 fps
set "Hall"
  mark M1 (0, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  lens w50 50 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
look
  only lens w24
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w50 T4
  A sees mina
`,
		Good: `take "The lens"
  rate 24 fps
set "Hall"
  mark M1 (0, 6)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w24 24 mm stops T2 to T22
  lens w50 50 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  crew ida
look
  only lens w24
beat "Stand"
  mina stands at M1 in 8 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w24 T4
  A sees mina
`,
	},
	Needs:   Seen,
	Watches: watchesNothing,
	Run: func(p *Pass) {
		rule := p.Plan.Look.OnlyLenses
		if rule == nil || len(rule.Lenses) == 0 {
			return
		}
		var allowed []string
		ok := map[*plan.Lens]bool{}
		for _, l := range rule.Lenses {
			allowed = append(allowed, l.Name)
			ok[l] = true
		}
		for camera, c := range p.Stage.Cameras {
			track := p.Tracks.Camera(c)
			if track == nil {
				continue
			}
			for k := range track.Fits {
				fit := &track.Fits[k]
				until := p.Tracks.Length() + 1
				if k+1 < len(track.Fits) {
					until = track.Fits[k+1].At
				}
				frames := meet([]diag.Frames{{From: p.Tracks.Rate.From(fit.At), To: p.Tracks.Rate.From(until) - 1}}, p.rolling(camera))
				if ok[fit.Lens] || len(frames) == 0 {
					continue
				}
				d := p.Report(fit.Action.Span, "%s rolls on %s, %s, %s, and the look has only %s", c.Name, fit.Lens.Name, fit.Focal, p.when(frames), things(allowed))
				p.found(d, c, fit.Lens.Name, frames, frames[0].From)
				d.Relate(rule.Span, "the look: only these lenses")
				near := rule.Lenses[0]
				for _, l := range rule.Lenses[1:] {
					if diff(l, fit) < diff(near, fit) {
						near = l
					}
				}
				d.Note("%s is the nearest of them", near.Name)
			}
		}
	},
}

// diff is how far a lens is from what is fitted, as a proportion.
func diff(l *plan.Lens, fit *motion.Fit) float64 {
	focal := max(l.Short, min(l.Long, fit.Focal))
	return math.Abs(math.Log(float64(focal / fit.Focal)))
}
