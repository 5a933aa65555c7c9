package check

import (
	"math"

	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
)

var offCable = &Rule{
	Entry: diag.Entry{
		Code:     "off-cable",
		Title:    "a cable camera that leaves its line",
		Severity: diag.Error,
		At:       these(going, "kit rig"),
		Explain: `A camera on a cable goes to and fro on one straight line, and a line of the plan
takes it off: round a bend, or to a place beside the line of its first move. More
than 0.3 m counts: what the wire sways and sags (common practice, no source).

To mend it: move it "straight", between marks on one line.`,
		Bad: `take "Bend"
  rate 24 fps
set "Yard"
  mark W1 (0, 0)
  mark W2 (10, 4)
  mark W3 (20, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig wire cable
beat "Over"
  wire moves from W1 via W2 to W3 at 2 m/s
  A on wire
  A takes w35 T4
`,
		Good: `take "Straight"
  rate 24 fps
set "Yard"
  mark W1 (0, 0)
  mark W2 (10, 0)
  mark W3 (20, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig wire cable
beat "Over"
  wire moves from W1 via W2 to W3 at 2 m/s
  A on wire
  A takes w35 T4
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, t := range p.Tracks.Bodies {
			rig := rigOf(t.Thing)
			if rig == nil {
				continue
			}
			if c, _ := body.ParseClass(rig.Class); c == body.Cable {
				p.offCable(rig, t)
			}
		}
	},
}

// sway is how far beside its line a cable camera may be, m.
const sway = 0.3

// offCable holds every move against the line from the start of the first to its
// end.
func (p *Pass) offCable(rig *plan.Rig, t *motion.Track) {
	const step = 0.25
	var line geom.Segment
	known := false
	for i := range t.Segments {
		s := &t.Segments[i]
		if s.Kind != motion.Moving || s.Path == nil || s.Path.Length() < step {
			continue
		}
		if !known {
			line, known = geom.Segment{A: s.Path.Start(), B: s.Path.End()}, true
		}
		dir := line.B.Sub(line.A).Unit()
		worst, at := 0.0, geom.Vec{}
		for k := 0.0; k <= s.Path.Length(); k += step {
			q := s.Path.At(k)
			if off := math.Abs(dir.Cross(q.Sub(line.A))); off > worst {
				worst, at = off, q
			}
		}
		if worst <= sway {
			continue
		}
		d := p.foundOn(s.Action, rig, s.Start, s.End, "%s goes %s beside its line at %s, %s more than a wire sways",
			rig.Name, p.Length(metres(worst)), p.spot(at), p.Length(metres(worst-sway)))
		d.Note("its line goes from %s to %s", p.spot(line.A), p.spot(line.B))
		if s.Action != nil {
			d.Note("in: %s", clock.Describe(s.Action))
		}
	}
}
