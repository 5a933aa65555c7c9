package check

import (
	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/motion"
	"longhand/lang/plan"
	"longhand/lang/units"
)

var rigBusy = &Rule{
	Entry: diag.Entry{
		Code:     "rig-busy",
		Title:    "a rig with two cameras, or an operator with two rigs, at one time",
		Severity: diag.Error,
		At:       []string{"beat on", "beat handoff"},
		Explain: `A rig holds one camera at a time, and an operator works one. A camera stays on its
rig, with its operator, until a line puts it on another or hands it over; a
camera that doesn't roll needs nobody at it.

To mend it: hand the first camera over before, name another operator, or let the
camera that isn't used rest.`,
		Bad: `take "Two on one"
  rate 24 fps
set "Yard"
  mark W1 (0, -9)
  mark C1 (0, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  crew ida
beat "Stand"
  ida stands at C1
  A on arms with ida
  A takes w35 T4
  A sees W1
  B on arms with ida
  B takes w35 T4
  B sees W1
  ida waits in 4 s
`,
		Good: `take "One each"
  rate 24 fps
set "Yard"
  mark W1 (0, -9)
  mark C1 (0, 0)
  mark C2 (3, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
  rig legs sticks
people
  crew ida
  crew rolf
beat "Stand"
  ida stands at C1
  A on arms with ida
  A takes w35 T4
  A sees W1
  legs stands at C2
  B on legs with rolf
  B takes w35 T4
  B sees W1
  ida waits in 4 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		cameras := p.Tracks.Cameras
		for i, a := range cameras {
			for _, b := range cameras[i+1:] {
				p.busy(a, b)
			}
		}
	},
}

// busy finds the first time for which two cameras share a rig, and the first
// for which they share an operator who has to be at both.
func (p *Pass) busy(a, b *motion.CameraTrack) {
	rig, operator := false, false
	for i := range a.Holds {
		for j := range b.Holds {
			g, h := &a.Holds[i], &b.Holds[j]
			from, to := max(g.Start, h.Start), min(g.End, h.End)
			if to-from <= handover {
				continue
			}
			later, first := h, g
			who, other := b.Camera, a.Camera
			if g.Start > h.Start {
				later, first = g, h
				who, other = other, who
			}
			switch {
			case !rig && g.Rig != nil && g.Rig == h.Rig:
				rig = true
				d := p.foundOn(later.Action, g.Rig, from, to, "%s holds %s and %s from %s to %s, %s long: a rig holds one camera",
					g.Rig.Name, other.Name, who.Name, from.Clock(), to.Clock(), to-from)
				relateLine(d, first.Action)
			case !operator && g.Operator != nil && g.Operator == h.Operator && g.Rig != h.Rig:
				from, to := p.needed(a, g, b, h, from, to)
				if to-from <= handover {
					continue
				}
				operator = true
				d := p.foundOn(later.Action, g.Operator, from, to, "%s has %s on %s and %s on %s from %s to %s, %s long: an operator works one rig",
					g.Operator.Name, other.Name, nameOfRig(first.Rig), who.Name, nameOfRig(later.Rig), from.Clock(), to.Clock(), to-from)
				relateLine(d, first.Action)
			}
		}
	}
}

// handover is how long two may have the same rig or operator while one takes
// over from the other.
const handover units.Seconds = 0.5

// needed narrows a time to where the operator has to be at both cameras: for
// as long as a rig is worn or ridden, else while the camera rolls.
func (p *Pass) needed(a *motion.CameraTrack, g *motion.Hold, b *motion.CameraTrack, h *motion.Hold, from, to units.Seconds) (units.Seconds, units.Seconds) {
	for _, x := range [...]struct {
		track *motion.CameraTrack
		hold  *motion.Hold
	}{{a, g}, {b, h}} {
		if x.hold.Worn || x.hold.Ridden {
			continue
		}
		class := body.NoClass
		if x.hold.Rig != nil {
			class, _ = body.ParseClass(x.hold.Rig.Class)
		}
		if body.RigOf(class).Crewing == body.Unattended {
			return 0, 0
		}
		best := [2]units.Seconds{}
		for _, r := range x.track.Rolls {
			s, e := max(from, r.From), min(to, r.To)
			if e-s > best[1]-best[0] {
				best = [2]units.Seconds{s, e}
			}
		}
		from, to = best[0], best[1]
	}
	return from, to
}

func nameOfRig(r *plan.Rig) string {
	if r == nil {
		return "no rig"
	}
	return r.Name
}

func relateLine(d *diag.Diagnostic, a *plan.Action) {
	if a != nil {
		d.Relate(a.Span, "%s", clock.Describe(a))
	}
}
