package check

import (
	"longhand/lang/body"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/motion"
	"longhand/lang/plan"
)

var handoffApart = &Rule{
	Entry: diag.Entry{
		Code:     "handoff-apart",
		Title:    "the two rigs of a handoff are not within reach",
		Severity: diag.Error,
		At:       []string{"beat handoff", "set wall", "set door", "set window", "set pillar", "set block", "set plan"},
		Explain: `A camera changes hands, and when it begins to, the two that hand it over are
further apart than an arm reaches: 0.9 m between the place of the lens on the
one and on the other (common practice, no source). Or the handoff names a place,
and the camera isn't there. Or something of the set is between the two: what is
handed through a window needs one of 0.6 m square, at the least 0.45 m, and a wall
without one is in the way.

To mend it: bring the two together first, with a move or a mark that is nearer,
or let the handoff wait for it: "when NAME reaches MARK".`,
		Bad: `take "Too far"
  rate 24 fps
set "Yard"
  mark W1 (0, -9)
  mark C1 (0, 0)
  mark C2 (4, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
  rig shoulder handheld
people
  crew ida
  crew rolf
beat "Over"
  A on arms with ida
  A takes w35 T4
  A sees W1
  ida stands at C1
  rolf stands at C2
  handoff A from arms to shoulder with rolf starting +2 s
`,
		Good: `take "Near enough"
  rate 24 fps
set "Yard"
  mark W1 (0, -9)
  mark C1 (0, 0)
  mark C2 (0.8, 0)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
  rig shoulder handheld
people
  crew ida
  crew rolf
beat "Over"
  A on arms with ida
  A takes w35 T4
  A sees W1
  ida stands at C1
  rolf stands at C2
  handoff A from arms to shoulder with rolf starting +2 s
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		for _, h := range p.Tracks.Handoffs {
			reach := body.HandoffReach
			if h.Giver != nil && h.Giver == h.Taker {
				reach += stepOver
			}
			if h.GapStart > reach {
				d := p.foundOn(h.Action, h.Camera, h.Start, h.End, "%s and %s are %s apart when %s changes hands at %s, %s more than the reach of %s",
					heldBy(h.From, h.Giver), heldBy(h.To, h.Taker), p.Length(h.GapStart), h.Camera.Name, h.Start.Clock(),
					p.Length(h.GapStart-reach), p.Length(reach)).
					Note("between the lens on the one and on the other; %s", body.Practice)
				p.bringTogether(d, h, float64(h.GapStart-reach))
			}
			p.handedThrough(h)
			if h.Place != nil && h.Off > offPlace {
				p.foundOn(h.Action, h.Camera, h.Start, h.End, "%s is to change hands at %s and is %s from there at %s, where %s counts as there",
					h.Camera.Name, h.Place.Text, p.Length(h.Off), h.Start.Clock(), p.Length(offPlace))
			}
		}
	},
}

// handedThrough finds what is between the two of a handoff.
func (p *Pass) handedThrough(h motion.Handoff) {
	giver, taker := heldBy(h.From, h.Giver), heldBy(h.To, h.Taker)
	if w := h.Window; w != nil {
		if wide := min(w.To-w.From, w.High.High-w.High.Low); wide < body.HandoffOpeningHard {
			d := p.foundOn(h.Action, h.Camera, h.Start, h.End, "%s is handed from %s to %s through window %s, which is %s at its narrowest, %s less than the %s it takes",
				h.Camera.Name, giver, taker, w.Name, p.Length(wide), p.Length(body.HandoffOpeningHard-wide), p.Length(body.HandoffOpeningHard))
			d.Note("%s square for choice; %s", p.Length(body.HandoffOpening), body.Practice)
			d.Relate(w.Decl, "window %s", w.Name)
		}
		return
	}
	way := geom.Segment{A: h.At.Floor(), B: h.Onto.Floor()}
	low, high := min(h.At.Z, h.Onto.Z), max(h.At.Z, h.Onto.Z)
	for _, o := range p.obstacles() {
		if !o.there(h.Start) || o.Z[0] >= low || o.Z[1] <= high || geom.Polygon(o.Polygon).MeetsSegment(way) == geom.Apart {
			continue
		}
		what := string(o.Thing.Kind()) + " " + o.Name
		d := p.foundOn(h.Action, h.Camera, h.Start, h.End, "%s is between %s and %s when %s changes hands at %s", what, giver, taker, h.Camera.Name, h.Start.Clock())
		d.Note("the straight way from the lens on the one to the lens on the other goes through it")
		d.Relate(o.Thing.ID().Decl, "%s", what)
		return
	}
}

// stepOver is how much further apart two rigs may be where one operator steps
// from the one to the other with the camera (common practice, no source: a pace).
const stepOver metres = 0.7

// bringTogether offers to move the mark that the one who takes the camera stands
// at, where it is but a step.
func (p *Pass) bringTogether(d *diag.Diagnostic, h motion.Handoff, short float64) {
	const (
		aStep = 1.0  // m: more is another plan
		over  = 0.05 // m
	)
	if h.Taker == nil || h.Taker == h.Giver || short > aStep {
		return
	}
	t := p.Tracks.Body(h.Taker)
	if t == nil || t.Segment(h.Start).Kind != motion.Resting {
		return
	}
	at := t.At(h.Start).Point()
	for i := range t.Segments {
		if t.Segments[i].Start > h.Start {
			break
		}
		for _, m := range exactMarks(t.Segments[i].Action) {
			if m.Point.Dist(at) < over {
				way := h.At.Floor().Sub(at).Unit()
				p.offerMarks(d, markMove{m, at.Add(way.Mul(short + over))})
				return
			}
		}
	}
}

// offPlace is how far a lens may be from the place a handoff names: the camera
// is on some part of a rig that stands there (common practice, no source: half
// the length of a cart, and an arm).
const offPlace = 2.0

// heldBy is a rig with who has it.
func heldBy(rig *plan.Rig, who *plan.Person) string {
	if who == nil {
		return rig.Name
	}
	return rig.Name + " (" + who.Name + ")"
}
