package check

import (
	"longhand/lang/body"
	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/safety"
	"longhand/lang/solid"
	"longhand/lang/units"
)

var fallEdge = &Rule{
	Entry: diag.Entry{
		Code:     "fall-edge",
		Title:    "a way along an unguarded drop",
		Severity: diag.Error,
		At:       these(beingThere, "set platform", "set stairs"),
		Explain: `Somebody walks, or backs up with a camera, within 0.6 m of the edge of a platform
with a drop of more than 0.3 m and nothing that would hold them: no wall or rail of
0.9 m or more between them and the edge (common practice, no source). For somebody
who walks forwards without a camera it is a warning; for whoever looks through a
lens, goes backwards, or walks right off a drop of more than 0.45 m, it is an error.

Stairs that lead down are not a drop, and who walks to them or on them isn't found
fault with.

To mend it: keep the way further in, put up a rail ("wall rail (0, 15) (26, 15)
high 3.4 m to 4.4 m"), or turn the camera's way round so that nobody backs up
there.`,
		Bad: `take "Edge"
  rate 24 fps
set "Gallery"
  platform gallery (0, 0) (12, 0) (12, 3) (0, 3) high 0 m to 2 m
  mark M1 (2, 0.3)
  mark M2 (10, 0.3)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  crew ida
beat "Along"
  ida walks from M1 to M2 at 0.8 m/s
  A on arms with ida
  A takes w35 T4
`,
		Good: `take "Edge"
  rate 24 fps
set "Gallery"
  platform gallery (0, 0) (12, 0) (12, 3) (0, 3) high 0 m to 2 m
  mark M1 (2, 1.5)
  mark M2 (10, 1.5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm
  rig arms gimbal
people
  crew ida
beat "Along"
  ida walks from M1 to M2 at 0.8 m/s
  A on arms with ida
  A takes w35 T4
`,
	},
	Needs: Moved,
	Run: func(p *Pass) {
		if len(p.Plan.Set.Platforms) == 0 {
			return
		}
		floors := solid.NewFloors(&p.Plan.Set)
		m := p.moving()
		for _, b := range m.list {
			if b.person != nil || b.rolling() {
				p.edges(m, floors, b)
			}
		}
	},
}

const (
	guardHigh  = 0.9  // m over the floor: what holds somebody back (common practice, no source)
	kneeHigh   = 0.5  // m: what begins higher lets a body through below
	edgeSlow   = 0.15 // m/s: slower is standing
	stairsNear = 0.9  // m round a flight: who is there is on the way to it
	edgeLooks  = 16   // directions looked in
	stepsAside = 0.45 // m: a drop that is walked off forwards, as a step
	edgeAgain  = 2.0  // s
)

// rolling says that a body is a rig that goes over the floor.
func (b *mover) rolling() bool {
	return b.rig != nil && (b.class.Class == body.Dolly || b.class.Class == body.Cart)
}

func (p *Pass) fallEdge(m *movers, floors *solid.Floors, b *mover, d drop) {
	how := "walks"
	switch {
	case b.person == nil:
		how = "rolls"
	case d.backs:
		how = "walks backwards"
	}
	var f *diag.Diagnostic
	if d.over {
		f = p.foundOn(d.line, b.thing, m.time(d.from), m.time(d.to), "%s %s off an unguarded edge, a drop of %s, at %s, %s", nameOf(b.thing), how,
			p.Length(metres(d.deep)), p.spot(m.at(b, d.worst).Point()), m.time(d.worst).Clock())
		f.Note("no stairs lead down there; a step of up to %s is taken without", p.Length(stepsAside))
	} else {
		f = p.nearEdge(m, b, d, how)
	}
	f.Worst = units.Frame(d.worst)
	if !d.backs && !d.lens && !d.over {
		f.Severity = diag.Warning
	}
	if d.line != nil {
		f.Note("in: %s", clock.Describe(d.line))
	}
	if !d.over {
		p.fromEdgeMarks(m, floors, b, d, f)
	}
	f.Note("%s", safety.Height.Caution())
	if d.lens || d.backs {
		f.Note("%s", safety.Worn.Caution())
	}
}

// nearEdge says how near somebody passes.
func (p *Pass) nearEdge(m *movers, b *mover, d drop, how string) *diag.Diagnostic {
	return p.foundOn(d.line, b.thing, m.time(d.from), m.time(d.to), "%s %s %s from an unguarded drop of %s at %s, %s, %s nearer than the %s that are kept",
		nameOf(b.thing), how, p.Length(metres(d.near)), p.Length(metres(d.deep)), p.spot(m.at(b, d.worst).Point()), m.time(d.worst).Clock(),
		p.Length(body.EdgeGap-metres(d.near)), p.Length(body.EdgeGap))
}

// fromEdgeMarks offers places further in for the marks of the line.
func (p *Pass) fromEdgeMarks(m *movers, floors *solid.Floors, b *mover, d drop, f *diag.Diagnostic) {
	z := float64(m.at(b, d.worst).Z)
	var moves []markMove
	for _, mark := range exactMarks(d.line) {
		if to, ok := p.fromEdge(floors, mark.Point, z); ok {
			moves = append(moves, markMove{mark, to})
		}
	}
	p.offerMarks(f, moves...)
}
