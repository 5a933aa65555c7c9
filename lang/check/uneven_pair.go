package check

import (
	"math"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/plan"
	"longhand/lang/units"
)

// What makes a pair uneven, and for how long it may be (common practice, no
// source).
const (
	pairRatio                = 1.25 // of the one's size in the picture to the other's
	pairMiddle               = 0.1  // of the frame's width, that their middle is off its middle
	pairFor    units.Seconds = 1
)

var unevenPair = &Rule{
	Entry: diag.Entry{
		Code:     "uneven-pair",
		Title:    "two who are to share the frame evenly don't",
		Severity: diag.Error,
		At:       []string{"beat sees"},
		Explain: `A line asks for two people "fifty-fifty", and for longer than a second one of them
is bigger in the picture than the other by more than a quarter, or the middle
between them is off the middle of the frame by more than a tenth of its width.

How big somebody is in the picture goes with the inverse of their distance along
the optical axis: at 2 m and at 3 m, the nearer one is one and a half times as
big. How tall they are is left out: a pair is even when they are as far away.

To mend it: put both marks as far from the lens, move the camera until the line
between them lies across its view, or go farther away, where the same step in
depth counts for less. Or leave "fifty-fifty" out.`,
		Bad: `take "A pair"
  rate 24 fps
set "Hall"
  mark M1 (-0.6, 3)
  mark M2 (0.8, 5)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  performer otto
  crew ida
beat "Talk"
  mina stands at M1 in 4 s
  otto stands at M2 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T8
  A sees mina, otto fifty-fifty
`,
		Good: `take "A pair"
  rate 24 fps
set "Hall"
  mark M1 (-0.7, 4)
  mark M2 (0.7, 4)
kit
  camera A sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
  rig legs sticks
people
  performer mina
  performer otto
  crew ida
beat "Talk"
  mina stands at M1 in 4 s
  otto stands at M2 in 4 s
  legs stands at (0, 0)
  A on legs with ida
  A takes w35 T8
  A sees mina, otto fifty-fifty
`,
	},
	Needs:   Seen,
	Watches: watchesSubjects,
	Run: func(p *Pass) {
		for _, l := range p.lookings() {
			if l.aim.See.Even {
				p.unevenPair(l)
			}
		}
	},
}

func (p *Pass) unevenPair(l looking) {
	people := p.persons(&l)
	if len(people) != 2 {
		return
	}
	both := func(f units.Frame) (a, b framed) {
		a = p.framing(l.camera, people[0], f)
		b = p.framing(l.camera, people[1], f)
		return a, b
	}
	// badness is above 1 where the pair is uneven.
	badness := func(f units.Frame) float64 {
		a, b := both(f)
		if a.behind || b.behind {
			return 0 // one of them is lost, which is another finding
		}
		ratio := math.Abs(math.Log(a.depth/b.depth)) / math.Log(pairRatio)
		return math.Max(ratio, math.Abs((a.x+b.x)/2-0.5)/pairMiddle)
	}
	frames := minus(l.frames, p.unsteady(l.track))
	bad := p.longer(framesWhere(frames, func(f units.Frame) bool { return badness(f) > 1 }), pairFor)
	if len(bad) == 0 {
		return
	}
	p.tell([]part{{people[0].thing, people[0].bodies, bad}}, telling{rule: p.rule, camera: l.track.Camera, say: func(parts []part) {
		frames := parts[0].frames
		worst, _ := worstOf(frames, badness)
		a, b := both(worst)
		near, far, n, m := people[0], people[1], a, b
		if b.depth < a.depth {
			near, far, n, m = far, near, b, a
		}
		var d *diag.Diagnostic
		if m.depth/n.depth > pairRatio {
			d = p.Report(l.aim.Action.Span, "%s and %s are not even in %s's frame %s: %s is %s times as big as %s, %s and %s away; %s is the most",
				people[0].called(), people[1].called(), l.track.Camera.Name, p.when(frames), near.called(), units.Number(m.depth/n.depth, 2), far.called(),
				p.away(n.depth), p.away(m.depth), units.Number(pairRatio, 2))
		} else {
			side := "right"
			if (a.x+b.x)/2 < 0.5 {
				side = "left"
			}
			d = p.Report(l.aim.Action.Span, "%s and %s are not even in %s's frame %s: the middle between them is %s of the frame's width to the %s of its middle; %s is the most",
				people[0].called(), people[1].called(), l.track.Camera.Name, p.when(frames), units.Percent(100*math.Abs((a.x+b.x)/2-0.5)), side, units.Percent(100*pairMiddle))
		}
		p.found(d, l.track.Camera, nameOf(near.thing), frames, worst)
		at := p.Tracks.Rate.Time(worst)
		for _, thing := range []plan.Thing{near.thing, far.thing, l.track.Camera} {
			if line := p.putThere(thing, at); line != nil {
				d.Relate(line.Span, "%s is there: %s", nameOf(thing), clock.Describe(line))
			}
		}
		d.Note("the limits are common practice: %s times in size, %s of the frame's width off its middle, for longer than %s", units.Number(pairRatio, 2), units.Percent(100*pairMiddle), pairFor)
	}})
}
