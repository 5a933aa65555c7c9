package check

import (
	"fmt"

	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// cardedFrom is how far from the lens a carded hole has to be to pass unseen in
// the pattern round it (common practice, no source: a dark hole of 60 mm).
const cardedFrom units.Metres = 4

var hideSeen = &Rule{
	Entry: diag.Entry{
		Code:     codeHide,
		Title:    "a hidden camera's hole is in another camera's frame",
		Severity: diag.Error,
		At:       []string{"beat hides", "set hole"},
		Explain: `A camera shoots through a hole in the set, and another camera that rolls has
that hole in its frame: a black spot with a lens in it. Without a card round the
lens that is an error at any distance and for a single frame; with one, a hole of
some 60 mm passes from 4 m away on, in a wall with some pattern (common practice,
no source).

Every frame is looked at. What people, doors and things in front of the hole hide
of it is taken off; the finding says what hid it, and until when.

To mend it: let somebody stand in the way for longer, bring the other lens round
later, rest it, take another hole, put a card round the lens and keep 4 m off, or
send it to visual effects with "paint out pigeon from A".`,
		Bad: `take "Found out"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (12, 8) high 3 m thick 12 mm
  hole pigeon on racks at 5 m up 1.45 m wide 110 mm
  mark M0 (2.6, 3)
  mark M1 (4, 3)
  mark M2 (7, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  card grey 0.4 m x 0.3 m colour grey
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (7, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
  B hides behind pigeon
  B takes w35 T2.8
  B sees M0
`,
		Good: `take "Carded"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (12, 8) high 3 m thick 12 mm
  hole pigeon on racks at 5 m up 1.45 m wide 110 mm
  mark M0 (2.6, 3)
  mark M1 (4, 3)
  mark M2 (7, 3)
kit
  camera A sensor 24.9 mm x 14 mm
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
  card grey 0.4 m x 0.3 m colour grey
people
  performer mina
  crew ida
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  legs stands at (7, 0)
  A on legs with ida
  A takes w35 T4
  A sees mina
  B hides behind pigeon card grey
  B takes w35 T2.8
  B sees M0
`,
	},
	Needs: Seen,
	Watches: func(_ *Pass, _ *plan.Camera, thing plan.Thing) bool {
		_, ok := thing.(*plan.Hole)
		return ok
	},
	Run: func(p *Pass) {
		for _, o := range p.hideouts() {
			for _, g := range p.views().glimpses {
				if g.thing != plan.Thing(o.Hole) || g.mirror != sight.NoMirror || p.cameraAt(g.camera) == o.Camera {
					continue
				}
				frames := meet(g.frames, o.frames)
				if o.Card != nil {
					frames = p.within(g.camera, o.Plugs, frames, float64(cardedFrom))
				}
				if len(frames) == 0 {
					continue
				}
				p.tell([]part{{g.thing, g.bodies, frames}}, telling{rule: p.rule, camera: p.cameraAt(g.camera), say: func(parts []part) {
					p.sayHideSeen(&o, g.camera, parts)
				}})
			}
		}
	},
}

// within keeps the frames in which the nearest of some bodies is nearer to a
// lens than a limit.
func (p *Pass) within(camera int, bodies []int, frames []diag.Frames, limit float64) []diag.Frames {
	var out []diag.Frames
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			for _, b := range bodies {
				if d, _ := p.Stage.Scene.Distance(camera, b, f); d < limit {
					out = append(out, diag.Frames{From: f, To: f})
					break
				}
			}
		}
	}
	return tidy(out)
}

func (p *Pass) sayHideSeen(o *hideout, camera int, parts []part) {
	worst := p.peak(camera, sight.NoMirror, parts)
	first := framesOf(parts)[0].From
	d := p.Report(o.Action.Span, "")
	box, distance := p.show(d, camera, sight.NoMirror, parts, worst)
	seer := p.cameraAt(camera)
	carded := "without a card"
	if o.Card != nil {
		carded = fmt.Sprintf("its card %s does from %s on", o.Card.Name, p.Length(cardedFrom))
	}
	d.Message = fmt.Sprintf("%s sees the hole %s, where %s hides, %s: %s, %s", seer.Name, o.Hole.Name, o.Camera.Name,
		p.when(d.Frames), p.seenAs(camera, parts, worst, box, distance), carded)
	if by := p.relateUncovered(d, camera, parts[0], first); by != "" {
		d.Message += fmt.Sprintf("; %s hides it until %s", by, p.Tracks.Rate.Time(first).Clock())
	}
	p.relateCamera(d, seer, p.Tracks.Rate.Time(worst.Frame))
	d.Relate(o.Hole.Decl, "the hole %s", o.Hole.Name)
	if o.Card == nil {
		d.Note("round the lens a card helps where %s stays %s away or more; here it comes to %s", seer.Name, p.Length(cardedFrom), p.away(p.nearest(camera, o.Plugs, d.Frames)))
		p.offerCard(d, o, camera)
	}
	p.offerPaintOut(d, o.Hole, seer, where(box)+", "+share(worst.Share)+" of the frame", "")
}

func (p *Pass) nearest(camera int, bodies []int, frames []diag.Frames) float64 {
	best := -1.0
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			for _, b := range bodies {
				if d, _ := p.Stage.Scene.Distance(camera, b, f); best < 0 || d < best {
					best = d
				}
			}
		}
	}
	return best
}

// offerCard offers a card of the kit that hides no other lens, where a card is
// enough.
func (p *Pass) offerCard(d *diag.Diagnostic, o *hideout, camera int) {
	if p.nearest(camera, o.Plugs, d.Frames) < float64(cardedFrom) {
		return
	}
	used := map[*plan.Card]bool{}
	for _, h := range p.Stage.Hides {
		used[h.Card] = true
	}
	for _, c := range p.Plan.Kit.Cards {
		if !used[c] && !c.Bad {
			at := o.Action.Span
			at.Start = at.End
			d.Fix("put the card "+c.Name+" round the lens", diag.Edit{Span: at, Text: " card " + c.Name})
			return
		}
	}
}
