package check

import (
	"fmt"

	"longhand/lang/clock"
	"longhand/lang/diag"
	"longhand/lang/geom"
	"longhand/lang/plan"
	"longhand/lang/sight"
	"longhand/lang/units"
)

// A lens hole is blocked where more than blockedMost of the frame is covered by
// what is within blockedNear of the wall, for longer than blockedFor (common
// practice, no source).
const (
	blockedNear               = 0.6 // metres
	blockedMost               = 0.5
	blockedFor  units.Seconds = 0.5
)

var holeBlocked = &Rule{
	Entry: diag.Entry{
		Code:     "hole-blocked",
		Title:    "something stands right in front of a lens hole",
		Severity: diag.Error,
		At:       these(inTheWay, "beat hides", "set hole"),
		Explain: `A hidden camera rolls, and within 0.6 m of its hole something covers more than
half of its frame for longer than half a second: a person who leans there, a door
that opens across it, a cart.

Nobody sees it happen. The camera is alone behind the wall, and what it shot is
known only after the take. What the line names as its subject does not count: a
face that comes close is what the camera is there for.

Every frame is looked at; the wall's own edge round the hole is left out, for
which there is "hole-vignettes".

To mend it: move the mark away from the hole, cue whoever stands there later, or
take another hole. The distance, the share and the time are common practice.`,
		Bad: `take "Leaning there"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (12, 8) high 3 m thick 12 mm
  hole pigeon on racks at 5 m up 1.45 m wide 130 mm
  mark M1 (4, 3)
  mark M2 (6, 3)
kit
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
people
  performer mina
  performer otto
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  otto stands at (5, 7.6)
  B hides behind pigeon
  B takes w35 T2.8
  B sees M2
`,
		Good: `take "Leaning elsewhere"
  rate 24 fps
set "Hall"
  wall racks (0, 8) (12, 8) high 3 m thick 12 mm
  hole pigeon on racks at 5 m up 1.45 m wide 130 mm
  mark M1 (4, 3)
  mark M2 (6, 3)
kit
  camera B sensor 24.9 mm x 14 mm
  lens w35 35 mm stops T2 to T22
people
  performer mina
  performer otto
beat "Across"
  mina walks from M1 to M2 at 1 m/s
  otto stands at (3, 7.6)
  B hides behind pigeon
  B takes w35 T2.8
  B sees M2
`,
	},
	Needs:   Seen,
	Watches: watchesNothing,
	Run: func(p *Pass) {
		for _, o := range p.hideouts() {
			p.blocked(&o)
		}
	},
}

// blocked looks at a plate that stands across the hidden lens's view, as far
// from the wall as things count as right in front of it: what of the plate is
// hidden is covered by something that near.
func (p *Pass) blocked(o *hideout) {
	if len(o.rolls) == 0 {
		return
	}
	const plate = 20.0 // metres, wide and high: more than any frame holds there
	scene := *p.Stage.Scene
	scene.Mirrors, scene.Glows, scene.Solids, scene.Bodies = nil, nil, nil, nil
	for _, s := range p.Stage.Scene.Solids {
		if s.Kind != string(plan.KindWall) || s.Name != o.Hole.Wall.Name {
			scene.Solids = append(scene.Solids, s)
		}
	}
	meant := p.targets(o)
	near := false
	for i := range p.Stage.Scene.Bodies {
		b := &p.Stage.Scene.Bodies[i]
		if meant[p.Stage.Things[i]] || p.Stage.Things[i] == plan.Thing(o.Hole) || p.Stage.Things[i] == plan.Thing(o.Camera) || !p.comesNear(o, b) {
			continue
		}
		near = true
		scene.Bodies = append(scene.Bodies, *b)
	}
	for i := range scene.Solids {
		near = near || geom.Polygon(scene.Solids[i].Polygon).Distance(o.centre) < blockedReach
	}
	if !near {
		return
	}
	at := o.centre.Add(o.into.Mul(o.thick/2 + blockedNear))
	const thin = 0.001
	scene.Bodies = append(scene.Bodies, sight.Body{
		Name: "\x00plate", Of: "\x00plate", Kind: "card",
		Polygon: []geom.Vec{{X: thin, Y: -plate / 2}, {X: thin, Y: plate / 2}, {X: 0, Y: plate / 2}, {X: 0, Y: -plate / 2}},
		Track:   []sight.Pose{{X: at.X, Y: at.Y, Z: float64(o.Hole.Up) - plate/2, Heading: o.into.Angle(), Height: plate}},
	})
	camera := p.Stage.Scene.Cameras[o.scene]
	camera.Rolls = nil
	for _, r := range o.rolls {
		camera.Rolls = append(camera.Rolls, sight.Frames{From: r.From, To: r.To})
	}
	scene.Cameras = []sight.Camera{camera}
	seen, err := sight.See(p.Ctx, &scene, sight.Options{})
	if err != nil {
		return // cancelled
	}
	var frames []diag.Frames
	target := len(scene.Bodies) - 1
	for _, r := range seen.Of(0, target) {
		for _, h := range r.Hidden(1 - blockedMost) {
			frames = append(frames, diag.Frames{From: h.From, To: h.To})
		}
	}
	if len(frames) == 0 {
		return
	}
	p.tell([]part{{thing: o.Hole, frames: tidy(frames)}}, telling{rule: p.rule, camera: o.Camera, say: func(parts []part) {
		p.sayBlocked(o, seen, target, parts[0].frames)
	}})
}

// blockedReach is how near to the hole, on the floor, a thing has to come to
// stand in what the lens sees within blockedNear of the wall, metres.
const blockedReach = 2.0

// comesNear says whether a body is ever near the hole while its camera rolls.
func (p *Pass) comesNear(o *hideout, b *sight.Body) bool {
	reach := b.Radius
	for _, v := range b.Polygon {
		reach = max(reach, v.Len())
	}
	for _, r := range o.rolls {
		for f := r.From; f <= r.To; f++ {
			pose := b.At(f)
			if pose.Height > 0 && o.centre.Dist(geom.Vec{X: pose.X, Y: pose.Y}) < blockedReach+reach {
				return true
			}
			if len(b.Track) == 1 {
				break
			}
		}
	}
	return false
}

// targets is what a hidden camera is there to see.
func (p *Pass) targets(o *hideout) map[plan.Thing]bool {
	out := map[plan.Thing]bool{}
	for _, a := range o.track.Aims {
		if a.See == nil {
			continue
		}
		for _, t := range a.See.Targets {
			if t.Thing != nil {
				out[t.Thing] = true
			}
		}
	}
	return out
}

func (p *Pass) sayBlocked(o *hideout, seen *sight.Report, plate int, frames []diag.Frames) {
	if p.Tracks.Rate.Duration(count(frames)) <= blockedFor {
		return
	}
	worst, least := frames[0].From, 2.0
	for _, r := range frames {
		for f := r.From; f <= r.To; f++ {
			if m, _ := seen.Moment(0, plate, f); m.Visible < least {
				worst, least = f, m.Visible
			}
		}
	}
	at := p.Tracks.Rate.Time(worst)
	d := p.Report(o.Action.Span, "")
	d.Frames, d.Subject, d.Camera, d.Worst = frames, o.Hole.Name, o.Camera.Name, worst
	d.Share = units.Percent(100 * (1 - least))
	p.inBeat(d)
	d.Message = fmt.Sprintf("the hole %s is covered for %s %s, up to %s of the frame", o.Hole.Name, o.Camera.Name, p.when(frames), share(100*(1-least)))
	if by := p.named(seen.Covering(0, plate, worst), nil); len(by) > 0 {
		d.Message += fmt.Sprintf(": %s is right in front of it", what(by[0].Name, by[0].Kind))
		if thing := p.thing(by[0].Name, by[0].Kind); thing != nil {
			if a := p.putThere(thing, at); a != nil {
				d.Relate(a.Span, "%s is there: %s", thing.ID().Name, clock.Describe(a))
			} else {
				d.Relate(thing.ID().Decl, "%s is there", thing.ID().Name)
			}
		}
	}
	d.Relate(o.Hole.Decl, "the hole %s", o.Hole.Name)
	d.Note("right in front is within %s of the wall", p.Length(blockedNear))
}
